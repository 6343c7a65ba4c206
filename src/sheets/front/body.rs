//! What is built: frames in grey behind tinted boards, openings bold, substrate and counter on top.

use super::elevation::Elevation;
use crate::drawing::{Colour, Dash, Fill, Pen, Shape, Step};
use crate::geometry::{Outline, PaperPoint, Region};
use crate::sheets::board_joints;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::solve::{Board, Cutout, Face, FittingKind, Plane};
use crate::units::Length;

/// Draws it all, from the back to the front.
pub fn draw(canvas: &mut Canvas, e: &Elevation<'_>) {
    let at = canvas.layer(e.view.layer, "boards");
    strips(canvas, at, e);
    let boards: Vec<&Board> = boards(e).collect();
    for board in &boards {
        let region = seen(e, &board.region);
        let steps = e.view.region(&region);
        canvas.shape(at, Shape::Steps(steps), Paint::fill(Fill::tint(Colour::TINT_BOARD)), "", Vec::new());
    }
    let at = canvas.layer(e.view.layer, "frame");
    frames(canvas, at, e);
    let at = canvas.layer(e.view.layer, "outlines");
    for board in &boards {
        let (x0, x1) = e.facing.span(board.extent.x0, board.extent.x1);
        let facts = e.view.feature(format!("board {}", board.name), x0, board.extent.y0, x1, board.extent.y1);
        let steps = e.view.steps(&seen(e, &board.region).outer);
        canvas.shape(at, Shape::Steps(steps), Paint::pen(Pen::SECONDARY), "", facts);
    }
    joints(canvas, at, e);
    top(canvas, at, e);
    let at = canvas.layer(e.view.layer, "openings");
    openings(canvas, at, e);
}

fn boards<'s>(e: &Elevation<'s>) -> impl Iterator<Item = &'s Board> {
    let (plane, modules) = (e.facing.plane(), e.part.modules.clone());
    let on_page = move |board: &&Board| board.module.is_none_or(|module| modules.contains(&module));
    e.leg.boards.iter().filter(move |board| board.plane == plane).filter(on_page)
}

/// Joints of boards within a module.
fn joints(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for line in board_joints::seen(e.set.solved, e.leg_index, e.facing.face) {
        let [a, b] = line.map(|(u, z)| (e.facing.x(u), z));
        let on_page = |x: Length| e.part.x0 <= x && x <= e.part.x1;
        if on_page(a.0) && on_page(b.0) {
            let line = Shape::Line(e.view.at(a.0, a.1), e.view.at(b.0, b.1));
            let facts = e.view.feature("board joint", a.0.min(b.0), a.1, a.0.max(b.0), b.1);
            canvas.shape(at, line, Paint::pen(Pen::SECONDARY), "joint", facts);
        }
    }
}

fn seen(e: &Elevation<'_>, region: &Region) -> Region {
    Region {
        outer: e.facing.outline(&region.outer),
        holes: region.holes.iter().map(|hole| e.facing.outline(hole)).collect(),
    }
}

/// The end build-ups' finish, which isn't there when the boards are cut: pale strips.
fn strips(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let d = &e.leg.datums;
    let low = e.set.solved.trim.as_ref().map_or(d.frame_bottom, |trim| trim.top);
    for (on_page, [finished, board, _]) in [(e.part.first, e.facing.near()), (e.part.last, e.facing.far())] {
        let (a, b) = (e.facing.datum(e.leg, finished), e.facing.datum(e.leg, board));
        let outward = if finished == e.facing.near()[0] { a < b } else { a > b };
        if on_page && outward {
            let (p, q) = (e.view.at(a, low), e.view.at(b, d.substrate_top));
            canvas.rectangle(at, p, q, Paint::fill(Fill::tint(Colour::TINT_BEYOND)));
        }
    }
    let end = e.facing.datum(e.leg, e.facing.far()[0]);
    if e.part.last && end > e.facing.datum(e.leg, e.facing.far()[1]) {
        let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::HIDDEN);
        canvas.line(at, e.view.at(end, d.substrate_top), e.view.at(end, low), pen);
    }
}

/// Tubes of the frame in the layer next to this face.
fn frames(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let d = &e.leg.datums;
    let in_layer = |v: (Length, Length)| {
        if e.facing.face == Face::Back { v.1 == d.frame_back } else { v.0 == d.frame_face }
    };
    for member in e.leg.members.iter().filter(|member| e.part.modules.contains(&member.module)) {
        if !in_layer(member.body.v) {
            continue;
        }
        let (x0, x1) = e.facing.span(member.body.u.0, member.body.u.1);
        let (a, b) = (e.view.at(x0, member.body.z.0), e.view.at(x1, member.body.z.1));
        canvas.rectangle(at, a, b, Paint::pen(Pen::DIMENSION.coloured(Colour::GREY_LINE)));
    }
}

/// Substrate, counter and upstand, broken where a notch comes through to this face.
fn top(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let d = &e.leg.datums;
    let mut gaps: Vec<(Length, Length)> = e
        .fittings()
        .filter(|(_, fitting)| fitting.kind == FittingKind::Notch && fitting.cutout(Plane::Counter).is_some())
        .map(|(_, fitting)| e.facing.span(fitting.left, fitting.right))
        .collect();
    gaps.sort();
    let counter = e.counter();
    let substrate = e.facing.span(e.leg.substrate.extent.x0, e.leg.substrate.extent.x1);
    // At a corner the sheet goes on into the other leg; here it ends under the counter\u{2019}s edge.
    let substrate = (
        if e.meetings[0].is_some() { substrate.0.max(counter.0) } else { substrate.0 },
        if e.meetings[1].is_some() { substrate.1.min(counter.1) } else { substrate.1 },
    );
    let layers = [
        (substrate, d.frame_top, d.substrate_top, Pen::SECONDARY),
        (e.counter(), d.substrate_top, d.counter_top, Pen::VISIBLE),
    ];
    if let Some(splash) = e.set.solved.counter.splash {
        for (_, u0, u1, _) in &e.leg.counter.splashes {
            let (x0, x1) = e.facing.span(*u0, *u1);
            let pen = Pen::DIMENSION.coloured(Colour::GREY_TEXT);
            let fill = Fill::tint(Colour::TINT_BEYOND);
            slab(canvas, at, e, (x0, x1), (d.counter_top, d.counter_top + splash.height), pen, fill);
        }
    }
    for ((from, to), low, high, pen) in layers {
        let mut begin = from;
        for &(a, b) in gaps.iter().filter(|gap| gap.0 < to && gap.1 > from) {
            slab(canvas, at, e, (begin, a), (low, high), pen, Fill::WHITE);
            // Behind the notch the rest of the slab is seen.
            slab(canvas, at, e, (a, b), (low, high), Pen::DIMENSION.coloured(Colour::GREY_LINE), Fill::WHITE);
            begin = b;
        }
        slab(canvas, at, e, (begin, to), (low, high), pen, Fill::WHITE);
    }
    for &seam in &e.leg.counter.seams {
        let x = e.facing.x(seam);
        if x > e.part.x0 && x < e.part.x1 {
            canvas.line(at, e.view.at(x, d.substrate_top), e.view.at(x, d.counter_top), Pen::DIMENSION);
        }
    }
}

/// One piece of a slab's edge between two heights, without an end line where it goes on past a match line.
fn slab(
    canvas: &mut Canvas,
    at: Layer,
    e: &Elevation<'_>,
    (x0, x1): (Length, Length),
    (low, high): (Length, Length),
    pen: Pen,
    fill: Fill,
) {
    let from = if e.part.first { x0 } else { x0.max(e.part.x0) };
    let to = if e.part.last { x1 } else { x1.min(e.part.x1) };
    if from >= to {
        return;
    }
    canvas.rectangle(at, e.view.at(from, low), e.view.at(to, high), Paint::fill(fill));
    for z in [low, high] {
        canvas.line(at, e.view.at(from, z), e.view.at(to, z), pen.square());
    }
    for x in [x0, x1] {
        if x >= from && x <= to && (x == x0 && from == x0 || x == x1 && to == x1) {
            canvas.line(at, e.view.at(x, low), e.view.at(x, high), pen.square());
        }
    }
}

/// The openings' own outlines, bold, without their open side.
fn openings(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let d = &e.leg.datums;
    for (_, fitting) in e.fittings() {
        let Some(cutout) = fitting.cutout(e.facing.plane()) else { continue };
        let outline = e.facing.outline(&cutout.outline);
        let steps = opened(e, &outline, cutout);
        let facts = vec![("data-fitting", fitting.id.clone()), ("data-plane", e.facing.plane().word().to_owned())];
        canvas.shape(at, Shape::Steps(steps), Paint::pen(Pen::CUT.square()), "cutout", facts);
        let (x0, x1) = e.facing.span(cutout.extent.x0, cutout.extent.x1);
        for x in [x0, x1] {
            let top = e.view.at(x, cutout.extent.y1);
            if fitting.kind == FittingKind::Notch {
                canvas.line(at, top, e.view.at(x, d.counter_top), Pen::CUT);
            }
            if fitting.to_floor {
                let floor = PaperPoint::new(e.view.x(x), e.view.y_mm(e.floor.height(x.mm())));
                canvas.line(at, e.view.at(x, cutout.extent.y0), floor, Pen::CUT);
            }
        }
    }
}

/// Steps of a cutout's outline; the side where the sheet's edge is open is left out.
fn opened(e: &Elevation<'_>, outline: &Outline, cutout: &Cutout) -> Vec<Step> {
    if !cutout.open {
        return e.view.steps(outline);
    }
    let low = cutout.extent.y0 <= e.leg.datums.frame_bottom;
    let open = if low { cutout.extent.y0.mm() } else { cutout.extent.y1.mm() };
    let on = |y: f64| (y - open).abs() < 1e-6;
    let Some(start) = outline.edges().position(|(a, b)| on(a.y) && on(b.y) && a.bulge == 0.0) else {
        return e.view.steps(outline);
    };
    let mut turned = outline.clone();
    turned.vertices.rotate_left((start + 1) % outline.vertices.len().max(1));
    let mut steps = e.view.steps(&turned);
    // The last edge (back to the start) and the closing are the open side.
    steps.truncate(steps.len().saturating_sub(2));
    steps
}
