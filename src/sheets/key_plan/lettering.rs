//! The legs' ids on a key plan, each in its leg where it fits there, else beside it, else its number.

use super::figure::Figure;
use crate::drawing::Text;
use crate::drawing::lettering::{self, Style};
use crate::geometry::{LegPoint, PaperPoint, Plan};
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::frame::Area;
use crate::sheets::view::View;
use crate::solve::{Leg, Solved};
use crate::units::Length;

/// Writes them; a leg by itself needs none.
pub fn ids(canvas: &mut Canvas, at: Layer, view: &View<Plan>, solved: &Solved, figure: &Figure, area: Area) {
    if solved.legs.len() < 2 {
        return;
    }
    let rings: Vec<Vec<(f64, f64)>> = solved.legs.iter().map(|leg| ring(leg, view)).collect();
    // A word on another leg, or nearer to it, would name that one.
    let is_clear = |text: &Text, own: usize| {
        let boxes = text.corners();
        let points = boxes.iter().map(|p| (p.x, p.y)).chain([middle(&boxes)]);
        let off = |ring: &[(f64, f64)]| if holds(ring, middle(&boxes)) { 0.0 } else { apart(ring, middle(&boxes)) };
        let nearest = rings.iter().map(|ring| off(ring)).fold(f64::INFINITY, f64::min);
        points.into_iter().all(|p| rings.iter().enumerate().all(|(index, ring)| index == own || !holds(ring, p)))
            && off(&rings[own]) <= nearest + 1e-6
    };
    // The one that is shown first.
    let others = (0..solved.legs.len()).filter(|index| *index != figure.leg);
    for index in std::iter::once(figure.leg).chain(others) {
        let leg = &solved.legs[index];
        let style = if index == figure.leg { Style::body().bold() } else { Style::body() };
        let words = [leg.id.clone(), (index + 1).to_string()];
        let set = words.iter().find_map(|text| {
            let places = places(leg, view);
            places
                .into_iter()
                .map(|(place, upright)| {
                    let style = if upright { style.clone().upright() } else { style.clone() };
                    lettering::set(place, text, &style.middle())
                })
                .find(|text| canvas.is_free(text) && is_within(text, &area) && is_clear(text, index))
        });
        if let Some(text) = set {
            canvas.put(at, text);
        }
    }
}

/// A leg's counter on the sheet.
fn ring(leg: &Leg, view: &View<Plan>) -> Vec<(f64, f64)> {
    let box_ = &leg.counter.extent;
    let at = |u: Length, v: Length| {
        let point = view.point(leg.placement.to_plan(LegPoint::new(u.mm(), v.mm())));
        (point.x, point.y)
    };
    vec![at(box_.x0, box_.y0), at(box_.x1, box_.y0), at(box_.x1, box_.y1), at(box_.x0, box_.y1)]
}

/// Whether a convex ring holds a point, by the side of every edge that it lies on.
fn holds(ring: &[(f64, f64)], p: (f64, f64)) -> bool {
    let sides = (0..ring.len()).map(|k| {
        let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
        (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0)
    });
    let sides: Vec<f64> = sides.collect();
    sides.iter().all(|side| *side > 0.0) || sides.iter().all(|side| *side < 0.0)
}

/// How far a point lies from the edge of a ring.
fn apart(ring: &[(f64, f64)], p: (f64, f64)) -> f64 {
    let side = |k: usize| {
        let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let share = ((p.0 - a.0) * dx + (p.1 - a.1) * dy) / (dx * dx + dy * dy).max(1e-12);
        let share = share.clamp(0.0, 1.0);
        (p.0 - a.0 - dx * share).hypot(p.1 - a.1 - dy * share)
    };
    (0..ring.len()).map(side).fold(f64::INFINITY, f64::min)
}

fn middle(corners: &[PaperPoint; 4]) -> (f64, f64) {
    let sum = corners.iter().fold((0.0, 0.0), |sum, p| (sum.0 + p.x, sum.1 + p.y));
    (sum.0 / 4.0, sum.1 / 4.0)
}

fn is_within(text: &Text, area: &Area) -> bool {
    let inside = |p: &PaperPoint| p.x >= area.left && p.x <= area.right && p.y >= area.top && p.y <= area.bottom;
    text.corners().iter().all(inside)
}

/// Where a leg's id may stand, and whether it reads from the right there.
fn places(leg: &Leg, view: &View<Plan>) -> Vec<(PaperPoint, bool)> {
    let d = &leg.datums;
    let long = d.finished_right.mm();
    // The counter of a leg by itself is what is drawn of it; at a corner it is not the leg's own.
    let (front, back) = (d.counter_front.mm(), d.counter_back.mm());
    let deep = d.finished_back.mm();
    let at = |u: f64, v: f64| view.point(leg.placement.to_plan(LegPoint::new(u, v)));
    let (sin, _) = leg.placement.angle.sin_cos();
    let runs_up = sin.abs() > 0.5;
    let down = |p: PaperPoint, upright: bool| if upright { p.moved(1.25, 0.0) } else { p.moved(0.0, 1.25) };
    let mut places = Vec::new();
    for upright in [false, runs_up] {
        for share in [0.5, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85] {
            places.push((down(at(long * share, (front + back) / 2.0), upright), upright));
        }
    }
    let off = |paper: f64| paper / view.scale.factor();
    for paper in [3.0, 4.5, 6.0, 9.0] {
        for v in [deep + off(paper), -off(paper)] {
            for share in [0.5, 0.25, 0.75, 0.0, 1.0] {
                places.push((down(at(long * share, v), runs_up), runs_up));
                places.push((down(at(long * share, v), false), false));
            }
        }
    }
    places
}
