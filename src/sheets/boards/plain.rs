//! The list of boards that have no opening: names, size, count.

use super::cell;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Board, Leg};
use crate::units::Length;

/// Names on one row of the list.
const NAMES: usize = 3;

/// The list, boards of one size and sheet together; `None` when every board has an opening.
pub fn table(set: &Set<'_>, leg: &Leg, boards: &[Board]) -> Option<Table> {
    let mut groups: Vec<(Length, Length, String, Vec<&Board>)> = Vec::new();
    for board in boards.iter().filter(|board| board.fittings.is_empty()) {
        let (width, height) = (board.extent.width(), board.extent.height());
        let build = leg.build(board.face);
        let sheet = format!("{} {}", set.solved.show.prose(build.board), build.board_name);
        match groups.iter_mut().find(|group| (group.0, group.1) == (width, height) && group.2 == sheet) {
            Some(group) => group.3.push(board),
            None => groups.push((width, height, sheet, vec![board])),
        }
    }
    if groups.is_empty() {
        return None;
    }
    let text = |text: &str| lettering::width(text, BODY, Weight::Regular);
    let greatest = groups.iter().map(|group| group.0.max(group.1)).max().unwrap_or(Length::ZERO);
    let figures = cell::column(set, greatest);
    let sheets = groups.iter().map(|group| text(&group.2)).fold(20.0, f64::max).min(60.0);
    let mut rows = Vec::new();
    let mut breaks = Vec::new();
    let mut names = 20.0_f64;
    for (width, height, sheet, boards) in &groups {
        for (index, part) in boards.chunks(NAMES).enumerate() {
            let line = part.iter().map(|board| board.name.as_str()).collect::<Vec<_>>().join(", ");
            names = names.max(text(&line));
            let first = index == 0;
            let figure = |length: Length| if first { Cell::Figure(length) } else { Cell::Empty };
            let words = |text: String| if first { Cell::Words(text) } else { Cell::Empty };
            rows.push(vec![
                Cell::Bold(line),
                figure(*width),
                figure(*height),
                words(boards.len().to_string()),
                words(sheet.clone()),
            ]);
        }
        breaks.push(rows.len().saturating_sub(1));
    }
    let columns = vec![
        Column::words(names.min(80.0) * 1.06 + 4.0, "board"),
        Column::figures(figures, "width"),
        Column::figures(figures, "height"),
        Column::words(12.0, "count"),
        Column::words(sheets + 4.0, "sheet"),
    ];
    Some(Table { columns, rows, breaks })
}
