//! Fittings, in the job or in a library.

use super::{DimensionText, Entries, ExtentText, FuelText, Text};
use serde::Deserialize;

/// A library: fittings to be used by their id, and further libraries.
#[derive(Debug, Deserialize)]
#[serde(rename = "library", deny_unknown_fields)]
pub(crate) struct LibraryFile {
    #[serde(default)]
    pub(crate) libraries: Vec<Text>,
    #[serde(default)]
    pub(crate) fittings: Vec<FittingText>,
}

/// Something set into the run. In a library it has no module; in a job it may take everything else
/// from a library's fitting.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "fitting", deny_unknown_fields)]
pub struct FittingText {
    pub(crate) id: Text,
    pub(crate) from: Option<Text>,
    pub(crate) name: Option<Text>,
    pub(crate) mark: Option<Text>,
    pub(crate) look: Option<LookText>,
    #[serde(rename = "in")]
    pub(crate) module: Option<Text>,
    pub(crate) face: Option<FaceText>,
    pub(crate) across: Option<AcrossText>,
    pub(crate) cut: Option<CutText>,
    /// In the place of the cut's own drop: a library's front hangs where the job says.
    pub(crate) drop: Option<DropText>,
    #[serde(default)]
    pub(crate) measured: Entries,
    pub(crate) flange: Option<FlangeText>,
    pub(crate) body: Option<BodyText>,
    pub(crate) clearance: Option<Text>,
    pub(crate) weight: Option<Text>,
    pub(crate) heat: Option<Text>,
    /// The gas it burns, where that isn't the run's.
    pub(crate) fuel: Option<FuelText>,
    /// What its manual keeps things that burn away by.
    pub(crate) clear_of_combustibles: Option<KeepText>,
    /// Depth behind its cutout that its lid swings into.
    pub(crate) lid: Option<Text>,
    /// It hangs in an insulated liner.
    pub(crate) liner: Option<bool>,
    /// The thickest counter that it hangs in.
    pub(crate) most_top: Option<Text>,
    /// The thickest face that its flange and body take.
    pub(crate) most_face: Option<Text>,
    pub(crate) power: Option<Text>,
    /// The side that its one door is hinged on.
    pub(crate) hinge: Option<SideText>,
    /// Free area of a vent.
    pub(crate) free_area: Option<Text>,
}

/// Distances to things that burn, from the fitting's manual.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "clear_of_combustibles", deny_unknown_fields)]
pub struct KeepText {
    pub(crate) beside: Option<Text>,
    pub(crate) behind: Option<Text>,
    pub(crate) above: Option<Text>,
}

/// How a fitting looks.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "look", rename_all = "snake_case", deny_unknown_fields)]
pub enum LookText {
    Grill,
    SideBurner,
    Sink,
    Faucet,
    Door { pull: SideText },
    Doors,
    Drawers(u8),
    WastePullOut,
    Refrigerator,
    Panel,
    Vent,
    Hole,
}

/// Left or right.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "side", rename_all = "snake_case")]
pub enum SideText {
    Left,
    Right,
}

/// A face of the run.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "face", rename_all = "snake_case")]
pub enum FaceText {
    Front,
    Left,
    Right,
    Back,
}

/// Where a fitting stands along its face.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "across", rename_all = "snake_case", deny_unknown_fields)]
pub enum AcrossText {
    Centred,
    AlignedWith(Text),
    LeftEdge { from: AcrossFromText, distance: DimensionText },
    Centreline { from: AcrossFromText, distance: DimensionText },
    RightEdge { from: AcrossFromText, distance: DimensionText },
}

/// What a place across is from.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "datum", rename_all = "snake_case", deny_unknown_fields)]
pub enum AcrossFromText {
    ModuleCentre,
    ModuleLeft,
    ModuleRight,
    FinishedLeft,
    FinishedRight,
    FrameLeft,
    FrameRight,
    BoardLeft,
    BoardRight,
    Fitting(Text),
    FinishedFace,
}

/// A cutout.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "cut", rename_all = "snake_case", deny_unknown_fields)]
pub enum CutText {
    Notch { width: DimensionText, depth: DepthText, drop: Option<DropText>, radius: Option<Text> },
    Well { width: DimensionText, depth: DimensionText, radius: Option<Text>, setback: SetbackText },
    RoundWell { diameter: DimensionText, setback: SetbackText },
    Opening { width: DimensionText, height: ExtentText, drop: Option<DropText>, radius: Option<Text> },
    Vent { width: DimensionText, height: ExtentText, drop: Option<DropText>, radius: Option<Text> },
    PassThrough { width: DimensionText, height: ExtentText, drop: Option<DropText>, radius: Option<Text> },
}

/// A depth with its datum.
#[allow(clippy::enum_variant_names, reason = "the words of the file")]
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "depth", rename_all = "snake_case", deny_unknown_fields)]
pub enum DepthText {
    FromFinishedFace(DimensionText),
    FromCounterEdge(DimensionText),
    FromBoardFace(DimensionText),
    FromFrameFace(DimensionText),
}

/// A height with its datum.
#[allow(clippy::enum_variant_names, reason = "the words of the file")]
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "drop", rename_all = "snake_case", deny_unknown_fields)]
pub enum DropText {
    FromCounterTop(DimensionText),
    FromSubstrateTop(DimensionText),
    FromFrameTop(DimensionText),
    FromFloor(DimensionText),
}

/// Which line of a well is set back, how far and from what.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "setback", rename_all = "snake_case", deny_unknown_fields)]
pub enum SetbackText {
    FrontEdge(DepthText),
    Centre(DepthText),
    BackEdge(DepthText),
}

/// Lap of a flange per side.
#[derive(Clone, Debug, Default, Deserialize)]
#[serde(rename = "flange", deny_unknown_fields)]
pub struct FlangeText {
    pub(crate) left: Option<Text>,
    pub(crate) right: Option<Text>,
    pub(crate) back: Option<Text>,
    pub(crate) front: Option<Text>,
    pub(crate) top: Option<Text>,
    pub(crate) bottom: Option<Text>,
}

/// A fitting's body.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "body", deny_unknown_fields)]
pub struct BodyText {
    pub(crate) width: DimensionText,
    pub(crate) depth: DimensionText,
    pub(crate) height: DimensionText,
}
