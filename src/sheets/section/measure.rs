//! "Measure the notch from a face that is there": the cutout from every datum, and when each can be measured from.

use super::slice::Slice;
use crate::sheets::table::{Cell, Column, Table, figures_width};
use crate::solve::{Build, Datum, FinishKind};
use crate::units::{Length, Show, System};

/// The short word for a finish that is put on.
pub fn finish_word(build: &Build) -> Option<&'static str> {
    build.finish.as_ref().map(|finish| match finish.kind {
        FinishKind::SkimCoat => "skim coat",
        FinishKind::Veneer => "veneer",
        FinishKind::Tile { .. } => "tile",
    })
}

/// When a face can be measured from, and whether that is the day of cutting.
fn when(slice: &Slice, datum: Datum, brief: bool) -> (String, bool) {
    let finish = finish_word(slice.near.build);
    let has_board = slice.near.build.board > Length::ZERO;
    let left = finish_word(&slice.leg.left_build);
    let left_board = slice.leg.left_build.board > Length::ZERO;
    match datum {
        Datum::FinishedFace | Datum::FinishedBack => match finish {
            Some(word) => (format!("once the {word} is on"), false),
            None if has_board => {
                (if brief { "boards on" } else { "boards on: the board is the face" }.to_owned(), true)
            }
            None => (if brief { "frame up" } else { "frame up: the frame is the face" }.to_owned(), true),
        },
        Datum::CounterEdge | Datum::CounterBack => ("on the counter, at the saw".to_owned(), false),
        Datum::BoardFace | Datum::BoardBack => match finish {
            Some(_) if brief => ("boards on: cutting day".to_owned(), true),
            Some(word) => (format!("boards on, no {word} yet: the cutting day"), true),
            None => ("boards on".to_owned(), true),
        },
        Datum::FrameFace | Datum::FrameBack => {
            (if has_board { "before the boards" } else { "frame up: the cutting day" }.to_owned(), !has_board)
        }
        Datum::CounterTop => ("once the counter is on".to_owned(), false),
        Datum::FrameTop => {
            (if brief { "before the substrate" } else { "before substrate and counter" }.to_owned(), false)
        }
        Datum::FinishedLeftEnd => match left {
            Some(word) => (
                if brief {
                    format!("left end\u{2019}s {word} on")
                } else {
                    format!("once the left end\u{2019}s {word} is on")
                },
                false,
            ),
            None => ("once the run stands".to_owned(), false),
        },
        Datum::BoardLeftEnd => {
            (if left.is_some() && !brief { "end board on, no finish yet" } else { "end board on" }.to_owned(), false)
        }
        Datum::FrameLeftEnd => {
            (if left_board { "before the boards" } else { "once the frame stands" }.to_owned(), false)
        }
        _ => (String::new(), false),
    }
}

/// The datums of the left end that differ: finished, board, frame.
fn left_ends(slice: &Slice) -> Vec<(Datum, Length)> {
    let (d, build) = (&slice.leg.datums, &slice.leg.left_build);
    let mut all = Vec::new();
    if build.finish.is_some() {
        all.push((Datum::FinishedLeftEnd, Length::ZERO));
    }
    if build.board > Length::ZERO {
        all.push((Datum::BoardLeftEnd, d.board_left));
    }
    all.push((Datum::FrameLeftEnd, d.frame_left));
    all
}

fn name_cell(datum: Datum) -> Cell {
    if datum.is_finished() { Cell::Flagged(datum.words().to_owned()) } else { Cell::Indented(datum.words().to_owned()) }
}

fn length_cell(datum: Datum, length: Length) -> Cell {
    if datum.is_finished() { Cell::Finished(length) } else { Cell::Key(length) }
}

fn when_cell(slice: &Slice, datum: Datum, brief: bool) -> Cell {
    let (text, is_day) = when(slice, datum, brief);
    if is_day { Cell::Bold(text) } else { Cell::Grey(text) }
}

/// The tables of a section, under one title, each `width` mm wide.
pub fn tables(slice: &Slice, show: Show, width: f64) -> Vec<Table> {
    if slice.is_notch() { vec![of_notch(slice, show, width)] } else { of_well(slice, show, width) }
}

/// Row by row: what, from where, how much, when.
fn of_notch(slice: &Slice, show: Show, width: f64) -> Table {
    let d = &slice.leg.datums;
    let greatest = slice.fitting.centre().max(slice.hole.1 + slice.counter_edges.0.abs());
    let figures = if show.system == System::Both { figures_width(show, greatest) + 2.5 } else { 23.0 };
    let columns = vec![
        Column::words(23.0, "the notch\u{2019}s"),
        Column::words(43.0, "from").indented(),
        Column::figures(figures, "is"),
        Column::words(width - 66.0 - figures, "the tape can be held there"),
    ];
    let brief = width - 66.0 - figures < 70.0;
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    let mut breaks = Vec::new();
    let mut put = |what: &str, datum: Datum, length: Length| {
        rows.push(vec![
            Cell::words(what),
            name_cell(datum),
            length_cell(datum, length),
            when_cell(slice, datum, brief),
        ]);
        rows.len() - 1
    };
    // The finished face first: everything else follows from it.
    let mut depths = slice.distinct_depths();
    depths.sort_by_key(|(datum, at, _)| (!datum.is_finished(), *at));
    for (datum, at, _) in depths {
        let row = put("back edge", datum, slice.hole.1 - at);
        breaks.push(row);
    }
    breaks.drain(..breaks.len().saturating_sub(1));
    if let Some(bottom) = slice.fitting.bottom {
        let mut last = put("bottom", Datum::CounterTop, d.counter_top - bottom);
        if d.frame_top > bottom {
            last = put("bottom", Datum::FrameTop, d.frame_top - bottom);
        }
        breaks.push(last);
    }
    let ends = left_ends(slice);
    // On the day of cutting the board's end is there; where all three are, the frame's serves before it.
    for (datum, at) in ends.iter().filter(|(datum, _)| ends.len() < 3 || *datum != Datum::BoardLeftEnd) {
        put("centreline", *datum, slice.fitting.centre() - *at);
    }
    if let Some((datum, at)) = ends.first() {
        put("left edge", *datum, slice.fitting.left - *at);
    }
    Table { columns, rows, breaks }
}

/// A row a datum, a column an edge: first in depth, then across. Dual units leave room for two edges each.
fn of_well(slice: &Slice, show: Show, width: f64) -> Vec<Table> {
    let greatest = slice.hole.1.max(slice.fitting.right);
    let figures = (figures_width(show, greatest) + 2.5).max(22.0);
    let count = if show.system == System::Both { 2 } else { 3 };
    let rest = width - 42.0 - figures * count as f64;
    let brief = rest < 70.0;
    let table = |edges: &[(&str, Length)], datums: Vec<(Datum, Length)>| {
        let mut columns = vec![Column::words(42.0, "from").indented()];
        columns.extend(edges.iter().map(|(head, _)| Column::figures(figures, head)));
        columns.push(Column::words(rest, "the tape can be held there"));
        let row = |(datum, at): &(Datum, Length)| {
            let mut cells = vec![name_cell(*datum)];
            cells.extend(edges.iter().map(|(_, edge)| length_cell(*datum, *edge - *at)));
            cells.push(when_cell(slice, *datum, brief));
            cells
        };
        Table { columns, rows: datums.iter().map(row).collect(), breaks: Vec::new() }
    };
    let ((near, far), fitting) = (slice.hole, slice.fitting);
    let mut depths = slice.distinct_depths();
    depths.sort_by_key(|(datum, at, _)| (!datum.is_finished(), *at));
    let depths = depths.into_iter().map(|(datum, at, _)| (datum, at)).collect();
    let words = slice.edge_words();
    let mut deep = vec![(words.0, near), ("centreline", (near + far).half()), (words.1, far)];
    let mut across = vec![("left edge", fitting.left), ("centreline", fitting.centre()), ("right edge", fitting.right)];
    if count == 2 {
        deep.remove(1);
        across.pop();
    }
    vec![table(&deep, depths), table(&across, left_ends(slice))]
}
