//! The outline from above, with numbered corners, tagged edges, angles, seams and the names of its pieces.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{LegPoint, Outline, PaperPoint, Plan, PlanPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::{self, Area};
use crate::sheets::plan::areas;
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::title_block;
use crate::sheets::view::View;
use crate::solve::{Edge, EdgeKind, Plane, Slab};
use crate::units::Length;

/// Least width of a column of lists beside the outline, mm.
const COLUMN: f64 = 108.0;

/// Draws it; the areas left on the page for lists, and the scale in words.
pub fn draw(set: &Set<'_>, slab: &Slab) -> (Canvas, Vec<Area>, String) {
    let solved = set.solved;
    let mut canvas = set.sheet();
    let inside = frame::inside(&canvas);
    let block = title_block::corner(&canvas);
    let (x0, y0, x1, y1) = slab.region.outer.bounds();
    let (room, margin) = ((inside.width() - 44.0, (inside.height() - 40.0) * 0.62), 18.0);
    let scale = Scale::fitting((x1 - x0, y1 - y0), room, Scale(4));
    let factor = scale.factor();
    // Beside a narrow outline there is room for a column of lists.
    let wide = (x1 - x0) * factor;
    let column = inside.width() - wide - 2.0 * margin - 24.0;
    let beside = column >= COLUMN;
    let left = if beside { inside.right - margin - wide } else { inside.left + (inside.width() - wide) / 2.0 };
    let top = inside.top + 12.0 + margin;
    let origin = PaperPoint::new(left - x0 * factor, top + y1 * factor);
    title_block::heading(
        &mut canvas,
        inside.left,
        inside.top + 3.5,
        "Counter from above, finished outline",
        &scale.words(),
    );
    let view: View<Plan> = View::open(&mut canvas, "counter", scale, origin);
    let bar = canvas.layer(view.layer, "scale-bar");
    crate::sheets::marks::scale_bar(&mut canvas, bar, inside.right - 3.0, inside.top + 4.5, scale, solved.show.system);
    let geometry = canvas.layer(view.layer, "counter");
    let paint = Paint::both(Pen::CUT, Fill::tint(Colour::TINT_BEYOND));
    canvas.shape(geometry, Shape::Steps(view.region(&slab.region)), paint, "counter", Vec::new());
    inner(&mut canvas, geometry, set, slab, &view);
    let notes = canvas.layer(view.layer, "marks");
    for (index, edge) in slab.edges.iter().enumerate() {
        number(&mut canvas, notes, &view, slab, index, edge);
    }
    for edge in &slab.edges {
        tag(&mut canvas, notes, set, &view, edge);
    }
    names(&mut canvas, notes, set, slab, &view);
    let bottom = (top + (y1 - y0) * factor + margin + 4.0).min(inside.bottom);
    let words = scale.words();
    let mut areas = areas(inside, (block.x, block.y), bottom);
    if beside {
        let right = left - margin - 4.0;
        areas.insert(0, Area { left: inside.left, top: inside.top + 12.0, right, bottom: bottom - 4.0 });
    }
    (canvas, areas, words)
}

/// A leg's point in the coordinates of the slab's first leg.
pub fn in_home(set: &Set<'_>, slab: &Slab, leg: usize, u: f64, v: f64) -> LegPoint {
    let home = set.solved.legs[slab.legs.first().copied().unwrap_or(0)].placement;
    home.to_leg(set.solved.legs[leg].placement.to_plan(LegPoint::new(u, v)))
}

/// Cutouts, seams and finished faces.
fn inner(canvas: &mut Canvas, at: Layer, set: &Set<'_>, slab: &Slab, view: &View<Plan>) {
    let point = |p: LegPoint| view.point(PlanPoint::new(p.x, p.y));
    for &leg in &slab.legs {
        for fitting in &set.solved.legs[leg].fittings {
            let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
            let placed: Outline = cutout.outline.mapped(
                |x, y| {
                    let p = in_home(set, slab, leg, x, y);
                    (p.x, p.y)
                },
                false,
            );
            let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", cutout.plane.word().to_owned())];
            let pen = if cutout.open { Pen::GHOST } else { Pen::CUT };
            canvas.shape(at, Shape::Steps(view.steps(&placed)), Paint::pen(pen), "cutout", facts);
        }
        let d = &set.solved.legs[leg].datums;
        let line = Shape::Line(
            point(in_home(set, slab, leg, 0.0, 0.0)),
            point(in_home(set, slab, leg, d.finished_right.mm(), 0.0)),
        );
        let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
        canvas.shape(at, line, Paint::pen(pen), "datum", vec![("data-datum", "finished face".to_owned())]);
    }
    let mut drawn: Vec<[PaperPoint; 2]> = Vec::new();
    for (leg, piece, _) in &slab.pieces {
        let Some(piece) = set.solved.legs[*leg].counter.pieces.get(*piece) else { continue };
        for edge in piece.edges.iter().filter(|edge| edge.kind == EdgeKind::Seam) {
            let end = |p: (Length, Length)| point(in_home(set, slab, *leg, p.0.mm(), p.1.mm()));
            let ends = [end(edge.from), end(edge.to)];
            let same = |other: &[PaperPoint; 2]| ends.iter().all(|p| other.iter().any(|q| p.distance(*q) < 0.05));
            if !drawn.iter().any(same) {
                canvas.line(at, ends[0], ends[1], Pen::VISIBLE);
                drawn.push(ends);
            }
        }
    }
}

/// Directions of an edge on the sheet: along it, and outwards.
fn ways(view: &View<Plan>, edge: &Edge) -> (PaperPoint, PaperPoint, (f64, f64)) {
    let (a, b) = (view.at(edge.from.0, edge.from.1), view.at(edge.to.0, edge.to.1));
    let long = a.distance(b).max(1e-9);
    // Counter-clockwise in the model; the sheet's y runs down, so that outside lies to the right all the same.
    (a, b, (-(b.y - a.y) / long, (b.x - a.x) / long))
}

/// A corner's number, outside the outline.
fn number(canvas: &mut Canvas, at: Layer, view: &View<Plan>, slab: &Slab, index: usize, edge: &Edge) {
    let count = slab.edges.len();
    let (here, _, out) = ways(view, edge);
    let (_, _, before) = ways(view, &slab.edges[(index + count - 1) % count]);
    let (x, y) = (out.0 + before.0, out.1 + before.1);
    let base = y.atan2(x);
    let places: Vec<PaperPoint> = (0..40)
        .map(|k| {
            let turn = base + f64::from((k % 8 + 1) / 2) * if k % 2 == 0 { 0.5 } else { -0.5 };
            let off = 4.0 + f64::from(k / 8) * 2.0;
            here.moved(off * turn.cos(), off * turn.sin() + 1.25)
        })
        .collect();
    canvas.text_at_first(at, &places, &(index + 1).to_string(), &Style::body().bold().middle());
}

/// What an edge meets, along it: outside where it is free, inside where something stands against it.
fn tag(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>, edge: &Edge) {
    let (a, b, out) = ways(view, edge);
    let show = set.solved.show;
    let what = words(edge);
    let over = edge.overhang.map_or(String::new(), |over| format!(", {} past the finish", show.prose(over)));
    let joint = edge.joint.map_or(String::new(), |joint| format!(", joint {}", show.prose(joint)));
    let full = format!("{what}{over}{joint}");
    let angle = (b.y - a.y).atan2(b.x - a.x);
    let flip = angle.cos() < -1e-9 || (angle.cos().abs() <= 1e-9 && angle.sin() > 0.0);
    let turn = if flip { angle + std::f64::consts::PI } else { angle };
    let up = (turn.sin(), -turn.cos());
    let outside_is_up = up.0 * out.0 + up.1 * out.1 > 0.0;
    let style = Style { turn: turn.to_degrees(), ..Style::caption().middle() };
    for text in [full, what.to_owned()] {
        if lettering::width(&text, BODY, Weight::Regular) + 4.0 > a.distance(b) {
            continue;
        }
        let places: Vec<PaperPoint> = [1.0, -1.0]
            .iter()
            .flat_map(|side| {
                // The baseline lies nearer on the side that is up.
                let gap = if (*side > 0.0) == outside_is_up { 1.6 } else { 4.2 };
                [0.5, 0.4, 0.6, 0.3, 0.7].map(|share| a.towards(b, share).moved(out.0 * side * gap, out.1 * side * gap))
            })
            .collect();
        if canvas.text_at_first(at, &places, &text, &style).is_some() {
            return;
        }
    }
}

/// What an edge meets, in a word.
pub fn words(edge: &Edge) -> &'static str {
    match edge.kind {
        EdgeKind::Finished => "finished",
        EdgeKind::Wall => "wall",
        EdgeKind::Splash => "splash",
        EdgeKind::Covered => "covered by a flange",
        EdgeKind::Reveal => "reveal",
        EdgeKind::Seam => "seam",
    }
}

/// Names of pieces and marks of cutouts.
fn names(canvas: &mut Canvas, at: Layer, set: &Set<'_>, slab: &Slab, view: &View<Plan>) {
    let around = |place: PaperPoint| -> Vec<PaperPoint> {
        (0..72)
            .map(|k| {
                let (turn, off) = (f64::from(k % 12) * std::f64::consts::FRAC_PI_6, f64::from(k / 12) * 4.0);
                place.moved(off * 1.8 * turn.cos(), off * turn.sin() + 1.25)
            })
            .collect()
    };
    for &leg in &slab.legs {
        for fitting in &set.solved.legs[leg].fittings {
            let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
            let p = in_home(set, slab, leg, cutout.extent.centre_x().mm(), cutout.extent.centre_y().mm());
            let place = view.point(PlanPoint::new(p.x, p.y));
            let text = format!("{} {}", fitting.mark, fitting.name);
            if canvas.text_at_first(at, &around(place)[..24], &text, &Style::body().middle()).is_none() {
                canvas.text_at_first(at, &around(place), &fitting.mark, &Style::body().middle());
            }
        }
    }
    for (leg, piece, _) in &slab.pieces {
        let Some(piece) = set.solved.legs[*leg].counter.pieces.get(*piece) else { continue };
        let (u, v) = piece.region.centroid();
        let p = in_home(set, slab, *leg, u, v);
        let place = view.point(PlanPoint::new(p.x, p.y));
        canvas.text_at_first(at, &around(place), &piece.name, &Style::body().bold().middle());
    }
}
