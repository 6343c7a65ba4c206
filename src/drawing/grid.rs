//! A list as files show it: every column has one unit, which its heading names, and a number stays a number, so that a
//! spreadsheet can add it up.
//!
//! A length in inches takes two columns: decimal inches to add up, and the fraction as words to hold a tape to. The
//! fraction ends in its unit, since a bare `3/4` becomes a date in some programs.

use super::listing::{Holds, Listing, ListingColumn, Value};
use crate::units::{Length, Show, System};

/// A list with its units settled.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Grid {
    /// Its name in files.
    pub name: String,
    /// Its title.
    pub title: String,
    /// Its headings, units and all.
    pub headings: Vec<String>,
    /// Its rows, each as long as the headings.
    pub rows: Vec<Vec<GridCell>>,
    /// What has to be known to read it, one sentence each.
    pub notes: Vec<String>,
}

/// One cell.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum GridCell {
    /// Nothing.
    #[default]
    Empty,
    /// Words.
    Words(String),
    /// A number with so many places after the point, rounded to them already.
    Number(f64, u8),
}

impl GridCell {
    /// As a file writes it; a number has a full stop for its point.
    pub fn text(&self) -> String {
        match self {
            GridCell::Empty => String::new(),
            GridCell::Words(text) => text.clone(),
            GridCell::Number(value, places) => decimal(*value, *places),
        }
    }
}

impl Listing {
    /// The list in a job's units.
    pub fn grid(&self, show: Show) -> Grid {
        let headings = self.columns.iter().flat_map(|column| headings(column, show)).collect();
        let row = |row: &Vec<Value>| {
            self.columns.iter().zip(row).flat_map(|(column, value)| cells(column, value, show)).collect()
        };
        Grid {
            name: self.name.clone(),
            title: self.title.clone(),
            headings,
            rows: self.rows.iter().map(row).collect(),
            notes: self.notes.clone(),
        }
    }
}

/// The parts that a column has in files.
#[derive(Clone, Copy)]
enum Part {
    Inches,
    Tape,
    Millimetres,
    Pounds,
    Kilograms,
    Plain,
}

fn parts(holds: Holds, show: Show) -> &'static [Part] {
    match (holds, show.system) {
        (Holds::Lengths, System::Inches) => &[Part::Inches, Part::Tape],
        (Holds::Lengths, System::Millimetres) => &[Part::Millimetres],
        (Holds::Lengths, System::Both) => &[Part::Inches, Part::Tape, Part::Millimetres],
        (Holds::Masses, System::Inches) => &[Part::Pounds],
        (Holds::Masses, System::Millimetres) => &[Part::Kilograms],
        (Holds::Masses, System::Both) => &[Part::Pounds, Part::Kilograms],
        (Holds::Words | Holds::Numbers, _) => &[Part::Plain],
    }
}

fn headings(column: &ListingColumn, show: Show) -> Vec<String> {
    let heading = &column.heading;
    let of = |part: &Part| match part {
        Part::Inches => format!("{heading}, in"),
        Part::Tape => format!("{heading}, as on a tape"),
        Part::Millimetres => format!("{heading}, mm"),
        Part::Pounds => format!("{heading}, lb"),
        Part::Kilograms => format!("{heading}, kg"),
        Part::Plain => match &column.unit {
            Some(unit) => format!("{heading}, {unit}"),
            None => heading.clone(),
        },
    };
    parts(column.holds, show).iter().map(of).collect()
}

fn cells(column: &ListingColumn, value: &Value, show: Show) -> Vec<GridCell> {
    let parts = parts(column.holds, show);
    // Words among numbers stand once, where a person reads: on the tape, else in the first part.
    let reading = parts.iter().position(|part| matches!(part, Part::Tape)).unwrap_or(0);
    let of = |(index, part): (usize, &Part)| match (value, part) {
        (Value::Empty, _) => GridCell::Empty,
        (Value::Words(text), _) if index == reading => GridCell::Words(text.clone()),
        (Value::Words(_), _) => GridCell::Empty,
        (Value::Length(length), Part::Tape) => GridCell::Words(show.tape(*length)),
        (Value::Length(length), Part::Inches) => length_in(*length, INCH, 4),
        (Value::Length(length), _) => length_in(*length, MILLIMETRE, 1),
        (Value::Mass(mass), Part::Kilograms) => number(*mass, 1),
        (Value::Mass(mass), _) => number(Show::pounds(*mass), 1),
        (Value::Count(count), _) => GridCell::Number(*count as f64, 0),
        (Value::Number(value, places), _) => number(*value, *places),
    };
    parts.iter().enumerate().map(of).collect()
}

/// Nanometres in a unit.
const INCH: i64 = 25_400_000;
const MILLIMETRE: i64 = 1_000_000;

/// A length in a unit, rounded once, in whole numbers.
fn length_in(length: Length, unit: i64, places: u8) -> GridCell {
    let step = Length::from_nm(unit / 10_i64.pow(u32::from(places)));
    let steps = length.rounded_to(step).nm() / step.nm();
    GridCell::Number(steps as f64 / 10_f64.powi(i32::from(places)), places)
}

/// A number rounded to its places; what is no number at all is empty.
fn number(value: f64, places: u8) -> GridCell {
    if !value.is_finite() {
        return GridCell::Empty;
    }
    let rounded: f64 = decimal(value, places).parse().unwrap_or(value);
    GridCell::Number(rounded, places)
}

/// With a full stop, so many places, and no negative zero.
fn decimal(value: f64, places: u8) -> String {
    let text = format!("{value:.*}", usize::from(places));
    let zero = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    if zero { text.trim_start_matches('-').to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::GridCell::{Empty, Number, Words};
    use crate::drawing::{Listing, ListingColumn, Value};
    use crate::units::{Length, Show, System};

    fn list() -> Listing {
        let columns = vec![
            ListingColumn::words("mark"),
            ListingColumn::lengths("wide"),
            ListingColumn::masses("weight"),
            ListingColumn::numbers("area", "ft2"),
        ];
        let mut list = Listing::new("things", "Things", columns);
        let row = |mark: &str, wide: Value| vec![mark.into(), wide, Value::Mass(45.359_237), Value::Number(-0.001, 2)];
        list.push(row("A", Length::from_inches(24.4375).into()));
        list.push(row("B", Length::from_inches(-0.75).into()));
        list.push(row("C", "to floor".into()));
        list
    }

    #[test]
    fn inches_are_a_number_to_add_up_and_a_fraction_to_hold_a_tape_to() {
        let grid = list().grid(Show::new(System::Inches));
        assert_eq!(grid.headings, ["mark", "wide, in", "wide, as on a tape", "weight, lb", "area, ft2"]);
        let words = |text: &str| Words(text.to_owned());
        assert_eq!(
            grid.rows[0],
            [words("A"), Number(24.4375, 4), words("24 7/16 in"), Number(100.0, 1), Number(0.0, 2)]
        );
        assert_eq!(grid.rows[1][1..3], [Number(-0.75, 4), words("\u{2212}3/4 in")]);
        assert_eq!(grid.rows[2][1..3], [Empty, words("to floor")]);
    }

    #[test]
    fn millimetres_are_one_column_and_both_are_three() {
        let grid = list().grid(Show::new(System::Millimetres));
        assert_eq!(grid.headings, ["mark", "wide, mm", "weight, kg", "area, ft2"]);
        assert_eq!(grid.rows[0][1], Number(620.7, 1));
        assert_eq!(grid.rows[2][1], Words("to floor".to_owned()));
        let both = list().grid(Show::new(System::Both));
        assert_eq!(both.headings[1..4], ["wide, in", "wide, as on a tape", "wide, mm"]);
        assert_eq!(both.headings[4..6], ["weight, lb", "weight, kg"]);
        assert!(both.rows.iter().all(|row| row.len() == both.headings.len()));
    }
}
