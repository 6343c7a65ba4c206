//! The edges of a joined counter, each with its tag.

use super::joined::Joined;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::sheets::counter::edges::{Wish, put};
use crate::sheets::counter::pictogram::Pictogram;
use crate::sheets::counter::tag::{Looks, Tag};
use crate::solve::{BoundKind, Edge, EdgeKind, FlangeLap, Look};

/// Edges shorter than this on the sheet are not tagged: those of clipped corners have their row in the table, mm.
const SHORT: f64 = 6.0;

/// Tags every edge; small tags go to the legend.
pub fn draw(canvas: &mut Canvas, sheet: &Joined<'_>, legend: &mut Vec<Tag>) {
    let layer = canvas.layer(sheet.view.layer, "edge-tags");
    let mut covered: Vec<&Edge> = Vec::new();
    let mut wishes: Vec<Wish> = Vec::new();
    for edge in &sheet.slab.edges {
        if edge.kind == EdgeKind::Covered {
            covered.push(edge);
            continue;
        }
        wishes.extend(notch(sheet, &covered));
        covered.clear();
        wishes.extend(outside(sheet, edge));
    }
    wishes.extend(notch(sheet, &covered));
    wishes.extend(wells(sheet));
    for wish in wishes {
        put(canvas, layer, wish, legend);
    }
    legend.sort_by(|a, b| (a.pictogram, &a.word, &a.fact).cmp(&(b.pictogram, &b.word, &b.fact)));
    legend.dedup();
}

/// An edge on the sheet, and the direction out of the sheet's material.
fn span(sheet: &Joined<'_>, edge: &Edge) -> (PaperPoint, PaperPoint, (f64, f64)) {
    let (a, b) = (sheet.view.at(edge.from.0, edge.from.1), sheet.view.at(edge.to.0, edge.to.1));
    let long = a.distance(b).max(1e-9);
    (a, b, (-(b.y - a.y) / long, (b.x - a.x) / long))
}

/// The sides of a tag that lies in a direction from its edge.
fn sides(out: (f64, f64)) -> Vec<(Looks, bool)> {
    match (out.1.abs() >= out.0.abs(), out.0 > 0.0, out.1 > 0.0) {
        (true, _, true) => vec![(Looks::Up, false)],
        (true, _, false) => vec![(Looks::Down, false)],
        (false, true, _) => vec![(Looks::Left, true), (Looks::Left, false)],
        (false, false, _) => vec![(Looks::Right, true), (Looks::Right, false)],
    }
}

fn outside(sheet: &Joined<'_>, edge: &Edge) -> Option<Wish> {
    let (from, to, out) = span(sheet, edge);
    if from.distance(to) < SHORT {
        return None;
    }
    let show = sheet.set.solved.show;
    let joint = edge.joint.map_or_else(String::new, |joint| format!("joint {}", show.text(joint)));
    let (pictogram, word, fact, finished) = match (edge.kind, edge.overhang) {
        (EdgeKind::Finished, Some(over)) => {
            (Pictogram::Finished, "finished".to_owned(), format!("overhang {}", show.text(over)), true)
        }
        (EdgeKind::Finished, None) => (Pictogram::Finished, "finished".to_owned(), "stays seen".to_owned(), false),
        (EdgeKind::Wall, _) => (Pictogram::Wall, met(sheet, edge).to_owned(), joint, false),
        (EdgeKind::Splash, _) => {
            let height =
                sheet.set.solved.counter.splash.map_or_else(String::new, |s| format!(" {}", show.text(s.height)));
            (Pictogram::Splash, format!("splash{height}"), joint, false)
        }
        _ => return None,
    };
    let inwards = sides((-out.0, -out.1));
    let own = sides(out);
    let sides = match edge.kind {
        EdgeKind::Finished => own.into_iter().chain(inwards).collect(),
        _ => inwards,
    };
    Some(Wish { tag: Tag { pictogram, word, fact, finished }, from, to, sides })
}

/// What an edge against something meets, in a word.
fn met(sheet: &Joined<'_>, edge: &Edge) -> &'static str {
    let middle = |a: f64, b: f64| (a + b) / 2.0;
    let (x, y) = (middle(edge.from.0.mm(), edge.to.0.mm()), middle(edge.from.1.mm(), edge.to.1.mm()));
    let near = |a: f64, b: crate::units::Length| (a - b.mm()).abs() < 1.0;
    let bound = sheet.legs().find_map(|(index, leg)| {
        let (p, d) = (sheet.in_leg(index, x, y), &leg.datums);
        let along = p.x > d.counter_left.mm() - 3000.0 && p.x < d.counter_right.mm() + 3000.0;
        if near(p.y, d.counter_back) && along {
            Some(&leg.back)
        } else if near(p.x, d.counter_left) && !leg.left.is_open() {
            Some(&leg.left)
        } else if near(p.x, d.counter_right) && !leg.right.is_open() {
            Some(&leg.right)
        } else {
            None
        }
    });
    match bound.map(|bound| bound.kind) {
        Some(BoundKind::Pier) => "pier",
        Some(BoundKind::Post) => "post",
        Some(BoundKind::Leg) => "other leg",
        _ => "wall",
    }
}

/// One tag for the edges of a notch that a flange covers, in its void.
fn notch(sheet: &Joined<'_>, edges: &[&Edge]) -> Option<Wish> {
    let length = |edge: &Edge| {
        let (a, b, _) = span(sheet, edge);
        a.distance(b)
    };
    let edge = edges
        .get(1)
        .filter(|_| edges.len() == 3)
        .or_else(|| edges.iter().max_by(|a, b| length(a).total_cmp(&length(b))))?;
    let (from, to, out) = span(sheet, edge);
    let word = if edges.len() > 1 { format!("cut, {} sides", edges.len()) } else { "cut".to_owned() };
    let tag = Tag { pictogram: Pictogram::Cut, word, fact: "flange covers".to_owned(), finished: false };
    Some(Wish { tag, from, to, sides: sides(out) })
}

/// Closed cutouts: covered all round, or finished because they stay seen.
fn wells(sheet: &Joined<'_>) -> Vec<Wish> {
    let mut wishes = Vec::new();
    for (leg, fitting, cutout) in sheet.cutouts() {
        if cutout.open || matches!(fitting.look, Look::Faucet | Look::Hole) {
            continue;
        }
        let (pictogram, word, fact) = match (fitting.flange == FlangeLap::default(), fitting.look) {
            (false, _) => (Pictogram::Cut, "cut, all round", "flange covers"),
            (true, Look::Sink) => (Pictogram::Reveal, "finished", "over the bowl"),
            (true, _) => (Pictogram::Finished, "finished", "stays seen"),
        };
        let (hole, at) = (cutout.extent, |u: f64, v: f64| sheet.at(leg, u, v));
        let (x0, x1, y) = (hole.x0.mm(), hole.x1.mm(), hole.y0.mm());
        let inset = if cutout.round { (x1 - x0) / 2.0 } else { 0.0 };
        let (from, to) = (at(x0 + inset, y), at(x1 - inset, y));
        let (a, b) = (at(x0, y), at(x0, y + 100.0));
        let long = a.distance(b).max(1e-9);
        // Towards the front of the leg: on the slab, outside the hole.
        let out = ((a.x - b.x) / long, (a.y - b.y) / long);
        let tag = Tag { pictogram, word: word.to_owned(), fact: fact.to_owned(), finished: false };
        let inner = sides((-out.0, -out.1));
        wishes.push(Wish { tag, from, to, sides: sides(out).into_iter().chain(inner).collect() });
    }
    wishes
}
