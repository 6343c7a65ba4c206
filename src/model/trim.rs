//! The base trim as written.

use super::{FaceText, Text};
use serde::Deserialize;

/// Base trim.
#[derive(Debug, Deserialize)]
#[serde(rename = "trim", deny_unknown_fields)]
pub struct TrimText {
    pub(crate) name: Option<Text>,
    /// Over the highest floor point; when absent as high as lap and frame ask.
    pub(crate) top: Option<Text>,
    pub(crate) thickness: Text,
    /// Over the foot of the board.
    pub(crate) lap: Option<Text>,
    pub(crate) floor_gap: Option<Text>,
    pub(crate) notch_gap: Option<Text>,
    pub(crate) joint_gap: Option<Text>,
    /// Distance of the heights that the scribe is given by.
    pub(crate) stations: Option<Text>,
    /// Lengths that it is bought in.
    #[serde(default)]
    pub(crate) stock: Vec<Text>,
    /// Distance of fasteners, and of the outermost from an end.
    pub(crate) fasteners: Option<Text>,
    pub(crate) fastener_end: Option<Text>,
    pub(crate) joint_off: Option<Text>,
    pub(crate) corners: Option<TrimCornerText>,
    /// Faces that it runs along.
    pub(crate) faces: Option<Vec<FaceText>>,
    pub(crate) density: Option<Text>,
}

/// How pieces meet at outside corners.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "corners", rename_all = "snake_case")]
pub enum TrimCornerText {
    Mitred,
    Butted,
}
