//! What is asked of a layout, and what a layout is.

use crate::units::Length;

/// Rectangles to be cut from sheets.
#[derive(Clone, Debug)]
pub struct Request {
    /// What is wanted.
    pub parts: Vec<Part>,
    /// Sheets that are at hand, each once; they are used first.
    pub offcuts: Vec<Offcut>,
    /// Sizes that can be bought, any number of each.
    pub bought: Vec<Bought>,
    /// Width that a cut takes.
    pub kerf: Length,
    /// How the sheets are cut.
    pub way: Way,
    /// Something left over is kept when its sides are this long.
    pub keep: Length,
}

/// How sheets are cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Every cut from edge to edge of what is being cut, as when a board is scored and snapped.
    EdgeToEdge,
    /// Cuts may stop anywhere.
    Any,
}

/// A rectangle that is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Part {
    /// Its sides, along the sheet's width and length.
    pub size: (Length, Length),
    /// It may be turned by a quarter.
    pub turns: bool,
}

/// A sheet that is at hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Offcut {
    /// Its width and length.
    pub size: (Length, Length),
}

/// A size that can be bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Bought {
    /// Its width and length.
    pub size: (Length, Length),
}

/// What is cut from what.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Layout {
    /// The sheets that something is cut from: offcuts in the order given, then bought ones.
    pub sheets: Vec<Sheet>,
    /// No layout has fewer bought sheets, as far as was proven.
    pub proven: bool,
}

/// One sheet with what is cut from it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// Its width and length.
    pub size: (Length, Length),
    /// The offcut that it is, by index; `None` for a bought one.
    pub offcut: Option<usize>,
    /// What is cut from it.
    pub placed: Vec<Placement>,
    /// Cuts in the order to make them, each from edge to edge of what is then being cut: along its middle, from and to.
    /// Empty where the pieces can't be cut so.
    pub cuts: Vec<((Length, Length), (Length, Length))>,
    /// What is left and worth keeping: lower left corner and size.
    pub kept: Vec<((Length, Length), (Length, Length))>,
}

/// A part on a sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placement {
    /// The part, by index.
    pub part: usize,
    /// Its lower left corner.
    pub at: (Length, Length),
    /// It lies turned by a quarter.
    pub turned: bool,
}
