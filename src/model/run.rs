//! Legs and modules.

use super::{
    BoundText, CornersText, CoverText, FrontEdgeText, HeightText, LedgeText, OverhangText, SeatingText, SkewText, Text,
};
use serde::Deserialize;

/// A straight row of modules.
#[derive(Debug, Deserialize)]
#[serde(rename = "leg", deny_unknown_fields)]
pub struct LegText {
    pub(crate) id: Text,
    pub(crate) at: Option<AtText>,
    pub(crate) left: Option<BoundText>,
    pub(crate) right: Option<BoundText>,
    pub(crate) back: Option<BoundText>,
    /// A length, or `as surveyed`.
    pub(crate) room: Option<Text>,
    #[serde(default)]
    pub(crate) faces: FacesText,
    pub(crate) depth: Option<Text>,
    pub(crate) height: Option<HeightText>,
    pub(crate) behind: Option<Text>,
    pub(crate) offset: Option<Text>,
    #[serde(default)]
    pub(crate) overhang: OverhangText,
    pub(crate) front_edge: Option<FrontEdgeText>,
    #[serde(default)]
    pub(crate) skew: SkewText,
    #[serde(default)]
    pub(crate) counter_corners: CornersText,
    pub(crate) seating: Option<SeatingText>,
    pub(crate) ledge: Option<LedgeText>,
    pub(crate) modules: Vec<ModuleText>,
}

/// Where a leg stands in the plan.
#[derive(Debug, Deserialize)]
#[serde(rename = "at", deny_unknown_fields)]
pub struct AtText {
    pub(crate) x: Text,
    pub(crate) y: Text,
    pub(crate) turn: Option<Text>,
}

/// Faces of a leg that differ from the job's.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "faces", deny_unknown_fields)]
pub struct FacesText {
    pub(crate) front: Option<CoverText>,
    pub(crate) left: Option<CoverText>,
    pub(crate) right: Option<CoverText>,
    pub(crate) back: Option<CoverText>,
}

/// One framed box.
#[derive(Debug, Deserialize)]
#[serde(rename = "module", deny_unknown_fields)]
pub struct ModuleText {
    pub(crate) id: Text,
    pub(crate) name: Option<Text>,
    pub(crate) kind: Option<ModuleKindText>,
    pub(crate) width: Text,
}

/// Kind of module.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "kind", rename_all = "snake_case")]
pub enum ModuleKindText {
    Base,
    OpenBay,
    Filler,
    Corner,
}
