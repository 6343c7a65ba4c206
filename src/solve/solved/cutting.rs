//! Pieces laid out on stock.

use crate::units::Length;

/// Everything that is cut from stock.
#[derive(Clone, Debug, Default)]
pub struct Cutting {
    /// The sheet materials of the run.
    pub materials: Vec<SheetMaterial>,
    /// Stock sheets with what is cut from each.
    pub sheets: Vec<StockSheet>,
    /// Stock bars (tube, angle, trim) with what is cut from each.
    pub bars: Vec<StockBar>,
}

/// A sheet material.
#[derive(Clone, Debug)]
pub struct SheetMaterial {
    /// As the job names it.
    pub name: String,
    /// Thickness.
    pub thickness: Length,
    /// Mass per area, kg/m2.
    pub mass: f64,
    /// Width that a cut takes.
    pub kerf: Length,
    /// Cut edge to edge only, as board that is scored and snapped.
    pub edge_to_edge: bool,
}

/// One stock sheet.
#[derive(Clone, Debug)]
pub struct StockSheet {
    /// Its material, by index.
    pub material: usize,
    /// Its sides, short and long.
    pub size: (Length, Length),
    /// An offcut that the builder has, by its name; `None` for a bought sheet.
    pub offcut: Option<String>,
    /// What is cut from it.
    pub placed: Vec<Placed>,
    /// Edge-to-edge cuts in the order to make them; empty where any cuts go.
    pub cuts: Vec<SheetCut>,
    /// What is left and worth keeping: lower left corner and sides.
    pub kept: Vec<(Length, Length, Length, Length)>,
}

/// A piece on a stock sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// The piece, by index in `Shop::pieces`.
    pub piece: usize,
    /// Its lower left corner.
    pub at: (Length, Length),
    /// Turned by a quarter.
    pub turned: bool,
}

/// One cut from edge to edge of what is being cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SheetCut {
    /// Where it starts.
    pub from: (Length, Length),
    /// Where it ends.
    pub to: (Length, Length),
}

/// One stock bar.
#[derive(Clone, Debug)]
pub struct StockBar {
    /// What it is, as `steel tube 1 1/2 in`.
    pub name: String,
    /// Its length.
    pub length: Length,
    /// What is cut from it: mark and length, in order.
    pub cuts: Vec<(String, Length)>,
    /// What is left.
    pub left: Length,
}
