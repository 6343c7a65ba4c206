//! Detail of the finished front edge: counter, substrate, frame, board and finish, cut through.

use super::Task;
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Dash, Pen, Shape};
use crate::geometry::{Cut, Outline, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Across, Dimension, Number};
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::materials::{self, Material};
use crate::sheets::scale::Scale;
use crate::sheets::shelves::Block;
use crate::sheets::view::View;
use crate::units::Length;

/// Room for labels at the left and at the right, for the flag over it and the dimension under it, mm.
const SIDE: (f64, f64) = (46.0, 48.0);
const OVER: f64 = 24.0;
const UNDER: f64 = 10.0;

/// The front edge's stack, as far as the detail shows it.
struct Stack {
    nose: Length,
    board: Length,
    frame: Length,
    inner: Length,
    substrate: Length,
    top: Length,
    under: Length,
    frame_top: Length,
    low: Length,
}

/// The detail, at the largest scale at which it is no wider than 80 mm and no higher than `most`.
pub fn block<'a>(task: &'a Task<'_>, most: f64) -> Option<Block<'a>> {
    let (d, frame) = (&task.leg.datums, &task.solved.frame);
    let stack = Stack {
        nose: d.counter_front,
        board: d.board_face,
        frame: d.frame_face,
        inner: d.frame_face + frame.tube + frame.tube.scaled(0.45),
        substrate: task.leg.substrate.extent.y0,
        top: d.counter_top,
        under: d.substrate_top,
        frame_top: d.frame_top,
        low: d.frame_top - frame.tube - frame.tube.scaled(0.6),
    };
    let size = ((stack.inner - stack.nose).mm(), (stack.top - stack.low).mm());
    if size.0 <= 0.0 || size.1 <= 0.0 {
        return None;
    }
    let scale = Scale::fitting(size, (80.0, most), Scale(2));
    Some(Block {
        width: SIDE.0 + size.0 * scale.factor() + SIDE.1,
        height: OVER + size.1 * scale.factor() + UNDER,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw(canvas, task, &stack, scale, at)),
    })
}

fn draw(canvas: &mut Canvas, task: &Task<'_>, stack: &Stack, scale: Scale, at: PaperPoint) {
    let origin = at.moved(SIDE.0 - stack.nose.mm() * scale.factor(), OVER + stack.top.mm() * scale.factor());
    let view: View<Cut> = View::open(canvas, "finished-edge", scale, origin);
    let layer = view.layer;
    let end = canvas.text(layer, at.moved(0.0, 3.0), "Finished edge, front", &Style::body().bold());
    canvas.text(layer, at.moved(end + 3.0, 3.0), &scale.words(), &Style::caption());
    layers(canvas, layer, task, stack, &view);
    nose(canvas, layer, task, stack, &view);
    datum(canvas, layer, task, stack, &view);
    names(canvas, layer, task, stack, &view);
}

fn part(
    canvas: &mut Canvas,
    at: Layer,
    view: &View<Cut>,
    a: (Length, Length),
    b: (Length, Length),
    material: Option<Material>,
    pen: Pen,
) {
    let (p, q) = (view.at(a.0, a.1), view.at(b.0, b.1));
    if (p.x - q.x).abs() < 0.05 || (p.y - q.y).abs() < 0.05 {
        return;
    }
    let large = view.scale.0 <= 2;
    if let Some(material) = material {
        materials::hatch(canvas, at, &[crate::sheets::canvas::corners(p, q).to_vec()], material, large);
    }
    canvas.rectangle(at, p, q, Paint::pen(pen));
}

/// Finish, bed, board, frame tube and substrate.
fn layers(canvas: &mut Canvas, at: Layer, task: &Task<'_>, stack: &Stack, view: &View<Cut>) {
    let zero = Length::ZERO;
    let build = &task.leg.front_build;
    // The cladding goes up to the counter, or to the substrate where that reaches over it.
    let head = |from: Length| if stack.substrate <= from { stack.frame_top } else { stack.under };
    if let Some(finish) = &build.finish {
        let outer = finish.thickness;
        part(
            canvas,
            at,
            view,
            (zero, stack.low),
            (outer, head(zero)),
            Some(Material::Finish(finish.kind)),
            Pen::VISIBLE,
        );
        if finish.bed > zero {
            part(canvas, at, view, (outer, stack.low), (stack.board, head(outer)), Some(Material::Bed), Pen::SECONDARY);
        }
    }
    if build.board > zero {
        part(
            canvas,
            at,
            view,
            (stack.board, stack.low),
            (stack.frame, head(stack.board)),
            Some(Material::Board),
            Pen::VISIBLE,
        );
    }
    let frame = &task.solved.frame;
    let (a, b) =
        (view.at(stack.frame, stack.frame_top), view.at(stack.frame + frame.tube, stack.frame_top - frame.tube));
    canvas.rectangle(at, a, b, Paint::pen(Pen::CUT));
    let wall = view.size(frame.wall);
    canvas.rectangle(at, a.moved(wall, wall), b.moved(-wall, -wall), Paint::pen(Pen::SECONDARY));
    part(
        canvas,
        at,
        view,
        (stack.substrate, stack.frame_top),
        (stack.inner, stack.under),
        Some(Material::Substrate),
        Pen::VISIBLE,
    );
}

/// The counter's nose with its arrises and its drip, broken off at the right.
fn nose(canvas: &mut Canvas, at: Layer, task: &Task<'_>, stack: &Stack, view: &View<Cut>) {
    let counter = &task.solved.counter;
    let (x0, x1, top, low) = (stack.nose.mm(), stack.inner.mm(), stack.top.mm(), stack.under.mm());
    let outline = Outline::from_corners(x0, low, x1, top);
    let arris = counter.arris.mm();
    let outline = outline.rounded(|index| if index == 0 || index == 3 { arris } else { 0.0 });
    let ring = view.ring(&outline);
    let mut rings = vec![ring];
    let drip = drip_box(task, stack);
    if let Some((from, to, deep)) = drip {
        let groove = Outline::from_corners(from.mm(), low, to.mm(), low + deep.mm());
        rings.push(view.ring(&groove));
    }
    materials::hatch(canvas, at, &rings, Material::Counter(counter.material), view.scale.0 <= 2);
    canvas.steps(at, view.steps(&outline), Paint::pen(Pen::CUT));
    if let Some((from, to, deep)) = drip {
        let (a, b) = (view.at(from, stack.under), view.at(to, stack.under + deep));
        canvas.line(at, a, PaperPoint::new(b.x, a.y), Pen::new(0.8).coloured(Colour::WHITE).quiet());
        let points = [a, PaperPoint::new(a.x, b.y), b, PaperPoint::new(b.x, a.y)];
        canvas.polyline(at, &points, false, Paint::pen(Pen::VISIBLE));
    }
}

/// Drip groove under the overhang: from, to, depth; `None` when it has no room.
fn drip_box(task: &Task<'_>, stack: &Stack) -> Option<(Length, Length, Length)> {
    let drip = task.solved.counter.drip;
    let overhang = -stack.nose;
    let from = stack.nose + (overhang - drip).half();
    (drip > Length::ZERO && overhang > drip * 2 && stack.top - stack.under > drip * 2).then_some((
        from,
        from + drip,
        drip,
    ))
}

/// The finished face with its flag, overhang, thickness and build-up.
fn datum(canvas: &mut Canvas, at: Layer, task: &Task<'_>, stack: &Stack, view: &View<Cut>) {
    let (zero, show) = (Length::ZERO, task.show);
    let (top, low) = (view.at(zero, stack.top), view.at(zero, stack.low));
    let pole = top.moved(0.0, -14.0);
    let line = Shape::Line(pole, low.moved(0.0, 8.0));
    let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
    canvas.shape(at, line, Paint::pen(pen), "datum", vec![("data-datum", "finished face".to_owned())]);
    marks::flag(canvas, at, pole, "finished face", true);
    if stack.nose < zero {
        Dimension::new(Across::X, (zero, stack.top), (stack.nose, stack.top), top.y - 6.0)
            .datums("finished face", "counter edge")
            .from_finished()
            .ghosts(true, false)
            .number(Number::Before(7.0))
            .draw(canvas, at, view, show);
    }
    let edge = view.x(stack.nose);
    let thick = Dimension::new(Across::Y, (stack.nose, stack.under), (stack.nose, stack.top), edge - 10.0)
        .datums("counter underside", "counter top");
    // Where the number has no room on its line, the counter's name carries it.
    if thick.fits(view, show) {
        thick.draw(canvas, at, view, show);
    }
    if stack.frame > zero {
        Dimension::new(Across::X, (zero, stack.low), (stack.frame, stack.low), low.y + 6.0)
            .datums("finished face", "bare frame")
            .from_finished()
            .ghosts(true, false)
            .draw(canvas, at, view, show);
    }
}

/// The counter's name, with its thickness where no dimension gives it.
fn counter_name(task: &Task<'_>, view: &View<Cut>) -> String {
    let (zero, counter) = (Length::ZERO, &task.solved.counter);
    let given = Dimension::new(Across::Y, (zero, zero), (zero, counter.thickness), 0.0).fits(view, task.show);
    let thickness = if given { String::new() } else { format!(" {}", task.show.text(counter.thickness)) };
    format!("{}{thickness}", counter.name)
}

/// Names by leader: layers at the right, what is under the nose at the left.
fn names(canvas: &mut Canvas, at: Layer, task: &Task<'_>, stack: &Stack, view: &View<Cut>) {
    let (show, frame, build) = (task.show, &task.solved.frame, &task.leg.front_build);
    let third = |from: Length, to: Length| from + (to - from).scaled(0.5);
    let inner = stack.inner - (stack.inner - stack.frame).scaled(0.18);
    let mut right = vec![
        ((inner, third(stack.under, stack.top)), counter_name(task, view)),
        (
            (inner, third(stack.frame_top, stack.under)),
            format!("{} {}", task.solved.substrate.name, show.text(task.solved.substrate.thickness)),
        ),
        (
            (stack.frame + frame.tube - frame.wall.half(), stack.frame_top - frame.tube.half()),
            format!("bare frame, tube {}", show.text(frame.tube)),
        ),
    ];
    let lowest = stack.frame_top - frame.tube - frame.tube.scaled(0.4);
    if build.board > Length::ZERO {
        right.push((
            (third(stack.board, stack.frame), lowest),
            format!("{} {}", build.board_name, show.text(build.board)),
        ));
    }
    let column = view.x(stack.inner) + 6.0;
    let mut y = f64::NEG_INFINITY;
    for ((v, z), words) in right {
        let point = view.at(v, z);
        y = point.y.max(y + 5.0);
        let points = [point, PaperPoint::new(column - 3.0, y), PaperPoint::new(column, y)];
        marks::leader(canvas, at, &points, LeaderEnd::Dot, Colour::INK);
        let words = crate::sheets::title_block::shortened(&words, SIDE.1 - 8.0, &Style::body());
        canvas.text(at, PaperPoint::new(column + 1.2, y + 1.25), &words, &Style::body());
    }
    let column = view.x(stack.nose) - 4.0;
    let left = |canvas: &mut Canvas, point: PaperPoint, y: f64, end: LeaderEnd, lines: &[String]| {
        let points = [point, PaperPoint::new(column + 2.0, y), PaperPoint::new(column, y)];
        marks::leader(canvas, at, &points, end, Colour::INK);
        for (row, words) in lines.iter().enumerate() {
            let words = crate::sheets::title_block::shortened(words, SIDE.0 - 6.0, &Style::body());
            canvas.text(at, PaperPoint::new(column - 1.2, y + 1.25 + row as f64 * 4.5), &words, &Style::body().end());
        }
    };
    let under = view.y(stack.under);
    if let Some((from, to, deep)) = drip_box(task, stack) {
        let words = format!("drip {} \u{d7} {}", show.text(deep), show.text(deep));
        left(canvas, view.at(third(from, to), stack.under).moved(0.0, 0.5), under + 9.0, LeaderEnd::Arrow, &[words]);
    }
    if let Some(finish) = &build.finish {
        let point = view.at(finish.thickness.half(), lowest);
        let mut lines = vec![format!("{} {}", finish.name, show.text(finish.thickness))];
        if finish.bed > Length::ZERO {
            lines.push(format!("on a {} bed", show.text(finish.bed)));
        }
        left(canvas, point, point.y.max(under + 15.0), LeaderEnd::Dot, &lines);
    }
    let arris = task.solved.counter.arris;
    if arris > Length::ZERO {
        let corner = view.at(stack.nose, stack.top);
        let off = view.size(arris) * (1.0 - std::f64::consts::FRAC_1_SQRT_2);
        let elbow = corner.moved(-4.5, -4.0);
        marks::leader(
            canvas,
            at,
            &[corner.moved(off, off), elbow, elbow.moved(-8.5, 0.0)],
            LeaderEnd::Arrow,
            Colour::INK,
        );
        canvas.text(at, elbow.moved(-9.7, 1.25), &format!("R {}", show.text(arris)), &Style::body().end());
    }
}
