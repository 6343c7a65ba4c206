//! The list to shop by, group by group.

use super::wide;
use crate::drawing::lettering::Weight;
use crate::sheets::flow::fit;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{MaterialGroup, MaterialLine};

/// The table. Lines are numbered so that the next table can go on from them.
pub fn table(set: &Set<'_>, width: f64) -> Table {
    let lines = &set.solved.shop.quantities;
    let counts: Vec<String> = lines.iter().map(|line| line.count.to_string()).collect();
    let nets: Vec<String> = lines.iter().map(net).collect();
    let count = wide(counts.iter().map(String::as_str), "buy", Weight::SemiBold);
    let net = wide(nets.iter().map(String::as_str), "net", Weight::Regular);
    let unit = wide(lines.iter().map(|line| line.order_unit.as_str()), "of", Weight::Regular).min(width * 0.36);
    let (number, tick, waste) = (7.0, 6.0, 14.0);
    let columns = vec![
        Column::words(number, ""),
        Column::words(fit::rest(width, number + net + waste + count + unit + tick, 40.0), "what"),
        Column::right(net, "net"),
        Column::right(waste, "waste"),
        Column::right(count, "buy"),
        Column::words(unit, "of"),
        Column::words(tick, ""),
    ];
    let (mut rows, mut breaks): (Vec<Vec<Cell>>, _) = (Vec::new(), Vec::new());
    let mut number = 0;
    for group in MaterialGroup::ALL {
        let own: Vec<&MaterialLine> = lines.iter().filter(|line| line.group == group).collect();
        if own.is_empty() {
            continue;
        }
        if !rows.is_empty() {
            breaks.push(rows.len() - 1);
        }
        // A blank where the number stands: the heading is no part of the line over it.
        let blank = Cell::words("\u{a0}");
        let mut head = vec![blank, Cell::Bold(group.words().to_owned())];
        head.resize(columns.len(), Cell::Empty);
        rows.push(head);
        for line in own {
            number += 1;
            let cells = vec![
                Cell::Grey(number.to_string()),
                Cell::Words(line.name.clone()),
                Cell::Words(self::net(line)),
                waste_of(line),
                Cell::Bold(line.count.to_string()),
                Cell::Words(line.order_unit.clone()),
                Cell::Tick,
            ];
            rows.extend(fit::lines(&columns, cells));
        }
    }
    Table { columns, rows, breaks }
}

/// A net amount with its unit.
fn net(line: &MaterialLine) -> String {
    let figure = rounded(line.net);
    if line.unit.is_empty() { figure } else { format!("{figure} {}", line.unit) }
}

/// A figure in a narrow column: whole from a hundred up, else one place, two under one.
pub fn rounded(value: f64) -> String {
    let places = if value >= 99.5 || value.fract() == 0.0 {
        0
    } else if value >= 0.95 {
        1
    } else {
        2
    };
    format!("{value:.places$}")
}

fn waste_of(line: &MaterialLine) -> Cell {
    if line.waste > 0.0 {
        Cell::Grey(format!("{} %", rounded((line.waste * 1000.0).round() / 10.0)))
    } else {
        Cell::Grey("\u{2013}".to_owned())
    }
}
