//! The counter from above: walls, pieces, cutouts, datum lines; then what is written on it.

use super::parts::{self, End, Margins, Part};
use super::tag::Tag;
use super::{Task, dimensions, edges, labels, radii};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{Leg as LegSpace, LegPoint, PaperPoint, Region};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::materials::{self, Material};
use crate::sheets::scale::Scale;
use crate::sheets::view::View;
use crate::sheets::{marks, title_block};
use crate::solve::{Leg, Plane};
use crate::units::Length;

/// Height of the view's heading, mm.
pub const HEADING: f64 = 9.0;
/// Width of the band of wall that is drawn, mm: behind, and at the ends.
pub const BAND: (f64, f64) = (6.2, 9.0);

/// One stretch of the counter on a sheet.
pub struct Plan<'t, 's> {
    pub task: &'t Task<'s>,
    pub part: Part,
    pub view: View<LegSpace>,
}

/// White round the counter, mm.
pub fn margins(task: &Task<'_>, plane: Plane) -> Margins {
    let leg = task.leg;
    let stops = parts::cutouts(leg, plane).len() + leg.counter.seams.len() + 1;
    let name = |name: &str| crate::drawing::lettering::width(name, 2.5, Default::default()).min(34.0);
    let right = if leg.right.is_open() { 0.0 } else { name(&leg.right.name) };
    let back = if leg.back.is_open() { 0.0 } else { name(&leg.back.name) };
    let second = if task.show.system == crate::units::System::Both { 10.0 } else { 0.0 };
    Margins {
        left: if leg.left.is_open() { 25.0 } else { 33.0 },
        above: dimensions::first_above(leg) + 5.0 + if leg.counter.seams.is_empty() { 0.0 } else { 7.0 },
        right: 18.0 + right.max(back).max(8.0),
        below: dimensions::FIRST_BELOW + (stops as f64 * 7.0).min(22.0 + second) + 2.0,
    }
}

/// Draws the stretch with its heading into an area; returns the paper y of its lowest ink.
pub fn draw(
    canvas: &mut Canvas,
    task: &Task<'_>,
    part: Part,
    scale: Scale,
    area: Area,
    margins: Margins,
    legend: &mut Vec<Tag>,
) -> f64 {
    let d = &task.leg.datums;
    let spare = area.width() - margins.left - margins.right - part.width().mm() * scale.factor();
    let origin = PaperPoint::new(
        area.left + margins.left + (spare / 2.0).max(0.0) - part.from.mm() * scale.factor(),
        area.top + margins.above + d.counter_back.mm() * scale.factor(),
    );
    let view = View::open(canvas, "counter", scale, origin);
    let plan = Plan { task, part, view };
    heading(canvas, &plan, area);
    let layer = canvas.layer(plan.view.layer, "counter-plan");
    walls(canvas, layer, &plan);
    slab(canvas, layer, &plan);
    seams(canvas, layer, &plan);
    holes(canvas, layer, &plan);
    finished_lines(canvas, layer, &plan);
    let bottom = dimensions::draw(canvas, &plan);
    labels::flags(canvas, &plan);
    labels::cutouts(canvas, &plan);
    edges::draw(canvas, &plan, legend);
    radii::draw(canvas, &plan);
    labels::pieces(canvas, &plan);
    labels::seams(canvas, &plan);
    labels::surroundings(canvas, &plan);
    labels::findings(canvas, &plan);
    bottom
}

fn heading(canvas: &mut Canvas, plan: &Plan<'_, '_>, area: Area) {
    let (show, part) = (plan.task.show, plan.part);
    let whole = part.starts == End::Counter && part.ends == End::Counter;
    let title = match whole {
        true => "Counter, finished outline from above".to_owned(),
        false => format!("Counter from above, part {} of {}", part.number.0, part.number.1),
    };
    let y = area.top - HEADING + 3.5;
    let scale = plan.view.scale;
    let end = title_block::heading(canvas, area.left, y, &title, &scale.words());
    let layer = canvas.layer(plan.view.layer, "scale-bar");
    if area.right - end > 90.0 {
        marks::scale_bar(canvas, layer, area.right, y, scale, show.system);
    }
}

impl Plan<'_, '_> {
    /// Paper x of the stretch's ends.
    pub fn ends(&self) -> (f64, f64) {
        (self.view.x(self.part.from), self.view.x(self.part.to))
    }

    /// Paper y of the counter's back and front edges.
    pub fn back_front(&self) -> (f64, f64) {
        let d = &self.leg().datums;
        (self.view.y(d.counter_back), self.view.y(d.counter_front))
    }

    pub fn leg(&self) -> &Leg {
        self.task.leg
    }

    /// Whether the stretch shows the counter's left end, and it is against something; likewise the right.
    pub fn bounded(&self) -> (bool, bool) {
        (
            self.part.starts == End::Counter && !self.leg().left.is_open(),
            self.part.ends == End::Counter && !self.leg().right.is_open(),
        )
    }

    /// The counter's box on the sheet.
    pub fn area(&self) -> Area {
        let ((left, right), (top, bottom)) = (self.ends(), self.back_front());
        Area { left, top, right, bottom }
    }
}

/// Bands of the walls and piers that bound it.
fn walls(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view) = (plan.leg(), &plan.view);
    let (left, right) = plan.bounded();
    let (x0, x1) = plan.ends();
    let p = PaperPoint::new;
    let (face_left, face_right) = (view.x(leg.left.at_counter).min(x0), view.x(leg.right.at_counter).max(x1));
    let (out_left, out_right) = (face_left - BAND.1, face_right + BAND.1);
    let (back, front) = plan.back_front();
    let behind = !leg.back.is_open();
    let face_back = view.y(leg.back.at_counter).min(back);
    let top = if behind { face_back - BAND.0 } else { back - 4.0 };
    let low = front + 2.5;
    let mut faces: Vec<[PaperPoint; 2]> = Vec::new();
    let mut bands = Vec::new();
    if behind {
        let past = if plan.part.starts == End::Counter { 9.0 } else { 3.0 };
        let from = if left { out_left } else { x0 - past };
        let past = if plan.part.ends == End::Counter { 9.0 } else { 3.0 };
        let to = if right { out_right } else { x1 + past };
        bands.push((p(from, top), p(to, face_back)));
        faces.push([
            p(if left { face_left } else { from }, face_back),
            p(if right { face_right } else { to }, face_back),
        ]);
        if !left {
            marks::break_line(canvas, at, p(from, top - 1.0), p(from, face_back + 1.0));
        }
        if !right {
            marks::break_line(canvas, at, p(to, top - 1.0), p(to, face_back + 1.0));
        }
    }
    let start = if behind { face_back } else { top };
    if left {
        bands.push((p(out_left, start), p(face_left, low)));
        faces.push([p(face_left, start), p(face_left, low)]);
        marks::break_line(canvas, at, p(out_left, top - 1.0), p(out_left, low + 1.0));
    }
    if right {
        bands.push((p(face_right, start), p(out_right, low)));
        faces.push([p(face_right, start), p(face_right, low)]);
        marks::break_line(canvas, at, p(out_right, top - 1.0), p(out_right, low + 1.0));
    }
    for (a, b) in bands {
        canvas.rectangle(at, a, b, Paint::fill(Fill::tint(Colour(0xee, 0xee, 0xee))));
        let ring = crate::sheets::canvas::corners(a, b).to_vec();
        materials::hatch(canvas, at, &[ring], Material::Wall, false);
    }
    for [a, b] in faces {
        canvas.line(at, a, b, Pen::VISIBLE.square());
    }
}

const STONE: Fill = Fill::tint(Colour::TINT_BEYOND);

/// The pieces, their free and joined edges, and the footprint of an upstand.
fn slab(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (view, part, d) = (&plan.view, plan.part, &plan.leg().datums);
    let facts = view.feature("counter", part.from, d.counter_front, part.to, d.counter_back);
    let whole = part.starts == End::Counter && part.ends == End::Counter;
    let region = &plan.leg().counter.region;
    if whole {
        let steps = view.steps(&region.outer);
        canvas.shape(at, Shape::Steps(steps.clone()), Paint::fill(STONE), "", facts);
        splash(canvas, at, plan);
        canvas.steps(at, steps, Paint::pen(Pen::CUT));
        return;
    }
    let ring = stretch(region, view, part);
    let places: Vec<PaperPoint> = ring.iter().map(|&point| view.point(point)).collect();
    canvas.shape(at, Shape::Steps(crate::sheets::canvas::through(&places, true)), Paint::fill(STONE), "", facts);
    splash(canvas, at, plan);
    let off = |u: Length, x: f64| (x - view.x(u)).abs() < 1e-6;
    for (index, &a) in places.iter().enumerate() {
        let b = places[(index + 1) % places.len()];
        let joined = |u: Length, end: End| end != End::Counter && off(u, a.x) && off(u, b.x);
        if !joined(part.from, part.starts) && !joined(part.to, part.ends) {
            canvas.line(at, a, b, Pen::CUT.round());
        }
    }
    for (u, end) in [(part.from, part.starts), (part.to, part.ends)] {
        if end == End::Break {
            let (top, bottom) = plan.back_front();
            marks::break_line(
                canvas,
                at,
                PaperPoint::new(view.x(u), top - 1.5),
                PaperPoint::new(view.x(u), bottom + 1.5),
            );
        }
    }
}

/// The outline of a stretch that is only part of the counter.
fn stretch(region: &Region, view: &View<LegSpace>, part: Part) -> Vec<LegPoint> {
    let tolerance = 0.02 / view.scale.factor();
    let points: Vec<LegPoint> = region.outer.flattened(tolerance).iter().map(|&(x, y)| LegPoint::new(x, y)).collect();
    parts::clipped(&points, part.from.mm(), part.to.mm())
}

fn splash(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view) = (plan.leg(), &plan.view);
    let Some(splash) = plan.task.solved.counter.splash else { return };
    let back = leg.datums.counter_back;
    for (_, left, right, _) in &leg.counter.splashes {
        let (left, right) = ((*left).max(plan.part.from), (*right).min(plan.part.to));
        if left >= right {
            continue;
        }
        let (a, b) = (view.at(left, back - splash.thickness), view.at(right, back));
        canvas.rectangle(at, a, b, Paint::fill(Fill::tint(Colour(0xe0, 0xe0, 0xe0))));
        canvas.line(at, a, PaperPoint::new(b.x, a.y), Pen::FINE.coloured(Colour::GREY_TEXT));
    }
}

/// Seams, where there is material on both sides.
fn seams(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view) = (plan.leg(), &plan.view);
    for &u in leg.counter.seams.iter().filter(|&&u| plan.part.holds(u)) {
        for (from, to) in solid(leg, u) {
            let line = Shape::Line(view.at(u, from), view.at(u, to));
            canvas.shape(at, line, Paint::pen(Pen::VISIBLE), "seam", Vec::new());
        }
    }
}

/// Where a line across the counter at u runs through material: spans of v.
pub fn solid(leg: &Leg, u: Length) -> Vec<(Length, Length)> {
    let d = &leg.datums;
    let mut spans = vec![(d.counter_front, d.counter_back)];
    for (_, cut) in parts::cutouts(leg, Plane::Counter) {
        let hole = cut.extent;
        if hole.x0 >= u || hole.x1 <= u {
            continue;
        }
        let split = |(from, to): (Length, Length)| [(from, to.min(hole.y0)), (from.max(hole.y1), to)];
        spans = spans.into_iter().flat_map(split).filter(|(from, to)| from < to).collect();
    }
    spans
}

/// Cutouts, their centrelines, and where the edge would run across a mouth.
fn holes(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view) = (plan.leg(), &plan.view);
    let front = leg.datums.counter_front;
    for (fitting, cutout) in parts::cutouts(leg, Plane::Counter) {
        let hole = cutout.extent;
        if hole.x1 < plan.part.from || hole.x0 > plan.part.to {
            continue;
        }
        let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", Plane::Counter.word().to_owned())];
        let steps = Shape::Steps(view.steps(&cutout.outline));
        if cutout.open {
            canvas.shape(at, steps, Paint::pen(Pen::GHOST), "cutout", facts);
            let pen = Pen::FINE.coloured(Colour::GREY_TEXT).dashed(Dash::PHANTOM);
            canvas.line(at, view.at(hole.x0, front), view.at(hole.x1, front), pen);
        } else {
            canvas.shape(at, steps, Paint::both(Pen::CUT, Fill::WHITE), "cutout", facts);
        }
    }
}

/// The finished faces and ends that lie under the counter.
fn finished_lines(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view, part) = (plan.leg(), &plan.view, plan.part);
    let d = &leg.datums;
    let zero = Length::ZERO;
    let back = match (leg.back.is_open(), plan.task.solved.counter.splash) {
        (true, _) => d.finished_back,
        (false, Some(splash)) => d.counter_back - splash.thickness,
        (false, None) => d.counter_back,
    };
    let (from, to) = (part.from.max(zero), part.to.min(d.finished_right));
    let mut lines = vec![("finished face", (from, zero), (to, zero))];
    if leg.back.is_open() && d.finished_back > zero {
        lines.push(("finished back", (from, d.finished_back), (to, d.finished_back)));
    }
    if leg.left.is_open() && part.holds(zero) {
        lines.push(("finished left end", (zero, zero), (zero, back)));
    }
    if leg.right.is_open() && part.holds(d.finished_right) {
        lines.push(("finished right end", (d.finished_right, zero), (d.finished_right, back)));
    }
    for (name, a, b) in lines {
        let line = Shape::Line(view.at(a.0, a.1), view.at(b.0, b.1));
        let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
        canvas.shape(at, line, Paint::pen(pen), "datum", vec![("data-datum", name.to_owned())]);
    }
}
