//! What is lettered on a plan: flags, rings, services, feet, the floor's fall, findings.

use super::kept::Kept;
use super::run::middle;
use super::seen::Seen;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::findings::Subject;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::schedules::feet::service_words;
use crate::sheets::set::{Kind, Set};
use crate::solve::{Face, Fitting, FittingKind, Plane};
use crate::units::{Length, System};

/// Flags on the finished face and the finished left end of a level leg.
pub fn flags(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    let datums = &seen.leg.datums;
    let label = "finished face";
    let wide = marks::flag_width(label);
    // The longest stretch of the face with no cutout behind it.
    let mut cuts: Vec<(f64, f64)> = seen
        .leg
        .fittings
        .iter()
        .filter_map(|fitting| fitting.cutout(Plane::Counter))
        .map(|cutout| (seen.view.x(cutout.extent.x0), seen.view.x(cutout.extent.x1)))
        .collect();
    cuts.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (start, end) = (seen.view.x(Length::ZERO), seen.view.x(datums.finished_right));
    cuts.push((end, end));
    let (mut low, mut best) = (start, (start, start));
    for (from, to) in cuts {
        if from - low > best.1 - best.0 {
            best = (low, from);
        }
        low = low.max(to);
    }
    let y = seen.view.y(Length::ZERO);
    if best.1 - best.0 >= wide + 6.0 {
        let x = best.1 - wide - 3.0;
        marks::flag(canvas, at, PaperPoint::new(x, y - 5.2), label, true);
    }
}

/// Rings of all fittings: in their counter cutout, or beside the face that they are set into, with a leader to it.
pub fn rings(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, kept: &mut Kept) {
    for fitting in &seen.leg.fittings {
        match fitting.cutout(Plane::Counter) {
            Some(cutout) => in_counter(canvas, at, seen, fitting, middle(&seen.extent(&cutout.extent)), kept),
            None => at_face(canvas, at, seen, fitting, kept),
        }
    }
}

fn in_counter(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, fitting: &Fitting, centre: PaperPoint, kept: &mut Kept) {
    let radius = marks::ring_radius(&fitting.mark);
    let around = [(0.0, 0.0), (0.0, -3.0), (0.0, 3.0), (-3.0, 0.0), (3.0, 0.0), (0.0, -7.0), (7.0, 0.0), (-7.0, 0.0)];
    let near = around.iter().map(|(dx, dy)| centre.moved(*dx, *dy)).find(|p| ring_fits(canvas, *p, radius));
    if let Some(place) = near {
        marks::ring(canvas, at, place, &fitting.mark);
        kept.ring(place, radius + 0.4);
        let beside = [
            (Style::body(), place.moved(radius + 1.6, 1.25)),
            (Style::body().middle(), place.moved(0.0, radius + 4.2)),
            (Style::body().middle(), place.moved(0.0, -radius - 1.6)),
        ];
        let room = seen.view.size(fitting.width()) - 2.0;
        let run = lettering::width(&fitting.name, BODY, Weight::Regular);
        let free = |(style, p): &&(Style, PaperPoint)| {
            let needed = if style.anchor == lettering::Anchor::Start { 2.0 * (radius + 1.6 + run) } else { run };
            needed <= room && canvas.is_free(&lettering::set(*p, &fitting.name, style))
        };
        if let Some((style, p)) = beside.iter().find(free).cloned() {
            canvas.text(at, p, &fitting.name, &style);
            let half = if style.anchor == lettering::Anchor::Start { 0.0 } else { run / 2.0 };
            kept.keep(p.x - half - 0.4, p.y - 3.2, p.x - half + run + 0.4, p.y + 1.2);
        }
        return;
    }
    let reach = 8.0 + radius;
    let far = [
        (reach, reach),
        (-reach, reach),
        (reach, -reach),
        (-reach, -reach),
        (2.0 * reach, reach),
        (-2.0 * reach, reach),
    ];
    let found = far
        .iter()
        .map(|(dx, dy)| centre.moved(*dx, *dy))
        .find(|p| ring_fits(canvas, *p, radius) && !kept.crossed(centre, *p));
    if let Some(place) = found {
        led(canvas, at, centre, place, &fitting.mark, kept);
    }
}

fn at_face(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, fitting: &Fitting, kept: &mut Kept) {
    let (datums, counter) = (&seen.leg.datums, seen.leg.counter.extent);
    let radius = marks::ring_radius(&fitting.mark);
    let off = seen.model(8.0);
    // Not on the centreline, which may carry a section mark.
    let along = |share: f64| fitting.left.mm() + fitting.width().mm() * share;
    let shares = [0.28, 0.72, 0.16, 0.84, 0.5, 0.4, 0.6];
    for row in 0..3 {
        let out = off + seen.model(8.2 * f64::from(row));
        for share in shares {
            let (face, ring) = match fitting.face {
                Face::Front => ((along(share), 0.0), (along(share), counter.y0.mm() - out)),
                Face::Back => ((along(share), datums.finished_back.mm()), (along(share), counter.y1.mm() + out)),
                Face::Left => ((0.0, along(share)), (counter.x0.mm() - out, along(share))),
                Face::Right => ((datums.finished_right.mm(), along(share)), (counter.x1.mm() + out, along(share))),
            };
            let (point, place) = (seen.at_mm(face.0, face.1), seen.at_mm(ring.0, ring.1));
            if ring_fits(canvas, place, radius) && !kept.crossed(point, place) {
                led(canvas, at, point, place, &fitting.mark, kept);
                return;
            }
        }
    }
}

/// A ring with a leader to a point.
fn led(canvas: &mut Canvas, at: Layer, point: PaperPoint, place: PaperPoint, mark: &str, kept: &mut Kept) {
    let far = point.distance(place).max(1e-6);
    let start = place.towards(point, (marks::ring_radius(mark) / far).min(1.0));
    marks::leader(canvas, at, &[point, start], LeaderEnd::Dot, Colour::INK);
    marks::ring(canvas, at, place, mark);
    kept.ring(place, marks::ring_radius(mark) + 0.4);
}

fn ring_fits(canvas: &Canvas, place: PaperPoint, radius: f64) -> bool {
    let r = radius + 0.4;
    place.y + r < canvas.height - 12.0 && canvas.is_box_free(place.x - r, place.y - r, place.x + r, place.y + r)
}

/// Pipes and cables that come up: a small circle at the place, its letter in a larger one beside it.
pub fn services(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, kept: &mut Kept) {
    // All points first, so that no letter comes to stand on one.
    for stub in &seen.leg.stubs {
        canvas.circle(at, seen.at(stub.u, stub.v), 0.9, Paint::both(Pen::VISIBLE, Fill::WHITE));
    }
    for stub in &seen.leg.stubs {
        let place = seen.at(stub.u, stub.v);
        let (letter, _) = service_words(stub.service);
        let near =
            [(5.6, 0.0), (-5.6, 0.0), (0.0, -5.6), (0.0, 5.6), (4.6, -4.6), (-4.6, -4.6), (4.6, 4.6), (-4.6, 4.6)];
        let rounds = [1.0, 1.4, 2.0, 2.8];
        let places = rounds.iter().flat_map(|by| near.iter().map(move |(dx, dy)| place.moved(dx * by, dy * by)));
        let Some(centre) = places.into_iter().find(|p| ring_fits(canvas, *p, 2.7) && !kept.crossed(place, *p)) else {
            continue;
        };
        kept.ring(centre, 3.1);
        let far = place.distance(centre);
        canvas.line(at, place.towards(centre, 0.9 / far), centre.towards(place, 2.7 / far), Pen::DIMENSION);
        canvas.circle(at, centre, 2.7, Paint::pen(Pen::DIMENSION));
        canvas.text(at, centre.moved(0.0, 1.25), letter, &Style::body().bold().middle());
    }
}

/// Numbers of the feet, as in the schedule, where they find white.
pub fn feet(canvas: &mut Canvas, at: Layer, set: &Set<'_>, seen: &Seen<'_>) {
    for (index, foot) in seen.leg.feet.iter().enumerate() {
        let place = seen.at(foot.u, foot.v);
        let text = set.solved.foot_tag(seen.index, index).to_string();
        let run = lettering::width(&text, BODY, Weight::Regular);
        let places = [
            (2.2, 1.25),
            (-2.2 - run, 1.25),
            (2.2, -1.6),
            (-2.2 - run, -1.6),
            (2.2, 4.0),
            (-2.2 - run, 4.0),
            (1.2, 3.9),
            (-1.2 - run, 3.9),
            (-run / 2.0, 4.3),
            (-run / 2.0, -2.5),
        ];
        let places = places.map(|(dx, dy)| place.moved(dx, dy));
        canvas.text_at_first(at, &places, &text, &Style::caption());
    }
}

/// Which way the floor falls, and how much: one arrow along the run, one across it. `places` are tried in order.
pub fn fall(canvas: &mut Canvas, at: Layer, set: &Set<'_>, seen: &Seen<'_>, places: &[PaperPoint]) {
    let floor = &seen.leg.floor;
    let mut lines: Vec<(String, f64)> = Vec::new();
    for (slope, ahead, back) in [(floor.per_u, 180.0, 0.0), (floor.per_v, 90.0, -90.0)] {
        if slope.abs() > 1e-5 {
            lines.push((fall_words(set, slope.abs()), if slope > 0.0 { ahead } else { back }));
        }
    }
    if lines.is_empty() {
        lines.push(("floor level".to_owned(), f64::NAN));
    }
    let wide = lines.iter().map(|(text, _)| lettering::width(text, BODY, Weight::Regular)).fold(0.0, f64::max) + 11.0;
    let high = lines.len() as f64 * 6.0;
    let free = |p: &&PaperPoint| canvas.is_box_free(p.x - 0.5, p.y - 4.0, p.x + wide, p.y + high - 3.0);
    let Some(&place) = places.iter().find(free) else { return };
    for (index, (text, angle)) in lines.iter().enumerate() {
        let p = place.moved(0.0, index as f64 * 6.0);
        if angle.is_finite() {
            let (sin, cos) = angle.to_radians().sin_cos();
            let (middle, half) = (p.moved(4.0, -1.25), if sin.abs() > 0.5 { 2.6 } else { 3.6 });
            let (from, to) = (middle.moved(-cos * half, -sin * half), middle.moved(cos * half, sin * half));
            canvas.line(at, from, to, Pen::DIMENSION);
            canvas.arrow(at, to, *angle, Colour::INK);
            canvas.text(at, p.moved(10.0, 0.0), text, &Style::body());
        } else {
            canvas.text(at, p, text, &Style::body());
        }
    }
}

fn fall_words(set: &Set<'_>, slope: f64) -> String {
    let show = set.solved.show;
    let inches = format!("{} in 12\u{2033}", show.text(Length::from_inches(12.0 * slope)));
    let metric = format!("{:.0} mm in 1 m", slope * 1000.0);
    match show.system {
        System::Inches => format!("floor falls {inches}"),
        System::Millimetres => format!("floor falls {metric}"),
        System::Both => format!("floor falls {inches} [{metric}]"),
    }
}

/// The numbered marks of the findings about a leg's parts.
pub fn findings(canvas: &mut Canvas, at: Layer, set: &Set<'_>, kind: Kind, seen: &Seen<'_>) {
    let (leg, datums, index) = (seen.leg, &seen.leg.datums, seen.index);
    let mid_v = (datums.frame_face + datums.frame_back).half();
    for fitting in &leg.fittings {
        let place = match (fitting.kind, fitting.back) {
            (FittingKind::Notch | FittingKind::Well, Some(back)) => seen.at(fitting.centre(), back),
            _ => match fitting.face {
                Face::Front => seen.at(fitting.centre(), Length::ZERO),
                Face::Back => seen.at(fitting.centre(), datums.finished_back),
                Face::Left => seen.at(Length::ZERO, fitting.centre()),
                Face::Right => seen.at(datums.finished_right, fitting.centre()),
            },
        };
        set.mark(canvas, at, kind, &fitting.subject(), place);
    }
    for (k, module) in leg.modules.iter().enumerate() {
        set.mark(canvas, at, kind, &Subject::Module(index, k), seen.at(module.centre(), mid_v));
    }
    for (k, foot) in leg.feet.iter().enumerate() {
        set.mark(canvas, at, kind, &Subject::Foot(index, k), seen.at(foot.u, foot.v));
    }
    let middle = (datums.counter_left + datums.counter_right).half();
    set.mark(canvas, at, kind, &Subject::Counter(index), seen.at(middle, datums.counter_back));
    set.mark(canvas, at, kind, &Subject::Leg(index), seen.at(middle, mid_v));
}
