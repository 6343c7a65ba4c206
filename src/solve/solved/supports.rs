//! What holds up counters, substrate and fittings besides the frame's own tubes.

use super::BodyBox;
use crate::units::Length;

/// The supports of a run.
#[derive(Clone, Debug, Default)]
pub struct Supports {
    /// The members, leg by leg.
    pub members: Vec<Support>,
}

/// What a support is there for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SupportRole {
    /// Carries a heavy fitting from the side, front to back.
    Arm,
    /// Stands under the front of an arm.
    FrontPost,
    /// Level, before or behind a counter cutout.
    CutoutRail,
    /// Behind an edge that a fitting screws to.
    Backing,
    /// Under a substrate joint, or between tubes that are too far apart.
    Intermediate,
    /// Carries an overhang.
    Bracket,
}

/// One support.
#[derive(Clone, Debug)]
pub struct Support {
    /// Its mark, unique in the run.
    pub mark: String,
    /// What it is there for.
    pub role: SupportRole,
    /// Its leg, by index.
    pub leg: usize,
    /// Its module, by index.
    pub module: usize,
    /// The fitting that it serves, by index in its leg, where it serves one.
    pub fitting: Option<usize>,
    /// Its box in leg coordinates.
    pub body: BodyBox,
    /// Its section as a supplier names it, as `tube 1 1/2 x 1 1/2 x 1/8 in`.
    pub section: String,
    /// Cut length.
    pub length: Length,
    /// Holes along it, from its left or front end, each with its diameter.
    pub holes: Vec<(Length, Length)>,
    /// Mass, kg.
    pub mass: f64,
}
