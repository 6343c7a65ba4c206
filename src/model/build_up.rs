//! Board and finish, per face.

use super::Text;
use serde::Deserialize;

/// The board, the finish, and which faces carry them.
#[derive(Debug, Deserialize)]
#[serde(rename = "build_up", deny_unknown_fields)]
pub struct BuildUpText {
    pub(crate) board: BoardText,
    pub(crate) finish: Option<FinishText>,
    /// Distance between control or movement joints in the finish.
    pub(crate) joints: Option<Text>,
    /// What a square foot of the board carries.
    pub(crate) carries: Option<Text>,
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
    CladWith(Box<FinishText>),
}

/// A finish.
#[derive(Clone, Debug, Deserialize)]
#[allow(clippy::large_enum_variant, reason = "a job has a handful of them")]
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

/// What every kind of finish has.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FinishParts<'f> {
    /// The kind as written.
    pub(crate) kind: &'static str,
    pub(crate) name: Option<&'f Text>,
    pub(crate) thickness: &'f Text,
    pub(crate) bed: Option<&'f Text>,
    pub(crate) spread: Option<&'f Text>,
    pub(crate) weight: Option<&'f Text>,
}

impl FinishText {
    /// What every kind of finish has.
    pub(crate) fn parts(&self) -> FinishParts<'_> {
        let (kind, (name, thickness, bed, spread, weight)) = match self {
            FinishText::SkimCoat { name, thickness, bed, spread, weight } => {
                ("skim_coat", (name, thickness, bed, spread, weight))
            }
            FinishText::Veneer { name, thickness, bed, spread, weight } => {
                ("veneer", (name, thickness, bed, spread, weight))
            }
            FinishText::Tile { name, thickness, bed, spread, weight, .. } => {
                ("tile", (name, thickness, bed, spread, weight))
            }
        };
        FinishParts {
            kind,
            name: name.as_ref(),
            thickness,
            bed: bed.as_ref(),
            spread: spread.as_ref(),
            weight: weight.as_ref(),
        }
    }
}
