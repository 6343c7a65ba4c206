//! The run from above: frames under the counter, the counter, its cutouts, bodies, seams, finished faces, feet.

use super::seen::Seen;
use super::supports;
use crate::drawing::Colour;
use crate::drawing::{Dash, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::solve::{Extent, Face, Plane, Solved};
use crate::units::Length;

/// Draws everything of a leg but its lettering and marks.
pub fn draw(canvas: &mut Canvas, at: Layer, solved: &Solved, seen: &Seen<'_>) {
    counter(canvas, at, seen);
    under(canvas, at, solved, seen);
}

/// The same without the counter.
pub fn under(canvas: &mut Canvas, at: Layer, solved: &Solved, seen: &Seen<'_>) {
    supports::draw(canvas, at, solved, seen);
    frames(canvas, at, seen);
    bodies(canvas, at, seen);
    cutouts(canvas, at, seen);
    seams(canvas, at, seen);
    feet(canvas, at, seen);
    finished(canvas, at, seen);
}

fn counter(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    let counter = &seen.leg.counter;
    let facts = seen.view.feature(
        format!("counter {}", seen.index + 1),
        counter.extent.x0,
        counter.extent.y0,
        counter.extent.x1,
        counter.extent.y1,
    );
    // The box is that of the leg by itself; a turned leg carries none.
    let facts = if seen.placement == super::seen::LEVEL { facts } else { Vec::new() };
    let paint = Paint::both(Pen::CUT, Fill::tint(Colour::TINT_BEYOND));
    let steps = seen.region(&counter.region);
    canvas.shape(at, Shape::Steps(steps), paint, "counter", facts);
}

fn frames(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    let datums = &seen.leg.datums;
    let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN);
    for (index, module) in seen.leg.modules.iter().enumerate() {
        let p = seen.corners(module.left.mm(), datums.frame_face.mm(), module.right.mm(), datums.frame_back.mm());
        canvas.line(at, p[0], p[1], pen);
        canvas.line(at, p[2], p[3], pen);
        canvas.line(at, p[0], p[3], pen);
        if index + 1 == seen.leg.modules.len() {
            canvas.line(at, p[1], p[2], pen);
        }
    }
}

fn bodies(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::PHANTOM);
    let mut drawn: Vec<Extent> = Vec::new();
    for fitting in &seen.leg.fittings {
        let Some(body) = fitting.body else { continue };
        let extent = Extent { x0: body.u.0, y0: body.v.0, x1: body.u.1, y1: body.v.1 };
        if drawn.contains(&extent) {
            continue;
        }
        drawn.push(extent);
        canvas.polyline(at, &seen.extent(&extent), true, Paint::pen(pen));
    }
}

fn cutouts(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    for fitting in &seen.leg.fittings {
        let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
        let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", cutout.plane.word().to_owned())];
        let steps = seen.steps(&cutout.outline);
        // A notch has no front edge; its outline is closed across it, so the counter's own outline is enough there.
        let pen = if cutout.open { Pen::GHOST } else { Pen::CUT };
        canvas.shape(at, Shape::Steps(steps), Paint::pen(pen), "cutout", facts);
    }
}

fn seams(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    let extent = seen.leg.counter.extent;
    for &seam in &seen.leg.counter.seams {
        let mut low = extent.y0;
        let mut holes: Vec<(Length, Length)> = seen
            .leg
            .fittings
            .iter()
            .filter_map(|fitting| fitting.cutout(Plane::Counter))
            .filter(|cutout| cutout.extent.x0 < seam && seam < cutout.extent.x1)
            .map(|cutout| (cutout.extent.y0, cutout.extent.y1))
            .collect();
        holes.sort();
        holes.push((extent.y1, extent.y1));
        for (from, to) in holes {
            if from > low {
                canvas.line(at, seen.at(seam, low), seen.at(seam, from), Pen::SECONDARY);
            }
            low = low.max(to);
        }
    }
}

fn feet(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    for foot in &seen.leg.feet {
        let radius = (20.0 * seen.view.scale.factor()).clamp(0.7, 1.6);
        let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE);
        canvas.circle(at, seen.at(foot.u, foot.v), radius, Paint::pen(pen));
    }
}

/// The outside of every finish: face and clad ends, each a datum.
fn finished(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>) {
    let (leg, datums) = (seen.leg, &seen.leg.datums);
    let clad = |face: Face| leg.build(face).finish.is_some();
    let (zero, right, back) = (Length::ZERO, datums.finished_right, datums.finished_back);
    let mut edges = vec![("finished face", (zero, zero), (right, zero))];
    if clad(Face::Left) && !leg.meets_leg(0) {
        edges.push(("finished left end", (zero, zero), (zero, back)));
    }
    if clad(Face::Right) && !leg.meets_leg(1) {
        edges.push(("finished right end", (right, zero), (right, back)));
    }
    if clad(Face::Back) && !leg.meets_leg(0) && !leg.meets_leg(1) {
        edges.push(("finished back", (zero, back), (right, back)));
    }
    let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
    for (name, from, to) in edges {
        let line = Shape::Line(seen.at(from.0, from.1), seen.at(to.0, to.1));
        canvas.shape(at, line, Paint::pen(pen), "datum", vec![("data-datum", name.to_owned())]);
    }
}

/// The centre of a box on the sheet.
pub fn middle(corners: &[PaperPoint; 4]) -> PaperPoint {
    corners[0].towards(corners[2], 0.5)
}
