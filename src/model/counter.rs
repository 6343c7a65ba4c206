//! Frame, substrate, counter, height and base trim.

use super::{NotchText, Text};
use serde::Deserialize;

/// The bare frame.
#[derive(Debug, Deserialize)]
#[serde(rename = "frame", deny_unknown_fields)]
pub struct FrameText {
    pub(crate) depth: Text,
    pub(crate) tube: Option<Text>,
    pub(crate) wall: Option<Text>,
    pub(crate) height: Option<Text>,
    pub(crate) rough_gap: Option<Text>,
    pub(crate) material: Option<FrameMaterialText>,
    /// Upright tubes behind boards, this far apart at most.
    pub(crate) studs: Option<Text>,
    #[serde(default)]
    pub(crate) feet: FeetText,
}

/// Adjustable feet.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "feet", deny_unknown_fields)]
pub struct FeetText {
    pub(crate) shortest: Option<Text>,
    pub(crate) longest: Option<Text>,
    pub(crate) inset: Option<Text>,
    pub(crate) middle_over: Option<Text>,
    /// Most distance between feet of one module.
    pub(crate) spacing: Option<Text>,
    /// A foot this near to a measured spot stands on it.
    pub(crate) spot_reach: Option<Text>,
    /// What one foot carries.
    pub(crate) rating: Option<Text>,
}

/// The sheet under the counter.
#[derive(Debug, Deserialize)]
#[serde(rename = "substrate", deny_unknown_fields)]
pub struct SubstrateText {
    pub(crate) name: Option<Text>,
    pub(crate) thickness: Text,
    pub(crate) edge: Option<SubstrateEdgeText>,
    pub(crate) combustible: Option<bool>,
}

/// Where the substrate's free edges end.
#[derive(Debug, Deserialize)]
#[serde(rename = "edge", rename_all = "snake_case", deny_unknown_fields)]
pub enum SubstrateEdgeText {
    FlushWithFrame,
    FlushWithBoard,
    FlushWithFinish,
    HeldBack(Text),
}

/// The counter.
#[derive(Debug, Deserialize)]
#[serde(rename = "counter", deny_unknown_fields)]
pub struct CounterText {
    pub(crate) material: MaterialText,
    pub(crate) name: Option<Text>,
    pub(crate) thickness: Text,
    pub(crate) density: Option<Text>,
    #[serde(default)]
    pub(crate) overhang: OverhangText,
    pub(crate) wall_joint: Option<Text>,
    pub(crate) seam_joint: Option<Text>,
    pub(crate) corner_radius: Option<Text>,
    pub(crate) arris: Option<Text>,
    pub(crate) drip: Option<Text>,
    pub(crate) splash: Option<SplashText>,
    #[serde(default)]
    pub(crate) seams: Vec<SeamText>,
    #[serde(default)]
    pub(crate) notches: Vec<NotchText>,
    pub(crate) tolerance: Option<Text>,
    pub(crate) slab: Option<SlabText>,
    /// Bound by resin.
    pub(crate) resin: Option<bool>,
    /// Distance between brackets under an overhang.
    pub(crate) brackets: Option<Text>,
    pub(crate) rails: Option<RailsText>,
    pub(crate) lifters: Option<u8>,
}

/// What the frame is made of.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "material", rename_all = "snake_case")]
pub enum FrameMaterialText {
    Steel,
    Aluminium,
    Wood,
}

/// The usable slab.
#[derive(Debug, Deserialize)]
#[serde(rename = "slab", deny_unknown_fields)]
pub struct SlabText {
    pub(crate) length: Text,
    pub(crate) width: Text,
}

/// How narrow strips of the counter are helped.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "rails", rename_all = "snake_case")]
pub enum RailsText {
    Plain,
    Rodded,
    Propped,
}

/// What the counter is made of.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "material", rename_all = "snake_case")]
pub enum MaterialText {
    Concrete,
    Stone,
    Porcelain,
}

/// Overhang per side, from the finished face.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "overhang", deny_unknown_fields)]
pub struct OverhangText {
    pub(crate) front: Option<Text>,
    pub(crate) left: Option<Text>,
    pub(crate) right: Option<Text>,
    pub(crate) back: Option<Text>,
}

/// An upstand along the back.
#[derive(Debug, Deserialize)]
#[serde(rename = "splash", deny_unknown_fields)]
pub struct SplashText {
    pub(crate) height: Text,
    pub(crate) thickness: Text,
}

/// Where two pieces of counter meet.
#[derive(Debug, Deserialize)]
#[serde(rename = "seam", deny_unknown_fields)]
pub struct SeamText {
    pub(crate) leg: Option<Text>,
    pub(crate) along: Text,
}

/// Which level the job fixes.
#[derive(Debug, Deserialize)]
#[serde(rename = "height", rename_all = "snake_case", deny_unknown_fields)]
pub enum HeightText {
    CounterTop(Text),
    FrameTop(Text),
}
