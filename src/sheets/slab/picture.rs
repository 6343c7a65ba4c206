//! The sheet from above: walls, the frame under a substrate, outline, cutouts, seams, screw lines, finished faces.

use super::joined::Joined;
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{LegPoint, Outline, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::hidden::{self, Hidden};
use crate::sheets::materials::{self, Material};
use crate::sheets::substrate::{screws, supports};
use crate::sheets::task::Task;
use crate::sheets::view::number;
use crate::solve::{EdgeKind, Leg, Plane};
use crate::units::Length;

/// Thickness that a wall is drawn with, mm of paper.
const WALL: f64 = 4.0;

/// Draws it.
pub fn draw(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, sheet.plane.word());
    if sheet.plane == Plane::Counter {
        walls(canvas, layer, sheet);
    }
    let steps = sheet.view.region(sheet.region());
    canvas.shape(layer, Shape::Steps(steps), Paint::fill(Fill::tint(Colour::TINT_BEYOND)), "", Vec::new());
    if sheet.plane == Plane::Substrate {
        for (_, all) in hidden(sheet) {
            hidden::draw(canvas, layer, &all);
        }
        frames(canvas, layer, sheet);
    }
    let outer = sheet.view.steps(&sheet.region().outer);
    canvas.shape(layer, Shape::Steps(outer), Paint::pen(Pen::CUT), sheet.plane.word(), Vec::new());
    cutouts(canvas, layer, sheet);
    seams(canvas, layer, sheet);
    if sheet.plane == Plane::Substrate {
        screw_lines(canvas, layer, sheet);
    }
    finished(canvas, layer, sheet);
}

/// Walls against the edges that end at one.
fn walls(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>) {
    let factor = sheet.view.scale.factor();
    for edge in sheet.slab.edges.iter().filter(|edge| matches!(edge.kind, EdgeKind::Wall | EdgeKind::Splash)) {
        let (a, b) = (sheet.view.at(edge.from.0, edge.from.1), sheet.view.at(edge.to.0, edge.to.1));
        let long = a.distance(b).max(1e-9);
        let out = (-(b.y - a.y) / long, (b.x - a.x) / long);
        let joint = edge.joint.unwrap_or(Length::ZERO).mm() * factor;
        let off = |p: PaperPoint, by: f64| p.moved(out.0 * by, out.1 * by);
        let ring = vec![off(a, joint), off(b, joint), off(b, joint + WALL), off(a, joint + WALL)];
        canvas.polyline(at, &ring, true, Paint::fill(Fill::tint(Colour(0xee, 0xee, 0xee))));
        materials::hatch(canvas, at, &[ring], Material::Wall, false);
        canvas.line(at, off(a, joint), off(b, joint), Pen::VISIBLE.square());
    }
}

/// What is added to each leg's frame under the sheet, with the corners of the leg's own part of it.
fn hidden<'s>(sheet: &Joined<'s>) -> Vec<([PaperPoint; 4], Vec<Hidden<'s>>)> {
    let of = |(index, leg): (usize, &'s Leg)| {
        let e = leg.substrate.extent;
        let at = |u: Length, v: Length| sheet.at(index, u.mm(), v.mm());
        let own = [at(e.x0, e.y0), at(e.x1, e.y0), at(e.x1, e.y1), at(e.x0, e.y1)];
        (own, supports::shown(sheet.set.solved, (index, leg), (e.x0, e.x1), at))
    };
    sheet.legs().map(of).collect()
}

/// Marks them where there is white.
pub fn hidden_marks(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "names");
    for (own, all) in hidden(sheet) {
        hidden::marks(canvas, layer, &all, &own);
    }
}

/// Tubes at the frames' tops, hidden under the sheet.
fn frames(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>) {
    for (index, leg) in sheet.legs() {
        let mut drawn: Vec<((Length, Length), (Length, Length))> = Vec::new();
        for tube in leg.members.iter().filter(|member| member.body.z.1 == leg.datums.frame_top) {
            let (u, v) = (tube.body.u, tube.body.v);
            if drawn.contains(&(u, v)) {
                continue;
            }
            drawn.push((u, v));
            let corner = |u: Length, v: Length| sheet.at(index, u.mm(), v.mm());
            let ring = [corner(u.0, v.0), corner(u.1, v.0), corner(u.1, v.1), corner(u.0, v.1)];
            let pen = Pen::FINE.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN);
            canvas.polyline(at, &ring, true, Paint::pen(pen));
        }
    }
}

fn cutouts(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>) {
    for (leg, fitting, cutout) in sheet.cutouts() {
        let placed: Outline = cutout.outline.mapped(
            |x, y| {
                let p = sheet.home(leg, x, y);
                (p.x, p.y)
            },
            false,
        );
        // Where the leg's own coordinates lie in the view, so that the cutout can be found again in the leg's parts.
        let (zero, along) = (sheet.home(leg, 0.0, 0.0), sheet.home(leg, 1000.0, 0.0));
        let turn = (along.y - zero.y).atan2(along.x - zero.x).to_degrees();
        let facts = vec![
            ("data-fitting", fitting.id.clone()),
            ("data-plane", cutout.plane.word().to_owned()),
            ("data-leg-origin-mm", format!("{},{}", number(zero.x, 6), number(zero.y, 6))),
            ("data-leg-turn", number(turn, 9)),
        ];
        let paint = if cutout.open { Paint::pen(Pen::GHOST) } else { Paint::both(Pen::CUT, Fill::WHITE) };
        canvas.shape(at, Shape::Steps(sheet.view.steps(&placed)), paint, "cutout", facts);
    }
}

/// Seams or joints between the pieces, each once.
fn seams(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>) {
    for [a, b] in cuts(sheet) {
        canvas.shape(at, Shape::Line(a, b), Paint::pen(Pen::VISIBLE), "joint", Vec::new());
    }
}

/// Seams on the sheet, each once.
pub fn cuts(sheet: &Joined<'_>) -> Vec<[PaperPoint; 2]> {
    let mut drawn: Vec<[PaperPoint; 2]> = Vec::new();
    for piece in sheet.pieces() {
        for edge in piece.edges.iter().filter(|edge| edge.kind == EdgeKind::Seam) {
            let point = |p: (Length, Length)| sheet.at(piece.leg, p.0.mm(), p.1.mm());
            let ends = [point(edge.from), point(edge.to)];
            let same = |other: &[PaperPoint; 2]| ends.iter().all(|p| other.iter().any(|q| p.distance(*q) < 0.05));
            if !drawn.iter().any(same) {
                drawn.push(ends);
            }
        }
    }
    drawn
}

/// Lines that screws may follow, as far as there is sheet.
fn screw_lines(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>) {
    for (index, leg) in sheet.legs() {
        let task = Task::new(sheet.set, sheet.kind, (index, leg));
        for (u, from, to) in screws::lines(&task) {
            let Some((from, to)) = on_sheet(leg, u, (from, to), screws::keep_off(task.show)) else { continue };
            let (a, b) = (sheet.at(index, u.mm(), from.mm()), sheet.at(index, u.mm(), to.mm()));
            canvas.line(at, a, b, Pen::DIMENSION.dashed(Dash::CENTRE));
            for place in [a, b] {
                canvas.line(at, place.moved(-0.8, -0.8), place.moved(0.8, 0.8), Pen::DIMENSION);
                canvas.line(at, place.moved(-0.8, 0.8), place.moved(0.8, -0.8), Pen::DIMENSION);
            }
        }
    }
}

/// The part of a screw line that keeps off the sheet's edges, which at a corner need not be square.
fn on_sheet(leg: &Leg, u: Length, span: (Length, Length), off: Length) -> Option<(Length, Length)> {
    let held = |v: f64| {
        let reach = off.half().mm();
        [(-reach, 0.0), (reach, 0.0), (0.0, -reach), (0.0, reach)]
            .iter()
            .all(|(x, y)| leg.substrate.region.outer.contains(LegPoint::new(u.mm() + x, v + y)))
    };
    let (low, high) = (span.0.mm(), span.1.mm());
    let steps = ((high - low) / 12.0).ceil().max(1.0) as usize;
    let at = |k: usize| low + (high - low) * k as f64 / steps as f64;
    let first = (0..=steps).find(|&k| held(at(k)))?;
    let last = (first..=steps).take_while(|&k| held(at(k))).last()?;
    let exact = |k: usize| match k {
        0 => span.0,
        k if k == steps => span.1,
        k => Length::from_mm(at(k)),
    };
    (last > first && at(last) - at(first) > off.mm()).then(|| (exact(first), exact(last)))
}

/// The finished faces, ends and backs of every leg, and the points where faces meet.
fn finished(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>) {
    for (name, [a, b]) in lines(sheet) {
        let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
        canvas.shape(at, Shape::Line(a, b), Paint::pen(pen), "datum", vec![("data-datum", name.to_owned())]);
    }
    for joint in &sheet.set.solved.joints {
        if sheet.slab.legs.contains(&joint.left) && sheet.slab.legs.contains(&joint.right) {
            let place = sheet.at(joint.right, 0.0, 0.0);
            canvas.circle(at, place, 0.9, Paint::both(Pen::SECONDARY.accent(), Fill::WHITE));
        }
    }
}

/// Every finished line by its datum's name.
pub fn lines(sheet: &Joined<'_>) -> Vec<(&'static str, [PaperPoint; 2])> {
    let mut all = Vec::new();
    for (index, leg) in sheet.legs() {
        let d = &leg.datums;
        let (right, back) = (d.finished_right.mm(), d.finished_back.mm());
        let line = |a: (f64, f64), b: (f64, f64)| [sheet.at(index, a.0, a.1), sheet.at(index, b.0, b.1)];
        all.push(("finished face", line((0.0, 0.0), (right, 0.0))));
        if leg.left.is_open() {
            all.push(("finished left end", line((0.0, 0.0), (0.0, back))));
        }
        if leg.right.is_open() {
            all.push(("finished right end", line((right, 0.0), (right, back))));
        }
        if leg.back.is_open() && back > 0.0 {
            // At a corner the backs meet where their lines do, as the faces do in front.
            let [from, to] =
                [0, 1].map(|side| back_end(sheet, index, side).unwrap_or(if side == 0 { 0.0 } else { right }));
            all.push(("finished back", line((from, back), (to, back))));
        }
    }
    all
}

/// Where a leg's finished back meets that of its neighbour on a side (0 left, 1 right), on u.
fn back_end(sheet: &Joined<'_>, index: usize, side: usize) -> Option<f64> {
    let solved = sheet.set.solved;
    let joint = solved.joints.iter().find(|joint| (if side == 0 { joint.right } else { joint.left }) == index)?;
    let other = if side == 0 { joint.left } else { joint.right };
    if !sheet.slab.legs.contains(&other) {
        return None;
    }
    let (own, across) = (solved.legs[index].datums.finished_back.mm(), solved.legs[other].datums.finished_back.mm());
    // Two points of the other's back line in this leg's coordinates.
    let point = |u: f64| {
        let p = sheet.home(other, u, across);
        sheet.in_leg(index, p.x, p.y)
    };
    let (a, b) = (point(0.0), point(1000.0));
    let rise = b.y - a.y;
    (rise.abs() > 1.0).then(|| a.x + (b.x - a.x) * (own - a.y) / rise)
}
