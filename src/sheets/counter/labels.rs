//! What is written on the counter: flags of the datums, names of pieces, seams, walls.

use super::names;
use super::parts::{self, End};
use super::plan::{BAND, Plan, solid};
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::findings::Subject;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::{marks, place, title_block};
use crate::solve::{BoundKind, Edge, Leg, Plane};
use crate::units::Length;

/// Flags on the finished face, ends and back.
pub fn flags(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let (leg, view, part) = (plan.leg(), &plan.view, plan.part);
    let layer = canvas.layer(view.layer, "flags");
    let d = &leg.datums;
    let area = plan.area();
    let (left, right) = (view.x(part.from.max(Length::ZERO)), view.x(part.to.min(d.finished_right)));
    on_level(canvas, layer, "finished face", view.y(Length::ZERO), left, right, -1.0);
    if leg.back.is_open() && d.finished_back > Length::ZERO {
        on_level(canvas, layer, "finished back", view.y(d.finished_back), left, right, 1.0);
    }
    let ends = [
        (leg.left.is_open() && part.holds(Length::ZERO), "finished left end", view.x(Length::ZERO), true),
        (leg.right.is_open() && part.holds(d.finished_right), "finished right end", view.x(d.finished_right), false),
    ];
    for (shown, label, x, to_right) in ends {
        if shown {
            on_upright(canvas, layer, label, x, (area.top, area.bottom), to_right);
        }
    }
}

/// A flag on an upright datum line, as high between two places as there is white for it.
pub fn on_upright(canvas: &mut Canvas, at: Layer, label: &str, x: f64, (top, bottom): (f64, f64), to_right: bool) {
    let width = marks::flag_width(label);
    let (near, far) = if to_right { (x + 0.6, x + width + 0.8) } else { (x - width - 0.8, x - 0.6) };
    let mut rows = (0..80).map(|k| top + 3.0 + f64::from(k) * 1.5).take_while(|y| y + 7.0 < bottom);
    if let Some(y) = rows.find(|y| canvas.is_box_free(near, y - 0.5, far, y + 5.7)) {
        marks::flag(canvas, at, PaperPoint::new(x, y), label, to_right);
    }
}

/// A flag on a level datum line: on a short pole over it, or under it.
pub fn on_level(canvas: &mut Canvas, at: Layer, label: &str, y: f64, left: f64, right: f64, side: f64) {
    let width = marks::flag_width(label);
    let (top, low) = if side < 0.0 { (y - 7.4, y - 2.2) } else { (y + 2.2, y + 7.4) };
    let places = (0..400).map(|k| right - width - 6.0 - f64::from(k) * 2.0).take_while(|x| *x > left + 1.0);
    let free = places.into_iter().find(|x| canvas.is_box_free(x - 0.8, top - 0.6, x + width + 0.6, low + 0.6));
    let end = right + 3.5;
    if free.is_none() && canvas.is_box_free(right + 1.5, y - 3.0, end + width + 0.6, y + 3.0) {
        // Past the end of the line, where the sheet goes on white.
        canvas.line(at, PaperPoint::new(right + 1.0, y), PaperPoint::new(end, y), Pen::SECONDARY.accent());
        marks::flag(canvas, at, PaperPoint::new(end, y - 2.6), label, true);
    }
    if let Some(x) = free {
        canvas.line(
            at,
            PaperPoint::new(x, y),
            PaperPoint::new(x, if side < 0.0 { top } else { low }),
            Pen::SECONDARY.accent(),
        );
        marks::flag(canvas, at, PaperPoint::new(x, top), label, true);
    }
}

/// Ring, name and size of each cutout, in its void where that holds them.
pub fn cutouts(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let layer = canvas.layer(plan.view.layer, "names");
    let voids = names::voids(plan.leg(), Plane::Counter, &plan.view);
    for (fitting, cutout) in parts::cutouts(plan.leg(), Plane::Counter) {
        let hole = cutout.extent;
        if hole.x1 >= plan.part.from && hole.x0 <= plan.part.to {
            let ground = names::Ground { area: plan.area(), plate: None };
            names::name_cutout(canvas, layer, plan.task.show, ground, (fitting, cutout), &plan.view, &voids);
        }
    }
}

/// Names and weights of the pieces.
pub fn pieces(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let layer = canvas.layer(plan.view.layer, "pieces");
    let (view, slab) = (&plan.view, plan.area());
    let voids = names::voids(plan.leg(), Plane::Counter, view);
    for piece in &plan.leg().counter.pieces {
        let (from, to) = (piece.extent.x0.max(plan.part.from), piece.extent.x1.min(plan.part.to));
        if from >= to {
            continue;
        }
        let area =
            Area { left: view.x(from) + 1.0, right: view.x(to) - 1.0, top: slab.top + 1.0, bottom: slab.bottom - 1.0 };
        let mass = plan.task.show.mass(piece.mass);
        let wide =
            lettering::width(&piece.name, TITLE, Weight::SemiBold).max(lettering::width(&mass, BODY, Weight::Regular));
        // Right of a notch there is mostly the widest plain stretch.
        let (x, y) = solid_centre(plan, from, to);
        let prefer = PaperPoint::new(view.x(x), view.y(y));
        let Some(spot) = place::free_spot_off(canvas, area, (wide + 4.0, 10.5), prefer, &voids, |_| true) else {
            continue;
        };
        canvas.text(layer, spot.moved(0.0, -0.9), &piece.name, &Style::body().bold().sized(TITLE).middle());
        canvas.text(layer, spot.moved(0.0, 4.4), &mass, &Style::body().middle());
    }
}

/// Middle of the widest stretch of a piece that no cutout interrupts.
fn solid_centre(plan: &Plan<'_, '_>, from: Length, to: Length) -> (Length, Length) {
    let d = &plan.leg().datums;
    let mut stretches = vec![(from, to)];
    for (_, cut) in parts::cutouts(plan.leg(), Plane::Counter) {
        let split = |(a, b): (Length, Length)| [(a, b.min(cut.extent.x0)), (a.max(cut.extent.x1), b)];
        stretches = stretches.into_iter().flat_map(split).filter(|(a, b)| a < b).collect();
    }
    let (a, b) = stretches.into_iter().max_by_key(|(a, b)| *b - *a).unwrap_or((from, to));
    ((a + b).half(), (d.counter_front + d.counter_back).half())
}

/// Rings on the seams, with what each lies over.
pub fn seams(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let layer = canvas.layer(plan.view.layer, "seams");
    let (leg, view) = (plan.leg(), &plan.view);
    for (index, &u) in leg.counter.seams.iter().enumerate() {
        if !plan.part.holds(u) {
            continue;
        }
        let mark = format!("S{}", index + 1);
        let words = if is_carried(leg, u) { "seam, over a frame" } else { "seam, nothing under it" };
        let radius = marks::ring_radius(&mark);
        let wide = lettering::width(words, BODY, Weight::Regular);
        let x = view.x(u);
        let spans = solid(leg, u);
        let rows = spans.iter().flat_map(|&(from, to)| {
            let (top, bottom) = (view.y(to) + radius + 1.0, view.y(from) - radius - 1.0);
            let count = ((bottom - top) / 2.0).max(-1.0);
            (0..=count.floor().max(0.0) as usize)
                .filter(move |_| count >= 0.0)
                .map(move |k| bottom - (count - k as f64).abs() * 2.0)
        });
        let rows: Vec<f64> = rows.collect();
        let free = |y: f64, left: f64, right: f64, canvas: &Canvas| {
            canvas.is_box_free(x - radius - 0.6 - left, y - radius - 0.5, x - 0.6, y + radius + 0.5)
                && canvas.is_box_free(x + 0.6, y - radius - 0.5, x + radius + 0.6 + right, y + radius + 0.5)
        };
        let (y, side) = match (
            rows.iter().find(|&&y| plan.part.to > u && free(y, 0.0, wide + 2.0, canvas)),
            rows.iter().find(|&&y| plan.part.from < u && free(y, wide + 2.0, 0.0, canvas)),
            rows.iter().find(|&&y| free(y, 0.0, 0.0, canvas)),
        ) {
            (Some(&y), _, _) => (y, 1),
            (_, Some(&y), _) => (y, -1),
            (_, _, Some(&y)) => (y, 0),
            _ => continue,
        };
        let at = PaperPoint::new(x, y);
        canvas.rectangle(layer, at.moved(-3.0, -1.8), at.moved(3.0, 1.8), Paint::fill(Fill::WHITE));
        marks::ring(canvas, layer, at, &mark);
        match side {
            1 => canvas.text(layer, at.moved(radius + 1.4, 1.25), words, &Style::body()),
            -1 => canvas.text(layer, at.moved(-radius - 1.4, 1.25), words, &Style::body().end()),
            _ => 0.0,
        };
    }
}

/// Whether a tube of the frame runs front to back under a place.
pub fn is_carried(leg: &Leg, u: Length) -> bool {
    let top = leg.datums.frame_top;
    let under = |member: &&crate::solve::Member| member.body.u.0 <= u && u <= member.body.u.1 && member.body.z.1 == top;
    let tube = leg.members.iter().filter(under).map(|member| member.body.v.1 - member.body.v.0).max();
    tube.is_some() && leg.substrate.screw_lines.iter().any(|line| (line.0 - u).abs() <= Length::from_mm(60.0))
}

/// The word for what an edge meets.
pub fn bound_word(leg: &Leg, edge: &Edge) -> &'static str {
    let upright = edge.from.0 == edge.to.0;
    let bound = match (upright, edge.to.1 > edge.from.1) {
        (true, true) => &leg.right,
        (true, false) => &leg.left,
        (false, _) => &leg.back,
    };
    match bound.kind {
        BoundKind::Pier => "pier",
        BoundKind::Post => "post",
        BoundKind::Leg => "other leg",
        _ => "wall",
    }
}

/// Names of walls and piers, and which way the front is.
pub fn surroundings(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let layer = canvas.layer(plan.view.layer, "surroundings");
    let leg = plan.leg();
    let area = plan.area();
    let (left, right) = plan.bounded();
    let style = Style::caption();
    let short = |name: &str| title_block::shortened(name, 34.0, &style);
    let p = PaperPoint::new;
    let out = area.right + BAND.1 + 3.5;
    if !leg.back.is_open() {
        let name = short(&leg.back.name);
        let width = lettering::width(&name, BODY, Weight::Regular);
        let past = if right || plan.part.ends == End::Counter { out } else { area.right + 6.0 };
        let y = area.top - 2.4;
        let places = [
            p(past, y),
            p(area.left - BAND.1 - 4.0 - width, y),
            p(area.left - 9.0, area.top - BAND.0 - 2.4),
            p(past - width, area.top - BAND.0 - 2.6),
        ];
        canvas.text_at_first(layer, &places, &name, &style);
    }
    if right {
        let places = [p(out, (area.top + area.bottom) / 2.0), p(out, area.top + 8.0), p(area.right, area.bottom + 6.5)];
        canvas.text_at_first(layer, &places, &short(&leg.right.name), &style);
    }
    if left {
        let name = short(&leg.left.name);
        let width = lettering::width(&name, BODY, Weight::Regular);
        let places = [
            p(area.left - BAND.1, area.bottom + 6.8),
            p(area.left - BAND.1 - width, area.bottom + 6.8),
            p(area.left - width - 14.0, area.top - 8.0),
        ];
        canvas.text_at_first(layer, &places, &name, &style);
    }
    front(canvas, layer, area);
}

/// The word front with an arrow towards the cook.
pub fn front(canvas: &mut Canvas, at: Layer, area: Area) {
    let columns = [area.right + 18.0, area.right + 22.0, area.left - 34.0, area.left - 38.0];
    let spots =
        columns.into_iter().flat_map(|x| [12.0, 18.0, 26.0, 4.0, -2.0].map(|up| PaperPoint::new(x, area.bottom - up)));
    let free = |at: &PaperPoint| canvas.is_box_free(at.x - 5.0, at.y - 4.0, at.x + 5.0, at.y + 12.0);
    let Some(spot) = spots.into_iter().find(free) else { return };
    canvas.text(at, spot, "front", &Style::caption().middle());
    canvas.line(at, spot.moved(0.0, 2.0), spot.moved(0.0, 9.0), Pen::DIMENSION.coloured(Colour::GREY_TEXT));
    canvas.arrow(at, spot.moved(0.0, 10.5), 90.0, Colour::GREY_TEXT);
}

/// Numbered marks of what the rules found.
pub fn findings(canvas: &mut Canvas, plan: &Plan<'_, '_>) {
    let layer = canvas.layer(plan.view.layer, "findings");
    let task = plan.task;
    for fitting in &plan.leg().fittings {
        let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
        if plan.part.holds(cutout.extent.centre_x()) {
            let place = plan.view.at(cutout.extent.centre_x(), cutout.extent.centre_y());
            task.set.mark(canvas, layer, task.kind, &fitting.subject(), place);
        }
    }
    let area = plan.area();
    let place = PaperPoint::new((area.left + area.right) / 2.0, (area.top + area.bottom) / 2.0);
    task.set.mark(canvas, layer, task.kind, &Subject::Counter(task.index), place);
}
