//! Drops from the counter's top inside the openings: one upright line a column, level numbers beside it.

use super::elevation::Elevation;
use super::stops::opens_up;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen, Text};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::{Drop, ORIGIN};
use crate::solve::Fitting;
use crate::units::Length;

/// Least width that openings of one column share, mm.
const SHARED: f64 = 15.0;

/// What is written at each edge of a column; nothing where every place is taken.
type Numbers = Vec<Option<Vec<Text>>>;

/// An edge that a drop reaches.
struct Edge<'s> {
    fitting: &'s Fitting,
    z: Length,
    kind: Reach,
}

/// What of an opening a drop reaches.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Reach {
    Top,
    Bottom,
    Centre,
}

/// Openings above one another that one line can pass through.
struct Column<'s> {
    low: f64,
    high: f64,
    edges: Vec<Edge<'s>>,
    round: bool,
}

/// Draws the drops of all openings; each opening's mark then has to keep clear of them.
pub fn draw(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for column in columns(e) {
        let Some((x, texts)) = placed(canvas, e, &column) else { continue };
        draw_column(canvas, at, e, &column, x, texts);
    }
}

fn columns<'s>(e: &Elevation<'s>) -> Vec<Column<'s>> {
    let plane = e.facing.plane();
    let mut fittings: Vec<&Fitting> = e.fittings().map(|(_, fitting)| fitting).collect();
    let top = |fitting: &Fitting| fitting.cutout(plane).map_or(Length::ZERO, |cutout| cutout.extent.y1);
    fittings.sort_by_key(|fitting| (-top(fitting), fitting.left));
    let mut columns: Vec<Column<'s>> = Vec::new();
    for fitting in fittings {
        let Some(cutout) = fitting.cutout(plane) else { continue };
        let (x0, x1) = e.facing.span(cutout.extent.x0, cutout.extent.x1);
        let (x0, x1) = (e.view.x(x0), e.view.x(x1));
        let mut edges = Vec::new();
        if cutout.round {
            edges.push(Edge { fitting, z: cutout.extent.centre_y(), kind: Reach::Centre });
            // A hole is drilled at its centre: a line of its own goes there.
            columns.push(Column { low: x0, high: x1, edges, round: true });
            continue;
        }
        if !opens_up(fitting, &e.facing) {
            edges.push(Edge { fitting, z: cutout.extent.y1, kind: Reach::Top });
        }
        if !fitting.to_floor {
            edges.push(Edge { fitting, z: cutout.extent.y0, kind: Reach::Bottom });
        }
        match columns.iter_mut().find(|column| !column.round && column.high.min(x1) - column.low.max(x0) >= SHARED) {
            Some(column) => {
                (column.low, column.high) = (column.low.max(x0), column.high.min(x1));
                column.edges.extend(edges);
            }
            None => columns.push(Column { low: x0, high: x1, edges, round: false }),
        }
    }
    columns
}

/// The best place of a column's line and its numbers: as near as can be to 6 mm inside the left edges.
fn placed(canvas: &Canvas, e: &Elevation<'_>, column: &Column<'_>) -> Option<(f64, Numbers)> {
    let width = column.high - column.low;
    // In a low opening the mark has to stand beside the number, which then keeps to the left.
    let plane = e.facing.plane();
    let height =
        |edge: &Edge<'_>| edge.fitting.cutout(plane).map_or(f64::MAX, |cutout| e.view.size(cutout.extent.height()));
    let low = column.edges.iter().any(|edge| height(edge) < 11.0);
    let wanted = if low {
        [2.5, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 18.0]
    } else {
        [6.0, 5.0, 8.0, 4.0, 10.0, 12.0, 14.0, 18.0, 22.0]
    };
    let mut offsets: Vec<f64> = wanted.into_iter().filter(|off| off + 2.0 < width).collect();
    if column.round {
        offsets.clear();
    }
    offsets.push(width / 2.0);
    if !column.round {
        offsets.push((width - 2.5).max(width / 2.0));
    }
    let mut best: Option<(usize, f64, Numbers)> = None;
    for off in offsets {
        let x = column.low + off;
        // The line with its open circle keeps off the numbers of other columns.
        let low = column.edges.iter().map(|edge| e.view.y(edge.z)).fold(e.view.y(e.top), f64::max);
        let line = (PaperPoint::new(x, e.view.y(e.leg.datums.counter_top) - 1.0), PaperPoint::new(x, low));
        if canvas.crosses_text(line.0, line.1, Pen::new(2.0)) {
            continue;
        }
        let texts = numbers(canvas, e, column, x);
        let count = texts.iter().flatten().count();
        if best.as_ref().is_none_or(|(most, ..)| count > *most) {
            best = Some((count, x, texts));
        }
        if count == column.edges.len() {
            break;
        }
    }
    best.filter(|(count, ..)| *count > 0).map(|(_, x, texts)| (x, texts))
}

/// The numbers of a column with its line at x; `None` where a number meets something everywhere.
fn numbers(canvas: &Canvas, e: &Elevation<'_>, column: &Column<'_>, x: f64) -> Numbers {
    let mut taken: Vec<[PaperPoint; 4]> = Vec::new();
    let mut all = Vec::new();
    for edge in &column.edges {
        let y = e.view.y(edge.z);
        // Brackets hang lower than figures.
        let over = if e.show.second(edge.z).is_some() { -2.0 } else { -1.4 };
        let (inside, outside) = match edge.kind {
            Reach::Top => (3.9, over),
            Reach::Bottom => (over, 3.9),
            Reach::Centre => (over, 1.25),
        };
        // In the opening beside the line, past the edge, or out beside the opening.
        let (left, right) = (column.low - x - 1.6, column.high - x + 1.6);
        let places = [
            (1.5, inside),
            (-1.5, inside),
            (1.5, outside),
            (-1.5, outside),
            (right, inside),
            (left, inside),
            (right, outside),
            (left, outside),
        ];
        let found = places.into_iter().find_map(|(dx, dy)| {
            let texts = lettered(e, edge.z, PaperPoint::new(x + dx, y + dy), dx < 0.0);
            let clear = texts
                .iter()
                .all(|text| canvas.is_free(text) && !taken.iter().any(|other| meet(other, &text.corners())));
            clear.then_some(texts)
        });
        if let Some(texts) = &found {
            taken.extend(texts.iter().map(Text::corners));
        }
        all.push(found);
    }
    all
}

/// A drop's number, and its second reading after it.
fn lettered(e: &Elevation<'_>, z: Length, place: PaperPoint, before: bool) -> Vec<Text> {
    let drop = e.leg.datums.counter_top - z;
    let figure = e.show.text(drop);
    let second = e.show.second(drop);
    let own = lettering::width(&figure, BODY, Weight::SemiBold);
    let after = second.as_ref().map_or(0.0, |text| 1.0 + lettering::width(text, BODY, Weight::Regular));
    let left = if before { place.moved(-own - after, 0.0) } else { place };
    let style = Style::body().bold().fact("data-role", "dimtext");
    let mut texts = vec![lettering::set(left, &figure, &style)];
    if let Some(second) = second {
        texts.push(lettering::set(left.moved(own + 1.0, 0.0), &second, &Style::body()));
    }
    texts
}

fn meet(a: &[PaperPoint; 4], b: &[PaperPoint; 4]) -> bool {
    let span = |corners: &[PaperPoint; 4], along: fn(&PaperPoint) -> f64| {
        corners.iter().map(along).fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), v| (lo.min(v), hi.max(v)))
    };
    let apart = |along: fn(&PaperPoint) -> f64| {
        let ((a0, a1), (b0, b1)) = (span(a, along), span(b, along));
        a1 + 0.4 < b0 || b1 + 0.4 < a0
    };
    !(apart(|p| p.x) || apart(|p| p.y))
}

fn draw_column(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, column: &Column<'_>, x: f64, texts: Numbers) {
    let top = e.leg.datums.counter_top;
    let y0 = e.view.y(top);
    let model_x = Length::from_mm((x - e.view.origin.x) / e.view.scale.factor());
    let x = e.view.x(model_x);
    let mut lowest = y0;
    let p = PaperPoint::new;
    for (edge, texts) in column.edges.iter().zip(texts) {
        let Some(texts) = texts else { continue };
        let y = e.view.y(edge.z);
        lowest = lowest.max(y);
        let side = match edge.kind {
            Reach::Top => "top edge",
            Reach::Bottom => "bottom edge",
            Reach::Centre => "centre",
        };
        let to = format!("{} {side}", edge.fitting.mark);
        let group = Drop { x: model_x, top, z: edge.z, to }.group(canvas, at, &e.view, e.show);
        canvas.arrow(group, p(x, y), 90.0, Colour::INK);
        for text in texts {
            canvas.put(group, text);
        }
    }
    canvas.line(at, p(x, y0), p(x, lowest), Pen::DIMENSION);
    canvas.circle(at, p(x, y0), ORIGIN, Paint::both(Pen::DIMENSION, Fill::WHITE));
}
