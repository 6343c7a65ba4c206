//! An end as it is built: frame behind its board, the long faces' build-ups at its edges, counter on top, feet, floor.

use super::end::{End, EndView};
use super::others;
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::board_joints;
use crate::sheets::canvas::{Canvas, Layer, Paint, corners, through};
use crate::sheets::marks;
use crate::sheets::materials::{self, Material};
use crate::solve::{BoundKind, Build, Datum, Plane};
use crate::units::Length;

/// Width of a strip of wall behind, mm of paper.
pub const WALL_STRIP: f64 = 5.0;

/// Draws it. `pole` is where on the sheet the datum's pole begins.
pub fn draw(canvas: &mut Canvas, view: &EndView, end: &End, pole: f64) {
    let at = canvas.layer(view.layer, "ground");
    wall_behind(canvas, at, view, end);
    others::draw(canvas, at, view, end);
    floor(canvas, at, view, end);
    let at = canvas.layer(view.layer, "built");
    feet(canvas, at, view, end);
    let covered = end.is_covered();
    if covered {
        covering(canvas, at, view, end);
        hidden(canvas, at, view, end);
    } else {
        boards(canvas, at, view, end);
        edges(canvas, at, view, end);
        trim(canvas, at, view, end);
    }
    if !covered {
        top(canvas, at, view, end);
        openings(canvas, view, end);
    }
    datum_lines(canvas, view, end, pole);
}

fn block(
    canvas: &mut Canvas,
    at: Layer,
    view: &EndView,
    v: (Length, Length),
    z: (Length, Length),
    end: &End,
    paint: Paint,
) {
    canvas.rectangle(at, view.at(end.x(v.0), z.1), view.at(end.x(v.1), z.0), paint);
}

/// Where finishes end downwards.
fn finish_bottom(end: &End) -> Length {
    let bottom = end.leg.datums.frame_bottom;
    end.solved.trim.as_ref().map_or(bottom, |trim| trim.top.max(bottom))
}

fn boards(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let d = &end.leg.datums;
    let boards: Vec<_> = end.leg.boards.iter().filter(|board| board.plane == Plane::of(end.face)).collect();
    for board in &boards {
        let region = crate::geometry::Region {
            outer: end.outline(&board.region.outer),
            holes: board.region.holes.iter().map(|hole| end.outline(hole)).collect(),
        };
        canvas.shape(
            at,
            Shape::Steps(view.region(&region)),
            Paint::fill(Fill::tint(Colour::TINT_BOARD)),
            "",
            Vec::new(),
        );
    }
    let grey = Paint::pen(Pen::DIMENSION.coloured(Colour::GREY_LINE));
    for member in end.members() {
        block(canvas, at, view, member.body.v, member.body.z, end, grey);
    }
    for board in &boards {
        let (x0, x1) = (end.x(board.extent.x0), end.x(board.extent.x1));
        let facts =
            view.feature(format!("board {}", board.name), x0.min(x1), board.extent.y0, x0.max(x1), board.extent.y1);
        let steps = view.steps(&end.outline(&board.region.outer));
        canvas.shape(at, Shape::Steps(steps), Paint::pen(Pen::SECONDARY), "", facts);
    }
    let index = end.solved.legs.iter().position(|leg| leg.id == end.leg.id).unwrap_or(0);
    for line in board_joints::seen(end.solved, index, end.face) {
        let [a, b] = line.map(|(v, z)| (end.x(v), z));
        let facts = view.feature("board joint", a.0.min(b.0), a.1, a.0.max(b.0), b.1);
        let line = Shape::Line(view.at(a.0, a.1), view.at(b.0, b.1));
        canvas.shape(at, line, Paint::pen(Pen::SECONDARY), "joint", facts);
    }
    if boards.is_empty() {
        block(
            canvas,
            at,
            view,
            (d.frame_face, d.frame_back),
            (d.frame_bottom, d.frame_top),
            end,
            Paint::pen(Pen::SECONDARY),
        );
    }
}

/// The long faces' boards and finishes, seen on edge.
fn edges(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let (d, low) = (&end.leg.datums, finish_bottom(end));
    let front = (&end.leg.front_build, [Length::ZERO, d.board_face, d.frame_face]);
    let back = (&end.leg.back_build, [d.finished_back, d.board_back, d.frame_back]);
    for (build, [finished, board, frame]) in [front, back] {
        if board != frame {
            let paint = Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BOARD));
            block(canvas, at, view, (board, frame), (d.frame_bottom, d.frame_top), end, paint);
        }
        if finished != board {
            // Its outer edge is the datum's own line.
            let top = finish_top(end, build, board);
            block(canvas, at, view, (finished, board), (low, top), end, Paint::fill(Fill::tint(Colour::TINT_BEYOND)));
            for z in [low, top] {
                canvas.line(
                    at,
                    view.at(end.x(finished), z),
                    view.at(end.x(board), z),
                    Pen::DIMENSION.coloured(Colour::GREY_TEXT),
                );
            }
        }
    }
}

/// A finish runs up to the counter where the substrate keeps behind it.
fn finish_top(end: &End, build: &Build, board: Length) -> Length {
    let (d, substrate) = (&end.leg.datums, &end.leg.substrate.extent);
    let front = std::ptr::eq(build, &end.leg.front_build);
    let clears = if front { substrate.y0 >= board } else { substrate.y1 <= board };
    if clears { d.substrate_top } else { d.frame_top }
}

/// The front's base trim on edge, and its height along this end as a dashed line.
fn trim(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let Some(trim) = &end.solved.trim else { return };
    let d = &end.leg.datums;
    let (out, face) = (d.board_face - trim.thickness, d.board_face);
    let floor = Length::from_mm(end.floor(out));
    if trim.top > floor {
        block(canvas, at, view, (out, face), (floor, trim.top), end, Paint::both(Pen::SECONDARY, Fill::WHITE));
    }
    if end.build().finish.is_some() {
        let pen = Pen::DIMENSION.dashed(Dash::HIDDEN);
        canvas.line(at, view.at(end.x(d.frame_face), trim.top), view.at(end.x(d.frame_back), trim.top), pen);
    }
}

/// Substrate, counter, upstand.
fn top(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let (d, counter, substrate) = (&end.leg.datums, &end.leg.counter.extent, &end.leg.substrate.extent);
    let paint = Paint::both(Pen::VISIBLE, Fill::WHITE);
    let mut part = |name: &str, v: (Length, Length), z: (Length, Length)| {
        let (x0, x1) = (end.x(v.0).min(end.x(v.1)), end.x(v.0).max(end.x(v.1)));
        let facts = view.feature(name, x0, z.0, x1, z.1);
        let steps = through(&corners(view.at(x0, z.1), view.at(x1, z.0)), true);
        canvas.shape(at, Shape::Steps(steps), paint, "", facts);
    };
    if d.substrate_top > d.frame_top {
        part("substrate", (substrate.y0, substrate.y1), (d.frame_top, d.substrate_top));
    }
    part("counter", (counter.y0, counter.y1), (d.substrate_top, d.counter_top));
    let u = if end.is_left() { counter.x0 } else { counter.x1 };
    let at_end = |(_, a, b, _): &&(String, Length, Length, f64)| {
        *a <= u + Length::from_mm(50.0) && u - Length::from_mm(50.0) <= *b
    };
    if let (Some(splash), Some(_)) = (end.solved.counter.splash, end.leg.counter.splashes.iter().find(at_end)) {
        part("splash", (counter.y1 - splash.thickness, counter.y1), (d.counter_top, d.counter_top + splash.height));
    }
}

fn openings(canvas: &mut Canvas, view: &EndView, end: &End) {
    let at = canvas.layer(view.layer, "openings");
    for (_, fitting, cutout) in end.openings() {
        let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", cutout.plane.word().to_owned())];
        let steps = view.steps(&end.outline(&cutout.outline));
        canvas.shape(at, Shape::Steps(steps), Paint::both(Pen::CUT, Fill::WHITE), "cutout", facts);
    }
}

fn feet(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let tube = end.solved.frame.tube.mm();
    let pen = if end.is_covered() { Pen::DIMENSION.dashed(Dash::HIDDEN) } else { Pen::SECONDARY };
    for foot in end.feet() {
        let (x, ground) = (end.x(foot.v).mm(), foot.ground.mm());
        let top = ground + foot.height.mm();
        let pad = ((top - ground) * 0.3).clamp(0.5, 12.7);
        let p = |x: f64, z: f64| PaperPoint::new(view.x_mm(x), view.y_mm(z));
        let paint = if end.is_covered() { Paint::pen(pen) } else { Paint::both(pen, Fill::tint(Colour::TINT_BOARD)) };
        canvas.rectangle(at, p(x - tube / 6.0, top), p(x + tube / 6.0, ground + pad), paint);
        let (wide, narrow) = (tube * 0.72, tube * 0.52);
        let shoe = [p(x - wide, ground), p(x + wide, ground), p(x + narrow, ground + pad), p(x - narrow, ground + pad)];
        canvas.polyline(at, &shoe, true, paint);
    }
}

/// From the counter's edges, what is drawn of the floor, v.
pub fn reach(end: &End) -> (Length, Length) {
    let (d, counter) = (&end.leg.datums, &end.leg.counter.extent);
    let behind = wall_at(end).unwrap_or(Length::ZERO);
    let own = (counter.y0.min(Length::ZERO), counter.y1.max(d.finished_back).max(behind));
    others::reach(end).map_or(own, |(v0, v1, _)| (own.0.min(v0), own.1.max(v1)))
}

/// The face of what stands behind, where it is near enough to show.
pub fn wall_at(end: &End) -> Option<Length> {
    let (d, back) = (&end.leg.datums, &end.leg.back);
    let far = back.at.max(back.at_counter);
    (!matches!(back.kind, BoundKind::Open | BoundKind::Leg)
        && far - d.finished_back < (d.frame_back - d.frame_face).half())
    .then_some(far)
}

fn wall_behind(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    if wall_at(end).is_none() {
        return;
    }
    let (d, back) = (&end.leg.datums, &end.leg.back);
    let top = back
        .height
        .mm()
        .min(d.counter_top.mm() + end.solved.counter.splash.map_or(0.0, |s| s.height.mm()) + 4.0 / view.scale.factor());
    let lean = (back.at_counter - back.at).mm() / d.counter_top.mm().max(1.0);
    let low = end.floor(back.at);
    let p = |z: f64| PaperPoint::new(view.x(end.x(Length::from_mm(back.at.mm() + lean * z))), view.y_mm(z));
    let (a, b) = (p(low), p(top));
    let out = -end.front_side() * WALL_STRIP;
    materials::hatch(canvas, at, &[vec![a, b, b.moved(out, 0.0), a.moved(out, 0.0)]], Material::Wall, false);
    canvas.line(at, a, b, Pen::VISIBLE);
}

fn floor(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let (near, far) = reach(end);
    let spare = Length::from_mm(10.0 / view.scale.factor());
    let behind = if wall_at(end).is_some() { Length::from_mm(WALL_STRIP / view.scale.factor()) } else { spare };
    let p = |v: Length| PaperPoint::new(view.x(end.x(v)), view.y_mm(end.floor(v)));
    let (a, b) = (p(near - spare), p(far + behind));
    let (a, b) = if a.x < b.x { (a, b) } else { (b, a) };
    canvas.line(at, a, b, Pen::CUT);
    let ring = vec![a, b, b.moved(-2.6, 2.6), a.moved(2.6, 2.6)];
    materials::hatch(canvas, at, &[ring], Material::Ground, false);
}

/// What stands before a covered end: its own surface, hatched wide and pale, up to its height.
fn covering(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let d = &end.leg.datums;
    let (near, far) = reach(end);
    let top = end.bound().height.min(d.counter_top + Length::from_mm(5.0 / view.scale.factor()));
    let low = Length::from_mm(end.floor(near).min(end.floor(far)));
    let (a, b) = (view.at(end.x(near), top), view.at(end.x(far), low));
    canvas.hatch(at, &[corners(a, b).to_vec()], -45.0, 4.5, Pen::FINE.coloured(Colour::GREY_RULE));
    let grey = Pen::DIMENSION.coloured(Colour::GREY_LINE);
    canvas.line(at, a, PaperPoint::new(a.x, b.y), grey);
    canvas.line(at, PaperPoint::new(b.x, a.y), b, grey);
    if end.bound().height <= top {
        canvas.line(at, a, PaperPoint::new(b.x, a.y), grey);
    }
}

/// The outlines behind it.
fn hidden(canvas: &mut Canvas, at: Layer, view: &EndView, end: &End) {
    let (d, counter, substrate) = (&end.leg.datums, &end.leg.counter.extent, &end.leg.substrate.extent);
    let paint = Paint::pen(Pen::SECONDARY.dashed(Dash::HIDDEN));
    block(canvas, at, view, (d.frame_face, d.frame_back), (d.frame_bottom, d.frame_top), end, paint);
    if d.substrate_top > d.frame_top {
        block(canvas, at, view, (substrate.y0, substrate.y1), (d.frame_top, d.substrate_top), end, paint);
    }
    block(canvas, at, view, (counter.y0, counter.y1), (d.substrate_top, d.counter_top), end, paint);
}

/// Height of a flag and the white under it, mm.
const FLAG: f64 = 6.2;

/// The finished face on its pole with its flag, and the finished back where there is one.
fn datum_lines(canvas: &mut Canvas, view: &EndView, end: &End, pole: f64) {
    let at = canvas.layer(view.layer, "datums");
    let d = &end.leg.datums;
    let back = end.leg.back_build.finish.as_ref().map(|_| (Datum::FinishedBack, d.finished_back));
    let room = (view.x(end.x(d.finished_back)) - view.x(Length::ZERO)).abs();
    for (datum, v) in [Some((Datum::FinishedFace, Length::ZERO)), back].into_iter().flatten() {
        let x = view.x(end.x(v));
        let foot = view.y_mm(end.floor(v)) + 4.0;
        let facts = vec![("data-datum", datum.words().to_owned())];
        let front = datum == Datum::FinishedFace;
        let face = marks::flag_width(Datum::FinishedFace.words());
        let both = face + marks::flag_width(Datum::FinishedBack.words()) + 3.0;
        // On a shallow leg the flag of the face reaches over the back, whose pole begins under it.
        let head = if front || room > face + 1.0 { pole } else { pole + FLAG };
        let shape = Shape::Line(PaperPoint::new(x, head), PaperPoint::new(x, foot));
        canvas.shape(at, shape, Paint::pen(Pen::VISIBLE.accent().dashed(Dash::FINISHED)), "datum", facts);
        if front || room > both {
            // Both fly inwards, over the run.
            marks::flag(canvas, at, PaperPoint::new(x, pole), datum.words(), front != end.is_left());
        }
    }
}
