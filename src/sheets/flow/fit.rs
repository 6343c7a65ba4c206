//! Tables made to fit a width: stretched, wrapped, or split into several with their key columns repeated.

use std::borrow::Cow;

use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::notes::wrapped;
use crate::sheets::table::{Cell, Column, Table};

/// A table stretched to a width, its columns in proportion; a wider one stays.
pub fn stretched(mut table: Table, width: f64) -> Table {
    let natural = table.width();
    if natural > 0.0 && natural < width {
        for column in &mut table.columns {
            column.width *= width / natural;
        }
    }
    table
}

/// A table as one or more that each fit a width: the first `keys` columns stand before every part.
pub fn parts(table: Table, keys: usize, width: f64) -> Vec<Table> {
    if table.rows.is_empty() {
        return Vec::new();
    }
    if table.width() <= width + 0.01 {
        return vec![stretched(table, width)];
    }
    let keys = keys.min(table.columns.len());
    let key_width: f64 = table.columns[..keys].iter().map(|column| column.width).sum();
    let mut shares: Vec<Vec<usize>> = Vec::new();
    // Shares of about equal width look better than a full one and a leftover column.
    let all = table.width() - key_width;
    let even = all / (all / (width - key_width).max(1.0)).ceil();
    let mut used = f64::INFINITY;
    for (index, column) in table.columns.iter().enumerate().skip(keys) {
        if used + column.width > width || used - key_width >= even - 1.0 {
            shares.push(Vec::new());
            used = key_width;
        }
        used += column.width;
        if let Some(share) = shares.last_mut() {
            share.push(index);
        }
    }
    shares
        .into_iter()
        .map(|share| {
            let indices: Vec<usize> = (0..keys).chain(share).collect();
            let columns = indices.iter().map(|&k| table.columns[k].clone()).collect();
            let pick = |row: &Vec<Cell>| indices.iter().map(|&k| row.get(k).cloned().unwrap_or_default()).collect();
            let rows = table.rows.iter().map(pick).collect();
            stretched(Table { columns, rows, breaks: table.breaks.clone() }, width)
        })
        .collect()
}

/// A table that is taken up again at a row: a key that stands only in the first row of its group is repeated there.
pub fn continued(table: &Table, from: usize) -> Cow<'_, Table> {
    let empty = |row: usize| matches!(table.rows.get(row).and_then(|cells| cells.first()), Some(Cell::Empty));
    if from == 0 || !empty(from) {
        return Cow::Borrowed(table);
    }
    let key = (0..from).rev().find(|row| !empty(*row) && !table.goes_on(*row)).map(|row| table.rows[row][0].clone());
    let mut table = table.clone();
    if let (Some(key), Some(cell)) = (key, table.rows[from].first_mut()) {
        *cell = key;
    }
    Cow::Owned(table)
}

/// A table whose words are never cut short: rows with words too long for their column go on in further rows.
pub fn unfolded(table: Table) -> Table {
    let Table { columns, rows, breaks } = table;
    let mut unfolded = Table { columns, rows: Vec::new(), breaks: Vec::new() };
    for (index, row) in rows.into_iter().enumerate() {
        let too_long = |(column, cell): (&Column, &Cell)| {
            let (text, weight) = match cell {
                Cell::Words(text) | Cell::Grey(text) => (text, Weight::Regular),
                Cell::Bold(text) => (text, Weight::SemiBold),
                _ => return false,
            };
            lettering::width(text, BODY, weight) > column.width - 1.2
        };
        if unfolded.columns.iter().zip(&row).any(too_long) {
            let own = lines(&unfolded.columns, row);
            unfolded.rows.extend(own);
        } else {
            unfolded.rows.push(row);
        }
        if breaks.contains(&index) {
            unfolded.breaks.push(unfolded.rows.len() - 1);
        }
    }
    unfolded
}

/// One row whose words may take several lines: further lines are rows that go on.
pub fn lines(columns: &[Column], cells: Vec<Cell>) -> Vec<Vec<Cell>> {
    let split = |(column, cell): (&Column, Cell)| {
        let room = column.width - 1.6;
        let wrap = |text: &str, weight, make: fn(String) -> Cell| -> Vec<Cell> {
            wrapped(text, room, BODY, weight).into_iter().map(make).collect()
        };
        match &cell {
            Cell::Words(text) => wrap(text, Weight::Regular, Cell::Words),
            Cell::Grey(text) => wrap(text, Weight::Regular, Cell::Grey),
            Cell::Bold(text) => wrap(text, Weight::SemiBold, Cell::Bold),
            _ => vec![cell],
        }
    };
    let mut stacks: Vec<Vec<Cell>> = columns.iter().zip(cells).map(split).collect();
    if let Some(first) = stacks.first_mut() {
        for cell in first.iter_mut().skip(1) {
            *cell = match std::mem::take(cell) {
                Cell::Bold(text) => Cell::Further(text, true),
                Cell::Words(text) | Cell::Grey(text) => Cell::Further(text, false),
                other => other,
            };
        }
    }
    let count = stacks.iter().map(Vec::len).max().unwrap_or(1).max(1);
    let line = |k: usize| {
        let cell = |(index, stack): (usize, &Vec<Cell>)| match stack.get(k) {
            Some(cell) => cell.clone(),
            None if index == 0 && k > 0 => Cell::Continued,
            None => Cell::Empty,
        };
        stacks.iter().enumerate().map(cell).collect()
    };
    (0..count).map(line).collect()
}

/// What is left of a width after fixed columns, at least `least` mm.
pub fn rest(width: f64, fixed: f64, least: f64) -> f64 {
    (width - fixed).max(least)
}

#[cfg(test)]
mod tests {
    use super::{lines, parts};
    use crate::sheets::table::{Cell, Column, Table};

    #[test]
    fn a_wide_table_is_split_and_keeps_its_keys() {
        let columns = vec![Column::words(10.0, "mark"), Column::words(60.0, "a"), Column::words(60.0, "b")];
        let row = ["B1", "x", "y"].map(Cell::words).to_vec();
        let split = parts(Table { columns, rows: vec![row], breaks: Vec::new() }, 1, 80.0);
        assert_eq!(split.len(), 2);
        for part in &split {
            assert_eq!(part.columns.len(), 2);
            assert!((part.width() - 80.0).abs() < 1e-9);
            assert!(matches!(&part.rows[0][0], Cell::Words(mark) if mark == "B1"));
        }
    }

    #[test]
    fn long_words_take_rows_that_go_on() {
        let columns = vec![Column::words(10.0, "no."), Column::words(30.0, "what")];
        let rows = lines(&columns, vec![Cell::words("1"), Cell::words("a sentence that is far too long for one line")]);
        assert!(rows.len() > 1);
        assert!(matches!(rows[1][0], Cell::Continued));
    }
}
