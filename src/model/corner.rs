//! Where legs meet, and the shapes that a leg's counter may have.

use super::Text;
use serde::Deserialize;

/// A corner between the right end of one leg and the left end of another.
#[derive(Debug, Deserialize)]
#[serde(rename = "corner", deny_unknown_fields)]
pub struct CornerText {
    pub(crate) left: Text,
    pub(crate) right: Text,
    pub(crate) angle: AngleText,
    pub(crate) through: Option<Text>,
    pub(crate) seam: Option<CornerSeamText>,
    /// Of the counter's inside corner; the same as `inner: rounded(...)`.
    pub(crate) radius: Option<Text>,
    /// Shape of the counter's inside corner: clipped, a straight edge fills it.
    pub(crate) inner: Option<CornerShapeText>,
    pub(crate) outer: Option<CornerShapeText>,
}

/// Which side of the corner the cook is on, and the angle between the two finished faces.
#[derive(Debug, Deserialize)]
#[serde(rename = "angle", rename_all = "snake_case", deny_unknown_fields)]
pub enum AngleText {
    /// The cook stands in the corner; measured on the cook's side.
    Inside(Text),
    /// The cook walks round it; measured through the run.
    Outside(Text),
}

/// How the counter's pieces meet.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "seam", rename_all = "snake_case")]
pub enum CornerSeamText {
    Butt,
    Mitre,
    None,
}

/// Shape of an outside corner in plan.
#[derive(Debug, Deserialize)]
#[serde(rename = "shape", rename_all = "snake_case", deny_unknown_fields)]
pub enum CornerShapeText {
    Sharp,
    Rounded(Text),
    Clipped(Text),
}

/// Two legs in one line whose counters differ in height.
#[derive(Debug, Deserialize)]
#[serde(rename = "step", deny_unknown_fields)]
pub struct StepText {
    pub(crate) left: Text,
    pub(crate) right: Text,
}

/// A counter's front edge.
#[derive(Debug, Deserialize)]
#[serde(rename = "front_edge", rename_all = "snake_case", deny_unknown_fields)]
pub enum FrontEdgeText {
    Sloped { left: Text, right: Text },
    Arc { rise: Text },
}

/// How much farther the counter's ends reach at the back.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "skew", deny_unknown_fields)]
pub struct SkewText {
    pub(crate) left: Option<Text>,
    pub(crate) right: Option<Text>,
}

/// The counter's four corners.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "counter_corners", deny_unknown_fields)]
pub struct CornersText {
    pub(crate) front_left: Option<CornerShapeText>,
    pub(crate) front_right: Option<CornerShapeText>,
    pub(crate) back_right: Option<CornerShapeText>,
    pub(crate) back_left: Option<CornerShapeText>,
}

/// People who sit at the back.
#[derive(Debug, Deserialize)]
#[serde(rename = "seating", deny_unknown_fields)]
pub struct SeatingText {
    pub(crate) seats: u32,
    pub(crate) width: Option<Text>,
}
