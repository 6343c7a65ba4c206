//! The feet of the whole run from above.

use super::bends;
use super::lanes::{self, Label};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen};
use crate::geometry::{LegPoint, PaperPoint, Plan};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::place;
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::title_block;
use crate::sheets::view::View;
use crate::solve::{Face, Leg, Solved};
use crate::units::{Length, System};

/// The view's heading.
const TITLE: &str = "Feet from above";
/// Under the heading, mm.
const HEADING: f64 = 8.0;
/// From a foot's middle to its label, mm.
const START: f64 = 9.0;
/// What was measured farther off than this bears on the fall, but lies outside the view, mm of the model.
const NEAR: f64 = 400.0;
/// The sole of a foot, as it is drawn, mm of the model.
const SOLE: f64 = 29.0;

/// Box of all frames and finished faces in the plan: x0, y0, x1, y1, mm.
fn bounds(solved: &Solved) -> (f64, f64, f64, f64) {
    let mut all = (f64::MAX, f64::MAX, f64::MIN, f64::MIN);
    for leg in &solved.legs {
        let d = &leg.datums;
        let (left, right) = (d.frame_left.min(Length::ZERO).mm(), d.frame_right.max(d.finished_right).mm());
        let (front, back) = (Length::ZERO.min(d.frame_face).mm(), d.frame_back.max(d.finished_back).mm());
        for (u, v) in [(left, front), (right, front), (right, back), (left, back)] {
            let p = leg.placement.to_plan(LegPoint::new(u, v));
            all = (all.0.min(p.x), all.1.min(p.y), all.2.max(p.x), all.3.max(p.y));
        }
    }
    all
}

/// Room that labels take beyond the run, mm.
pub fn margin(set: &Set<'_>) -> f64 {
    let solved = set.solved;
    let words = solved.legs.iter().flat_map(|leg| leg.feet.iter()).map(|foot| height_words(set, foot.height));
    let longest = words.map(|words| lettering::width(&words, BODY, Weight::SemiBold));
    START + 2.0 + 6.0 + longest.fold(0.0, f64::max)
}

/// A foot's height as its label has it.
fn height_words(set: &Set<'_>, height: Length) -> String {
    let show = set.solved.show;
    match show.second(height) {
        Some(second) => format!("{} {second}", show.text(height)),
        None => show.text(height),
    }
}

/// Paper that the view takes with its heading, mm.
pub fn size(set: &Set<'_>, scale: Scale) -> (f64, f64) {
    let (x0, y0, x1, y1) = bounds(set.solved);
    let (margin, s) = (margin(set), scale.factor());
    let bar = marks::scale_bar_length(scale, set.solved.show.system);
    let head = title_block::heading_width(TITLE, &scale.words()) + 12.0 + bar + 6.0;
    (((x1 - x0) * s + 2.0 * margin).max(head), HEADING + (y1 - y0) * s + 2.0 * margin)
}

/// Draws it with its heading, its top left corner at `corner`.
pub fn draw(canvas: &mut Canvas, set: &Set<'_>, scale: Scale, corner: PaperPoint) {
    let solved = set.solved;
    let (x0, _, _, y1) = bounds(solved);
    let (margin, s) = (margin(set), scale.factor());
    let (wide, high) = size(set, scale);
    title_block::heading(canvas, corner.x, corner.y + 3.5, TITLE, &scale.words());
    let origin = PaperPoint::new(corner.x + margin - x0 * s, corner.y + HEADING + margin + y1 * s);
    let view: View<Plan> = View::open(canvas, "feet", scale, origin);
    let geometry = canvas.layer(view.layer, "run");
    let bent_layer = canvas.layer(view.layer, "bends");
    let soles = canvas.layer(view.layer, "soles");
    let marks_layer = canvas.layer(view.layer, "marks");
    steps(canvas, geometry, set, &view);
    for leg in &solved.legs {
        frames(canvas, geometry, leg, &view);
    }
    for (index, leg) in solved.legs.iter().enumerate() {
        feet(canvas, soles, set, index, leg, &view);
    }
    let area = Area { left: corner.x, top: corner.y + HEADING, right: corner.x + wide, bottom: corner.y + high };
    let bar = canvas.layer(view.layer, "scale-bar");
    marks::scale_bar(canvas, bar, corner.x + wide - 3.0, corner.y + 4.5, scale, solved.show.system);
    for index in 0..solved.legs.len() {
        labels(canvas, marks_layer, set, index, &view, &area);
    }
    finished(canvas, marks_layer, set, &view);
    high_point(canvas, marks_layer, set, &view, area);
    for leg in &solved.legs {
        names(canvas, marks_layer, leg, &view);
    }
    spots(canvas, marks_layer, set, &view);
    fall(canvas, marks_layer, set, &view, area);
    // Last, since they are broken where lettering stands.
    bent(canvas, bent_layer, set, &view);
}

/// A place of a leg on the paper.
fn spot(view: &View<Plan>, leg: &Leg, u: f64, v: f64) -> PaperPoint {
    view.point(leg.placement.to_plan(LegPoint::new(u, v)))
}

/// A step of a leg's (u, v) as a step of paper.
fn turned(leg: &Leg, (u, v): (f64, f64)) -> (f64, f64) {
    let (sin, cos) = leg.placement.angle.sin_cos();
    (u * cos - v * sin, -(u * sin + v * cos))
}

fn frames(canvas: &mut Canvas, at: Layer, leg: &Leg, view: &View<Plan>) {
    let d = &leg.datums;
    let (front, back) = (d.frame_face.mm(), d.frame_back.mm());
    for module in &leg.modules {
        let (left, right) = (module.left.mm(), module.right.mm());
        let ring = [(left, front), (right, front), (right, back), (left, back)].map(|(u, v)| spot(view, leg, u, v));
        let paint = Paint::both(Pen::DIMENSION.coloured(Colour::GREY_LINE), Fill::tint(Colour::TINT_BEYOND));
        canvas.polyline(at, &ring, true, paint);
    }
    let pen = Pen::SECONDARY.accent().dashed(Dash::FINISHED);
    let (start, end) = (spot(view, leg, 0.0, 0.0), spot(view, leg, d.finished_right.mm(), 0.0));
    if leg.behind.is_none() {
        canvas.line(at, start, end, pen);
    }
    let clad = |face: Face| leg.build(face).total() > Length::ZERO;
    for (face, u) in [(Face::Left, 0.0), (Face::Right, d.finished_right.mm())] {
        if clad(face) {
            canvas.line(at, spot(view, leg, u, 0.0), spot(view, leg, u, d.finished_back.mm()), pen);
        }
    }
}

/// Where the floor bends between spots that it goes through, as far as they lie near.
fn bent(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>) {
    let Some(leg) = set.solved.legs.first() else { return };
    let (x0, y0, x1, y1) = bounds(set.solved);
    let held = |(u, v, _): (f64, f64, f64)| {
        let p = leg.placement.to_plan(LegPoint::new(u, v));
        let inside = p.x > x0 - NEAR && p.x < x1 + NEAR && p.y > y0 - NEAR && p.y < y1 + NEAR;
        inside.then(|| view.point(p))
    };
    bends::draw(canvas, at, &leg.floor.facets, &held);
}

fn feet(canvas: &mut Canvas, at: Layer, set: &Set<'_>, index: usize, leg: &Leg, view: &View<Plan>) {
    let radius = (SOLE * view.scale.factor()).max(0.9);
    let high = set.solved.shop.levelling.high;
    for (foot, it) in leg.feet.iter().enumerate() {
        let p = spot(view, leg, it.u.mm(), it.v.mm());
        let is_high = high == Some((index, foot));
        canvas.circle(at, p, radius, Paint::both(Pen::SECONDARY, Fill::WHITE));
        if is_high {
            canvas.circle(at, p, radius * 0.62, Paint::fill(Fill::ink(Colour::INK)));
        } else {
            canvas.circle(at, p, 0.3, Paint::fill(Fill::ink(Colour::INK)));
        }
    }
}

/// The labels: the front row's before the run, the back row's behind it, further rows' inside.
fn labels(canvas: &mut Canvas, at: Layer, set: &Set<'_>, index: usize, view: &View<Plan>, area: &Area) {
    let leg = &set.solved.legs[index];
    let radius = (SOLE * view.scale.factor()).max(0.9);
    let mut rows: Vec<Length> = leg.feet.iter().map(|foot| foot.v).collect();
    rows.sort();
    rows.dedup();
    let (Some(&first), Some(&last)) = (rows.first(), rows.last()) else { return };
    let label = |foot: usize, out: (f64, f64)| {
        let it = &leg.feet[foot];
        let p = spot(view, leg, it.u.mm(), it.v.mm());
        Label {
            at: p.moved(out.0 * radius, out.1 * radius),
            tag: set.solved.foot_tag(index, foot).to_string(),
            words: height_words(set, it.height),
        }
    };
    let d = &leg.datums;
    // From the foot over the finished face, or over what stands behind.
    let beyond = |depth: Length| view.size(depth.abs()).max(4.0) + 5.0 - radius;
    let outer = [
        (first, (0.0, -1.0), beyond(first - d.frame_face.min(Length::ZERO))),
        (last, (0.0, 1.0), beyond(d.frame_back.max(d.finished_back) - last)),
    ];
    let mut inside: Vec<usize> =
        (0..leg.feet.len()).filter(|&foot| ![first, last].contains(&leg.feet[foot].v)).collect();
    for (v, way, start) in outer.into_iter().take(if first == last { 1 } else { 2 }) {
        let out = turned(leg, way);
        let row = (0..leg.feet.len()).filter(|&foot| leg.feet[foot].v == v);
        // Where another leg stands before the row, the label stays at its foot.
        let far = (start + radius + 3.0) / view.scale.factor();
        let (covered, free): (Vec<usize>, Vec<usize>) = row.partition(|&foot| {
            let it = &leg.feet[foot];
            stands_before(set.solved, index, (it.u.mm() + way.0 * far, it.v.mm() + way.1 * far))
        });
        inside.extend(covered);
        let labels: Vec<Label> = free.iter().map(|&foot| label(foot, out)).collect();
        let unplaced = lanes::draw(canvas, at, &labels, out, start, Some(area));
        inside.extend(unplaced.into_iter().filter_map(|index| free.get(index)));
    }
    for foot in inside {
        lanes::by_foot(canvas, at, &label(foot, (0.0, 0.0)), radius);
    }
}

/// Whether another leg's frame lies over a place (u, v) of a leg.
fn stands_before(solved: &Solved, index: usize, (u, v): (f64, f64)) -> bool {
    let point = solved.legs[index].placement.to_plan(LegPoint::new(u, v));
    let over = |leg: &Leg| {
        let (p, d) = (leg.placement.to_leg(point), &leg.datums);
        p.x > d.frame_left.mm() && p.x < d.frame_right.mm() && p.y > d.frame_face.mm() && p.y < d.frame_back.mm()
    };
    solved.legs.iter().enumerate().any(|(other, leg)| other != index && over(leg))
}

/// The ids of the modules, in their middle.
fn names(canvas: &mut Canvas, at: Layer, leg: &Leg, view: &View<Plan>) {
    let d = &leg.datums;
    let middle = (d.frame_face + d.frame_back).half().mm();
    for module in &leg.modules {
        let p = spot(view, leg, module.centre().mm(), middle);
        let places = [(0.0, 1.25), (0.0, -4.0), (0.0, 6.0), (6.0, 1.25), (-6.0, 1.25)];
        let places: Vec<PaperPoint> = places.iter().map(|(x, y)| p.moved(*x, *y)).collect();
        canvas.text_at_first(at, &places, &module.id, &Style::body().bold().middle());
    }
}

/// Names the finished face of each leg where its line has white beside it.
fn finished(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>) {
    for leg in set.solved.legs.iter().filter(|leg| leg.behind.is_none()) {
        let long = leg.datums.finished_right.mm();
        let (dx, dy) = turned(leg, (1.0, 0.0));
        let upright = dy.abs() > dx.abs();
        let (ox, oy) = turned(leg, (0.0, -1.0));
        let style = Style::body().bold().coloured(Colour::ACCENT).middle();
        let style = if upright { style.upright() } else { style };
        let mut shares: Vec<f64> = (1..40).map(|k| f64::from(k) / 40.0).collect();
        shares.sort_by(|a, b| (a - 0.5).abs().total_cmp(&(b - 0.5).abs()));
        let places: Vec<PaperPoint> = shares
            .iter()
            .map(|share| {
                let p = spot(view, leg, long * share, 0.0).moved(ox * 3.4, oy * 3.4);
                if upright { p.moved(1.25, 0.0) } else { p.moved(0.0, 1.25) }
            })
            .collect();
        if canvas.text_at_first(at, &places, "finished face", &style).is_some() || upright {
            continue;
        }
        // Past the end of the line, where labels stand too close along it.
        let wide = lettering::width("finished face", BODY, Weight::SemiBold);
        let (start, end) = (spot(view, leg, 0.0, 0.0), spot(view, leg, long, 0.0));
        let places = [end.moved(2.0 + wide / 2.0, 1.25), start.moved(-2.0 - wide / 2.0, 1.25)];
        canvas.text_at_first(at, &places, "finished face", &style);
    }
}

/// Names the foot on the highest ground.
fn high_point(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>, area: Area) {
    let Some((index, foot)) = set.solved.shop.levelling.high else { return };
    let Some(leg) = set.solved.legs.get(index) else { return };
    let Some(it) = leg.feet.get(foot) else { return };
    let p = spot(view, leg, it.u.mm(), it.v.mm());
    let words = "high point, 0";
    let wide = lettering::width(words, BODY, Weight::SemiBold);
    // To the nearest place round the words.
    let end = |centre: PaperPoint| {
        let (left, right) = (centre.x - wide / 2.0 - 1.0, centre.x + wide / 2.0 + 1.0);
        match p.x {
            x if x < left => PaperPoint::new(left, centre.y),
            x if x > right => PaperPoint::new(right, centre.y),
            x => PaperPoint::new(x, if p.y > centre.y { centre.y + 2.6 } else { centre.y - 2.6 }),
        }
    };
    let clear = |centre: PaperPoint| {
        let far = p.distance(end(centre));
        canvas.is_clear_of_text(&[p, end(centre)]) && far > 3.0 && far < 28.0
    };
    let Some(centre) = place::free_spot_off(canvas, area, (wide, 3.6), p.moved(14.0, 8.0), &[], clear) else { return };
    let end = end(centre);
    canvas.text(at, centre.moved(-wide / 2.0, 1.25), words, &Style::body().bold());
    marks::leader(canvas, at, &[p, end], LeaderEnd::Dot, Colour::INK);
}

/// Measured spots, each with its height under the high point.
fn spots(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>) {
    let Some(leg) = set.solved.legs.first() else { return };
    let (x0, y0, x1, y1) = bounds(set.solved);
    for &(u, v, z) in &leg.floor.spots {
        let point = leg.placement.to_plan(LegPoint::new(u, v));
        if point.x < x0 - NEAR || point.x > x1 + NEAR || point.y < y0 - NEAR || point.y > y1 + NEAR {
            continue;
        }
        let p = view.point(point);
        let arm = 1.1;
        let free = canvas.is_box_free_of_text(p.x - arm, p.y - arm, p.x + arm, p.y + arm);
        if !free {
            continue;
        }
        canvas.line(at, p.moved(-arm, -arm), p.moved(arm, arm), Pen::DIMENSION);
        canvas.line(at, p.moved(-arm, arm), p.moved(arm, -arm), Pen::DIMENSION);
        let words = set.solved.show.text(Length::from_mm(z));
        let wide = lettering::width(&words, BODY, Weight::Regular);
        let places = [
            p.moved(2.0, 1.25),
            p.moved(-2.0 - wide, 1.25),
            p.moved(-wide / 2.0, -2.2),
            p.moved(-wide / 2.0, 4.7),
            p.moved(2.0, -2.2),
            p.moved(2.0, 4.7),
            p.moved(-2.0 - wide, 4.7),
        ];
        canvas.text_at_first(at, &places, &words, &Style::caption());
    }
}

/// Steps in the floor, as far as they come near.
fn steps(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>) {
    let (x0, y0, x1, y1) = bounds(set.solved);
    let reach = margin(set) / view.scale.factor() * 0.8;
    for step in &set.solved.survey.steps {
        let (a, b) = (step.from, step.to);
        // What of it lies in the view.
        let within = |t: f64| {
            let (x, y) = (a.0 + (b.0 - a.0) * t, a.1 + (b.1 - a.1) * t);
            x > x0 - reach && x < x1 + reach && y > y0 - reach && y < y1 + reach
        };
        let shares: Vec<f64> = (0..=200).map(|k| f64::from(k) / 200.0).filter(|t| within(*t)).collect();
        let (Some(&from), Some(&to)) = (shares.first(), shares.last()) else { continue };
        let p = |t: f64| PaperPoint::new(view.x_mm(a.0 + (b.0 - a.0) * t), view.y_mm(a.1 + (b.1 - a.1) * t));
        canvas.line(at, p(from), p(to), Pen::SECONDARY);
        let words = format!("step down {}", set.solved.show.prose(step.drop));
        let middle = p((from + to) / 2.0);
        let places: Vec<PaperPoint> = [4.2, -1.8, 8.0, -6.0]
            .iter()
            .flat_map(|dy| [0.0, 20.0, -20.0, 40.0, -40.0].map(|dx| middle.moved(dx, *dy)))
            .collect();
        canvas.text_at_first(at, &places, &words, &Style::caption().middle());
    }
}

/// The fall in words: a drop in a length that a level is made for.
pub fn slope_words(set: &Set<'_>, slope: f64) -> String {
    let show = set.solved.show;
    match show.system {
        System::Millimetres => format!("{} in 1 m", show.prose(Length::from_mm(1000.0 * slope.abs()))),
        System::Inches | System::Both => {
            let inch = crate::units::INCH_MARK;
            format!("{} in 12{inch}", show.prose(Length::from_inches(12.0 * slope.abs())))
        }
    }
}

/// An arrow down the floor's steepest fall with what it is, in the nearest white place to the run's front.
fn fall(canvas: &mut Canvas, at: Layer, set: &Set<'_>, view: &View<Plan>, area: Area) {
    let Some(leg) = set.solved.legs.first() else { return };
    let floor = &leg.floor;
    let steep = floor.per_u.hypot(floor.per_v);
    if steep < 2e-4 {
        return;
    }
    let (dx, dy) = turned(leg, (-floor.per_u / steep, -floor.per_v / steep));
    let about = if floor.spots.is_empty() { "floor falls" } else { "floor falls about" };
    let slope = slope_words(set, steep);
    let d = &leg.datums;
    let prefer = spot(view, leg, d.finished_right.mm() * 0.5, d.counter_front.mm()).moved(0.0, 22.0);
    // In one line beside the arrow, or in two beside a shorter one.
    for (arrow, lines) in [(14.0_f64, vec![format!("{about} {slope}")]), (9.0, vec![about.to_owned(), slope])] {
        let wide = lines.iter().map(|line| lettering::width(line, BODY, Weight::Regular)).fold(0.0, f64::max);
        let across = (dx.abs() * arrow).max(3.0);
        let size = (across + 3.0 + wide, (dy.abs() * arrow).max(4.2 * lines.len() as f64));
        let Some(centre) = place::free_spot(canvas, area, size, prefer) else { continue };
        let middle = centre.moved(-size.0 / 2.0 + across / 2.0, 0.0);
        let (a, b) =
            (middle.moved(-dx * arrow / 2.0, -dy * arrow / 2.0), middle.moved(dx * arrow / 2.0, dy * arrow / 2.0));
        canvas.line(at, a, b, Pen::SECONDARY);
        canvas.arrow_sized(at, b, dy.atan2(dx).to_degrees(), Colour::INK, 3.6, 1.3);
        for (k, line) in lines.iter().enumerate() {
            let down = 1.25 + (k as f64 - (lines.len() as f64 - 1.0) / 2.0) * 4.2;
            canvas.text(at, centre.moved(size.0 / 2.0 - wide, down), line, &Style::body());
        }
        return;
    }
}
