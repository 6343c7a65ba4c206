//! The bare metal frame and its feet.

use super::FrameMaterial;
use crate::findings::Place;
use crate::units::Length;

/// The bare metal frame.
#[derive(Clone, Debug)]
pub struct Frame {
    /// Front to back.
    pub depth: Length,
    /// Outside of the square tube.
    pub tube: Length,
    /// Wall of the tube.
    pub wall: Length,
    /// Height of the frame itself; when absent the frame reaches down to the shortest foot.
    pub height: Option<Length>,
    /// What it is made of.
    pub material: FrameMaterial,
    /// Upright tubes behind boards, this far apart at most; `None` for none beyond the posts.
    pub studs: Option<Length>,
    /// The adjustable feet.
    pub feet: Feet,
    /// Clear space between a board's opening and the frame, on each side (rough opening).
    pub rough_gap: Length,
    /// Where written.
    pub place: Option<Place>,
}

/// Adjustable feet.
#[derive(Clone, Debug)]
pub struct Feet {
    /// Shortest setting.
    pub shortest: Length,
    /// Longest setting.
    pub longest: Length,
    /// From each side of the module to the foot's centre.
    pub inset: Length,
    /// A module wider than this has feet between those at its sides, and one deeper than this has a row between its
    /// front and its back.
    pub middle_over: Length,
    /// How far apart those stand at most.
    pub spacing: Length,
    /// A foot stands on a measured spot's own height when it is this near to it.
    pub spot_reach: Length,
    /// What one foot carries, kg.
    pub rating: f64,
    /// Where written.
    pub place: Option<Place>,
}
