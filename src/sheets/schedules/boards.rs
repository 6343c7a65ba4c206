//! Boards fixed to the frame.

use super::columns::{lengths, short, titled};
use crate::sheets::flow::{Flow, fit};
use crate::sheets::listings::boards::cut;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::Board;
use crate::units::Length;

/// Adds the schedule of a leg.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let build = |width: f64| {
        let (across, high, thick) = (lengths(show, "across"), lengths(show, "high"), short(show, "thick"));
        let fixed = 26.0 + 36.0 + across.width + high.width + thick.width;
        let holes = Column::words(fit::rest(width, fixed, 30.0), "cut for");
        let columns = vec![Column::words(26.0, "board"), Column::words(36.0, "of"), across, high, thick, holes];
        let row = |(board, (across, high)): (&Board, (Length, Length))| {
            let marks: Vec<&str> =
                board.fittings.iter().filter_map(|&k| leg.fittings.get(k)).map(|f| f.mark.as_str()).collect();
            let build = leg.build(board.face);
            let marks = if marks.is_empty() { Cell::Grey("nothing".to_owned()) } else { Cell::Words(marks.join(", ")) };
            vec![
                Cell::Bold(board.name.clone()),
                Cell::Words(build.board_name.clone()),
                Cell::Key(across),
                Cell::Key(high),
                Cell::Figure(build.board),
                marks,
            ]
        };
        Table { columns, rows: cut(set.solved, leg_index).into_iter().map(row).collect(), breaks: Vec::new() }
    };
    flow.table(&titled(set, leg_index, "Boards"), 1, &build);
}
