//! Detail of an edge against a wall: joint, upstand, and what carries the counter there.

use super::Task;
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::{Cut, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint, corners};
use crate::sheets::dimensions::{Across, Dimension, Number};
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::materials::{self, Material};
use crate::sheets::scale::Scale;
use crate::sheets::shelves::Block;
use crate::sheets::view::View;
use crate::solve::{Bound, Splash};
use crate::units::Length;

/// Room at the left, over and under the drawing, mm.
const LEFT: f64 = 16.0;
const OVER: f64 = 17.0;
const UNDER: f64 = 9.0;
/// Depth of wall that is drawn, mm of the model.
const WALL: f64 = 34.0;

/// The edge along its own axis: growing towards the wall.
struct Edge {
    title: String,
    /// Left end of what is drawn.
    from: Length,
    frame: Length,
    substrate: Length,
    counter: Length,
    wall: Length,
    splash: Option<Splash>,
}

/// The detail, no higher than `most` mm, of the back edge if there is a wall behind, else of an end that is against something.
pub fn block<'a>(task: &'a Task<'_>, most: f64) -> Option<Block<'a>> {
    let (leg, frame) = (task.leg, &task.solved.frame);
    let (d, sub) = (&leg.datums, leg.substrate.extent);
    let reach = frame.tube * 3;
    let edge =
        |bound: &Bound, side: &str, frame: Length, substrate: Length, counter: Length, wall: Length, splash| Edge {
            title: if splash_is(&splash) {
                format!("{side} edge and splash")
            } else {
                format!("{side} edge at the {}", kind(bound))
            },
            from: frame - reach,
            frame,
            substrate,
            counter,
            wall,
            splash,
        };
    let splash = task.solved.counter.splash;
    // Against another leg the frames touch behind its cladding: the sections show that, this detail can't.
    let stands = |bound: &Bound| !bound.is_open() && bound.kind != crate::solve::BoundKind::Leg;
    let edge = if stands(&leg.back) {
        edge(&leg.back, "Back", d.frame_back, sub.y1, d.counter_back, leg.back.at_counter, splash)
    } else if stands(&leg.right) {
        edge(&leg.right, "Right", d.frame_right, sub.x1, d.counter_right, leg.right.at_counter, None)
    } else if stands(&leg.left) {
        // Mirrored: growing to the left, towards the wall.
        edge(&leg.left, "Left", -d.frame_left, -sub.x0, -d.counter_left, -leg.left.at_counter, None)
    } else {
        return None;
    };
    let high = d.counter_top + edge.splash.map_or(Length::ZERO, |s| s.height.min(Length::from_mm(320.0)));
    let low = d.frame_top - frame.tube.scaled(1.3);
    let size = ((edge.wall - edge.from).mm() + WALL, (high - low).mm() + 14.0);
    let scale = Scale::fitting(size, (48.0, most), Scale(2));
    let width = LEFT + size.0 * scale.factor() + 2.0;
    Some(Block {
        width: width.max(62.0),
        height: OVER + size.1 * scale.factor() + UNDER,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw(canvas, task, &edge, (high, low), scale, at)),
    })
}

fn splash_is(splash: &Option<Splash>) -> bool {
    splash.is_some()
}

fn kind(bound: &Bound) -> &'static str {
    match bound.kind {
        crate::solve::BoundKind::Pier => "pier",
        crate::solve::BoundKind::Post => "post",
        _ => "wall",
    }
}

fn draw(
    canvas: &mut Canvas,
    task: &Task<'_>,
    edge: &Edge,
    (high, low): (Length, Length),
    scale: Scale,
    at: PaperPoint,
) {
    let d = &task.leg.datums;
    let over = high + Length::from_mm(14.0);
    let origin = at.moved(LEFT - edge.from.mm() * scale.factor(), OVER + over.mm() * scale.factor());
    let view: View<Cut> = View::open(canvas, "wall-edge", scale, origin);
    let layer = view.layer;
    let end = canvas.text(layer, at.moved(0.0, 3.0), &edge.title, &Style::body().bold());
    canvas.text(layer, at.moved(end + 3.0, 3.0), &scale.words(), &Style::caption());
    let part = |canvas: &mut Canvas, a: (Length, Length), b: (Length, Length), material: Material, pen: Pen| {
        let (p, q) = (view.at(a.0, a.1), view.at(b.0, b.1));
        if (p.x - q.x).abs() > 0.05 && (p.y - q.y).abs() > 0.05 {
            materials::hatch(canvas, layer, &[corners(p, q).to_vec()], material, view.scale.0 <= 2);
            canvas.rectangle(layer, p, q, Paint::pen(pen));
        }
    };
    let (a, b) = (view.at(edge.wall, over), view.at(edge.wall + Length::from_mm(WALL), low));
    canvas.rectangle(layer, a, b, Paint::fill(Fill::tint(Colour(0xee, 0xee, 0xee))));
    materials::hatch(canvas, layer, &[corners(a, b).to_vec()], Material::Wall, false);
    canvas.line(layer, a, PaperPoint::new(a.x, b.y), Pen::VISIBLE);
    let frame = &task.solved.frame;
    let (a, b) = (view.at(edge.frame - frame.tube, d.frame_top), view.at(edge.frame, d.frame_top - frame.tube));
    canvas.rectangle(layer, a, b, Paint::pen(Pen::CUT));
    part(canvas, (edge.from, d.frame_top), (edge.substrate, d.substrate_top), Material::Substrate, Pen::SECONDARY);
    let stone = Material::Counter(task.solved.counter.material);
    part(canvas, (edge.from, d.substrate_top), (edge.counter, d.counter_top), stone, Pen::VISIBLE);
    if let Some(splash) = edge.splash {
        part(canvas, (edge.counter - splash.thickness, d.counter_top), (edge.counter, high), stone, Pen::VISIBLE);
    }
    dimensions(canvas, layer, task, edge, &view);
}

fn dimensions(canvas: &mut Canvas, at: Layer, task: &Task<'_>, edge: &Edge, view: &View<Cut>) {
    let (show, d) = (task.show, &task.leg.datums);
    if let Some(splash) = edge.splash {
        let (front, top) = (edge.counter - splash.thickness, d.counter_top + splash.height);
        if splash.height <= Length::from_mm(320.0) {
            let line = view.x(front) - 9.0;
            let high = Dimension::new(Across::Y, (front, d.counter_top), (front, top), line)
                .datums("counter top", "splash top")
                .ghosts(true, false);
            let high = if high.fits(view, show) { high } else { high.number(Number::After(6.5)) };
            high.draw(canvas, at, view, show);
        }
        Dimension::new(Across::X, (front, top), (edge.counter, top), view.y(top) - 7.0)
            .datums("splash front", "counter back edge")
            .number(Number::Before(7.0))
            .draw(canvas, at, view, show);
    }
    let joint = edge.wall - edge.counter;
    let x = view.x(edge.counter + joint.half());
    let (top, low) = (view.y(d.frame_top), view.y(d.frame_top - task.solved.frame.tube.scaled(1.3)));
    let points = [PaperPoint::new(x, top), PaperPoint::new(x, low + 4.5), PaperPoint::new(x - 3.0, low + 4.5)];
    marks::leader(canvas, at, &points, LeaderEnd::Arrow, Colour::INK);
    let words = format!("joint {}, sealant", show.text(task.solved.counter.wall_joint));
    canvas.text(at, PaperPoint::new(x - 4.2, low + 5.75), &words, &Style::body().end());
}
