//! A list as data: what a table on a sheet, a text file with commas and a page of a workbook are made from.

use crate::units::Length;

/// One list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Listing {
    /// Its name in files, as `board-pieces`.
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

/// A column of a list.
#[derive(Clone, Debug, PartialEq)]
pub struct ListingColumn {
    /// Its heading, without a unit.
    pub heading: String,
    /// The unit of its numbers, as `lb`; lengths have the job's units and need none.
    pub unit: Option<String>,
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
    /// A count.
    Count(u64),
    /// A number with so many places after the point.
    Number(f64, u8),
}
