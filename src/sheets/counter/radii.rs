//! Radii and diameters with leaders, where there is white for them; the table of cutouts has them all.

use super::parts;
use super::plan::Plan;
use crate::drawing::Colour;
use crate::drawing::lettering::{self, Style};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::place;
use crate::solve::{Extent, Plane};
use crate::units::Length;

/// From a corner to where an arc crosses its bisector, as a share of the radius along each side.
const ONTO_ARC: f64 = 1.0 - std::f64::consts::FRAC_1_SQRT_2;

/// Draws them.
pub fn draw(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let layer = canvas.layer(plan.view.layer, "radii");
    let (leg, part, show) = (plan.leg(), plan.part, plan.task.show);
    let outer = plan.task.solved.counter.corner_radius;
    let zero = Length::ZERO;
    for (_, cutout) in parts::cutouts(leg, Plane::Counter) {
        let hole = cutout.extent;
        if hole.x0 < part.from || hole.x1 > part.to {
            continue;
        }
        if cutout.open {
            if cutout.radius > zero {
                let words = format!("R {}, 2 places", show.text(cutout.radius));
                corner(canvas, layer, plan, &hole, cutout.radius, Corner::BackInside, &words);
            }
            if outer > zero {
                let words = format!("R {}, 2 places", show.text(outer));
                corner(canvas, layer, plan, &hole, outer, Corner::Mouth, &words);
            }
        } else if cutout.radius > zero && !cutout.round {
            let words = format!("R {}", show.text(cutout.radius));
            corner(canvas, layer, plan, &hole, cutout.radius, Corner::BackOutside, &words);
        } else if cutout.round {
            let words = format!("\u{d8} {}", show.text(hole.width()));
            let centre = plan.view.at(hole.centre_x(), hole.centre_y());
            let radius = plan.view.size(hole.width()) / 2.0;
            let ways = [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)];
            let tip = |(x, y): (f64, f64)| centre.moved(x * radius * 0.707, y * radius * 0.707);
            callout(canvas, layer, &ways.map(|way| (tip(way), way)), &words);
        }
    }
    let d = &leg.datums;
    let box_of = Extent { x0: d.counter_left, y0: d.counter_front, x1: d.counter_right, y1: d.counter_back };
    let words = format!("R {}", show.text(outer));
    if outer > zero && leg.left.is_open() && part.holds(d.counter_left) {
        corner(canvas, layer, plan, &box_of, outer, Corner::FrontLeft, &words);
    } else if outer > zero && leg.right.is_open() && part.holds(d.counter_right) {
        corner(canvas, layer, plan, &box_of, outer, Corner::FrontRight, &words);
    }
}

/// Which corner of a box is named.
#[derive(Clone, Copy)]
enum Corner {
    /// A notch's back corners, named from the void.
    BackInside,
    /// A notch's mouth, named from the void.
    Mouth,
    /// A well's back left corner, named from outside.
    BackOutside,
    /// The counter's own corners, named from outside.
    FrontLeft,
    FrontRight,
}

fn corner(
    canvas: &mut Canvas,
    at: Layer,
    plan: &Plan<'_, '_>,
    hole: &Extent,
    radius: Length,
    which: Corner,
    words: &str,
) {
    let view = &plan.view;
    let off = view.size(radius) * ONTO_ARC;
    let p = |u: Length, v: Length, x: f64, y: f64| view.at(u, v).moved(x, y);
    let ways: Vec<(PaperPoint, (f64, f64))> = match which {
        Corner::BackInside => {
            vec![(p(hole.x0, hole.y1, off, off), (0.3, 1.0)), (p(hole.x1, hole.y1, -off, off), (-0.3, 1.0))]
        }
        Corner::Mouth => {
            let front = plan.leg().datums.counter_front;
            vec![(p(hole.x0, front, -off, -off), (0.7, -1.0)), (p(hole.x1, front, off, -off), (-0.7, -1.0))]
        }
        Corner::BackOutside => vec![
            (p(hole.x0, hole.y1, off, off), (-0.4, -1.0)),
            (p(hole.x1, hole.y1, -off, off), (0.4, -1.0)),
            (p(hole.x0, hole.y0, off, -off), (-0.4, 1.0)),
            (p(hole.x1, hole.y0, -off, -off), (0.4, 1.0)),
        ],
        Corner::FrontLeft => vec![(p(hole.x0, hole.y0, off, -off), (-0.6, 1.0))],
        Corner::FrontRight => vec![(p(hole.x1, hole.y0, -off, -off), (0.6, 1.0))],
    };
    callout(canvas, at, &ways, words);
}

/// A leader from the first tip whose line and words meet nothing.
fn callout(canvas: &mut Canvas, at: Layer, ways: &[(PaperPoint, (f64, f64))], words: &str) {
    for reach in [6.0, 4.0, 8.5, 11.0, 14.5, 18.0] {
        for &(tip, (dx, dy)) in ways {
            let length = f64::hypot(dx, dy);
            let elbow = tip.moved(dx / length * reach, dy / length * reach);
            let (start, style) = if dx >= 0.0 { (1.2, Style::body()) } else { (-1.2, Style::body().end()) };
            let text = elbow.moved(start, 1.25);
            let free = canvas.is_free(&lettering::set(text, words, &style)) && place::is_path_free(canvas, tip, elbow);
            if free {
                marks::leader(canvas, at, &[tip, elbow], LeaderEnd::Arrow, Colour::INK);
                canvas.text(at, text, words, &style);
                return;
            }
        }
    }
}
