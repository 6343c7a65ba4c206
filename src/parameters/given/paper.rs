//! Paper and printers.

use crate::findings::Place;
use crate::units::Length;

/// Paper.
#[derive(Clone, Debug)]
pub struct Paper {
    /// Its name as in the table of sizes, as `A3`.
    pub name: String,
    /// Long side, mm.
    pub width: f64,
    /// Short side, mm.
    pub height: f64,
    /// Where written.
    pub place: Option<Place>,
    /// What full-size templates are printed on, as written; `None` leaves it to the units.
    pub templates: Option<String>,
    /// Edge of a sheet that the printer can't reach.
    pub margin: Option<Length>,
    /// How far neighbouring tiles lie over each other.
    pub overlap: Option<Length>,
    /// The printer that templates are corrected for.
    pub printer: Option<Printer>,
    /// Every printer that the job names.
    pub printers: Vec<Printer>,
}

/// What a printer makes of true lengths.
#[derive(Clone, Debug, PartialEq)]
pub struct Printer {
    /// Its name; empty when it has none.
    pub name: String,
    /// Printed length over true length, across the paper.
    pub across: f64,
    /// The same along the paper.
    pub along: f64,
}
