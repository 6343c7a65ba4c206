//! Where legs meet, and the counters over several of them.

use super::Edge;
use crate::findings::Place;
use crate::geometry::{PlanPoint, Region};
use crate::solve::JointKind;

/// Where two legs meet.
#[derive(Clone, Debug)]
pub struct Joint {
    /// The leg whose right end it is.
    pub left: usize,
    /// The leg whose left end it is.
    pub right: usize,
    /// How.
    pub kind: JointKind,
    /// The line where the two finished faces meet, in plan.
    pub at: PlanPoint,
    /// Where written.
    pub place: Option<Place>,
}

/// A counter over several legs.
#[derive(Clone, Debug)]
pub struct Slab {
    /// Its legs, left to right.
    pub legs: Vec<usize>,
    /// Its whole outline with notches, and wells as holes, in the (u, v) of its first leg, mm.
    pub region: Region,
    /// Its outside edges in the (u, v) of its first leg, tagged, counter-clockwise, radii left out of account.
    pub edges: Vec<Edge>,
    /// The whole substrate under it, likewise.
    pub substrate: Region,
    /// Its pieces, left to right: the leg whose counter lists the piece, its index there, and every leg it lies on.
    pub pieces: Vec<(usize, usize, Vec<usize>)>,
    /// The pieces of the substrate, left to right.
    pub sheets: Vec<Under>,
}

/// A piece of a substrate that lies over several legs. It ends at the corners and over the posts of its leg.
#[derive(Clone, Debug)]
pub struct Under {
    /// Its leg.
    pub leg: usize,
    /// Its outline with notches, and wells as holes, in the (u, v) of its leg, mm.
    pub region: Region,
    /// Its edges, likewise; joints are tagged as seams.
    pub edges: Vec<Edge>,
}
