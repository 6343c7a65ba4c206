//! Every edge of every cutout from every datum that a tape can be held to.

use super::columns::{datum, located, titled};
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Datum, Face, Fitting, FittingKind, Leg};
use crate::units::Length;

/// One edge of one fitting.
struct Line<'l> {
    mark: &'l str,
    edge: &'static str,
    at: Length,
    last: bool,
}

/// Along the run: left edge, centreline and right edge.
pub fn across(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    use Datum::{BoardLeftEnd, FinishedLeftEnd, FinishedRightEnd, FrameLeftEnd};
    let it = &set.solved.legs[leg];
    let lines = lines(it, |fitting| match fitting.face {
        Face::Left | Face::Right | Face::Back if is_opening(fitting) => Vec::new(),
        _ => vec![("left edge", fitting.left), ("centreline", fitting.centre()), ("right edge", fitting.right)],
    });
    let datums = [FinishedLeftEnd, BoardLeftEnd, FrameLeftEnd, FinishedRightEnd];
    add(flow, set, leg, "Cutouts along the run", "from", &lines, &datums);
}

/// Openings in the back, named as whoever stands behind the run sees them: their left is towards the right end.
pub fn across_back(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    use Datum::{BoardRightEnd, FinishedLeftEnd, FinishedRightEnd, FrameRightEnd};
    let it = &set.solved.legs[leg];
    let lines = lines(it, |fitting| match fitting.face {
        Face::Back if is_opening(fitting) => {
            vec![("left edge", fitting.right), ("centreline", fitting.centre()), ("right edge", fitting.left)]
        }
        _ => Vec::new(),
    });
    let datums = [FinishedRightEnd, BoardRightEnd, FrameRightEnd, FinishedLeftEnd];
    add(flow, set, leg, "Openings along the back, seen from behind", "from", &lines, &datums);
}

fn is_opening(fitting: &Fitting) -> bool {
    matches!(fitting.kind, FittingKind::Opening(_))
}

/// Openings in the ends: across the end, front to back.
pub fn across_ends(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let it = &set.solved.legs[leg];
    let lines = lines(it, |fitting| match fitting.face {
        Face::Left | Face::Right if is_opening(fitting) => {
            vec![("front edge", fitting.left), ("centreline", fitting.centre()), ("back edge", fitting.right)]
        }
        _ => Vec::new(),
    });
    let datums = [Datum::FinishedFace, Datum::BoardFace, Datum::FrameFace, Datum::FinishedBack];
    add(flow, set, leg, "Openings across the ends", "from", &lines, &datums);
}

/// Front to back: what is cut in the counter.
pub fn depths(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let it = &set.solved.legs[leg];
    let lines = lines(it, |fitting| match (fitting.front, fitting.back) {
        (Some(front), Some(back)) => {
            vec![("front edge", front), ("centreline", (front + back).half()), ("back edge", back)]
        }
        (None, Some(back)) => vec![("back edge", back)],
        _ => Vec::new(),
    });
    let datums = [Datum::FinishedFace, Datum::CounterEdge, Datum::BoardFace, Datum::FrameFace];
    add(flow, set, leg, "Cutouts in depth", "from", &lines, &datums);
}

/// Up and down: tops and bottoms.
pub fn heights(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let it = &set.solved.legs[leg];
    let lines = lines(it, |fitting| {
        let top = fitting.top.map(|top| ("top", top));
        let bottom = fitting.bottom.filter(|_| !fitting.to_floor).map(|bottom| ("bottom", bottom));
        top.into_iter().chain(bottom).collect()
    });
    let datums = [Datum::CounterTop, Datum::SubstrateTop, Datum::FrameTop, Datum::Floor];
    add(flow, set, leg, "Cutouts in height", "down from", &lines, &datums);
}

fn lines<'l>(leg: &'l Leg, edges: impl Fn(&'l Fitting) -> Vec<(&'static str, Length)>) -> Vec<Line<'l>> {
    let of = |fitting: &'l Fitting| {
        let edges = edges(fitting);
        let count = edges.len();
        let line = move |(index, (edge, at))| Line { mark: fitting.mark.as_str(), edge, at, last: index + 1 == count };
        edges.into_iter().enumerate().map(line).collect::<Vec<_>>()
    };
    leg.fittings.iter().flat_map(of).collect()
}

fn add(
    flow: &mut Flow<'_, '_>,
    set: &Set<'_>,
    leg: usize,
    title: &str,
    from: &str,
    lines: &[Line<'_>],
    datums: &[Datum],
) {
    let (show, all) = (set.solved.show, &set.solved.legs[leg].datums);
    let build = |_: f64| {
        let mut columns = vec![Column::words(12.0, "mark"), Column::words(22.0, "edge")];
        for &it in datums {
            columns.push(datum(show, if it == Datum::Floor { "up from" } else { from }, it));
        }
        let mut before = "";
        let rows = lines.iter().map(|line| {
            let mark = if line.mark == before { Cell::Empty } else { Cell::Bold(line.mark.to_owned()) };
            before = line.mark;
            let mut row = vec![mark, Cell::words(line.edge)];
            row.extend(datums.iter().map(|&it| {
                let length = all.from(it, line.at);
                located(it, if runs_back(it) { -length } else { length })
            }));
            row
        });
        let rows = rows.collect();
        let breaks = lines.iter().enumerate().filter(|(_, line)| line.last).map(|(index, _)| index).collect();
        Table { columns, rows, breaks }
    };
    flow.table(&titled(set, leg, title), 2, &build);
}

/// Lengths from a top run down, from a right end to the left, and from a back towards the cook.
fn runs_back(datum: Datum) -> bool {
    use Datum::{BoardRightEnd, CounterTop, FinishedBack, FinishedRightEnd, FrameRightEnd, FrameTop, SubstrateTop};
    let ends = matches!(datum, FinishedRightEnd | BoardRightEnd | FrameRightEnd);
    ends || matches!(datum, CounterTop | SubstrateTop | FrameTop | FinishedBack)
}
