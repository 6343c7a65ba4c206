//! The table of the sheet's cutouts: every edge from the sheet's own edges and from the finished ones.

use super::Task;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::counter::{cutouts, names, parts};
use crate::sheets::shelves::Block;
use crate::sheets::table::{self, Cell, Column, Table};
use crate::solve::Plane;
use crate::units::System;

/// Columns that give way.
const NAME: usize = 1;
const SIZE: usize = 2;
const CORNERS: usize = 3;

/// The table under a title, in as many blocks as pages of this height (mm) ask for.
pub fn blocks<'a>(task: &Task<'_>, title: &str, most_width: f64, page: f64) -> Vec<Block<'a>> {
    let (show, leg) = (task.show, task.leg);
    let sheet = leg.substrate.extent;
    let found = parts::cutouts(leg, Plane::Substrate);
    if found.is_empty() {
        return Vec::new();
    }
    let called: Vec<String> = found.iter().map(|(fitting, _)| names::name_of(fitting)).collect();
    let mut sizes: Vec<String> = found.iter().map(|(_, cutout)| cutouts::size(show, cutout)).collect();
    let widest = |texts: &[String], least: f64, most: f64| {
        texts.iter().map(|t| lettering::width(t, BODY, Weight::Regular)).fold(least, f64::max).min(most) + 2.6
    };
    let figures = |least: f64| match show.system {
        System::Both => (table::figures_width(show, sheet.x1) + 2.0).max(least),
        _ => least,
    };
    let mut columns = vec![
        Column::words(cutouts::mark_width(&found) + 0.5, "mark"),
        Column::words(widest(&called, 18.0, 30.0), "cutout"),
        Column::words(widest(&sizes, 24.0, 70.0), "width \u{d7} depth"),
        Column::words(15.5, "corners"),
        Column::figures(figures(17.0), "left edge from\nsheet"),
        Column::figures(figures(21.0), "\nfin. end").from_finished(),
        Column::figures(figures(17.0), "front edge from\nsheet"),
        Column::figures(figures(21.5), "\nfin. face").from_finished(),
        Column::figures(figures(17.0), "back edge from\nsheet"),
        Column::figures(figures(21.5), "\nfin. face").from_finished(),
    ];
    // Both units on small paper: the sizes in one of them, then without the corners.
    let over = |columns: &[Column]| columns.iter().map(|column| column.width).sum::<f64>() > most_width;
    if over(&columns) {
        sizes = found.iter().map(|(_, cutout)| cutouts::plain_size(show, cutout)).collect();
        columns[SIZE].width = widest(&sizes, 24.0, 70.0);
    }
    let cornerless = over(&columns);
    let rows = found.iter().zip(called).zip(sizes).map(|(((fitting, cutout), name), size)| {
        let hole = cutout.extent;
        let open = |cell: Cell| if cutout.open { Cell::words("open") } else { cell };
        let corners = match (cutout.round, cutout.radius.nm() > 0) {
            (true, _) => Cell::Empty,
            (_, true) => Cell::words(format!("R {}", show.text(cutout.radius))),
            _ => Cell::words("sharp"),
        };
        let mut row = vec![
            Cell::Bold(fitting.mark.clone()),
            Cell::Words(name),
            Cell::Words(size),
            corners,
            Cell::Key(hole.x0 - sheet.x0),
            Cell::Finished(hole.x0),
            open(Cell::Key(hole.y0 - sheet.y0)),
            open(Cell::Finished(hole.y0)),
            Cell::Key(hole.y1 - sheet.y0),
            Cell::Finished(hole.y1),
        ];
        if cornerless {
            row.remove(CORNERS);
        }
        row
    });
    let rows = rows.collect();
    if cornerless {
        columns.remove(CORNERS);
        let over = columns.iter().map(|column| column.width).sum::<f64>() - most_width;
        columns[NAME].width -= over.clamp(0.0, columns[NAME].width - 12.0);
    }
    let table = Table { rows, columns, breaks: Vec::new() };
    cutouts::chunks(title, table, show, page, false)
}
