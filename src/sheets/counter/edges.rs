//! Every edge of the counter with its tag, in full where there is white for it, small with a legend where not.

use super::Task;
use super::parts;
use super::pictogram::Pictogram;
use super::plan::Plan;
use super::tag::{Looks, Stand, Tag};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::place;
use crate::sheets::shelves::Block;
use crate::solve::{Edge, EdgeKind, Extent, FlangeLap, Look, Plane};
use crate::units::Length;

/// An edge that wants a tag, with the sides that the tag may stand on, best first.
pub struct Wish {
    /// The tag.
    pub tag: Tag,
    /// Start of its edge on the sheet.
    pub from: PaperPoint,
    /// End of its edge.
    pub to: PaperPoint,
    /// Sides that it may stand on, and whether it reads upright there.
    pub sides: Vec<(Looks, bool)>,
}

/// Tags all edges of the stretch; small ones are added to the legend.
pub fn draw(canvas: &mut Canvas, plan: &Plan<'_, '_>, legend: &mut Vec<Tag>) {
    let layer = canvas.layer(plan.view.layer, "edge-tags");
    for wish in outside(plan).into_iter().chain(wells(plan)) {
        put(canvas, layer, wish, legend);
    }
}

/// Puts a tag on its edge, in full or small, or beside it; a small one is added to the legend.
pub fn put(canvas: &mut Canvas, layer: Layer, wish: Wish, legend: &mut Vec<Tag>) {
    let full = |small: bool| stands(&wish, small).find(|stand| wish.tag.is_free(canvas, *stand));
    if let Some(stand) = full(false).or_else(|| full(true)) {
        wish.tag.draw(canvas, layer, stand);
        if stand.small {
            legend.push(wish.tag);
        }
    } else {
        apart(canvas, layer, &wish);
        legend.push(wish.tag);
    }
}

/// Places along an edge where its tag may stand: the middle first.
fn stands(wish: &Wish, small: bool) -> impl Iterator<Item = Stand> + '_ {
    // The middle, then by turns to its left and right.
    let shares = (0..45).map(|k: i32| 0.5 + f64::from((k + 1) / 2) * if k % 2 == 1 { -0.02 } else { 0.02 });
    wish.sides.iter().flat_map(move |&(looks, upright)| {
        shares.clone().map(move |share| Stand { edge: wish.from.towards(wish.to, share), looks, upright, small })
    })
}

/// A small tag on the nearest white, with a line to its edge.
fn apart(canvas: &mut Canvas, at: Layer, wish: &Wish) {
    let edge = wish.from.towards(wish.to, 0.5);
    let area = Area { left: edge.x - 32.0, top: edge.y - 24.0, right: edge.x + 32.0, bottom: edge.y + 24.0 };
    let (width, height) = wish.tag.size(true);
    let Some(spot) = place::free_spot(canvas, area, (width + 1.0, height + 3.0), edge) else { return };
    let below = spot.y > edge.y;
    let (looks, tip) = if below { (Looks::Up, -height / 2.0 - 1.6) } else { (Looks::Down, height / 2.0 + 1.6) };
    let stand = Stand { edge: spot.moved(0.0, tip), looks, upright: false, small: true };
    if !wish.tag.is_free(canvas, stand) || !place::is_path_free(canvas, edge, stand.edge) {
        return;
    }
    canvas.line(at, stand.edge, edge, Pen::DIMENSION);
    canvas.circle(at, edge, 0.45, Paint::fill(Fill::ink(crate::drawing::Colour::INK)));
    wish.tag.draw(canvas, at, stand);
}

/// The outside edges of all pieces that the stretch shows.
fn outside(plan: &Plan<'_, '_>) -> Vec<Wish> {
    let mut wishes = Vec::new();
    for piece in &plan.leg().counter.pieces {
        let mut group: Vec<&Edge> = Vec::new();
        for edge in &piece.edges {
            let inner = is_notch(edge, &piece.extent);
            if !(inner && group.last().is_some_and(|last| last.kind == edge.kind)) {
                wishes.extend(notch_wish(plan, &group));
                group.clear();
            }
            if inner {
                group.push(edge);
            } else {
                wishes.extend(edge_wish(plan, edge));
            }
        }
        wishes.extend(notch_wish(plan, &group));
    }
    wishes
}

/// Whether an edge of a piece lies inside its box: the side or the back of a notch.
fn is_notch(edge: &Edge, extent: &Extent) -> bool {
    let on = |v: Length| edge.from.1 == v && edge.to.1 == v;
    let at = |u: Length| edge.from.0 == u && edge.to.0 == u;
    let sides =
        (at(extent.x0) || at(extent.x1)) && matches!(edge.kind, EdgeKind::Seam | EdgeKind::Wall | EdgeKind::Finished);
    !(on(extent.y0) || on(extent.y1) || sides)
}

/// The span of an edge on the sheet inside the stretch; `None` when it lies on another page.
fn span(plan: &Plan<'_, '_>, edge: &Edge) -> Option<(PaperPoint, PaperPoint)> {
    let held = |u: Length| u.max(plan.part.from).min(plan.part.to);
    let level = edge.from.1 == edge.to.1;
    let (a, b) = (edge.from.0, edge.to.0);
    let here = if level { held(a) != held(b) } else { plan.part.holds(a) };
    here.then(|| (plan.view.at(held(a), edge.from.1), plan.view.at(held(b), edge.to.1)))
}

/// An edge of a piece's box.
fn edge_wish(plan: &Plan<'_, '_>, edge: &Edge) -> Option<Wish> {
    let (mut from, mut to) = span(plan, edge)?;
    let tag = tag(plan.task, edge)?;
    if let (EdgeKind::Splash, Some(splash)) = (edge.kind, plan.task.solved.counter.splash) {
        // The tag points at the upstand's foot, which is what is seen from above.
        let foot = plan.view.size(splash.thickness);
        (from, to) = (from.moved(0.0, foot), to.moved(0.0, foot));
    }
    let free = edge.kind == EdgeKind::Finished;
    let level = edge.from.1 == edge.to.1;
    // Pieces are walked counter-clockwise: a finished edge has its tag outside, one against a wall inside.
    let sides = match (level, edge.to.0 > edge.from.0, edge.to.1 > edge.from.1) {
        (true, true, _) => vec![(Looks::Up, false), (Looks::Down, false)],
        (true, false, _) if free => vec![(Looks::Down, false), (Looks::Up, false)],
        (true, false, _) => vec![(Looks::Up, false)],
        (false, _, true) if free => vec![(Looks::Left, true), (Looks::Right, false), (Looks::Right, true)],
        (false, _, true) => vec![(Looks::Right, false)],
        (false, _, false) if free => vec![(Looks::Right, true), (Looks::Left, false), (Looks::Left, true)],
        (false, _, false) => vec![(Looks::Left, false)],
    };
    Some(Wish { tag, from, to, sides })
}

/// Edges of a notch that are alike, with one tag in the void at the longest level one.
fn notch_wish(plan: &Plan<'_, '_>, group: &[&Edge]) -> Option<Wish> {
    let edge = group.iter().find(|edge| edge.from.1 == edge.to.1).or(group.first())?;
    let (from, to) = span(plan, edge)?;
    let mut tag = tag(plan.task, edge)?;
    if edge.kind == EdgeKind::Covered && group.len() > 1 {
        tag.word = format!("cut, {} sides", group.len());
    }
    let sides = match (edge.from.1 == edge.to.1, edge.to.1 > edge.from.1) {
        (true, _) => vec![(Looks::Up, false)],
        (false, true) => vec![(Looks::Left, false), (Looks::Left, true)],
        (false, false) => vec![(Looks::Right, false), (Looks::Right, true)],
    };
    Some(Wish { tag, from, to, sides })
}

/// What the tag of an edge says; seams have a mark of their own.
fn tag(task: &Task<'_>, edge: &Edge) -> Option<Tag> {
    let show = task.show;
    let joint = || edge.joint.map_or_else(String::new, |joint| format!("joint {}", show.text(joint)));
    let tag = |pictogram, word: String, fact: String, finished| Some(Tag { pictogram, word, fact, finished });
    match (edge.kind, edge.overhang) {
        (EdgeKind::Finished, Some(overhang)) => {
            tag(Pictogram::Finished, "finished".to_owned(), format!("overhang {}", show.text(overhang)), true)
        }
        (EdgeKind::Finished, None) => tag(Pictogram::Finished, "finished".to_owned(), "stays seen".to_owned(), false),
        (EdgeKind::Wall, _) => {
            let word = crate::sheets::counter::labels::bound_word(task.leg, edge);
            tag(Pictogram::Wall, word.to_owned(), joint(), false)
        }
        (EdgeKind::Splash, _) => {
            let height = task.solved.counter.splash.map_or_else(String::new, |s| format!(" {}", show.text(s.height)));
            tag(Pictogram::Splash, format!("splash{height}"), joint(), false)
        }
        (EdgeKind::Covered, _) => tag(Pictogram::Cut, "cut".to_owned(), "flange covers".to_owned(), false),
        (EdgeKind::Reveal, _) => tag(Pictogram::Reveal, "finished".to_owned(), "over a bowl".to_owned(), false),
        (EdgeKind::Seam, _) => None,
    }
}

/// Closed cutouts: covered all round, or finished because they stay seen.
fn wells(plan: &Plan<'_, '_>) -> Vec<Wish> {
    let view = &plan.view;
    let mut wishes = Vec::new();
    for (fitting, cutout) in parts::cutouts(plan.leg(), Plane::Counter) {
        let hole = cutout.extent;
        let off = hole.x1 < plan.part.from || hole.x0 > plan.part.to;
        if cutout.open || off || matches!(fitting.look, Look::Faucet | Look::Hole) {
            continue;
        }
        let (pictogram, word, fact) = match (fitting.flange == FlangeLap::default(), fitting.look) {
            (false, _) => (Pictogram::Cut, "cut, all round", "flange covers"),
            (true, Look::Sink) => (Pictogram::Reveal, "finished", "over the bowl"),
            (true, _) => (Pictogram::Finished, "finished", "stays seen"),
        };
        let tag = Tag { pictogram, word: word.to_owned(), fact: fact.to_owned(), finished: false };
        let side = |v: Length, sides: &[(Looks, bool)]| {
            let (from, to) = (view.at(hole.x0, v), view.at(hole.x1, v));
            let inset = if cutout.round { 0.5 } else { 0.0 };
            Wish { tag: tag.clone(), from: from.towards(to, inset), to: to.towards(from, inset), sides: sides.to_vec() }
        };
        let mut wish = side(hole.y0, &[(Looks::Down, false), (Looks::Up, false)]);
        let (width, _) = wish.tag.size(false);
        // Beside the name there is seldom room for both in a small well: then the tag stands outside.
        if view.size(hole.width()) < width + 3.0 || view.size(hole.height()) < 24.0 {
            wish.sides.reverse();
        }
        wishes.push(wish);
    }
    wishes
}

/// The words of small tags, as a block of their own.
pub fn legend<'a>(tags: Vec<Tag>) -> Option<Block<'a>> {
    if tags.is_empty() {
        return None;
    }
    let wide = |tag: &Tag| {
        13.0 + lettering::width(&tag.word, BODY, Weight::SemiBold) + lettering::width(&tag.fact, BODY, Weight::SemiBold)
    };
    let width = tags.iter().map(wide).fold(40.0, f64::max);
    let height = 6.0 + tags.len() as f64 * 7.0;
    Some(Block {
        width,
        height,
        right: false,
        scale: None,
        draw: Box::new(move |canvas, at| {
            let layer = canvas.layer(Canvas::ROOT, "edge-legend");
            canvas.text(layer, at.moved(0.0, 3.0), "Edges, small tags", &Style::body().bold());
            for (row, tag) in tags.iter().enumerate() {
                tag.draw_row(canvas, layer, at.moved(0.0, 6.0 + row as f64 * 7.0));
            }
        }),
    })
}
