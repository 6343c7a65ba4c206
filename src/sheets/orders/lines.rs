//! The lines of an order as a table, and its totals.

use crate::drawing::lettering::{BODY, Weight, width as lettering_width};
use crate::sheets::notes::wrapped;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Order, OrderLine};

/// Widest column of marks, mm.
const MARKS: f64 = 34.0;
/// White to the next column, mm.
const GAP: f64 = 2.4;

/// The totals, as the title of the lines.
pub fn title(set: &Set<'_>, order: &Order) -> String {
    let (count, (mass, unknown)) = (order.count(), order.mass());
    let things = if count == 1 { "1 thing".to_owned() } else { format!("{count} things") };
    match (mass > 0.0, unknown) {
        (false, _) => things,
        (true, 0) => format!("{things}, {}", set.solved.show.mass(mass)),
        (true, n) => format!("{things}, {} and {n} of unknown weight", set.solved.show.mass(mass)),
    }
}

/// The lines.
pub fn table(set: &Set<'_>, order: &Order, width: f64) -> Table {
    let mark = |line: &OrderLine| lettering_width(&line.mark, BODY, Weight::SemiBold) + GAP;
    let marks = order.lines.iter().map(mark).fold(0.0, f64::max).min(MARKS);
    let marks = if marks > GAP { marks.max(11.0) } else { 0.0 };
    let each = |line: &OrderLine| {
        line.mass.map_or(0.0, |mass| lettering_width(&set.solved.show.mass(mass), BODY, Weight::Regular))
    };
    let mass = order.lines.iter().map(each).fold(0.0, f64::max);
    let mass = if mass > 0.0 { (mass + GAP + 1.6).max(13.0) } else { 0.0 };
    let rest = width - marks - mass - 13.0;
    let columns = vec![
        Column::words(marks, if marks > 0.0 { "mark" } else { "" }),
        Column::right(13.0, "count"),
        Column::words(rest * 0.42, "what"),
        Column::words(rest * 0.58, "what must not be got wrong"),
        Column::right(mass, if mass > 0.0 { "each" } else { "" }),
    ];
    let rows = order.lines.iter().flat_map(|line| stack(set, line, &columns)).collect();
    Table { columns, rows, breaks: Vec::new() }
}

/// One line of an order over as many rows as its words take.
fn stack(set: &Set<'_>, line: &OrderLine, columns: &[Column]) -> Vec<Vec<Cell>> {
    let wrap = |text: &str, column: usize, weight| wrapped(text, columns[column].width - GAP, BODY, weight);
    let what = wrap(&line.what, 2, Weight::Regular);
    // Marks that don't fit their column are told beside it.
    let fits =
        line.mark.is_empty() || lettering_width(&line.mark, BODY, Weight::SemiBold) <= columns[0].width - GAP / 2.0;
    let (mark, more) =
        if fits { (line.mark.as_str(), None) } else { ("several", Some(format!("marks {}", line.mark))) };
    let plain = more.iter().chain(&line.mind).flat_map(|text| wrap(text, 3, Weight::Regular)).map(Cell::Words);
    let ask = line.missing.iter().map(|missing| format!("ask first: {missing}"));
    let ask = ask.flat_map(|text| wrap(&text, 3, Weight::SemiBold)).map(Cell::Bold);
    let mind: Vec<Cell> = plain.chain(ask).collect();
    (0..what.len().max(mind.len()).max(1))
        .map(|row| {
            let first = row == 0;
            let mass = line.mass.filter(|_| first).map(|mass| Cell::Words(set.solved.show.mass(mass)));
            vec![
                if first { Cell::Bold(mark.to_owned()) } else { Cell::Continued },
                if first { Cell::Bold(line.count.to_string()) } else { Cell::Empty },
                what.get(row).cloned().map(Cell::Words).unwrap_or_default(),
                mind.get(row).cloned().unwrap_or_default(),
                mass.unwrap_or_default(),
            ]
        })
        .collect()
}
