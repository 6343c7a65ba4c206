//! The measure-twice sheet: every length that a cut hangs on, with a blank for what the tape says.

mod run;

use super::flow::{Flow, Heads};
use super::set::{Kind, Set};
use super::table::{Cell, Column, Table, figures_width};
use crate::drawing::Page;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::solve::{Fitting, Measure};
use crate::units::{Length, Show};

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let heads =
        Heads { title: "Measure twice".to_owned(), document: "Check list".to_owned(), scale: "\u{2013}".to_owned() };
    let mut flow = Flow::new(set, kind, heads);
    let note = |lead: &str, text: &str| (lead.to_owned(), text.to_owned());
    flow.notes(
        "Before the first cut",
        &[
            note("Measure", "each length below on the thing itself, write it down, tick the box."),
            note(
                "Stop",
                "where your length is off by more than the last column says: change the job, draw anew, then cut.",
            ),
            note("Never cut", "a fitting\u{2019}s opening before the fitting is on site and measured."),
        ],
    );
    run::add_all(&mut flow, set);
    for leg in &set.solved.legs {
        for fitting in &leg.fittings {
            add_fitting(&mut flow, set, fitting);
        }
    }
    if !flow.table_if_room("Measured by", &signatures) {
        flow.table("Measured by", 0, &signatures);
    }
    flow.finish()
}

/// One length to check.
pub struct Check {
    /// What it is, in words.
    pub name: String,
    /// From the fitting's sheet.
    pub published: Option<Length>,
    /// Measured before.
    pub measured: Option<Length>,
    /// What the drawings use.
    pub used: Length,
    /// Stop when off by more.
    pub tolerance: Length,
}

fn add_fitting(flow: &mut Flow<'_, '_>, set: &Set<'_>, fitting: &Fitting) {
    let tolerance = set.solved.tolerances.published;
    let check = |(name, measure): &(&'static str, Measure)| {
        let known = measure.published.or(measure.measured).is_some();
        known.then(|| Check {
            name: name.replace('_', " "),
            published: measure.published,
            measured: measure.measured,
            used: measure.value(),
            tolerance,
        })
    };
    let checks: Vec<Check> = fitting.measures.iter().filter_map(check).collect();
    let title = format!("{} {}", fitting.mark, fitting.name);
    add(flow, set.solved.show, &title, &checks, true);
}

/// Adds a table of checks. `sheets` says whether they come from a fitting's sheet, with a column for what that says.
pub fn add(flow: &mut Flow<'_, '_>, show: Show, title: &str, checks: &[Check], sheets: bool) {
    let build = |width: f64| {
        let of = |heading: &str, greatest: i64| {
            let head = heading.split('\n').map(|l| lettering::width(l, BODY, Weight::Regular)).fold(0.0, f64::max);
            Column::figures(figures_width(show, Length::from_nm(greatest * 1_000_000)).max(head + 2.5), heading)
        };
        let mut columns = vec![Column::words(6.0, ""), Column::words(0.0, "length")];
        if sheets {
            columns.extend([of("published", 9999), of("measured\nbefore", 9999)]);
        }
        columns.extend([
            of("drawn with", 9999),
            Column::words(0.0, "measured\nnow"),
            of("stop if off\nby more than", 99),
        ]);
        let fixed: f64 = columns.iter().map(|column| column.width).sum();
        let rest = width - fixed;
        let blank = columns.len() - 2;
        columns[blank].width = (rest - 38.0).clamp(24.0, 40.0);
        columns[1].width = (rest - columns[blank].width).max(36.0);
        let row = |check: &Check| {
            let mut row = vec![Cell::Tick, Cell::Words(check.name.clone())];
            if sheets {
                row.push(check.published.map_or(Cell::Grey("\u{2013}".to_owned()), Cell::Figure));
                row.push(check.measured.map_or(Cell::Bold("never".to_owned()), Cell::Figure));
            }
            row.extend([Cell::Key(check.used), Cell::Blank, Cell::Figure(check.tolerance)]);
            row
        };
        Table { columns, rows: checks.iter().map(row).collect(), breaks: Vec::new() }
    };
    flow.table(title, 2, &build);
}

fn signatures(width: f64) -> Table {
    let columns = vec![
        Column::words(0.0, ""),
        Column::words(width * 0.45, "name"),
        Column::words(width * 0.35, "signature"),
        Column::words(width * 0.2, "date"),
    ];
    let empty = [Cell::Empty, Cell::Empty, Cell::Empty, Cell::Empty].to_vec();
    let blanks = vec![Cell::Continued, Cell::Blank, Cell::Blank, Cell::Blank];
    Table { columns, rows: vec![empty, blanks], breaks: Vec::new() }
}
