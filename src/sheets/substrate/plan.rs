//! The sheet from above: the frame under it, its outline, cutouts, joints, screw lines, finished faces.

use super::{Task, dimensions, screws, supports};
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::findings::Subject;
use crate::geometry::{Leg as LegSpace, LegPoint, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint, through};
use crate::sheets::counter::parts::{self, End, Margins, Part};
use crate::sheets::counter::{labels, names};
use crate::sheets::frame::Area;
use crate::sheets::hidden::{self, Hidden};
use crate::sheets::scale::Scale;
use crate::sheets::view::View;
use crate::sheets::{marks, place, title_block};
use crate::solve::{Extent, Plane, SheetPart, SheetPiece};
use crate::units::Length;

/// Height of the view's heading, mm.
pub const HEADING: f64 = 9.0;

/// One stretch of the sheet on a page.
pub struct Plan<'t, 's> {
    pub task: &'t Task<'s>,
    pub part: Part,
    pub view: View<LegSpace>,
}

impl Plan<'_, '_> {
    /// The sheet's own box.
    pub fn extent(&self) -> Extent {
        self.task.leg.substrate.extent
    }

    /// What is added to the frame under it.
    fn hidden(&self) -> Vec<Hidden<'_>> {
        let (task, part) = (self.task, self.part);
        supports::shown(task.solved, (task.index, task.leg), (part.from, part.to), |u, v| self.view.at(u, v))
    }

    /// Its box on the page.
    pub fn area(&self) -> Area {
        let extent = self.extent();
        Area {
            left: self.view.x(self.part.from),
            right: self.view.x(self.part.to),
            top: self.view.y(extent.y1),
            bottom: self.view.y(extent.y0),
        }
    }
}

/// Draws the stretch with its heading into an area; returns the paper y of its lowest ink.
pub fn draw(canvas: &mut Canvas, task: &Task<'_>, part: Part, scale: Scale, area: Area, margins: Margins) -> f64 {
    let extent = task.leg.substrate.extent;
    let factor = scale.factor();
    let spare = area.width() - margins.left - margins.right - part.width().mm() * factor;
    let origin = PaperPoint::new(
        area.left + margins.left + (spare / 2.0).max(0.0) - part.from.mm() * factor,
        area.top + margins.above + extent.y1.mm() * factor,
    );
    let view = View::open(canvas, "substrate", scale, origin);
    let plan = Plan { task, part, view };
    heading(canvas, &plan, area);
    let layer = canvas.layer(plan.view.layer, "substrate-plan");
    sheet(canvas, layer, &plan);
    frames(canvas, layer, &plan);
    cutouts(canvas, layer, &plan);
    joints(canvas, layer, &plan);
    screw_lines(canvas, layer, &plan);
    finished_lines(canvas, layer, &plan);
    // Small holes are named first: their marks may hide the frame under the sheet, but no dimension.
    name_cutouts(canvas, &plan, true);
    let bottom = dimensions::draw(canvas, &plan);
    write(canvas, &plan);
    bottom
}

fn heading(canvas: &mut Canvas, plan: &Plan<'_, '_>, area: Area) {
    let (show, part) = (plan.task.show, plan.part);
    let whole = part.starts == End::Counter && part.ends == End::Counter;
    let title = match whole {
        true => "Substrate from above".to_owned(),
        false => format!("Substrate from above, part {} of {}", part.number.0, part.number.1),
    };
    let y = area.top - HEADING + 3.5;
    let end = title_block::heading(canvas, area.left, y, &title, &plan.view.scale.words());
    let layer = canvas.layer(plan.view.layer, "scale-bar");
    if area.right - end > 90.0 {
        marks::scale_bar(canvas, layer, area.right, y, plan.view.scale, show.system);
    }
}

/// The outline, with what is added to the frame under it; broken off or joined where the stretch ends before the sheet does.
fn sheet(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (view, part, extent) = (&plan.view, plan.part, plan.extent());
    let facts = view.feature("substrate", part.from, extent.y0, part.to, extent.y1);
    let outer = &plan.task.leg.substrate.region.outer;
    let tint = Paint::fill(Fill::tint(Colour::TINT_BEYOND));
    if part.starts == End::Counter && part.ends == End::Counter {
        let steps = view.steps(outer);
        canvas.shape(at, Shape::Steps(steps.clone()), tint, "", facts);
        hidden::draw(canvas, at, &plan.hidden());
        canvas.steps(at, steps, Paint::pen(Pen::CUT));
        return;
    }
    let tolerance = 0.02 / view.scale.factor();
    let points: Vec<LegPoint> = outer.flattened(tolerance).iter().map(|&(x, y)| LegPoint::new(x, y)).collect();
    let ring = parts::clipped(&points, part.from.mm(), part.to.mm());
    let places: Vec<PaperPoint> = ring.iter().map(|&point| view.point(point)).collect();
    canvas.shape(at, Shape::Steps(through(&places, true)), tint, "", facts);
    hidden::draw(canvas, at, &plan.hidden());
    for (index, &a) in places.iter().enumerate() {
        let b = places[(index + 1) % places.len()];
        let joined = |u: Length, end: End| {
            end != End::Counter && (a.x - view.x(u)).abs() < 1e-6 && (b.x - view.x(u)).abs() < 1e-6
        };
        if !joined(part.from, part.starts) && !joined(part.to, part.ends) {
            canvas.line(at, a, b, Pen::CUT.round());
        }
    }
    let area = plan.area();
    for (u, end) in [(part.from, part.starts), (part.to, part.ends)] {
        if end == End::Break {
            let (a, b) = (PaperPoint::new(view.x(u), area.top - 1.5), PaperPoint::new(view.x(u), area.bottom + 1.5));
            marks::break_line(canvas, at, a, b);
        }
    }
}

/// Tubes at the frame's top, hidden under the sheet.
fn frames(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let leg = plan.task.leg;
    let (view, part) = (&plan.view, plan.part);
    let top = leg.datums.frame_top;
    let tubes = leg.members.iter().filter(|member| member.body.z.1 == top);
    let holes: Vec<Extent> = parts::cutouts(leg, Plane::Substrate).iter().map(|(_, cutout)| cutout.extent).collect();
    let mut drawn: Vec<((Length, Length), (Length, Length))> = Vec::new();
    for tube in tubes {
        let (u, v) = ((tube.body.u.0.max(part.from), tube.body.u.1.min(part.to)), tube.body.v);
        if u.0 >= u.1 || drawn.contains(&(u, v)) {
            continue;
        }
        drawn.push((u, v));
        let pen = Pen::FINE.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN);
        for level in [v.0, v.1] {
            for (a, b) in
                outside(u, &holes, |hole| (hole.y0 <= level && level <= hole.y1).then_some((hole.x0, hole.x1)))
            {
                canvas.line(at, view.at(a, level), view.at(b, level), pen);
            }
        }
        for upright in [u.0, u.1] {
            for (a, b) in
                outside(v, &holes, |hole| (hole.x0 <= upright && upright <= hole.x1).then_some((hole.y0, hole.y1)))
            {
                canvas.line(at, view.at(upright, a), view.at(upright, b), pen);
            }
        }
    }
}

/// What is left of a stretch outside the spans that holes take from it.
fn outside(
    stretch: (Length, Length),
    holes: &[Extent],
    span: impl Fn(&Extent) -> Option<(Length, Length)>,
) -> Vec<(Length, Length)> {
    let mut left = vec![stretch];
    for (from, to) in holes.iter().filter_map(span) {
        let split = |(a, b): (Length, Length)| [(a, b.min(from)), (a.max(to), b)];
        left = left.into_iter().flat_map(split).filter(|(a, b)| a < b).collect();
    }
    left
}

fn cutouts(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let view = &plan.view;
    for (fitting, cutout) in parts::cutouts(plan.task.leg, Plane::Substrate) {
        if cutout.extent.x1 < plan.part.from || cutout.extent.x0 > plan.part.to {
            continue;
        }
        let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", Plane::Substrate.word().to_owned())];
        let paint = if cutout.open { Paint::pen(Pen::GHOST) } else { Paint::both(Pen::CUT, Fill::WHITE) };
        canvas.shape(at, Shape::Steps(view.steps(&cutout.outline)), paint, "cutout", facts);
    }
}

/// Joints of the sheet, over supports, where there is material.
fn joints(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (view, extent) = (&plan.view, plan.extent());
    for &u in plan.task.leg.substrate.joints.iter().filter(|&&u| plan.part.holds(u)) {
        let holes: Vec<Extent> =
            parts::cutouts(plan.task.leg, Plane::Substrate).iter().map(|(_, cutout)| cutout.extent).collect();
        let across = |hole: &Extent| (hole.x0 < u && u < hole.x1).then_some((hole.y0, hole.y1));
        for (from, to) in outside((extent.y0, extent.y1), &holes, across) {
            canvas.shape(
                at,
                Shape::Line(view.at(u, from), view.at(u, to)),
                Paint::pen(Pen::VISIBLE),
                "joint",
                Vec::new(),
            );
        }
    }
}

fn screw_lines(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let view = &plan.view;
    for (u, from, to) in screws::lines(plan.task) {
        if !plan.part.holds(u) {
            continue;
        }
        canvas.line(at, view.at(u, from), view.at(u, to), Pen::DIMENSION.dashed(Dash::CENTRE));
        // A cross at each end: the first and the last screw.
        for v in [from, to] {
            let place = view.at(u, v);
            canvas.line(at, place.moved(-0.8, -0.8), place.moved(0.8, 0.8), Pen::DIMENSION);
            canvas.line(at, place.moved(-0.8, 0.8), place.moved(0.8, -0.8), Pen::DIMENSION);
        }
    }
}

/// The finished faces, outside the sheet's edges by its hold-back.
fn finished_lines(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view, part) = (plan.task.leg, &plan.view, plan.part);
    let (d, zero) = (&leg.datums, Length::ZERO);
    let (x0, x1) = (view.x(part.from.min(zero.max(part.from))), view.x(part.to));
    let left = if part.starts == End::Counter { view.x(zero.min(part.from)) } else { x0 };
    let right = if part.ends == End::Counter { view.x(d.finished_right.max(part.to)) } else { x1 };
    let (face, back) = (view.y(zero), view.y(d.finished_back.max(plan.extent().y1)));
    let p = PaperPoint::new;
    let mut lines = vec![("finished face", p(left, face), p(right, face))];
    if leg.back.is_open() {
        lines.push(("finished back", p(left, view.y(d.finished_back)), p(right, view.y(d.finished_back))));
    }
    if leg.left.is_open() && part.starts == End::Counter {
        lines.push(("finished left end", p(view.x(zero), face), p(view.x(zero), back)));
    }
    if leg.right.is_open() && part.ends == End::Counter {
        lines.push(("finished right end", p(view.x(d.finished_right), face), p(view.x(d.finished_right), back)));
    }
    for (name, a, b) in lines {
        let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
        canvas.shape(at, Shape::Line(a, b), Paint::pen(pen), "datum", vec![("data-datum", name.to_owned())]);
    }
}

/// Flags, names, material, joints and findings, each on the first white place.
fn write(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let (task, view, part) = (plan.task, &plan.view, plan.part);
    let (leg, zero) = (task.leg, Length::ZERO);
    let layer = canvas.layer(view.layer, "names");
    let area = plan.area();
    flag_below(canvas, layer, plan, area);
    if leg.left.is_open() && part.starts == End::Counter {
        end_flag(canvas, layer, "finished left end", view.x(zero), area, false);
    }
    if leg.right.is_open() && part.ends == End::Counter {
        end_flag(canvas, layer, "finished right end", view.x(leg.datums.finished_right), area, true);
    }
    name_cutouts(canvas, plan, false);
    pieces(canvas, layer, plan);
    labels::front(canvas, layer, area);
    let p = PaperPoint::new;
    let own = [p(area.left, area.bottom), p(area.right, area.bottom), p(area.right, area.top), p(area.left, area.top)];
    hidden::marks(canvas, layer, &plan.hidden(), &own);
    for (index, fitting) in leg.fittings.iter().enumerate() {
        let Some(cutout) = fitting.cutout(Plane::Substrate) else { continue };
        if part.holds(cutout.extent.centre_x()) {
            let place = view.at(cutout.extent.centre_x(), cutout.extent.centre_y());
            task.set.mark(canvas, layer, task.kind, &Subject::Fitting(task.index, index), place);
        }
    }
}

/// Marks and names of the cutouts that are too small to hold theirs, or of the others.
fn name_cutouts(canvas: &mut Canvas, plan: &Plan<'_, '_>, small: bool) {
    let (view, part, leg) = (&plan.view, plan.part, plan.task.leg);
    let layer = canvas.layer(view.layer, "names");
    let voids = names::voids(leg, Plane::Substrate, view);
    let ground = names::Ground { area: plan.area(), plate: Some(Fill::tint(Colour::TINT_BEYOND)) };
    for (fitting, cutout) in parts::cutouts(leg, Plane::Substrate) {
        let hole = cutout.extent;
        if hole.x1 < part.from || hole.x0 > part.to {
            continue;
        }
        let least = view.size(hole.width().min(hole.height()));
        if (least < 2.0 * marks::ring_radius(&fitting.mark) + 2.0) == small {
            names::name_cutout(canvas, layer, plan.task.show, ground, (fitting, cutout), view, &voids);
        }
    }
}

/// The flag of a finished end: on a pole past the sheet's back, flying outwards, or else inside the sheet.
fn end_flag(canvas: &mut Canvas, at: Layer, label: &str, x: f64, area: Area, to_right: bool) {
    let (width, border) = (marks::flag_width(label), crate::sheets::frame::border(canvas));
    let (low, high) = if to_right { (x - 0.3, x + width + 0.8) } else { (x - width - 0.8, x + 0.3) };
    let foot = area.top - 1.2;
    let free =
        low > border.left + 3.0 && high < border.right - 3.0 && canvas.is_box_free(low, foot - 8.0, high, foot - 1.6);
    if free {
        canvas.line(at, PaperPoint::new(x, foot), PaperPoint::new(x, foot - 7.4), Pen::SECONDARY.accent());
        marks::flag(canvas, at, PaperPoint::new(x, foot - 7.4), label, to_right);
    } else {
        labels::on_upright(canvas, at, label, x, (area.top, area.bottom), !to_right);
    }
}

/// The flag of the finished face, hanging under its line, or standing over it inside the sheet.
fn flag_below(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>, area: Area) {
    let y = plan.view.y(Length::ZERO);
    let width = marks::flag_width("finished face");
    let places = (0..200).map(|k| area.right - width - 6.0 - f64::from(k) * 2.0).take_while(|x| *x > area.left + 1.0);
    let free = places.into_iter().find(|x| canvas.is_box_free(x - 0.8, y + 1.6, x + width + 0.6, y + 7.6));
    match free {
        Some(x) => {
            canvas.line(at, PaperPoint::new(x, y), PaperPoint::new(x, y + 7.2), Pen::SECONDARY.accent());
            marks::flag(canvas, at, PaperPoint::new(x, y + 2.0), "finished face", true);
        }
        None => labels::on_level(canvas, at, "finished face", y, area.left, area.right, -1.0),
    }
}

/// The mark of the piece at a place along the leg, with a capital: the one that lists, labels and the cutting sheet use.
fn mark(plan: &Plan<'_, '_>, u: Length, index: usize) -> String {
    let (solved, leg) = (plan.task.solved, plan.task.leg);
    let own = |piece: &&SheetPiece| {
        piece.part == SheetPart::Substrate && solved.legs.get(piece.leg).is_some_and(|other| other.id == leg.id)
    };
    let here = |piece: &&SheetPiece| piece.extent.x0 < u && u < piece.extent.x1;
    let found = solved.shop.pieces.iter().filter(own).find(here).map(|piece| piece.mark.as_str());
    let mark = found.map_or_else(|| format!("sheet {}", index + 1), str::to_owned);
    mark.chars().take(1).flat_map(char::to_uppercase).chain(mark.chars().skip(1)).collect()
}

/// Name of each piece of sheet with its size, and the marks of the joints.
fn pieces(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view, part, area) = (plan.task.leg, &plan.view, plan.part, plan.area());
    let extent = plan.extent();
    let mut ends = vec![extent.x0];
    ends.extend(&leg.substrate.joints);
    ends.push(extent.x1);
    let several = ends.len() > 2;
    let holes: Vec<Extent> = parts::cutouts(leg, Plane::Substrate).iter().map(|(_, cutout)| cutout.extent).collect();
    for (index, pair) in ends.windows(2).enumerate() {
        let (from, to) = (pair[0].max(part.from), pair[1].min(part.to));
        if from >= to {
            continue;
        }
        // Where nothing is cut out, the widest first.
        let cuts = |hole: &Extent| Some((hole.x0, hole.x1));
        let mut solid = outside((from, to), &holes, cuts);
        solid.sort_by_key(|(a, b)| *a - *b);
        let name = if several { mark(plan, (from + to).half(), index) } else { "One sheet".to_owned() };
        let words = format!(
            "{} {}",
            plan.task.solved.substrate.name,
            plan.task.show.text(plan.task.solved.substrate.thickness)
        );
        let wide = lettering::width(&name, TITLE, Weight::SemiBold);
        let below = lettering::width(&words, BODY, Weight::Regular);
        let spot = |canvas: &Canvas, size: (f64, f64)| {
            solid.iter().find_map(|&(a, b)| {
                let (left, right) = (view.x(a) + 1.0, view.x(b) - 1.0);
                let stretch = Area { left, right, top: area.top + 1.0, bottom: area.bottom - 1.0 };
                place::free_spot(
                    canvas,
                    stretch,
                    size,
                    PaperPoint::new((left + right) / 2.0, (area.top + area.bottom) / 2.0),
                )
            })
        };
        if let Some(spot) = spot(canvas, (wide.max(below) + 3.0, 10.5)) {
            canvas.text(at, spot.moved(0.0, -0.9), &name, &Style::body().bold().sized(TITLE).middle());
            canvas.text(at, spot.moved(0.0, 4.4), &words, &Style::body().middle());
        } else if let Some(spot) = spot(canvas, (wide + 2.0, 4.5)) {
            canvas.text(at, spot.moved(0.0, 1.6), &name, &Style::body().bold().sized(TITLE).middle());
        }
    }
}
