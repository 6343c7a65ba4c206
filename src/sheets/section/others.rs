//! Legs beside the one that is cut, as thin outlines: the lower one before it, one behind that is not cut, one that goes
//! on at another height beyond a step.

use super::picture::CutView;
use super::slice::{Slice, Span};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Pen};
use crate::geometry::{LegPoint, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, corners};
use crate::sheets::frame::Area;
use crate::solve::{Face, JointKind, Leg};
use crate::units::Length;

/// From the outline to the leg's name, mm.
const APART: f64 = 2.6;
/// White beside the name, so that it is read with nothing else, mm.
const WHITE: f64 = 2.0;

/// A leg beside the cut.
pub struct Other<'s> {
    /// The leg.
    pub leg: &'s Leg,
    /// Its body between its finished faces, and its counter: (w0, w1), (z0, z1).
    pub blocks: [(Span, Span); 2],
}

/// The legs that the view shows beside the one that is cut, but for the one that is cut with it.
pub fn beside<'s>(slice: &Slice<'s>) -> Vec<Other<'s>> {
    let legs = &slice.solved.legs;
    let Some(own) = legs.iter().position(|leg| std::ptr::eq(leg, slice.leg)) else { return Vec::new() };
    let cut = |index: &usize| slice.behind.as_ref().is_some_and(|behind| std::ptr::eq(behind.leg, &legs[*index]));
    let behind = (0..legs.len()).filter(|index| legs[*index].behind == Some(own) && is_seen(slice, &legs[*index]));
    let before = slice.leg.behind.filter(|index| reaches(slice, &legs[*index]) || is_seen(slice, &legs[*index]));
    // From the front one looks left, from behind right.
    let steps = slice.solved.joints.iter().filter(|joint| matches!(joint.kind, JointKind::Step));
    let next = steps.filter_map(|joint| match slice.facing {
        Face::Back if joint.left == own => Some(joint.right),
        Face::Back => None,
        _ if joint.right == own => Some(joint.left),
        _ => None,
    });
    let stepped = next.filter(|index| legs[*index].datums.counter_top != slice.leg.datums.counter_top);
    behind
        .chain(before)
        .chain(stepped)
        .filter(|index| !cut(index))
        .map(|index| Other::of(slice, &legs[index]))
        .collect()
}

/// Where the cut lies on another leg's u.
fn there(slice: &Slice, leg: &Leg) -> Length {
    let plan = slice.leg.placement.to_plan(LegPoint::new(slice.u.mm(), 0.0));
    Length::from_mm(leg.placement.to_leg(plan).x)
}

/// Whether the cut runs through a leg.
fn reaches(slice: &Slice, leg: &Leg) -> bool {
    let at = there(slice, leg);
    at >= leg.datums.counter_left && at <= leg.datums.counter_right
}

/// Whether some of a leg lies on the side that is looked to.
fn is_seen(slice: &Slice, leg: &Leg) -> bool {
    let at = there(slice, leg);
    if slice.facing == Face::Back { leg.datums.counter_right > at } else { leg.datums.counter_left < at }
}

impl<'s> Other<'s> {
    fn of(slice: &Slice<'s>, leg: &'s Leg) -> Other<'s> {
        let w = |v: Length| {
            let plan = leg.placement.to_plan(LegPoint::new(0.0, v.mm()));
            slice.w(Length::from_mm(slice.leg.placement.to_leg(plan).y))
        };
        let span = |a: Length, b: Length| (w(a).min(w(b)), w(a).max(w(b)));
        let d = &leg.datums;
        let body = (span(Length::ZERO, d.finished_back), (d.frame_bottom, d.substrate_top));
        let counter = (span(d.counter_front, d.counter_back), (d.substrate_top, d.counter_top));
        Other { leg, blocks: [body, counter] }
    }
}

/// Draws their outlines within an area, last: an edge that would run through lettering is left out.
pub fn draw(canvas: &mut Canvas, at: Layer, view: &CutView, slice: &Slice, area: &Area) {
    let pen = Pen::DIMENSION.coloured(Colour::GREY_TEXT).dashed(Dash::PHANTOM);
    for other in beside(slice) {
        for (w, z) in other.blocks {
            let box_ = corners(view.at(w.0, z.1), view.at(w.1, z.0));
            for k in 0..4 {
                let edge = within(box_[k], box_[(k + 1) % 4], area);
                if let Some((a, b)) = edge.filter(|(a, b)| !canvas.crosses_text(*a, *b, pen)) {
                    canvas.line(at, a, b, pen);
                }
            }
        }
        name(canvas, at, view, &other, area);
    }
}

/// The part of a level or upright line inside an area.
fn within(a: PaperPoint, b: PaperPoint, area: &Area) -> Option<(PaperPoint, PaperPoint)> {
    let held = |p: PaperPoint| PaperPoint::new(p.x.clamp(area.left, area.right), p.y.clamp(area.top, area.bottom));
    let (c, d) = (held(a), held(b));
    let inside = if (a.x - b.x).abs() < 1e-9 { (c.x - a.x).abs() < 1e-9 } else { (c.y - a.y).abs() < 1e-9 };
    (inside && c.distance(d) > 1.0).then_some((c, d))
}

/// Its name, in its outline or over it.
fn name(canvas: &mut Canvas, at: Layer, view: &CutView, other: &Other, area: &Area) {
    let text = format!("leg {}", other.leg.id);
    let ((w0, w1), (z0, z1)) = other.blocks[0];
    let (x0, x1) = (view.x(w0).max(area.left), view.x(w1).min(area.right));
    let mut places = Vec::new();
    for share in [0.5, 0.7, 0.3, 0.85, 0.15] {
        for along in [0.5, 0.3, 0.7, 0.15, 0.85] {
            let (x, y) = (x0 + (x1 - x0) * along, view.y(z0) + (view.y(z1) - view.y(z0)) * share);
            places.push(PaperPoint::new(x, y + 1.25));
        }
    }
    let over = view.y(other.leg.datums.counter_top) - APART;
    places.extend([0.5, 0.3, 0.7].map(|along| PaperPoint::new(x0 + (x1 - x0) * along, over)));
    let half = lettering::width(&text, BODY, Weight::Regular) / 2.0 + WHITE;
    let white = |p: &&PaperPoint| canvas.is_box_free(p.x - half, p.y - BODY - 3.0, p.x + half, p.y + 3.0);
    if let Some(place) = places.iter().find(white) {
        canvas.text(at, *place, &text, &Style::caption().middle());
    }
}
