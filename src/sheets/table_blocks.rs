//! Tables as blocks that find their own place, each no wider than a column and no higher than a page.

use super::canvas::Canvas;
use super::flow::fit;
use super::shelves::Block;
use super::table::{ROW, Table};
use super::title_block;
use crate::geometry::PaperPoint;
use crate::units::Show;

/// Under a table's title, mm.
const HEADING: f64 = 6.0;
/// Widest that a table is drawn, mm.
const WIDEST: f64 = 176.0;

/// Tables under their titles, the first column of each kept where one has to be parted.
pub fn blocks<'a>(tables: Vec<(String, Table)>, width: f64, page: f64, show: Show) -> Vec<Block<'a>> {
    let mut all = Vec::new();
    for (title, table) in tables.into_iter().filter(|(_, table)| !table.rows.is_empty()) {
        for table in fit::parts(table, 1, width.min(WIDEST)).into_iter().map(fit::unfolded) {
            let most = (((page - HEADING - table.height(0)) / ROW).floor() as usize).max(1);
            let mut from = 0;
            while from < table.rows.len() {
                let mut to = (from + most).min(table.rows.len());
                // Words that go on stay with their row.
                while to > from + 1 && table.goes_on(to) {
                    to -= 1;
                }
                all.push(rows(title.clone(), table.clone(), from, to, show));
                from = to;
            }
        }
    }
    all
}

fn rows<'a>(title: String, table: Table, from: usize, to: usize, show: Show) -> Block<'a> {
    Block {
        width: table.width(),
        height: HEADING + table.height(to - from),
        right: false,
        scale: None,
        draw: Box::new(move |canvas, at| {
            title_block::heading(canvas, at.x, at.y + 3.5, &title, if from > 0 { "continued" } else { "" });
            let layer = canvas.layer(Canvas::ROOT, "table");
            let shown = fit::continued(&table, from);
            shown.draw_rows(canvas, layer, PaperPoint::new(at.x, at.y + HEADING), show, from, to);
        }),
    }
}
