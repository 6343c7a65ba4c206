//! The ground, and what comes up through it.

use super::{Around, Survey};
use crate::findings::Place;
use crate::units::Length;

/// The ground.
#[derive(Clone, Debug)]
pub struct Site {
    /// The floor's surface.
    pub floor: Floor,
    /// Pipes and cables that come up or out.
    pub stubs: Vec<Stub>,
    /// What lies underfoot, as the client elevation names and draws it.
    pub paving: String,
    /// What is round the run.
    pub around: Around,
    /// Walls, posts, steps and doors as surveyed.
    pub survey: Survey,
}

/// The floor's surface over a leg's (u, v), heights relative to one another (z = 0 is set by the solver).
#[derive(Clone, Debug)]
pub enum Floor {
    /// Level.
    Level,
    /// A plane. Falls are drops per length: positive `along` drops to the right (+u), positive
    /// `across` drops towards the cook (-v).
    Fall {
        /// Drop per unit length towards +u.
        along: f64,
        /// Drop per unit length towards -v (away from the back).
        across: f64,
    },
    /// Measured heights at points of the first leg's (u, v), the floor taken as the best plane through them.
    Spots(Vec<Spot>),
    /// The same, the floor taken as the facets between them, so that it goes through every one.
    ThroughSpots(Vec<Spot>),
}

/// One measured height of the floor.
#[derive(Clone, Copy, Debug)]
pub struct Spot {
    /// Along the face, from the finished left end.
    pub u: Length,
    /// Depth from the finished face.
    pub v: Length,
    /// Height over any one level, the same for all spots.
    pub z: Length,
}

/// A service that comes up in the run.
#[derive(Clone, Debug)]
pub struct Stub {
    /// What it carries.
    pub service: Service,
    /// The leg, by index.
    pub leg: usize,
    /// From the finished left end.
    pub u: Length,
    /// From the finished face.
    pub v: Length,
    /// Over the floor, where given.
    pub z: Option<Length>,
    /// Where written.
    pub place: Option<Place>,
}

/// What a stub carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Service {
    /// Fuel gas.
    Gas,
    /// Electricity.
    Power,
    /// Water supply.
    Water,
    /// Drain.
    Drain,
}
