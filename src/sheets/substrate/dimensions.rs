//! Dimensions of the sheet: in black from its own edges along the back and at the left, in the accent from the finished
//! faces along the front.

use super::Task;
use super::plan::Plan;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::counter::parts::{self, End, Margins};
use crate::sheets::dimensions::{Across, Dimension, NEXT, Running, Side, Stop};
use crate::solve::{Cutout, Fitting, Plane};
use crate::units::{Length, System};

/// First line over the back edge and under the finished face, mm.
const FIRST: f64 = 10.0;
/// The same under the finished face, beyond its flag, mm.
const BELOW: f64 = 11.0;

/// White round the sheet, mm.
pub fn margins(task: &Task<'_>) -> Margins {
    let number = if task.show.system == System::Both { 25.0 } else { 15.0 };
    Margins { left: 30.0, above: FIRST + 4.0 + number + 4.0, right: 26.0, below: BELOW + 9.0 + number + 4.0 }
}

/// Draws all of them; returns the paper y of the lowest.
pub fn draw(canvas: &mut Canvas, plan: &Plan<'_, '_>) -> f64 {
    let layer = canvas.layer(plan.view.layer, "dimensions");
    along_back(canvas, layer, plan);
    depths(canvas, layer, plan);
    for (fitting, cutout) in parts::cutouts(plan.task.leg, Plane::Substrate) {
        if cutout.extent.x0 >= plan.part.from && cutout.extent.x1 <= plan.part.to {
            inside(canvas, layer, plan, fitting, cutout);
        }
    }
    along_front(canvas, layer, plan)
}

/// Left and right edges of all cutouts of the stretch and its joints, with their names.
fn stops(plan: &Plan<'_, '_>, v: Length) -> Vec<Stop> {
    let stop = |u: Length, name: String| Stop { at: (u, v), name, witness: None };
    let mut stops = Vec::new();
    for (fitting, cutout) in parts::cutouts(plan.task.leg, Plane::Substrate) {
        let hole = cutout.extent;
        for (u, side) in [(hole.x0, "left"), (hole.x1, "right")] {
            if plan.part.holds(u) {
                stops.push(stop(u, format!("{} {side} edge", fitting.mark)));
            }
        }
    }
    stops.extend(
        plan.task.leg.substrate.joints.iter().filter(|&&u| plan.part.holds(u)).map(|&u| stop(u, "joint".to_owned())),
    );
    stops
}

/// Cutouts and the right end from the sheet's left edge, running.
fn along_back(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (view, part, show, extent) = (&plan.view, plan.part, plan.task.show, plan.extent());
    // Beyond a finished back that stands outside the sheet.
    let edge = view.y(extent.y1).min(if plan.task.leg.back.is_open() {
        view.y(plan.task.leg.datums.finished_back)
    } else {
        f64::INFINITY
    });
    let witness = Some(edge - 1.5);
    let mut stops = stops(plan, extent.y1);
    if part.ends == End::Counter {
        stops.push(Stop { at: (extent.x1, extent.y1), name: "sheet right edge".to_owned(), witness });
    }
    for stop in &mut stops {
        stop.witness = witness;
    }
    if stops.is_empty() {
        return;
    }
    let line = edge - FIRST;
    let running = Running {
        datum: (extent.x0, extent.y1),
        datum_name: "sheet left edge".to_owned(),
        line,
        side: Side::Above,
        finished: false,
        stops,
    };
    running.draw_from(canvas, at, view, show, (part.starts != End::Counter).then(|| view.x(part.from)));
}

/// Cutouts from the finished left end, running.
fn along_front(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) -> f64 {
    let (view, part, show, leg) = (&plan.view, plan.part, plan.task.show, plan.task.leg);
    let zero = Length::ZERO;
    let mut stops = stops(plan, zero);
    if part.ends == End::Counter && leg.right.is_open() {
        stops.push(Stop {
            at: (leg.datums.finished_right, zero),
            name: "finished right end".to_owned(),
            witness: None,
        });
    }
    let line = view.y(zero.min(plan.extent().y0)) + BELOW;
    if stops.is_empty() {
        return line;
    }
    let running = Running {
        datum: (zero, zero),
        datum_name: "finished left end".to_owned(),
        line,
        side: Side::Below,
        finished: true,
        stops,
    };
    running.draw_from(canvas, at, view, show, (part.starts != End::Counter).then(|| view.x(part.from)));
    line + running.reach(show) + 6.0
}

/// Depth of the sheet, and of its back edge from the finished face, at the left.
fn depths(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (view, part, show, extent) = (&plan.view, plan.part, plan.task.show, plan.extent());
    if part.starts == End::Break {
        return;
    }
    let (u, zero) = (part.from, Length::ZERO);
    let outside = part.starts == End::Counter && plan.task.leg.left.is_open();
    let edge = view.x(u).min(if outside { view.x(zero) } else { f64::INFINITY });
    let witness = Some(edge - 1.5);
    Dimension::new(Across::Y, (u, extent.y0), (u, extent.y1), edge - FIRST)
        .datums("sheet front edge", "sheet back edge")
        .witnesses(witness, witness)
        .draw(canvas, at, view, show);
    Dimension::new(Across::Y, (u, zero), (u, extent.y1), edge - FIRST - NEXT)
        .datums("finished face", "sheet back edge")
        .from_finished()
        .witnesses(witness, witness)
        .ghosts(false, true)
        .draw(canvas, at, view, show);
    let held = extent.y0 - zero;
    if held > zero && view.size(held) > 0.4 {
        // How far the finished face stands outside the sheet, small, with its arrows outside.
        let line = view.x(part.to) + if part.ends == End::Counter { 12.0 } else { 6.0 };
        let right = view.x(part.to).max(if part.ends == End::Counter {
            view.x(plan.task.leg.datums.finished_right)
        } else {
            0.0
        });
        Dimension::new(Across::Y, (part.to, zero), (part.to, extent.y0), line.max(right + 8.0))
            .datums("finished face", "sheet front edge")
            .from_finished()
            .witnesses(Some(right + 1.5), Some(right + 1.5))
            .draw(canvas, at, view, show);
    }
}

/// Back edge of a notch, or both edges of a well, in the void or at its right, where there is white.
fn inside(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>, fitting: &Fitting, cutout: &Cutout) {
    let (view, show, hole, sheet) = (&plan.view, plan.task.show, cutout.extent, plan.extent());
    let zero = Length::ZERO;
    let (left, right) = (view.x(hole.x0), view.x(hole.x1));
    let upright = |from: Length, to: Length, line: f64| {
        Dimension::new(Across::Y, (hole.x1, from), (hole.x1, to), line).ghosts(true, true)
    };
    if cutout.open {
        let back = format!("{} back edge", fitting.mark);
        let accent = upright(zero, hole.y1, right - 4.0).datums("finished face", back.clone()).from_finished();
        let black = upright(sheet.y0, hole.y1, right - 11.0).datums("sheet front edge", back);
        if right - left > 14.0 && accent.fits(view, show) {
            accent.draw(canvas, at, view, show);
        }
        if right - left > 22.0 && black.fits(view, show) {
            black.draw(canvas, at, view, show);
        }
        return;
    }
    let near = format!("{} front edge", fitting.mark);
    let tries = [5.5, 9.0, 12.5, 16.0].into_iter().flat_map(|off| [right + off, left - off + 4.0]);
    for (accent, from) in [(true, zero), (false, sheet.y0)] {
        let dimension = |line: f64| {
            let start = if line > right { right + 1.0 } else { left - 1.0 };
            let plain = upright(from, hole.y0, line)
                .datums(if accent { "finished face" } else { "sheet front edge" }, near.clone())
                .witnesses(None, Some(start))
                .ghosts(true, false);
            if accent { plain.from_finished() } else { plain }
        };
        let (top, bottom) = (view.y(hole.y0), view.y(from));
        let area = plan.area();
        let free = tries.clone().find(|&x| {
            dimension(x).fits(view, show)
                && x - 5.0 > area.left
                && x + 2.0 < area.right
                && canvas.is_box_free(x - 4.4, top - 0.3, x + 1.2, bottom - 1.4)
        });
        if let Some(x) = free {
            dimension(x).draw(canvas, at, view, show);
        }
    }
}
