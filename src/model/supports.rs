//! What carries counters and heavy fittings besides the frame's own tubes.

use super::Text;
use serde::Deserialize;

/// Sections, alloys, loads and limits of supports.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "supports", deny_unknown_fields)]
pub struct SupportsText {
    /// What runs front to back under a heavy fitting, and what stands or lies under that.
    pub(crate) arm: Option<BarText>,
    /// What runs at the frame's top, round cutouts and between tubes.
    pub(crate) rail: Option<BarText>,
    /// What carries an overhang.
    pub(crate) bracket: Option<BarText>,
    /// From this mass on a fitting gets arms.
    pub(crate) heavy: Option<Text>,
    /// What is laid on a heavy fitting.
    pub(crate) food: Option<Text>,
    /// Who kneels or sits on the counter.
    pub(crate) person: Option<Text>,
    /// Who leans on an overhang.
    pub(crate) lean: Option<Text>,
    /// Span over the most deflection, under the counter.
    pub(crate) stiffness: Option<Text>,
    /// The same under a fitting.
    pub(crate) arm_stiffness: Option<Text>,
    /// The most between supports of the substrate.
    pub(crate) apart: Option<Text>,
    /// The most that the counter hangs past the frame without brackets.
    pub(crate) overhang: Option<Text>,
    /// Diameter of the holes for screws.
    pub(crate) hole: Option<Text>,
    /// From an end to the hole's centre.
    pub(crate) hole_inset: Option<Text>,
}

/// A section in a metal.
#[derive(Debug, Deserialize)]
#[serde(rename = "support", deny_unknown_fields)]
pub struct BarText {
    pub(crate) section: Option<SectionText>,
    pub(crate) alloy: Option<AlloyText>,
}

/// A section by its sides.
#[derive(Debug, Deserialize)]
#[serde(rename = "section", rename_all = "snake_case", deny_unknown_fields)]
pub enum SectionText {
    Tube { width: Text, height: Text, wall: Text },
    Angle { width: Text, height: Text, wall: Text },
    Channel { width: Text, height: Text, wall: Text },
    Flat { width: Text, thickness: Text },
}

/// A metal with what it carries.
#[derive(Debug, Deserialize)]
#[serde(rename = "alloy", rename_all = "snake_case", deny_unknown_fields)]
#[allow(clippy::large_enum_variant, reason = "read once a job")]
pub enum AlloyText {
    SteelA36,
    #[serde(rename = "aluminium_6061_t6")]
    Aluminium6061T6,
    #[serde(rename = "aluminium_6063_t5")]
    Aluminium6063T5,
    Other {
        name: Text,
        elasticity: Text,
        yields: Text,
        safety: Text,
        density: Text,
    },
}
