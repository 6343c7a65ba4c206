//! The site as it was surveyed, over the plan's x and y.

use super::Text;
use serde::Deserialize;

/// Walls, posts, steps in the floor, doors.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "survey", deny_unknown_fields)]
pub struct SurveyText {
    #[serde(default)]
    pub(crate) walls: Vec<WallLineText>,
    #[serde(default)]
    pub(crate) posts: Vec<PostText>,
    #[serde(default)]
    pub(crate) steps: Vec<FloorStepText>,
    #[serde(default)]
    pub(crate) doors: Vec<DoorText>,
}

/// A wall: where it starts, then stretches with the turn before each.
#[derive(Debug, Deserialize)]
#[serde(rename = "wall", deny_unknown_fields)]
pub struct WallLineText {
    pub(crate) name: Option<Text>,
    pub(crate) from: PlanPointText,
    pub(crate) stretches: Vec<StretchText>,
}

/// A point of the plan.
#[derive(Debug, Deserialize)]
#[serde(rename = "point", deny_unknown_fields)]
pub struct PlanPointText {
    pub(crate) x: Text,
    pub(crate) y: Text,
}

/// A straight stretch of wall.
#[derive(Debug, Deserialize)]
#[serde(rename = "stretch", deny_unknown_fields)]
pub struct StretchText {
    /// Counter-clockwise from the stretch before, or from the plan's x.
    pub(crate) turn: Option<Text>,
    pub(crate) length: Text,
}

/// A post.
#[derive(Debug, Deserialize)]
#[serde(rename = "post", deny_unknown_fields)]
pub struct PostText {
    pub(crate) name: Option<Text>,
    pub(crate) at: PlanPointText,
    pub(crate) width: Text,
    pub(crate) depth: Option<Text>,
}

/// A step in the floor.
#[derive(Debug, Deserialize)]
#[serde(rename = "step", deny_unknown_fields)]
pub struct FloorStepText {
    pub(crate) from: PlanPointText,
    pub(crate) to: PlanPointText,
    pub(crate) drop: Text,
}

/// A door.
#[derive(Debug, Deserialize)]
#[serde(rename = "door", deny_unknown_fields)]
pub struct DoorText {
    pub(crate) name: Option<Text>,
    pub(crate) hinge: PlanPointText,
    pub(crate) width: Text,
    pub(crate) shut: Text,
    pub(crate) opens: Option<Text>,
}
