//! A list as data: what a table on a sheet, a text file with commas and a page of a workbook are made from.

use crate::units::Length;

/// One list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Listing {
    /// Its name in files, as `board-pieces`: small letters, figures, hyphens.
    pub name: String,
    /// Its title.
    pub title: String,
    /// Its columns.
    pub columns: Vec<ListingColumn>,
    /// Its rows, each as long as the columns.
    pub rows: Vec<Vec<Value>>,
    /// What has to be known to read it, one sentence each.
    pub notes: Vec<String>,
}

impl Listing {
    /// A list without rows yet.
    pub fn new(name: &str, title: &str, columns: Vec<ListingColumn>) -> Listing {
        Listing { name: name.to_owned(), title: title.to_owned(), columns, ..Listing::default() }
    }

    /// The same with a note more.
    pub fn noted(mut self, note: impl Into<String>) -> Listing {
        self.notes.push(note.into());
        self
    }

    /// Adds a row, which must be as long as the columns: what is missing is empty, what is over is left out.
    pub fn push(&mut self, mut row: Vec<Value>) {
        row.resize(self.columns.len(), Value::Empty);
        self.rows.push(row);
    }
}

/// What a column holds, so that its unit is the same in every job, rows or none.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Holds {
    /// Words.
    #[default]
    Words,
    /// [`Value::Length`].
    Lengths,
    /// [`Value::Mass`].
    Masses,
    /// [`Value::Count`] or [`Value::Number`].
    Numbers,
}

/// A column of a list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ListingColumn {
    /// Its heading, without a unit.
    pub heading: String,
    /// What it holds. Words may stand in any column, as `to floor` among lengths.
    pub holds: Holds,
    /// The unit of its numbers, as `ft2`; lengths and masses have the job's units and need none.
    pub unit: Option<String>,
}

impl ListingColumn {
    /// A column of words.
    pub fn words(heading: &str) -> ListingColumn {
        ListingColumn { heading: heading.to_owned(), ..ListingColumn::default() }
    }
    /// A column of lengths, shown in the job's units.
    pub fn lengths(heading: &str) -> ListingColumn {
        ListingColumn { holds: Holds::Lengths, ..ListingColumn::words(heading) }
    }
    /// A column of masses, shown in the job's units.
    pub fn masses(heading: &str) -> ListingColumn {
        ListingColumn { holds: Holds::Masses, ..ListingColumn::words(heading) }
    }
    /// A column of counts.
    pub fn counts(heading: &str) -> ListingColumn {
        ListingColumn { holds: Holds::Numbers, ..ListingColumn::words(heading) }
    }
    /// A column of numbers in a unit, as `ft2`.
    pub fn numbers(heading: &str, unit: &str) -> ListingColumn {
        ListingColumn { unit: Some(unit.to_owned()), ..ListingColumn::counts(heading) }
    }
}

/// One value of a list.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Value {
    /// Nothing.
    #[default]
    Empty,
    /// Words.
    Words(String),
    /// A length, shown in the job's units.
    Length(Length),
    /// A mass, kg, shown in the job's units.
    Mass(f64),
    /// A count.
    Count(u64),
    /// A number with so many places after the point.
    Number(f64, u8),
}

impl Value {
    /// Words.
    pub fn words(text: impl Into<String>) -> Value {
        Value::Words(text.into())
    }
}

impl From<&str> for Value {
    fn from(text: &str) -> Value {
        if text.is_empty() { Value::Empty } else { Value::Words(text.to_owned()) }
    }
}

impl From<String> for Value {
    fn from(text: String) -> Value {
        if text.is_empty() { Value::Empty } else { Value::Words(text) }
    }
}

impl From<Length> for Value {
    fn from(length: Length) -> Value {
        Value::Length(length)
    }
}

impl<T: Into<Value>> From<Option<T>> for Value {
    fn from(value: Option<T>) -> Value {
        value.map_or(Value::Empty, Into::into)
    }
}
