//! Cutouts sheet by sheet: the size of each hole in each board, and what the frame has to clear.

use super::columns::{lengths, or_none, short, titled};
use super::fittings::plane_words;
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Cutout, Fitting, Plane, Solved};
use crate::units::Length;

/// Adds the schedule of a leg.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
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
                let (across, high) = (cutout.extent.width(), cutout.extent.height());
                let size = match cutout.round {
                    true => [Cell::Key(across), Cell::words("round")],
                    false if fitting.to_floor && cutout.open => [Cell::Key(across), Cell::words("to floor")],
                    false => [Cell::Key(across), Cell::Key(high)],
                };
                let radius = if cutout.round { Cell::Empty } else { or_none(cutout.radius) };
                let frame = match frame_opening(set.solved, fitting, cutout) {
                    Some((across, Some(high))) => [Cell::Figure(across), Cell::Figure(high)],
                    Some((across, None)) => [Cell::Figure(across), Cell::words("to floor")],
                    None => [Cell::Empty, Cell::Empty],
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

/// The opening in the frame behind a board's cutout, across and high; no height for one that reaches the floor, and none
/// at all behind a counter.
pub fn frame_opening(solved: &Solved, fitting: &Fitting, cutout: &Cutout) -> Option<(Length, Option<Length>)> {
    if matches!(cutout.plane, Plane::Counter | Plane::Substrate) {
        return None;
    }
    let gap = solved.frame.rough_gap;
    let gaps = if cutout.open { 1 } else { 2 };
    let high = (!fitting.to_floor).then(|| cutout.extent.height() + gap * gaps);
    Some((cutout.extent.width() + gap * 2, high))
}

/// What a cutout is cut in, and where it is open.
pub fn cut_in(fitting: &Fitting, cutout: &Cutout) -> String {
    let plane = plane_words(cutout.plane);
    match (cutout.open, cutout.plane) {
        (false, _) => plane.to_owned(),
        (true, Plane::Counter | Plane::Substrate) => format!("{plane}, open at front"),
        (true, _) if fitting.to_floor => format!("{plane}, open below"),
        (true, _) => format!("{plane}, open above"),
    }
}
