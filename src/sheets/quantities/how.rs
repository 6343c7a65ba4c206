//! How each count was worked out.

use crate::sheets::flow::fit;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};

/// The table, line by line with the numbers of the list.
pub fn table(set: &Set<'_>, width: f64) -> Table {
    let lines = &set.solved.shop.quantities;
    let (number, what) = (7.0, 56.0_f64.min(width * 0.34));
    let columns = vec![
        Column::words(number, ""),
        Column::words(what, "what"),
        Column::words(fit::rest(width, number + what, 60.0), "the sum"),
    ];
    let (mut rows, mut breaks): (Vec<Vec<Cell>>, _) = (Vec::new(), Vec::new());
    for (index, line) in lines.iter().enumerate() {
        if index > 0 && lines[index - 1].group != line.group {
            breaks.push(rows.len() - 1);
        }
        let number = Cell::Grey((index + 1).to_string());
        let cells = vec![number, Cell::Words(line.name.clone()), Cell::Grey(line.how.clone())];
        rows.extend(fit::lines(&columns, cells));
    }
    Table { columns, rows, breaks }
}
