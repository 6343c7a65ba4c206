//! Columns that several schedules share.

use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, figures_width};
use crate::solve::Datum;
use crate::units::{Length, Show};

/// A schedule's title, with its leg where the run has several.
pub fn titled(set: &Set<'_>, leg: usize, title: &str) -> String {
    match set.solved.legs.get(leg) {
        Some(it) if set.solved.legs.len() > 1 => format!("{title}, leg {} ({})", leg + 1, it.id),
        _ => title.to_owned(),
    }
}

/// A column of lengths, wide enough for its heading.
pub fn lengths(show: Show, heading: &str) -> Column {
    let head = heading.split('\n').map(|line| lettering::width(line, BODY, Weight::Regular)).fold(0.0, f64::max);
    Column::figures(figures_width(show, GREATEST).max(head + 2.5), heading)
}

/// A column of lengths that stay under 100 mm.
pub fn short(show: Show, heading: &str) -> Column {
    let head = heading.split('\n').map(|line| lettering::width(line, BODY, Weight::Regular)).fold(0.0, f64::max);
    Column::figures(figures_width(show, Length::from_nm(99_000_000)).max(head + 2.5), heading)
}

/// A column of lengths from a datum, `from` before its name.
pub fn datum(show: Show, from: &str, datum: Datum) -> Column {
    let words = datum.words();
    let mut column = Column::figures(0.0, &format!("{from}\n{words}"));
    let (weight, flag) = if datum.is_finished() { (Weight::SemiBold, 3.6) } else { (Weight::Regular, 0.0) };
    let head = lettering::width(words, BODY, weight) + flag + 2.5;
    column.width = figures_width(show, GREATEST).max(head);
    if datum.is_finished() { column.from_finished() } else { column }
}

/// A length from a datum: in the accent from a finished face.
pub fn located(datum: Datum, length: Length) -> Cell {
    if datum.is_finished() { Cell::Finished(length) } else { Cell::Figure(length) }
}

/// A length, or a dash for none.
pub fn or_none(length: Length) -> Cell {
    if length == Length::ZERO { Cell::Grey("\u{2013}".to_owned()) } else { Cell::Figure(length) }
}

/// Columns leave room for this length, some ten metres.
const GREATEST: Length = Length::from_nm(9_999_000_000);
