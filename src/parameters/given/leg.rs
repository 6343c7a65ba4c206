//! A straight row of modules, and what bounds it.

use super::{Faces, Own};
use crate::findings::Place;
use crate::units::Length;

/// A straight row of modules with one face line.
#[derive(Clone, Debug)]
pub struct Leg {
    /// Its id.
    pub id: String,
    /// Origin in the plan: its finished left end at the finished face, mm.
    pub origin: (f64, f64),
    /// Turn of +u from the plan's x, counter-clockwise, radians.
    pub angle: f64,
    /// What bounds its left end.
    pub left: Bound,
    /// What bounds its right end.
    pub right: Bound,
    /// What stands behind it.
    pub back: Bound,
    /// Room for it along u: between the bounds' faces, or to the finished end where an end is open.
    pub room: Option<Length>,
    /// Board and finish of each face.
    pub faces: Faces,
    /// Its modules, left to right.
    pub modules: Vec<Module>,
    /// What it has otherwise than the job.
    pub own: Own,
    /// Where written.
    pub place: Option<Place>,
}

/// What stands at an end of a leg, or behind it.
#[derive(Clone, Debug)]
pub struct Bound {
    /// Kind of thing.
    pub kind: BoundKind,
    /// As the job names it, as `garden wall`; empty when open.
    pub name: String,
    /// From its face to the outermost layer of the run there, at the level where the face stands nearest.
    pub gap: Length,
    /// How far its face leans towards the run at counter height, less what it is at the floor; negative leans away.
    pub lean: Length,
    /// Its height over the floor.
    pub height: Length,
    /// Its width along u as seen from the front (a pier, a post), or its thickness.
    pub width: Length,
    /// Whether it burns, skin or studs; `None` when the job doesn't say.
    pub combustible: Option<bool>,
    /// Where written.
    pub place: Option<Place>,
}

/// Kind of bound.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoundKind {
    /// Nothing there.
    Open,
    /// A wall.
    Wall,
    /// A pier of masonry.
    Pier,
    /// A post.
    Post,
    /// Another leg of the run.
    Leg,
}

/// One framed box of a leg.
#[derive(Clone, Debug)]
pub struct Module {
    /// Its id, as `B`.
    pub id: String,
    /// What the client calls it, as `grill`; may be empty.
    pub name: String,
    /// Kind of box.
    pub kind: ModuleKind,
    /// Its width along u.
    pub width: Width,
    /// Where written.
    pub place: Option<Place>,
}

/// Kind of module.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ModuleKind {
    /// A framed box.
    Base,
    /// Framed over, open below.
    OpenBay,
    /// A strip that fills.
    Filler,
    /// A box in a corner, part of it behind the other leg.
    Corner,
}

/// How wide a module is to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Width {
    /// Just this.
    Fixed(Length),
    /// Anything between these; all ranges of a leg grow in proportion to what they may.
    Range(Length, Length),
    /// What is left when the others have their width.
    WhatIsLeft,
}
