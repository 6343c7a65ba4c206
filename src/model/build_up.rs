//! Board and finish, per face.

use super::Text;
use serde::Deserialize;

/// The board, the finish, and which faces carry them.
#[derive(Debug, Deserialize)]
#[serde(rename = "build_up", deny_unknown_fields)]
pub struct BuildUpText {
    pub(crate) board: BoardText,
    pub(crate) finish: Option<FinishText>,
    pub(crate) front: Option<CoverText>,
    pub(crate) left: Option<CoverText>,
    pub(crate) right: Option<CoverText>,
    pub(crate) back: Option<CoverText>,
}

/// The board.
#[derive(Debug, Deserialize)]
#[serde(rename = "board", deny_unknown_fields)]
pub struct BoardText {
    pub(crate) name: Option<Text>,
    pub(crate) thickness: Text,
}

/// What covers one face.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "face", rename_all = "snake_case", deny_unknown_fields)]
pub enum CoverText {
    /// The frame alone.
    Bare,
    /// Board, no finish.
    Boarded,
    /// Board and the job's finish.
    Clad,
    /// Board and a finish of its own.
    CladWith(FinishText),
}

/// A finish.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "finish", rename_all = "snake_case", deny_unknown_fields)]
pub enum FinishText {
    SkimCoat {
        name: Option<Text>,
        thickness: Text,
        bed: Option<Text>,
        spread: Option<Text>,
        weight: Option<Text>,
    },
    Veneer {
        name: Option<Text>,
        thickness: Text,
        bed: Option<Text>,
        spread: Option<Text>,
        weight: Option<Text>,
    },
    Tile {
        name: Option<Text>,
        thickness: Text,
        bed: Option<Text>,
        spread: Option<Text>,
        weight: Option<Text>,
        width: Text,
        height: Text,
        joint: Option<Text>,
        #[serde(default)]
        staggered: bool,
    },
}
