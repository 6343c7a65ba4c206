//! What pieces are cut from, and how boards are laid on the frame.

use crate::findings::Place;
use crate::units::Length;

/// Stock of the run.
#[derive(Clone, Debug)]
pub struct Stock {
    /// Of the boards.
    pub board: SheetStock,
    /// Of the substrate.
    pub substrate: SheetStock,
    /// Of tubes and other bars.
    pub bars: BarStock,
    /// The smaller side of an offcut that is worth keeping.
    pub keep: Length,
}

/// What one sheet material is bought in, and how it is cut.
#[derive(Clone, Debug)]
pub struct SheetStock {
    /// Sizes that can be bought: width and length, the length being the way that pieces with a fixed way run along.
    pub sheets: Vec<(Length, Length)>,
    /// What the builder has.
    pub offcuts: Vec<Offcut>,
    /// Cut from edge to edge only.
    pub edge_to_edge: bool,
    /// Width that a cut takes.
    pub kerf: Length,
    /// Pieces may be turned by a quarter on the sheet.
    pub turned: bool,
    /// Where written.
    pub place: Option<Place>,
}

/// A piece of sheet that the builder has.
#[derive(Clone, Debug, PartialEq)]
pub struct Offcut {
    /// As the builder calls it.
    pub name: String,
    /// Width and length.
    pub size: (Length, Length),
    /// Where written.
    pub place: Option<Place>,
}

/// What bars are bought in.
#[derive(Clone, Debug)]
pub struct BarStock {
    /// Lengths that can be bought, the longest first.
    pub lengths: Vec<Length>,
    /// Width that a cut takes.
    pub kerf: Length,
    /// Cut off each bar once, before the first piece.
    pub end_trim: Length,
}

/// How boards are laid on the frame.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Laying {
    /// Between neighbouring pieces of a face.
    pub gap: Length,
    /// From the floor to a board's foot, at least.
    pub off_floor: Length,
    /// From a joint to the corner of a cutout, at least.
    pub off_corner: Length,
    /// Least width of a piece.
    pub least_strip: Length,
    /// Closed modules have a bottom.
    pub bottoms: bool,
}
