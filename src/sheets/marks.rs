//! Small marks that mean the same on every sheet: flags, leaders, rings, scale bars, section marks.

use super::canvas::{Canvas, Layer, Paint, through};
use super::view::number;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::units::{INCH_MARK, Length, System};

/// A pennant on a finished datum's pole, its label inside: reads without colour by its shape. `to_right` says
/// which side of the pole it flies. Returns its far end.
pub fn flag(canvas: &mut Canvas, at: Layer, pole: PaperPoint, label: &str, to_right: bool) -> f64 {
    let label = label.to_uppercase();
    let width = lettering::width(&label, BODY, Weight::SemiBold) + 6.2;
    let side = if to_right { 1.0 } else { -1.0 };
    let points = [
        pole,
        pole.moved(side * width, 0.0),
        pole.moved(side * (width - 2.2), 2.6),
        pole.moved(side * width, 5.2),
        pole.moved(0.0, 5.2),
    ];
    let paint = Paint::both(Pen::SECONDARY.accent(), Fill::ink(Colour::ACCENT));
    canvas.polyline(at, &points, true, paint);
    let style = Style::body().bold().coloured(Colour::WHITE);
    let style = if to_right { style } else { style.end() };
    canvas.text(at, pole.moved(side * 2.0, 3.85), &label, &style);
    pole.x + side * width
}

/// Width of a flag, mm.
pub fn flag_width(label: &str) -> f64 {
    lettering::width(&label.to_uppercase(), BODY, Weight::SemiBold) + 6.2
}

/// The flag in small, for the start of a word that means a finished face. Its right end is 1.3 mm before the word.
pub fn flaglet(canvas: &mut Canvas, at: Layer, baseline: PaperPoint) {
    let p = |x: f64, y: f64| baseline.moved(x, y);
    let points = [p(0.0, 0.0), p(0.0, -2.6), p(2.3, -2.6), p(1.55, -1.9), p(2.3, -1.2), p(0.3, -1.2)];
    let pen = Pen { width: 0.3, ..Pen::DIMENSION.accent() };
    canvas.polyline(at, &points, false, Paint::both(pen, Fill::ink(Colour::ACCENT)));
}

/// What a leader ends with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeaderEnd {
    /// A dot, on a surface.
    Dot,
    /// An arrow, on an edge.
    Arrow,
}

/// A leader through points, the first of them on the thing.
pub fn leader(canvas: &mut Canvas, at: Layer, points: &[PaperPoint], end: LeaderEnd, colour: Colour) {
    canvas.polyline(at, points, false, Paint::pen(Pen::DIMENSION.coloured(colour)));
    if let [first, second, ..] = points {
        match end {
            LeaderEnd::Dot => canvas.circle(at, *first, 0.45, Paint::fill(Fill::ink(colour))),
            LeaderEnd::Arrow => {
                let angle = (first.y - second.y).atan2(first.x - second.x).to_degrees();
                canvas.arrow_sized(at, *first, angle, colour, 2.0, 0.67);
            }
        }
    }
}

/// A ring with a mark in it. Radius 3.6, wider for long marks.
pub fn ring(canvas: &mut Canvas, at: Layer, centre: PaperPoint, mark: &str) {
    let radius = ring_radius(mark);
    canvas.circle(at, centre, radius, Paint::both(Pen::SECONDARY, Fill::WHITE));
    canvas.text(at, centre.moved(0.0, 1.25), mark, &Style::body().bold().middle());
}

/// Radius of a ring round a mark, mm.
pub fn ring_radius(mark: &str) -> f64 {
    (lettering::width(mark, BODY, Weight::SemiBold) / 2.0 + 1.3).max(3.6)
}

/// Length of the scale bar of a view, mm of paper.
pub fn scale_bar_length(scale: super::scale::Scale, system: System) -> f64 {
    scale_bar_size(scale, system).1
}

/// Units (inches, or centimetres) to half of a scale bar, and its whole length on paper, mm.
fn scale_bar_size(scale: super::scale::Scale, system: System) -> (i64, f64) {
    let unit = match system {
        System::Inches | System::Both => Length::from_inches(1.0),
        System::Millimetres => Length::from_mm(10.0),
    };
    let steps: &[i64] = match system {
        System::Inches | System::Both => &[1, 2, 4, 6, 12, 24, 48, 96, 192, 480, 960, 4800],
        System::Millimetres => &[1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 10000],
    };
    let paper = |count: i64| (unit * count).mm() * scale.factor();
    let half = steps.iter().copied().find(|&n| paper(n) >= 18.0).unwrap_or(steps[steps.len() - 1]);
    (half, paper(half * 2))
}

/// A scale bar at a view's scale: two or three ticks, with a fact of its paper length. Its right end is at `right`,
/// its line at `y`. Returns its left end.
pub fn scale_bar(
    canvas: &mut Canvas,
    at: Layer,
    right: f64,
    y: f64,
    scale: super::scale::Scale,
    system: System,
) -> f64 {
    let (half, length) = scale_bar_size(scale, system);
    let left = right - length;
    let point = |x: f64, y: f64| PaperPoint::new(x, y);
    let facts = vec![("data-role", "scalebar".to_owned()), ("data-length-mm", number(length, 4))];
    canvas.shape(at, Shape::Line(point(left, y), point(right, y)), Paint::pen(Pen::SECONDARY), "", facts);
    for k in 0..=2 {
        let x = left + length * f64::from(k) / 2.0;
        canvas.line(at, point(x, y - 1.2), point(x, y), Pen::SECONDARY);
        let label = match system {
            System::Inches | System::Both if k == 2 => format!("{}{INCH_MARK}", half * 2),
            System::Millimetres if k == 2 => format!("{} mm", half * 20),
            System::Millimetres => format!("{}", half * 10 * i64::from(k)),
            _ => format!("{}", half * i64::from(k)),
        };
        let style = if k == 2 { Style::body().end() } else { Style::body().middle() };
        let x = if k == 2 { x + 1.5 } else { x };
        canvas.text(at, point(x, y - 2.1), &label, &style);
    }
    left
}

/// A break line across a part that goes on, from a to b.
pub fn break_line(canvas: &mut Canvas, at: Layer, a: PaperPoint, b: PaperPoint) {
    let (length, middle) = (a.distance(b), a.towards(b, 0.5));
    let (dx, dy) = ((b.x - a.x) / length, (b.y - a.y) / length);
    let p = |along: f64, aside: f64| middle.moved(dx * along - dy * aside, dy * along + dx * aside);
    let points = [a, p(-1.6, 0.0), p(-0.6, -1.2), p(0.6, 1.2), p(1.6, 0.0), b];
    canvas.steps(at, through(&points, false), Paint::pen(Pen::FINE));
}

/// The numbered mark of a finding: a black triangle with its number, in the first white place round a point.
pub fn finding(canvas: &mut Canvas, at: Layer, near: PaperPoint, number: usize) {
    let around = [
        (0.0, 0.0),
        (7.0, 0.0),
        (-7.0, 0.0),
        (0.0, -7.0),
        (0.0, 7.0),
        (7.0, -7.0),
        (-7.0, -7.0),
        (7.0, 7.0),
        (-7.0, 7.0),
    ];
    let rings = [1.0, 2.0, 3.0, 4.0, 6.0, 8.0];
    let places = rings.iter().flat_map(|by| around.iter().map(move |(x, y)| near.moved(x * by, y * by)));
    let free = |p: &PaperPoint, canvas: &Canvas| canvas.is_box_free(p.x - 3.4, p.y - 3.4, p.x + 3.4, p.y + 2.6);
    let Some(place) = places.into_iter().find(|p| free(p, canvas)) else { return };
    let points = [place.moved(0.0, -3.2), place.moved(3.2, 2.4), place.moved(-3.2, 2.4)];
    canvas.polyline(at, &points, true, Paint::fill(Fill::ink(Colour::INK)));
    let style = Style::body().bold().middle().coloured(Colour::WHITE);
    canvas.text(at, place.moved(0.0, 1.9), &number.to_string(), &style);
    if place.distance(near) > 8.0 {
        let from = place.towards(near, 4.0 / place.distance(near));
        if !canvas.crosses_text(from, near, Pen::FINE) {
            canvas.line(at, from, near, Pen::FINE);
        }
    }
}
