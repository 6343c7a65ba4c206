//! Cutouts sheet by sheet: the size of each hole in each board, and what the frame has to clear.

use super::columns::{lengths, or_none, short, titled};
use super::fittings::plane_words;
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Cutout, Fitting, Plane};

/// Adds the schedule of a leg.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let gap = set.solved.frame.rough_gap;
    let build = |_: f64| {
        let columns = vec![
            Column::words(12.0, "mark"),
            Column::words(38.0, "cut in"),
            lengths(show, "\nacross"),
            lengths(show, "deep\nor high"),
            short(show, "corner\nradius"),
            lengths(show, "in the frame\nacross"),
            lengths(show, "\nhigh"),
        ];
        let mut breaks = Vec::new();
        let mut rows = Vec::new();
        for fitting in &leg.fittings {
            for (index, cutout) in fitting.cutouts.iter().enumerate() {
                let mark = if index == 0 { Cell::Bold(fitting.mark.clone()) } else { Cell::Empty };
                let in_board = !matches!(cutout.plane, Plane::Counter | Plane::Substrate);
                let (across, high) = (cutout.extent.width(), cutout.extent.height());
                let size = match cutout.round {
                    true => [Cell::Key(across), Cell::words("round")],
                    false if fitting.to_floor && cutout.open => [Cell::Key(across), Cell::words("to floor")],
                    false => [Cell::Key(across), Cell::Key(high)],
                };
                let radius = if cutout.round { Cell::Empty } else { or_none(cutout.radius) };
                let gaps = if cutout.open { 1 } else { 2 };
                let frame = match in_board {
                    true if fitting.to_floor => [Cell::Figure(across + gap * 2), Cell::words("to floor")],
                    true => [Cell::Figure(across + gap * 2), Cell::Figure(high + gap * gaps)],
                    false => [Cell::Empty, Cell::Empty],
                };
                let mut row = vec![mark, Cell::Words(cut_in(fitting, cutout))];
                row.extend(size);
                row.push(radius);
                row.extend(frame);
                rows.push(row);
            }
            breaks.push(rows.len().saturating_sub(1));
        }
        Table { columns, rows, breaks }
    };
    flow.table(&titled(set, leg_index, "Cutouts, sheet by sheet"), 2, &build);
}

fn cut_in(fitting: &Fitting, cutout: &Cutout) -> String {
    let plane = plane_words(cutout.plane);
    match (cutout.open, cutout.plane) {
        (false, _) => plane.to_owned(),
        (true, Plane::Counter | Plane::Substrate) => format!("{plane}, open at front"),
        (true, _) if fitting.to_floor => format!("{plane}, open below"),
        (true, _) => format!("{plane}, open above"),
    }
}
