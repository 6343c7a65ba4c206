//! Other legs beside an end: the one behind or before, and the one that goes on lower at a step, as outlines.

use super::end::{End, EndView};
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Dash, Pen};
use crate::geometry::{LegPoint, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint, corners};
use crate::solve::{JointKind, Leg};
use crate::units::Length;

/// An outline in this leg's depth and height: (v0, v1), (z0, z1).
type Block = ((Length, Length), (Length, Length));

/// A leg beside this one.
pub struct Other<'s> {
    /// The leg.
    pub leg: &'s Leg,
    /// Its body between its finished faces, and its counter.
    pub blocks: [Block; 2],
}

/// The legs beside an end: those behind and before, and the lower one that stands against it at a step.
pub fn beside<'s>(end: &End<'s>) -> Vec<Other<'s>> {
    let solved = end.solved;
    let Some(own) = solved.legs.iter().position(|leg| std::ptr::eq(leg, end.leg)) else { return Vec::new() };
    let behind = (0..solved.legs.len()).filter(|index| solved.legs[*index].behind == Some(own));
    let steps = solved.joints.iter().filter(|joint| matches!(joint.kind, JointKind::Step));
    let lower = steps.filter_map(|joint| match end.is_left() {
        true if joint.right == own => Some(joint.left),
        false if joint.left == own => Some(joint.right),
        _ => None,
    });
    let lower = lower.filter(|index| solved.legs[*index].datums.counter_top < end.leg.datums.counter_top);
    behind.chain(end.leg.behind).chain(lower).map(|index| other(end, &solved.legs[index])).collect()
}

fn other<'s>(end: &End<'s>, leg: &'s Leg) -> Other<'s> {
    let v = |v: Length| {
        let plan = leg.placement.to_plan(LegPoint::new(0.0, v.mm()));
        Length::from_mm(end.leg.placement.to_leg(plan).y)
    };
    let d = &leg.datums;
    let body = ((v(Length::ZERO), v(d.finished_back)), (d.frame_bottom, d.substrate_top));
    let counter = ((v(d.counter_front), v(d.counter_back)), (d.substrate_top, d.counter_top));
    Other { leg, blocks: [body, counter] }
}

/// How far they reach on v, and their highest level.
pub fn reach(end: &End) -> Option<(Length, Length, Length)> {
    let blocks = beside(end).into_iter().flat_map(|other| other.blocks);
    blocks.map(|((v0, v1), (_, z1))| (v0, v1, z1)).reduce(|a, b| (a.0.min(b.0), a.1.max(b.1), a.2.max(b.2)))
}

/// Draws their outlines.
pub fn draw(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let pen = Pen::DIMENSION.coloured(Colour::GREY_TEXT).dashed(Dash::PHANTOM);
    for other in beside(end) {
        for (v, z) in other.blocks {
            let points = corners(view.at(end.x(v.0), z.1), view.at(end.x(v.1), z.0));
            canvas.polyline(at, &points, true, Paint::pen(pen));
        }
    }
}

/// Names them, each in its own outline where that is white, else beside it.
pub fn names(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    for other in beside(end) {
        let ((v0, v1), (z0, z1)) = other.blocks[0];
        let text = format!("leg {}", other.leg.id);
        let (x0, x1) = (view.x(end.x(v0)), view.x(end.x(v1)));
        let mut level = Vec::new();
        let mut upright = Vec::new();
        for share in [0.5, 0.7, 0.3, 0.85, 0.15] {
            let y = view.y(z0) + (view.y(z1) - view.y(z0)) * share;
            level.push(PaperPoint::new((x0 + x1) / 2.0, y + 1.25));
            upright.push(PaperPoint::new((x0 + x1) / 2.0 + 1.25, y));
        }
        if canvas.text_at_first(at, &level, &text, &Style::caption().middle()).is_none() {
            canvas.text_at_first(at, &upright, &text, &Style::caption().upright().middle());
        }
    }
}
