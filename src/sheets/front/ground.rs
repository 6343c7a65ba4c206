//! Floor, feet, base trim, and what stands at the ends.

use super::elevation::{BOUND, Elevation};
use super::floor::front_row;
use super::meeting::Way;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::marks;
use crate::sheets::materials::{self, Material};
use crate::solve::{Bound, BoundKind, TrimPiece};
use crate::units::{Length, System};

/// Thickness of the ground's hatch, mm.
const HATCH: f64 = 2.2;
/// Part of a bound over the counter that is drawn, mm.
const OVER: f64 = 4.0;

/// Draws them.
pub fn draw(canvas: &mut Canvas, e: &Elevation<'_>) {
    let at = canvas.layer(e.view.layer, "ground");
    let (near, far) = e.bounds();
    if e.part.first && !near.is_open() {
        bound(canvas, at, e, near, -1.0);
    }
    if e.part.last && !far.is_open() {
        bound(canvas, at, e, far, 1.0);
    }
    feet(canvas, at, e);
    floor(canvas, at, e);
    trim(canvas, at, e);
}

fn floor(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let (a, b) = e.reach();
    let model = |x: f64| (x - e.view.origin.x) / e.view.scale.factor();
    let line: Vec<PaperPoint> = e
        .floor
        .between(model(a), model(b))
        .into_iter()
        .map(|(x, z)| PaperPoint::new(e.view.x_mm(x), e.view.y_mm(z)))
        .collect();
    let mut ring = line.clone();
    ring.extend(line.iter().rev().map(|p| p.moved(0.0, HATCH)));
    canvas.hatch(at, &[ring], 45.0, 1.9, Pen::FINE.quiet());
    canvas.polyline(at, &line, false, Paint::pen(Pen::CUT));
}

fn feet(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let bottom = e.view.y(e.leg.datums.frame_bottom);
    let s = e.view.scale.factor();
    for (_, foot) in front_row(e.leg, &e.facing).into_iter().filter(|(_, foot)| e.part.modules.contains(&foot.module)) {
        if e.hides(e.facing.x(foot.u)) {
            continue;
        }
        let (x, ground) = (e.view.x(e.facing.x(foot.u)), e.view.y(foot.ground));
        let height = ground - bottom;
        if height <= 0.3 {
            continue;
        }
        let paint = Paint::both(Pen::DIMENSION, Fill::WHITE);
        let (plate, base) = ((10.0 * s).min(height / 4.0), (12.0 * s).min(height / 3.0));
        let p = |dx: f64, y: f64| PaperPoint::new(x + dx * s, y);
        canvas.rectangle(at, p(-7.0, bottom), p(7.0, ground - base), paint);
        canvas.rectangle(at, p(-16.0, bottom), p(16.0, bottom + plate), paint);
        let sole = [p(-29.0, ground), p(29.0, ground), p(20.0, ground - base), p(-20.0, ground - base)];
        canvas.polyline(at, &sole, true, paint);
    }
}

/// Top of the base trim, piece by piece.
fn trim(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let pen = Pen::SECONDARY.dashed(Dash::HIDDEN);
    let own = |piece: &&TrimPiece| piece.leg == e.leg_index && piece.face == e.facing.face;
    for piece in e.set.solved.shop.trim.pieces.iter().filter(own) {
        let (a, b) = e.facing.span(piece.from, piece.to);
        // Pieces run past the outermost modules; on a part of the run they end where it does.
        let a = if e.part.first { a } else { a.max(e.part.x0) };
        let b = if e.part.last { b } else { b.min(e.part.x1) };
        // What a leg that comes towards the viewer hides isn't seen.
        let fold = |side: usize| e.meetings[side].as_ref().filter(|m| m.way == Way::Towards).map(|m| m.fold);
        let (a, b) = (fold(0).map_or(a, |fold| a.max(fold)), fold(1).map_or(b, |fold| b.min(fold)));
        if b > a {
            canvas.line(at, e.view.at(a, piece.top), e.view.at(b, piece.top), pen);
        }
    }
}

/// A wall, pier or post at an end: its face as it leans, cut off over the counter and at its far side.
fn bound(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, bound: &Bound, out: f64) {
    let s = e.view.scale.factor();
    let d = &e.leg.datums;
    let (foot, head) = (e.view.x(e.facing.x(bound.at)), e.view.x(e.facing.x(bound.at_counter)));
    let high = (e.view.y(e.top) - OVER).max(e.view.y(bound.height));
    let low = e.view.y_mm(e.floor.height(e.facing.x(bound.at).mm()));
    let rise = (e.view.y(Length::ZERO) - e.view.y(d.counter_top)).max(1e-6);
    let face = |y: f64| foot + (head - foot) * (e.view.y(Length::ZERO) - y) / rise;
    let width = (bound.width.mm() * s).min(BOUND);
    let cut = bound.width.mm() * s > BOUND;
    let far = foot + out * width;
    let [a, b, c, f] =
        [(face(low), low), (face(high), high), (far, high), (far, low)].map(|(x, y)| PaperPoint::new(x, y));
    canvas.polyline(at, &[a, b, c, f], true, Paint::fill(Fill::tint(Colour::TINT_BEYOND)));
    let middle = PaperPoint::new((face(low) + far) / 2.0 + 1.25, (low + high) / 2.0);
    let name = if bound.name.is_empty() { kind_word(bound.kind) } else { &bound.name };
    let length = lettering::width(name, BODY, Weight::Regular);
    let inside = width >= 6.5;
    if bound.kind == BoundKind::Wall {
        let mut rings = vec![vec![a, b, c, f]];
        if inside {
            rings.push(
                crate::sheets::canvas::corners(
                    middle.moved(-4.0, -length / 2.0 - 1.2),
                    middle.moved(1.8, length / 2.0 + 1.2),
                )
                .to_vec(),
            );
        }
        materials::hatch(canvas, at, &rings, Material::Wall, false);
    }
    let face_pen = if bound.kind == BoundKind::Wall { Pen::CUT } else { Pen::VISIBLE };
    canvas.line(at, a, b, face_pen);
    if cut {
        marks::break_line(canvas, at, c, f)
    } else {
        canvas.line(at, c, f, face_pen)
    }
    if e.view.y(bound.height) < high - 0.1 {
        marks::break_line(canvas, at, b, c);
    } else {
        canvas.line(at, b, c, face_pen);
    }
    let place =
        if inside { middle } else { PaperPoint::new(far + out * 3.2 + if out > 0.0 { 1.25 } else { 0.0 }, middle.y) };
    canvas.text_at_first(at, &[place, place.moved(0.0, -6.0)], name, &Style::body().upright().middle());
}

fn kind_word(kind: BoundKind) -> &'static str {
    match kind {
        BoundKind::Open => "open",
        BoundKind::Wall => "wall",
        BoundKind::Pier => "pier",
        BoundKind::Post => "post",
        BoundKind::Leg => "leg",
    }
}

/// How the floor falls along the face, in words; `None` when it is level.
pub fn fall_words(e: &Elevation<'_>) -> Option<(String, bool)> {
    let slope = e.floor.slope;
    if slope.abs() < 2e-4 {
        return None;
    }
    let show = e.show;
    let per = match show.system {
        System::Millimetres => Length::from_mm(1000.0),
        System::Inches | System::Both => Length::from_inches(12.0),
    };
    let drop = show.prose(per.scaled(slope.abs()));
    let words = match show.system {
        System::Millimetres => format!("floor falls {drop} in 1 m"),
        System::Inches | System::Both => format!("floor falls {drop} in 12{}", crate::units::INCH_MARK),
    };
    Some((words, slope < 0.0))
}

/// Writes the fall under the floor, with an arrow down it, in the first white place.
pub fn fall(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let Some((words, to_right)) = fall_words(e) else { return };
    let words = if e.floor.measured { words.replace("floor falls", "floor falls about") } else { words };
    let width = lettering::width(&words, BODY, Weight::Regular);
    let (a, b) = e.reach();
    let arrow = 9.0;
    let total = width + arrow;
    let mut x = b - total + 12.0;
    while x > a {
        let floor = e.view.y_mm(e.floor.lowest(
            (x - e.view.origin.x) / e.view.scale.factor(),
            (x + total - e.view.origin.x) / e.view.scale.factor(),
        ));
        let y = floor + HATCH + 4.6;
        if canvas.is_box_free(x - 1.0, y - 3.0, x + total + 1.0, y + 0.9) {
            let (text, from, to) =
                if to_right { (x, x + width + 2.0, x + total) } else { (x + arrow, x + arrow - 2.0, x) };
            canvas.text(at, PaperPoint::new(text, y), &words, &Style::body());
            let (p, q) = (PaperPoint::new(from, y - 1.2), PaperPoint::new(to, y - 1.2));
            canvas.line(at, p, q, Pen::DIMENSION);
            canvas.arrow(at, q, if to_right { 0.0 } else { 180.0 }, Colour::INK);
            return;
        }
        x -= 2.0;
    }
}
