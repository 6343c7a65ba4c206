//! The floor, the feet on it, and what comes up through it.

use crate::findings::Place;
use crate::solve::Service;
use crate::units::Length;

/// The floor under a leg.
#[derive(Clone, Debug)]
pub struct Floor {
    /// Height at (u, v) = (0, 0), relative to z = 0.
    pub at_origin: f64,
    /// Rise per unit of u (negative: falls to the right).
    pub per_u: f64,
    /// Rise per unit of v (positive: falls towards the cook).
    pub per_v: f64,
    /// Measured spots, (u, v, z) mm with z = 0 as the solver set it; empty for a plane. Between spots the surface is
    /// the best plane through them; a foot within 2 in of a spot stands at that spot's own height.
    pub spots: Vec<(f64, f64, f64)>,
}

impl Floor {
    /// Height of the floor's plane at (u, v), mm over z = 0.
    pub fn height(&self, u: f64, v: f64) -> f64 {
        self.at_origin + self.per_u * u + self.per_v * v
    }
}

/// One adjustable foot.
#[derive(Clone, Copy, Debug)]
pub struct Foot {
    /// Its module, by index.
    pub module: usize,
    /// Centre on u.
    pub u: Length,
    /// Centre on v.
    pub v: Length,
    /// Floor under it, over z = 0 (never positive).
    pub ground: Length,
    /// From the floor to the frame's underside.
    pub height: Length,
}

/// A service that comes up.
#[derive(Clone, Debug)]
pub struct Stub {
    /// What it carries.
    pub service: Service,
    /// Where on u.
    pub u: Length,
    /// Where on v.
    pub v: Length,
    /// Over the floor, where given.
    pub z: Option<Length>,
    /// Where written.
    pub place: Option<Place>,
}
