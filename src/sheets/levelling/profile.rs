//! The floor along a leg with its heights drawn larger than its lengths, and what stands on it.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::apart;
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::title_block;
use crate::solve::{Face, Leg};
use crate::units::{INCH_MARK, Length, System};

use super::lanes::{self, Label};

/// Under the heading, mm.
const HEADING: f64 = 9.0;
/// Room at the left for the scale of heights, mm.
const LEFT: f64 = 17.0;
/// Height that the profile takes at most, mm: of a single leg, and of one of several.
const HIGH: [f64; 2] = [48.0, 36.0];
/// Room over it and under it for the feet's numbers, mm.
const TAGS: f64 = 11.0;
/// Part of the frame that is drawn at least, mm.
const LEAST: f64 = 6.0;
/// Thickness of the ground's hatch, mm.
const HATCH: f64 = 2.2;
/// Floor that is drawn past the frame, mm of paper.
const PAST: f64 = 6.0;
/// How many times as large heights may be drawn.
const TIMES: [u32; 10] = [20, 15, 12, 10, 8, 6, 5, 4, 3, 2];

/// A leg's profile: its lines in model mm.
struct Profile<'l> {
    leg: &'l Leg,
    from: f64,
    to: f64,
    front: Vec<(f64, f64)>,
    back: Vec<(f64, f64)>,
    low: f64,
    high: f64,
    room: f64,
}

impl<'l> Profile<'l> {
    fn new(set: &Set<'l>, index: usize, scale: Scale) -> Option<Profile<'l>> {
        let leg = set.solved.legs.get(index)?;
        let d = &leg.datums;
        let past = Length::from_mm(PAST / scale.factor());
        let (from, to) = (d.frame_left.min(Length::ZERO) - past, d.frame_right.max(d.finished_right) + past);
        let front = leg.floor_along(Face::Front, from, to);
        let back = leg.floor_along(Face::Back, from, to);
        let low = front.iter().chain(&back).map(|point| point.1).fold(0.0, f64::min);
        let trim = set.solved.trim.as_ref().map_or(f64::MIN, |trim| trim.top.mm());
        let top = front.iter().chain(&back).map(|point| point.1).fold(d.frame_bottom.mm().max(trim), f64::max);
        let room = if set.solved.legs.len() == 1 { HIGH[0] } else { HIGH[1] };
        Some(Profile { leg, from: from.mm(), to: to.mm(), front, back, low, high: top, room })
    }

    /// Nothing over the frame's bottom is drawn but the frame.
    fn is_low(&self, set: &Set<'_>) -> bool {
        set.solved.trim.is_none()
    }

    /// It has another row of feet behind its front one.
    fn has_back(&self) -> bool {
        let rows = || self.leg.feet.iter().map(|foot| foot.v);
        rows().min() != rows().max()
    }

    /// How many times as large as lengths its heights are drawn.
    fn times(&self, scale: Scale) -> u32 {
        let real = (self.high - self.low).max(1.0) * scale.factor();
        TIMES.iter().copied().find(|times| real * f64::from(*times) <= self.room).unwrap_or(1)
    }
}

/// From a profile's corner to where its frame begins, mm.
pub const BEGIN: f64 = LEFT + PAST;

/// How many times as large as lengths the heights of a leg's profile are drawn.
pub fn times(set: &Set<'_>, leg: usize, scale: Scale) -> u32 {
    Profile::new(set, leg, scale).map_or(1, |profile| profile.times(scale))
}

/// Names of the lines at the right end.
fn names(set: &Set<'_>) -> Vec<&'static str> {
    let mut names = vec!["frame bottom", "front feet", "back feet"];
    names.extend(set.solved.trim.is_some().then_some("trim top"));
    names
}

fn right(set: &Set<'_>) -> f64 {
    9.0 + names(set).iter().map(|name| lettering::width(name, BODY, Weight::Regular)).fold(0.0, f64::max)
}

/// The heading, and what is said of the scales beside it.
fn heading(set: &Set<'_>, index: usize, profile: &Profile<'_>, scale: Scale) -> (String, String) {
    let times = profile.times(scale);
    let title = match set.solved.legs.len() {
        1 => "Floor along the run".to_owned(),
        _ => format!("Floor along leg {} ({})", index + 1, profile.leg.id),
    };
    let style = Style::body().bold().sized(lettering::TITLE);
    let title = title_block::shortened(&title, 90.0, &style);
    let along = if times > 1 {
        format!("{} along, heights drawn {times} times as large", scale.words())
    } else {
        scale.words()
    };
    (title, along)
}

/// Paper that the view takes with its heading, mm.
pub fn size(set: &Set<'_>, leg: usize, scale: Scale) -> (f64, f64) {
    let Some(profile) = Profile::new(set, leg, scale) else { return (0.0, 0.0) };
    let high = (profile.high - profile.low) * scale.factor() * f64::from(profile.times(scale));
    let low = if profile.is_low(set) { LEAST } else { 0.0 };
    let (title, along) = heading(set, leg, &profile, scale);
    let wide = LEFT + (profile.to - profile.from) * scale.factor() + right(set);
    let wide = wide.max(title_block::heading_width(&title, &along) + 1.0);
    (wide, HEADING + 2.0 * TAGS + high.max(LEAST) + HATCH + low)
}

/// Draws it with its heading, its top left corner at `corner`.
pub fn draw(canvas: &mut Canvas, set: &Set<'_>, index: usize, scale: Scale, corner: PaperPoint) {
    let Some(profile) = Profile::new(set, index, scale) else { return };
    let (leg, times) = (profile.leg, profile.times(scale));
    let s = scale.factor();
    let rise = s * f64::from(times);
    let (title, along) = heading(set, index, &profile, scale);
    title_block::heading(canvas, corner.x, corner.y + 3.5, &title, &along);
    // No view: its heights have a scale of their own, and nothing on it is dimensioned by its lines.
    let layer = canvas.layer(Canvas::ROOT, "profile");
    let x = |u: f64| corner.x + LEFT + (u - profile.from) * s;
    let low = if profile.is_low(set) { LEAST } else { 0.0 };
    let zero = corner.y + HEADING + TAGS + low + profile.high * rise;
    let y = |z: f64| zero - z * rise;
    let line = |points: &[(f64, f64)]| -> Vec<PaperPoint> {
        points.iter().map(|&(u, z)| PaperPoint::new(x(u), y(z))).collect()
    };
    let d = &leg.datums;
    let bottom = y(d.frame_bottom.mm());

    // The frame's foot, cut off over its bottom tube.
    let up = bottom - y(profile.high).min(bottom - LEAST);
    for module in &leg.modules {
        let (a, b) = (PaperPoint::new(x(module.left.mm()), bottom - up), PaperPoint::new(x(module.right.mm()), bottom));
        canvas.rectangle(layer, a, b, Paint::fill(Fill::tint(Colour::TINT_BEYOND)));
        for side in [module.left, module.right] {
            let at = x(side.mm());
            canvas.line(
                layer,
                PaperPoint::new(at, bottom - up),
                PaperPoint::new(at, bottom),
                Pen::FINE.coloured(Colour::GREY_LINE),
            );
        }
    }
    let front = line(&profile.front);
    let mut ring = front.clone();
    ring.extend(front.iter().rev().map(|p| p.moved(0.0, HATCH)));
    canvas.hatch(layer, &[ring], 45.0, 1.9, Pen::FINE.quiet());
    feet(canvas, layer, leg, Face::Back, (&x, &y));
    feet(canvas, layer, leg, Face::Front, (&x, &y));
    if profile.has_back() {
        for pair in line(&profile.back).windows(2) {
            canvas.line(layer, pair[0], pair[1], Pen::SECONDARY.dashed(Dash::HIDDEN));
        }
    }
    canvas.polyline(layer, &front, false, Paint::pen(Pen::CUT));
    let ends = (x(d.frame_left.mm()), x(d.frame_right.mm()));
    canvas.line(layer, PaperPoint::new(ends.0, bottom), PaperPoint::new(ends.1, bottom), Pen::VISIBLE);
    if let Some(trim) = &set.solved.trim {
        let (a, b) = (PaperPoint::new(ends.0, y(trim.top.mm())), PaperPoint::new(ends.1, y(trim.top.mm())));
        canvas.line(layer, a, b, Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN));
    }
    heights(canvas, layer, set, corner.x + LEFT - 5.0, &profile, &y, rise);
    named(canvas, layer, set, &profile, (&x, &y));
    tags(canvas, layer, set, index, &profile, (&x, &y));
    modules(canvas, layer, leg, &x, bottom - up / 2.0);
}

type To<'a> = &'a dyn Fn(f64) -> f64;

/// Feet of the row nearest to a face, the back's thinner and grey.
fn feet(canvas: &mut Canvas, at: Layer, leg: &Leg, face: Face, (x, y): (To<'_>, To<'_>)) {
    let (half, pen) = match face {
        Face::Front => (1.1, Pen::DIMENSION),
        _ => (0.6, Pen::FINE.coloured(Colour::GREY_LINE)),
    };
    let bottom = y(leg.datums.frame_bottom.mm());
    for (_, foot) in leg.row_at(face) {
        let (middle, ground) = (x(foot.u.mm()), y(foot.ground.mm()));
        if ground - bottom < 0.5 {
            continue;
        }
        let paint = Paint::both(pen, Fill::WHITE);
        let p = |dx: f64, y: f64| PaperPoint::new(middle + dx, y);
        canvas.rectangle(at, p(-half, bottom), p(half, ground), paint);
        canvas.rectangle(at, p(-2.0 * half, ground - 0.9), p(2.0 * half, ground), paint);
    }
}

/// The scale of heights at the left: a bar with ticks, and what they are.
fn heights(canvas: &mut Canvas, at: Layer, set: &Set<'_>, x: f64, profile: &Profile<'_>, y: To<'_>, rise: f64) {
    let system = set.solved.show.system;
    let steps: &[f64] = match system {
        System::Millimetres => &[5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 5000.0, 20000.0],
        _ => &[12.7, 25.4, 50.8, 101.6, 152.4, 304.8, 609.6, 1219.2, 6096.0, 24384.0],
    };
    let Some(&step) = steps.iter().find(|step| **step * rise >= 4.6) else { return };
    let (low, high) = ((profile.low / step).floor() as i64, (profile.high / step).floor() as i64);
    let p = PaperPoint::new;
    canvas.line(at, p(x, y(low as f64 * step)), p(x, y(high as f64 * step)), Pen::SECONDARY);
    for k in low..=high {
        let tick = y(k as f64 * step);
        canvas.line(at, p(x - 1.2, tick), p(x, tick), Pen::SECONDARY);
        let words = match system {
            System::Millimetres => format!("{}{}", if k < 0 { "\u{2212}" } else { "" }, (k.abs() as f64 * step) as i64),
            _ => {
                let length = Length::from_mm(k as f64 * step);
                if k == 0 { "0".to_owned() } else { set.solved.show.figures(length) }
            }
        };
        let words = match (k == high, system) {
            (true, System::Millimetres) => format!("{words} mm"),
            (true, _) => format!("{words}{INCH_MARK}"),
            _ => words,
        };
        canvas.text(at, p(x - 2.0, tick + 1.25), &words, &Style::caption().end());
    }
}

/// Names of the lines at their right ends.
fn named(canvas: &mut Canvas, at: Layer, set: &Set<'_>, profile: &Profile<'_>, (x, y): (To<'_>, To<'_>)) {
    let d = &profile.leg.datums;
    let end = |line: &[(f64, f64)]| line.last().map_or(0.0, |point| point.1);
    let mut lines = vec![
        (x(d.frame_right.mm()), y(d.frame_bottom.mm()), "frame bottom"),
        (x(profile.to), y(end(&profile.front)), if profile.has_back() { "front feet" } else { "floor" }),
    ];
    if profile.has_back() {
        lines.push((x(profile.to), y(end(&profile.back)), "back feet"));
    }
    if let Some(trim) = &set.solved.trim {
        lines.push((x(d.frame_right.mm()), y(trim.top.mm()), "trim top"));
    }
    lines.sort_by(|a, b| a.1.total_cmp(&b.1));
    let places = apart(&lines.iter().map(|line| line.1).collect::<Vec<_>>(), 4.2);
    let names = x(profile.to) + 8.0;
    for ((from, level, name), place) in lines.into_iter().zip(places) {
        let p = PaperPoint::new;
        let points = [p(from + 0.6, level), p(names - 4.5, level), p(names - 2.0, place), p(names - 1.0, place)];
        canvas.polyline(at, &points, false, Paint::pen(Pen::FINE));
        canvas.text(at, p(names, place + 1.25), name, &Style::body());
    }
}

/// The feet's numbers: the front row's under the floor, the back row's over the frame.
fn tags(canvas: &mut Canvas, at: Layer, set: &Set<'_>, index: usize, profile: &Profile<'_>, (x, y): (To<'_>, To<'_>)) {
    let row = |face: Face, level: f64| -> Vec<Label> {
        let feet = profile.leg.row_at(face);
        feet.map(|(foot, it)| Label {
            at: PaperPoint::new(x(it.u.mm()), level),
            tag: set.solved.foot_tag(index, foot).to_string(),
            words: String::new(),
        })
        .collect()
    };
    lanes::draw(canvas, at, &row(Face::Front, y(profile.low) + HATCH + 0.8), (0.0, 1.0), 4.5, None);
    if profile.has_back() {
        let top = y(profile.high).min(y(profile.leg.datums.frame_bottom.mm()) - LEAST);
        lanes::draw(canvas, at, &row(Face::Back, top - 0.8), (0.0, -1.0), 4.5, None);
    }
}

/// Ids of the modules over the frame's foot.
fn modules(canvas: &mut Canvas, at: Layer, leg: &Leg, x: To<'_>, level: f64) {
    for module in &leg.modules {
        let middle = PaperPoint::new(x(module.centre().mm()), level + 1.25);
        let places =
            [middle, middle.moved(0.0, -1.5), middle.moved(0.0, 1.0), middle.moved(5.0, 0.0), middle.moved(-5.0, 0.0)];
        canvas.text_at_first(at, &places, &module.id, &Style::body().bold().middle());
    }
}
