//! Every edge of every cutout from every datum that a tape can be held to.

use super::columns::{datum, located, titled};
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Datum, Datums, Face, Fitting, FittingKind};
use crate::units::Length;

/// Edges of cutouts that lie across the same datums.
pub struct Edges {
    /// Title of their table.
    title: &'static str,
    /// What stands before a datum's name.
    from: &'static str,
    /// A fitting's edges, named, in leg coordinates; none for a fitting that has none across these datums.
    pub edges: fn(&Fitting) -> Vec<(&'static str, Length)>,
    /// The datums.
    pub datums: &'static [Datum],
}

/// All of them, in the order of the schedules: along the run, its back and its ends, in depth, in height.
pub const EDGES: &[Edges] = &[ALONG, ALONG_BACK, ACROSS_ENDS, DEPTHS, HEIGHTS];

const ALONG: Edges = Edges {
    title: "Cutouts along the run",
    from: "from",
    edges: |fitting| match fitting.face {
        Face::Left | Face::Right | Face::Back if is_opening(fitting) => Vec::new(),
        _ => vec![("left edge", fitting.left), ("centreline", fitting.centre()), ("right edge", fitting.right)],
    },
    datums: &[Datum::FinishedLeftEnd, Datum::BoardLeftEnd, Datum::FrameLeftEnd, Datum::FinishedRightEnd],
};

/// Openings in the back, named as whoever stands behind the run sees them: their left is towards the right end.
const ALONG_BACK: Edges = Edges {
    title: "Openings along the back, seen from behind",
    from: "from",
    edges: |fitting| match fitting.face {
        Face::Back if is_opening(fitting) => {
            vec![("left edge", fitting.right), ("centreline", fitting.centre()), ("right edge", fitting.left)]
        }
        _ => Vec::new(),
    },
    datums: &[Datum::FinishedRightEnd, Datum::BoardRightEnd, Datum::FrameRightEnd, Datum::FinishedLeftEnd],
};

const ACROSS_ENDS: Edges = Edges {
    title: "Openings across the ends",
    from: "from",
    edges: |fitting| match fitting.face {
        Face::Left | Face::Right if is_opening(fitting) => {
            vec![("front edge", fitting.left), ("centreline", fitting.centre()), ("back edge", fitting.right)]
        }
        _ => Vec::new(),
    },
    datums: &[Datum::FinishedFace, Datum::BoardFace, Datum::FrameFace, Datum::FinishedBack],
};

/// Front to back: what is cut in the counter.
const DEPTHS: Edges = Edges {
    title: "Cutouts in depth",
    from: "from",
    edges: |fitting| match (fitting.front, fitting.back) {
        (Some(front), Some(back)) => {
            vec![("front edge", front), ("centreline", (front + back).half()), ("back edge", back)]
        }
        (None, Some(back)) => vec![("back edge", back)],
        _ => Vec::new(),
    },
    datums: &[Datum::FinishedFace, Datum::CounterEdge, Datum::BoardFace, Datum::FrameFace],
};

/// Up and down: tops and bottoms.
const HEIGHTS: Edges = Edges {
    title: "Cutouts in height",
    from: "down from",
    edges: |fitting| {
        let top = fitting.top.map(|top| ("top", top));
        let bottom = fitting.bottom.filter(|_| !fitting.to_floor).map(|bottom| ("bottom", bottom));
        top.into_iter().chain(bottom).collect()
    },
    datums: &[Datum::CounterTop, Datum::SubstrateTop, Datum::FrameTop, Datum::Floor],
};

fn is_opening(fitting: &Fitting) -> bool {
    matches!(fitting.kind, FittingKind::Opening(_))
}

/// What a tape reads from a datum to an edge: from a top it runs down, from a right end to the left, from a back towards
/// the cook.
pub fn measured(datums: &Datums, datum: Datum, at: Length) -> Length {
    let length = datums.from(datum, at);
    if runs_back(datum) { -length } else { length }
}

/// Adds the schedules of a leg.
pub fn add_all(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    for group in EDGES {
        add(flow, set, leg, group);
    }
}

/// One edge of one fitting.
struct Line<'l> {
    mark: &'l str,
    edge: &'static str,
    at: Length,
    last: bool,
}

fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize, group: &Edges) {
    let (show, it) = (set.solved.show, &set.solved.legs[leg]);
    let of = |fitting| {
        let fitting: &Fitting = fitting;
        let edges = (group.edges)(fitting);
        let count = edges.len();
        let line = move |(index, (edge, at))| Line { mark: fitting.mark.as_str(), edge, at, last: index + 1 == count };
        edges.into_iter().enumerate().map(line).collect::<Vec<_>>()
    };
    let lines: Vec<Line<'_>> = it.fittings.iter().flat_map(of).collect();
    let build = |_: f64| {
        let mut columns = vec![Column::words(12.0, "mark"), Column::words(22.0, "edge")];
        for &it in group.datums {
            columns.push(datum(show, if it == Datum::Floor { "up from" } else { group.from }, it));
        }
        let mut before = "";
        let rows = lines.iter().map(|line| {
            let mark = if line.mark == before { Cell::Empty } else { Cell::Bold(line.mark.to_owned()) };
            before = line.mark;
            let mut row = vec![mark, Cell::words(line.edge)];
            row.extend(group.datums.iter().map(|&from| located(from, measured(&it.datums, from, line.at))));
            row
        });
        let rows = rows.collect();
        let breaks = lines.iter().enumerate().filter(|(_, line)| line.last).map(|(index, _)| index).collect();
        Table { columns, rows, breaks }
    };
    flow.table(&titled(set, leg, group.title), 2, &build);
}

/// Lengths from a top run down, from a right end to the left, and from a back towards the cook.
fn runs_back(datum: Datum) -> bool {
    use Datum::{BoardRightEnd, CounterTop, FinishedBack, FinishedRightEnd, FrameRightEnd, FrameTop, SubstrateTop};
    let ends = matches!(datum, FinishedRightEnd | BoardRightEnd | FrameRightEnd);
    ends || matches!(datum, CounterTop | SubstrateTop | FrameTop | FinishedBack)
}
