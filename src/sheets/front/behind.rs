//! Legs that stand behind one another: over the counter what is seen of the higher one; of that one, what the lower
//! one hides.

use super::elevation::Elevation;
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{LegPoint, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint, corners};
use crate::sheets::set::Kind;
use crate::solve::{Face, Leg, Plane, Solved};
use crate::units::Length;

/// What is hidden.
const HIDDEN: Pen = Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN);
/// What is seen of another leg.
const OTHER: Pen = Pen::DIMENSION.coloured(Colour::GREY_TEXT);

/// The legs that stand behind a leg, by index, where its front is shown.
pub fn standing(solved: &Solved, leg: usize, face: Face) -> Vec<usize> {
    let behind = |index: &usize| face == Face::Front && solved.legs[*index].behind == Some(leg);
    (0..solved.legs.len()).filter(behind).collect()
}

/// The leg that stands before a leg, where its front is shown.
fn before(e: &Elevation<'_>) -> Option<usize> {
    e.leg.behind.filter(|index| e.facing.face == Face::Front && *index < e.set.solved.legs.len())
}

/// A u of another leg, parallel to this one, in this one's u.
fn across(e: &Elevation<'_>, other: &Leg, u: Length) -> Length {
    let plan = other.placement.to_plan(LegPoint::new(u.mm(), 0.0));
    Length::from_mm(e.leg.placement.to_leg(plan).x)
}

/// What the counters of the legs behind reach over, as viewer's x.
pub fn spans(e: &Elevation<'_>) -> Vec<(Length, Length)> {
    let legs = standing(e.set.solved, e.leg_index, e.facing.face).into_iter().map(|index| &e.set.solved.legs[index]);
    legs.map(|other| (across(e, other, other.datums.counter_left), across(e, other, other.datums.counter_right)))
        .collect()
}

/// Draws what is seen over the counter, before the leg itself is drawn.
pub fn over(canvas: &mut Canvas, e: &Elevation<'_>) {
    let at = canvas.layer(e.view.layer, "leg-behind");
    let solved = e.set.solved;
    for index in standing(solved, e.leg_index, e.facing.face) {
        let other = &solved.legs[index];
        let (d, low) = (&other.datums, e.leg.datums.counter_top);
        let mut strip = |u0: Length, u1: Length, z0: Length, z1: Length, pen: Pen, tint: Colour| {
            let [a, b] = clipped(e, across(e, other, u0), across(e, other, u1));
            if a < b && z0 < z1 {
                let points = corners(e.view.at(a, z0), e.view.at(b, z1));
                canvas.polyline(at, &points, true, Paint::both(pen, Fill::tint(tint)));
            }
        };
        let substrate = &other.substrate.extent;
        strip(Length::ZERO, d.finished_right, low, d.substrate_top, OTHER, Colour::TINT_BEYOND);
        strip(substrate.x0, substrate.x1, d.frame_top, d.substrate_top, OTHER, Colour::WHITE);
        strip(d.counter_left, d.counter_right, d.substrate_top, d.counter_top, OTHER, Colour::WHITE);
        let x = |u: Length| e.view.x(across(e, other, u));
        for board in other.boards.iter().filter(|board| board.plane == Plane::FrontBoard) {
            let (a, b) = (e.view.x(e.part.x0) - 1.0, e.view.x(e.part.x1) + 1.0);
            let seam = board.extent.x0 > d.board_left && (a..b).contains(&x(board.extent.x0));
            if seam && d.frame_top > low {
                let place = |z: Length| PaperPoint::new(x(board.extent.x0), e.view.y(z));
                canvas.line(at, place(low), place(d.frame_top), OTHER);
            }
        }
        for cutout in other.fittings.iter().filter_map(|fitting| fitting.cutout(Plane::FrontBoard)) {
            let outline = cutout.outline.mapped(|u, z| (across(e, other, Length::from_mm(u)).mm(), z), false);
            canvas.shape(at, Shape::Steps(e.view.steps(&outline)), Paint::both(OTHER, Fill::WHITE), "", Vec::new());
        }
    }
}

/// As much of a stretch as is on this page.
fn clipped(e: &Elevation<'_>, a: Length, b: Length) -> [Length; 2] {
    let a = if e.part.first { a } else { a.max(e.part.x0) };
    let b = if e.part.last { b } else { b.min(e.part.x1) };
    [a, b]
}

/// Covers what the leg before hides, draws it as hidden, and that leg\u{2019}s counter as what stands before.
pub fn under(canvas: &mut Canvas, e: &Elevation<'_>) {
    let Some(index) = before(e) else { return };
    let at = canvas.layer(e.view.layer, "leg-before");
    let front = &e.set.solved.legs[index];
    let d = &e.leg.datums;
    let [a, b] = clipped(e, across(e, front, front.datums.counter_left), across(e, front, front.datums.counter_right));
    let top = front.datums.counter_top;
    if a >= b {
        return;
    }
    let [p, q] = [e.view.at(a, top), e.view.at(b, d.frame_bottom)];
    canvas.rectangle(at, p.moved(0.0, 0.2), q.moved(0.0, 0.4), Paint::fill(Fill::WHITE));
    for module in e.part.modules.clone().filter_map(|index| e.leg.modules.get(index)) {
        for u in [module.left, module.right] {
            canvas.line(at, e.view.at(u, top), e.view.at(u, d.frame_bottom), HIDDEN);
        }
        canvas.line(at, e.view.at(module.left, d.frame_bottom), e.view.at(module.right, d.frame_bottom), HIDDEN);
    }
    let low: Option<Length> = e.leg.boards.iter().filter(|b| b.plane == Plane::FrontBoard).map(|b| b.extent.y0).min();
    if let Some(low) = low.filter(|low| *low < top && *low > d.frame_bottom) {
        let [left, right] = clipped(e, d.board_left, d.board_right);
        canvas.line(at, e.view.at(left, low), e.view.at(right, low), HIDDEN);
    }
    let pen = Pen::SECONDARY.coloured(Colour::GREY_TEXT).dashed(Dash::PHANTOM);
    for z in [front.datums.substrate_top, top] {
        canvas.line(at, e.view.at(a, z), e.view.at(b, z), pen);
    }
    for x in [a, b] {
        canvas.line(at, e.view.at(x, top), e.view.at(x, front.datums.substrate_top), pen);
    }
}

/// Names what stands behind and before.
pub fn words(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let solved = e.set.solved;
    let middle = (e.view.x(e.part.x0) + e.view.x(e.part.x1)) / 2.0;
    let shares = [0.5, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88];
    let xs = shares.map(|share| e.view.x(e.part.x0) + (e.view.x(e.part.x1) - e.view.x(e.part.x0)) * share);
    let sheet = |index: usize| {
        e.set.number(Kind::Front(index, Face::Front)).map_or(String::new(), |sheet| format!(", sheet {sheet}"))
    };
    for index in standing(solved, e.leg_index, e.facing.face) {
        let d = &solved.legs[index].datums;
        let (high, low) = (e.view.y(d.frame_top), e.view.y(e.leg.datums.counter_top));
        let text = format!("leg {}, behind the counter{}", solved.legs[index].id, sheet(index));
        let places: Vec<PaperPoint> = xs
            .iter()
            .flat_map(|x| {
                [PaperPoint::new(*x, (high + low) / 2.0 + 1.25), PaperPoint::new(*x, e.view.y(d.counter_top) - 1.6)]
            })
            .collect();
        canvas.text_at_first(at, &places, &text, &Style::caption().middle());
    }
    if let Some(index) = before(e) {
        let front = &solved.legs[index];
        let text = format!("hidden behind leg {}{}", front.id, sheet(index));
        let level = e.view.y(front.datums.substrate_top);
        let places: Vec<PaperPoint> = xs
            .iter()
            .chain([&middle])
            .flat_map(|x| [8.0, 14.0, 22.0, 30.0].map(|dy| PaperPoint::new(*x, level + dy)))
            .collect();
        canvas.text_at_first(at, &places, &text, &Style::caption().middle());
    }
}
