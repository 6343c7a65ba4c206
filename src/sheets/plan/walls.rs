//! What bounds a leg, cut through: walls, piers and posts with their hatch, as far as the sheet has room for them.

use super::seen::Seen;
use crate::drawing::Pen;
use crate::drawing::lettering::{BODY, Style, Weight, width};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::marks::break_line;
use crate::sheets::materials::{self, Material};
use crate::solve::{Bound, BoundKind};
use crate::units::{Length, Show};

/// Most of a wall's thickness that is drawn, mm of paper; the rest is broken off.
pub const WALL: f64 = 8.0;
/// Most of a pier's or post's width that is drawn, mm of paper.
pub const PIER: f64 = 18.0;
/// How far a wall goes on past the run before it is broken off, mm of paper.
const ON: f64 = 6.0;

/// Paper that a bound's drawn thickness takes at a scale, mm.
pub fn drawn(bound: &Bound, factor: f64) -> f64 {
    let most = match bound.kind {
        BoundKind::Open | BoundKind::Leg => return 0.0,
        BoundKind::Wall => WALL,
        BoundKind::Pier | BoundKind::Post => PIER,
    };
    let true_width = bound.width.mm() * factor;
    if true_width > 0.5 { true_width.min(most) } else { most.min(WALL) }
}

/// Extents of everything that bounds a leg, in leg millimetres: (u0, v0, u1, v1).
pub struct Reach {
    /// Outside of the left bound, or the counter's left edge.
    pub left: f64,
    /// Front of it all.
    pub front: f64,
    /// Outside of the right bound, or the counter's right edge.
    pub right: f64,
    /// Outside of the back bound, or the counter's back edge.
    pub back: f64,
}

/// How far a leg with its bounds reaches at a scale.
pub fn reach(leg: &crate::solve::Leg, factor: f64) -> Reach {
    let thick = |bound: &Bound| drawn(bound, factor) / factor;
    let datums = &leg.datums;
    let left = if leg.left.is_open() { datums.counter_left.mm() } else { leg.left.at_counter.mm() - thick(&leg.left) };
    let right =
        if leg.right.is_open() { datums.counter_right.mm() } else { leg.right.at_counter.mm() + thick(&leg.right) };
    let back = datums.counter_back.mm().max(datums.finished_back.mm());
    let back = if leg.back.is_open() { back } else { leg.back.at_counter.mm() + thick(&leg.back) };
    Reach { left: left.min(datums.counter_left.mm().min(0.0)), front: datums.counter_front.mm(), right, back }
}

/// Draws the bounds of a leg.
pub fn draw(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    draw_but(canvas, at, seen, [false; 3]);
}

/// Draws the bounds of a leg but for those that are `left_out`: left, right, behind.
pub fn draw_but(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, left_out: [bool; 3]) {
    let (leg, factor) = (seen.leg, seen.view.scale.factor());
    let reach = reach(leg, factor);
    let on = seen.model(ON);
    // A leg that bounds this one is drawn as itself, not as a wall.
    let stands = |bound: &Bound| !matches!(bound.kind, BoundKind::Open | BoundKind::Leg);
    if stands(&leg.back) && !left_out[2] {
        let face = leg.back.at_counter.mm();
        let past = |open: bool, kind: BoundKind, end: f64, outer: f64, way: f64| match (open, kind) {
            (false, BoundKind::Wall) => outer,
            _ => end.max(outer * way) * way + way * on,
        };
        let left = past(leg.left.is_open(), leg.left.kind, -leg.datums.counter_left.mm(), reach.left, -1.0);
        let right = past(leg.right.is_open(), leg.right.kind, leg.datums.counter_right.mm(), reach.right, 1.0);
        let band = Band { bound: &leg.back, face, outer: reach.back, from: left, to: right, across: false };
        let closed = |bound: &Bound| bound.kind == BoundKind::Wall;
        band.draw(canvas, at, seen, [closed(&leg.left), closed(&leg.right)]);
    }
    for (side, (bound, outer)) in [(&leg.left, reach.left), (&leg.right, reach.right)].into_iter().enumerate() {
        if !stands(bound) || left_out[side] {
            continue;
        }
        let face = bound.at_counter.mm();
        let back = if leg.back.is_open() { reach.back } else { leg.back.at_counter.mm() };
        let (from, to, ends) = match bound.kind {
            BoundKind::Post => {
                let side = (outer - face).abs();
                let middle = (leg.datums.frame_face.mm() + leg.datums.frame_back.mm()) / 2.0;
                (middle - side / 2.0, middle + side / 2.0, [true, true])
            }
            BoundKind::Pier => {
                (reach.front - on / 3.0, if leg.back.is_open() { back + on / 3.0 } else { back }, [true, true])
            }
            _ => (reach.front - on, if leg.back.is_open() { back + on } else { back }, [false, !leg.back.is_open()]),
        };
        Band { bound, face, outer, from, to, across: true }.draw(canvas, at, seen, ends);
    }
}

/// A cut strip from `face` to `outer`, between `from` and `to` the other way.
struct Band<'b> {
    bound: &'b Bound,
    face: f64,
    outer: f64,
    from: f64,
    to: f64,
    /// The face is a u and the strip runs in v; otherwise the other way round.
    across: bool,
}

impl Band<'_> {
    fn draw(&self, canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, closed: [bool; 2]) {
        let point = |depth: f64, along: f64| {
            if self.across { seen.at_mm(depth, along) } else { seen.at_mm(along, depth) }
        };
        let (a, b) = (point(self.face, self.from), point(self.face, self.to));
        let (c, d) = (point(self.outer, self.to), point(self.outer, self.from));
        materials::hatch(canvas, at, &[vec![a, b, c, d]], Material::Wall, false);
        canvas.line(at, a, b, Pen::CUT.square());
        let whole = (self.outer - self.face).abs() >= self.bound.width.mm() - 0.5 && self.bound.width > Length::ZERO;
        if whole {
            canvas.line(at, d, c, Pen::SECONDARY);
        } else if self.bound.kind != BoundKind::Wall {
            break_line(canvas, at, d, c);
        }
        for (end, (p, q)) in [(0, (a, d)), (1, (b, c))] {
            match closed[end] {
                // The corner of two walls: the face line of the other one closes it.
                true if self.bound.kind == BoundKind::Wall => {}
                true => canvas.line(at, p, q, Pen::CUT.square()),
                false if p.distance(q) > 4.0 => break_line(canvas, at, overshot(q, p), overshot(p, q)),
                false => canvas.line(at, p, q, Pen::FINE),
            }
        }
        if self.bound.at != self.bound.at_counter {
            let shift = self.bound.at.mm() - self.bound.at_counter.mm();
            if shift.abs() * seen.view.scale.factor() > 0.4 {
                let pen = Pen::DIMENSION.dashed(crate::drawing::Dash::HIDDEN);
                canvas.line(at, point(self.face + shift, self.from), point(self.face + shift, self.to), pen);
            }
        }
    }
}

/// `end`, moved on by a millimetre from `start`.
fn overshot(start: PaperPoint, end: PaperPoint) -> PaperPoint {
    start.towards(end, 1.0 + 1.0 / start.distance(end).max(1e-6))
}

/// Names the bounds and states their gaps where the sheet is white.
pub fn label(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, show: Show) {
    let (leg, factor) = (seen.leg, seen.view.scale.factor());
    let reach = reach(leg, factor);
    let style = Style::caption();
    if !leg.back.is_open() {
        let text = gap_words(
            show,
            &leg.back,
            leg.back.at - leg.datums.finished_back,
            leg.back.at_counter - leg.datums.finished_back,
        );
        let y = seen.at_mm(0.0, reach.back).y;
        let right = seen.at_mm(reach.right, 0.0).x.max(seen.at(leg.datums.counter_right, Length::ZERO).x);
        let left = seen.at_mm(reach.left, 0.0).x;
        let run = width(&text, BODY, Weight::Regular);
        let mut places: Vec<PaperPoint> =
            [2.0, 6.5, 11.0, 15.5].iter().map(|up| PaperPoint::new(right - run, y - up)).collect();
        places.extend([2.0, 6.5, 11.0].iter().map(|up| PaperPoint::new(left, y - up)));
        places.push(PaperPoint::new(right + 12.0, y + 4.0));
        canvas.text_at_first(at, &places, &text, &style);
    }
    let front = seen.at_mm(0.0, reach.front).y + ON;
    let gaps = [
        (&leg.left, -leg.left.at, -leg.left.at_counter, true),
        (&leg.right, leg.right.at - leg.datums.finished_right, leg.right.at_counter - leg.datums.finished_right, false),
    ];
    for (bound, floor, counter, left) in gaps {
        if bound.is_open() {
            continue;
        }
        let lines: Vec<String> = gap_words(show, bound, floor, counter).split(", ").map(str::to_owned).collect();
        let x = seen.at(bound.at_counter, Length::ZERO).x;
        let run = lines.iter().map(|text| width(text, BODY, Weight::Regular)).fold(0.0, f64::max);
        let x = if left { x - run - 2.0 } else { x + 2.0 };
        let high = lines.len() as f64 * 4.5;
        let free = |y: &f64| canvas.is_box_free(x - 0.5, y - 3.5, x + run + 0.5, y - 3.5 + high);
        let Some(y) = [5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 12.0, 14.0, 17.0].iter().map(|down| front + down).find(free)
        else {
            continue;
        };
        for (index, text) in lines.iter().enumerate() {
            canvas.text(at, PaperPoint::new(x, y + index as f64 * 4.5), text, &style);
        }
    }
}

fn gap_words(show: Show, bound: &Bound, floor: Length, counter: Length) -> String {
    let name = if bound.name.is_empty() { "wall" } else { &bound.name };
    if show.rounded(floor) == show.rounded(counter) {
        return format!("{name}, gap {}", show.prose(counter));
    }
    format!("{name}, gap {} at the floor, {} at the counter", show.prose(floor), show.prose(counter))
}
