//! The feet on the floor, and what comes up through it.

use crate::findings::Place;
use crate::solve::Service;
use crate::units::Length;

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
