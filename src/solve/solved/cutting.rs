//! Pieces laid out on stock.

use super::SheetJoint;
use crate::findings::Place;
use crate::solve::Laying;
use crate::units::Length;

/// Everything that is cut from stock.
#[derive(Clone, Debug, Default)]
pub struct Cutting {
    /// The sheet materials of the run.
    pub materials: Vec<SheetMaterial>,
    /// Where pieces of one face, or of a substrate, meet.
    pub joints: Vec<SheetJoint>,
    /// How boards are laid.
    pub laying: Laying,
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
    /// Pieces may be turned by a quarter on the sheet; where not, their own width runs along the sheet's length.
    pub turned: bool,
    /// Sizes that can be bought, width and length.
    pub sizes: Vec<(Length, Length)>,
    /// What the builder has: name, width and length.
    pub offcuts: Vec<(String, (Length, Length))>,
    /// It lies under the counter.
    pub under_counter: bool,
    /// Where written.
    pub place: Option<Place>,
}

impl SheetMaterial {
    /// Whether a piece of a size can be cut from a sheet that can be bought.
    pub fn takes(&self, blank: (Length, Length)) -> bool {
        self.sizes.iter().any(|&(width, length)| {
            (blank.0 <= length && blank.1 <= width) || (self.turned && blank.0 <= width && blank.1 <= length)
        })
    }
}

/// One stock sheet.
#[derive(Clone, Debug)]
pub struct StockSheet {
    /// Its material, by index.
    pub material: usize,
    /// Its width and length. Places on it are (along its length, along its width).
    pub size: (Length, Length),
    /// An offcut that the builder has, by its name; `None` for a bought sheet.
    pub offcut: Option<String>,
    /// What is cut from it.
    pub placed: Vec<Placed>,
    /// Edge-to-edge cuts in the order to make them; empty where any cuts go.
    pub cuts: Vec<SheetCut>,
    /// What is left and worth keeping: lower left corner and sides.
    pub kept: Vec<(Length, Length, Length, Length)>,
    /// No layout of its material buys fewer sheets, as far as was proven.
    pub fewest: bool,
}

/// A piece on a stock sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placed {
    /// The piece, by index in `Shop::pieces`.
    pub piece: usize,
    /// Its lower left corner.
    pub at: (Length, Length),
    /// Turned by a quarter: else it lies with its own width along the sheet's length, upright.
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
    /// What is cut off its end before the first piece.
    pub end_trim: Length,
    /// Width that a cut takes.
    pub kerf: Length,
}
