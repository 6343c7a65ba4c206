//! What pieces are cut from, and how boards are laid on the frame.

use super::Text;
use serde::Deserialize;

/// Stock of the run: everything in it may be left out.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "stock", deny_unknown_fields)]
pub struct StockText {
    #[serde(default)]
    pub(crate) board: SheetStockText,
    #[serde(default)]
    pub(crate) substrate: SheetStockText,
    #[serde(default)]
    pub(crate) bars: BarStockText,
    /// The smaller side of an offcut that is worth keeping.
    pub(crate) keep: Option<Text>,
}

/// What one sheet material is bought in, and how it is cut.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "sheet stock", deny_unknown_fields)]
pub struct SheetStockText {
    #[serde(default)]
    pub(crate) sheets: Vec<SheetSizeText>,
    #[serde(default)]
    pub(crate) offcuts: Vec<OffcutText>,
    pub(crate) cuts: Option<CutsText>,
    pub(crate) kerf: Option<Text>,
    /// Pieces may be turned by a quarter on the sheet.
    pub(crate) turned: Option<bool>,
}

/// A size that can be bought.
#[derive(Debug, Deserialize)]
#[serde(rename = "sheet", deny_unknown_fields)]
pub struct SheetSizeText {
    pub(crate) width: Text,
    pub(crate) length: Text,
}

/// A piece that the builder has.
#[derive(Debug, Deserialize)]
#[serde(rename = "offcut", deny_unknown_fields)]
pub struct OffcutText {
    pub(crate) name: Text,
    pub(crate) width: Text,
    pub(crate) length: Text,
}

/// How a sheet is cut.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "cuts", rename_all = "snake_case")]
pub enum CutsText {
    EdgeToEdge,
    Any,
}

/// What bars are bought in.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "bars", deny_unknown_fields)]
pub struct BarStockText {
    #[serde(default)]
    pub(crate) lengths: Vec<Text>,
    pub(crate) kerf: Option<Text>,
    /// Cut off each bar once, before the first piece.
    pub(crate) end_trim: Option<Text>,
}

/// How boards are laid on the frame.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "boards", deny_unknown_fields)]
pub struct BoardsText {
    /// Between neighbouring pieces.
    pub(crate) gap: Option<Text>,
    pub(crate) off_floor: Option<Text>,
    /// From a joint to the corner of a cutout.
    pub(crate) off_corner: Option<Text>,
    pub(crate) least_strip: Option<Text>,
    /// Closed modules have a bottom.
    pub(crate) bottoms: Option<bool>,
}
