//! The base trim.

use super::Face;
use crate::findings::Place;
use crate::units::Length;

/// Base trim: it covers the feet and the tapering gap under the frame, its bottom scribed to the floor.
#[derive(Clone, Debug)]
pub struct Trim {
    /// As the job names it.
    pub name: String,
    /// Its top over the highest floor point.
    pub top: Length,
    /// Thickness.
    pub thickness: Length,
    /// How far it is to lap over the foot of the board.
    pub lap: Length,
    /// From the floor to its scribed bottom.
    pub floor_gap: Length,
    /// Round a fitting that reaches below its top, and to a wall.
    pub notch_gap: Length,
    /// Between two lengths that meet.
    pub joint_gap: Length,
    /// Heights of the scribe are given this far apart at most.
    pub stations: Length,
    /// Lengths that it is bought in, longest first.
    pub stock: Vec<Length>,
    /// Between fasteners at most.
    pub fasteners: Length,
    /// From an end to the nearest fastener.
    pub fastener_end: Length,
    /// A joint keeps this far off a notch.
    pub joint_off: Length,
    /// How pieces meet at outside corners.
    pub corners: TrimCorner,
    /// The faces that it runs along; `None` for the front and what is open to view.
    pub faces: Option<Vec<Face>>,
    /// Mass per volume, kg/m3.
    pub density: f64,
    /// Where written.
    pub place: Option<Place>,
}

/// How two pieces of trim meet at an outside corner.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum TrimCorner {
    /// Both are cut to half the corner's angle.
    #[default]
    Mitred,
    /// The front runs past, the other butts against its back.
    Butted,
}

impl Default for Trim {
    /// A trim as the defaults have it, 4 in high, of 3/4 in stock.
    fn default() -> Trim {
        let inches = |count: f64| Length::from_inches(count);
        Trim {
            name: "base trim".to_owned(),
            top: inches(4.0),
            thickness: inches(0.75),
            lap: inches(1.0),
            floor_gap: inches(0.25),
            notch_gap: inches(0.125),
            joint_gap: inches(0.0625),
            stations: inches(16.0),
            stock: vec![inches(96.0)],
            fasteners: inches(16.0),
            fastener_end: inches(2.0),
            joint_off: inches(2.0),
            corners: TrimCorner::Mitred,
            faces: None,
            density: 560.646_22,
            place: None,
        }
    }
}
