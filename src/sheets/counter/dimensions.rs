//! Dimensions of the counter: in the accent along the front from the finished end and inside from the finished face,
//! in black along the back and at the left from edge to edge.

use super::parts::{self, End};
use super::plan::{BAND, Plan};
use crate::drawing::{Colour, Dash, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::dimensions::{Across, Chain, Dimension, NEXT, Number, Part as Stop, Running, Side};
use crate::solve::{Cutout, Fitting, Leg, Plane};
use crate::units::Length;

/// First line under the front edge, beyond the edge tags, mm.
pub const FIRST_BELOW: f64 = 15.0;
/// More stops than this are one running line.
const STACKED: usize = 4;

/// First line over the back edge, mm: beyond the wall, or beyond the tags of a finished back.
pub fn first_above(leg: &Leg) -> f64 {
    if leg.back.is_open() { 15.0 } else { 12.0 }
}

/// Draws all of them; returns the paper y of the lowest.
pub fn draw(canvas: &mut Canvas, plan: &Plan<'_, '_>) -> f64 {
    let layer = canvas.layer(plan.view.layer, "dimensions");
    along_back(canvas, layer, plan);
    depths(canvas, layer, plan);
    let bottom = along_front(canvas, layer, plan);
    for (fitting, cutout) in parts::cutouts(plan.leg(), Plane::Counter) {
        let hole = cutout.extent;
        if hole.x0 < plan.part.from || hole.x1 > plan.part.to {
            continue;
        }
        match cutout.open {
            true => notch(canvas, layer, plan, fitting, cutout),
            false => well(canvas, layer, plan, fitting, cutout),
        }
    }
    bottom
}

/// Pieces and total, edge to edge.
fn along_back(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view, part, show) = (plan.leg(), &plan.view, plan.part, plan.task.show);
    let edge = |end: End, side: &str| match end {
        End::Counter => format!("counter {side} edge"),
        End::Seam => "seam".to_owned(),
        End::Break => "break".to_owned(),
    };
    let mut positions = vec![Stop { at: part.from, name: edge(part.starts, "left") }];
    let inner = leg.counter.seams.iter().filter(|&&u| u > part.from && u < part.to);
    positions.extend(inner.map(|&at| Stop { at, name: "seam".to_owned() }));
    positions.push(Stop { at: part.to, name: edge(part.ends, "right") });
    if part.starts == End::Break || part.ends == End::Break {
        return;
    }
    let back = leg.datums.counter_back;
    let first = view.y(back) - first_above(leg);
    let witness = (!leg.back.is_open()).then(|| view.y(leg.back.at_counter).min(view.y(back)) - BAND.0 - 1.4);
    let dimension = |a: &Stop, b: &Stop, line| {
        Dimension::new(Across::X, (a.at, back), (b.at, back), line)
            .datums(a.name.clone(), b.name.clone())
            .witnesses(witness, witness)
    };
    let (low, high) = (&positions[0], &positions[positions.len() - 1]);
    let all_fit = positions.windows(2).all(|pair| dimension(&pair[0], &pair[1], first).fits(view, show));
    if positions.len() == 2 || !all_fit {
        dimension(low, high, first).draw(canvas, at, view, show);
        return;
    }
    Chain {
        name: "along the back".to_owned(),
        across: Across::X,
        beside: back,
        line: first,
        total: Some(first - NEXT),
        total_label: String::new(),
        total_finished: false,
        witness,
        positions,
    }
    .draw(canvas, at, view, show);
}

/// Depth at the left: from the finished face, and edge to edge.
fn depths(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) {
    let (leg, view, part, show) = (plan.leg(), &plan.view, plan.part, plan.task.show);
    let d = &leg.datums;
    let u = part.from;
    let wall = plan.bounded().0;
    let edge = view.x(u);
    let (off, witness) = if wall { (BAND.1 + 7.0, Some(edge - BAND.1 - 2.0)) } else { (14.0, None) };
    if part.starts == End::Break {
        return;
    }
    let zero = Length::ZERO;
    Dimension::new(Across::Y, (u, zero), (u, d.counter_back), edge - off)
        .datums("finished face", "counter back edge")
        .witnesses(witness, witness)
        .from_finished()
        .draw(canvas, at, view, show);
    Dimension::new(Across::Y, (u, d.counter_front), (u, d.counter_back), edge - off - NEXT)
        .datums("counter edge", "counter back edge")
        .witnesses(witness, witness)
        .draw(canvas, at, view, show);
}

/// Centrelines, seams and the right end, from the finished left end.
fn along_front(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>) -> f64 {
    let (leg, view, part, show) = (plan.leg(), &plan.view, plan.part, plan.task.show);
    let d = &leg.datums;
    let front = d.counter_front;
    let mut stops: Vec<(Length, String)> = parts::cutouts(leg, Plane::Counter)
        .into_iter()
        .filter(|(_, cutout)| part.holds(cutout.extent.centre_x()))
        .map(|(fitting, cutout)| (cutout.extent.centre_x(), format!("{} centreline", fitting.mark)))
        .collect();
    let seams = leg.counter.seams.iter().filter(|&&u| part.holds(u));
    stops.extend(seams.map(|&u| (u, "seam".to_owned())));
    match (part.ends == End::Counter, leg.right.is_open()) {
        (true, true) => stops.push((d.finished_right, "finished right end".to_owned())),
        (true, false) => stops.push((d.counter_right, "counter right edge".to_owned())),
        _ => {}
    }
    stops.sort();
    stops.dedup_by_key(|stop| show.rounded(stop.0));
    let bottom = view.y(front);
    let first = bottom + FIRST_BELOW;
    let dimension = |stop: &(Length, String), line: f64| {
        Dimension::new(Across::X, (Length::ZERO, front), (stop.0, front), line)
            .datums("finished left end", stop.1.clone())
            .from_finished()
    };
    let here = part.holds(Length::ZERO);
    if here && stops.len() <= STACKED && stops.iter().all(|stop| dimension(stop, first).fits(view, show)) {
        let last = stops.len().saturating_sub(1);
        for (index, stop) in stops.iter().enumerate() {
            dimension(stop, first + index as f64 * NEXT).ghosts(index != last, false).draw(canvas, at, view, show);
        }
        return first + last as f64 * NEXT + 2.0;
    }
    let running = Running {
        datum: (Length::ZERO, front),
        datum_name: "finished left end".to_owned(),
        line: first,
        side: Side::Below,
        finished: true,
        stops: stops
            .into_iter()
            .map(|(u, name)| crate::sheets::dimensions::Stop { at: (u, front), name, witness: None })
            .collect(),
    };
    if running.stops.is_empty() {
        return first;
    }
    let begin = (!here).then(|| view.x(part.from));
    running.draw_from(canvas, at, view, show, begin);
    first + running.reach(show) + 6.0
}

/// Whether the number of an upright dimension would stand on white.
fn number_is_free(canvas: &Canvas, dimension: &Dimension, show: crate::units::Show, line: f64, middle: f64) -> bool {
    let half = dimension.lettering_width(show) / 2.0 + 0.6;
    canvas.is_box_free(line - 4.4, middle - half, line - 0.8, middle + half)
}

/// Depth, strip behind and width of a notch, where its void has room.
fn notch(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>, fitting: &Fitting, cutout: &Cutout) {
    let (leg, view, show) = (plan.leg(), &plan.view, plan.task.show);
    let (d, hole) = (&leg.datums, cutout.extent);
    let (left, right) = (view.x(hole.x0), view.x(hole.x1));
    let zero = Length::ZERO;
    let (back, front) = (view.at(hole.centre_x(), hole.y1), view.at(hole.centre_x(), d.counter_front));
    broken(canvas, at, back.moved(0.0, -5.0), back, front, front.moved(0.0, 1.5));
    let upright = |from: Length, to: Length, line: f64| {
        Dimension::new(Across::Y, (hole.x1, from), (hole.x1, to), line).ghosts(true, true)
    };
    let back = format!("{} back edge", fitting.mark);
    let accent = upright(zero, hole.y1, right - 4.0).datums("finished face", back.clone()).from_finished();
    let black = upright(d.counter_front, hole.y1, right - 11.0).datums("counter edge", back.clone());
    let strip = upright(hole.y1, d.counter_back, right - 11.0).datums(back, "counter back edge");
    let mut free = right;
    if right - left > 14.0 && accent.fits(view, show) {
        accent.draw(canvas, at, view, show);
        free = right - 9.0;
        if right - left > 22.0 && black.fits(view, show) {
            black.draw(canvas, at, view, show);
            free = right - 16.0;
        }
    }
    let (top, bottom) = (view.y(d.counter_back), view.y(hole.y1));
    if strip.fits(view, show)
        && right - left > 22.0
        && number_is_free(canvas, &strip, show, right - 11.0, (top + bottom) / 2.0)
    {
        strip.draw(canvas, at, view, show);
    }
    let width = Dimension::new(Across::X, (hole.x0, hole.y1), (hole.x1, hole.y1), 0.0);
    let wide = width.lettering_width(show);
    let middle = (left + right) / 2.0;
    let room = [(left, middle - 1.0), (middle + 1.0, free)];
    let Some(&(from, to)) = room.iter().rfind(|(from, to)| to - from > wide + 5.0) else { return };
    let number = crate::drawing::lettering::width(&show.text(hole.width()), 2.5, Default::default());
    // The line crosses the depths, so it keeps clear of their numbers, which stand at their middles.
    let (top, bottom) = (view.y(hole.y1), view.y(d.counter_front));
    let half = accent.lettering_width(show).max(black.lettering_width(show)) / 2.0 + 1.5;
    let clear = |y: f64| [zero, d.counter_front].iter().all(|&v| (y - (top + view.y(v)) / 2.0).abs() > half);
    let Some(line) =
        [0.3, 0.25, 0.72, 0.8, 0.2].map(|share| top + (bottom - top) * share).into_iter().find(|&y| clear(y))
    else {
        return;
    };
    Dimension::new(Across::X, (hole.x0, hole.y1), (hole.x1, hole.y1), line)
        .datums(format!("{} left edge", fitting.mark), format!("{} right edge", fitting.mark))
        .ghosts(true, true)
        .number(Number::Aligned((from + to - wide) / 2.0 + number))
        .draw(canvas, at, view, show);
}

/// Centrelines of a well, and its centre from the finished face at the first side where there is white for it.
fn well(canvas: &mut Canvas, at: Layer, plan: &Plan<'_, '_>, fitting: &Fitting, cutout: &Cutout) {
    let (view, show, hole) = (&plan.view, plan.task.show, cutout.extent);
    let (cx, cy) = (hole.centre_x(), hole.centre_y());
    let middle = view.at(cx, cy);
    let (half_x, half_y) = (view.size(hole.width()) / 2.0, view.size(hole.height()) / 2.0);
    let edge = view.at(cx, plan.leg().datums.counter_front).moved(0.0, 1.5);
    // Behind another cutout on the same line, that one's centreline goes on.
    let hidden = parts::cutouts(plan.leg(), Plane::Counter)
        .iter()
        .any(|(_, other)| other.extent.centre_x() == cx && other.extent.y1 <= hole.y0);
    let low = middle.moved(0.0, half_y);
    let end = if hidden { low.moved(0.0, 3.0) } else { edge };
    broken(canvas, at, middle.moved(0.0, -half_y - 3.0), middle.moved(0.0, -half_y), low, end);
    let zero = Length::ZERO;
    let dimension = |line: f64| {
        Dimension::new(Across::Y, (cx, zero), (cx, cy), line)
            .datums("finished face", format!("{} centre", fitting.mark))
            .from_finished()
            .ghosts(true, true)
    };
    let area = plan.area();
    let (top, bottom) = (middle.y, view.y(zero));
    let sides = [5.5, 9.0, 12.5, 16.0, 19.5, 23.0].into_iter().flat_map(|off| [half_x + off, -half_x - off + 4.0]);
    let line = sides.map(|off| middle.x + off).find(|&x| {
        let (near, far) =
            if x > middle.x { (middle.x + half_x + 0.9, x - 1.0) } else { (x + 1.0, middle.x - half_x - 0.9) };
        x - 5.0 > area.left
            && x + 2.0 < area.right
            && dimension(x).fits(view, show)
            && canvas.is_box_free(x - 4.4, top + 0.6, x + 1.2, bottom - 1.4)
            && (near >= far || canvas.is_box_free(near, top - 0.3, far, top + 0.3))
    });
    let (mut left, mut right) = (middle.x - half_x - 3.0, middle.x + half_x + 3.0);
    if let Some(x) = line {
        dimension(x).draw(canvas, at, view, show);
        (left, right) = (left.min(x - 2.0), right.max(x + 2.0));
    }
    let place = |x: f64| PaperPoint::new(x, middle.y);
    broken(canvas, at, place(left), place(middle.x - half_x), place(middle.x + half_x), place(right));
    if half_x.min(half_y) > 14.0 {
        centreline(canvas, at, middle.moved(-2.5, 0.0), middle.moved(2.5, 0.0));
        centreline(canvas, at, middle.moved(0.0, -2.5), middle.moved(0.0, 2.5));
    }
}

/// Half of a void that is wide enough to be kept free of its centrelines for names and tags, mm.
const VOID: f64 = 4.5;

/// A centreline through a void between two of its edges: left out inside.
fn broken(canvas: &mut Canvas, at: Layer, start: PaperPoint, enters: PaperPoint, leaves: PaperPoint, end: PaperPoint) {
    let length = enters.distance(leaves);
    if length < 2.0 * VOID {
        centreline(canvas, at, start, end);
        return;
    }
    centreline(canvas, at, start, enters);
    centreline(canvas, at, leaves, end);
}

fn centreline(canvas: &mut Canvas, at: Layer, a: PaperPoint, b: PaperPoint) {
    canvas.line(at, a, b, Pen::FINE.coloured(Colour::INK).dashed(Dash::CENTRE));
}
