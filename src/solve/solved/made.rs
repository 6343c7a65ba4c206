//! What is made of sheet and tube: boards, frame, counter, substrate.

use super::{BodyBox, Extent, Plane};
use crate::geometry::Region;
use crate::solve::Face;
use crate::units::Length;

/// A board fixed to the frame, with its openings.
#[derive(Clone, Debug)]
pub struct Board {
    /// Its mark, as `front A`.
    pub name: String,
    /// The face it covers.
    pub face: Face,
    /// Its plane.
    pub plane: Plane,
    /// Its box in that plane.
    pub extent: Extent,
    /// Its outline with openings open to its edge cut away, and the closed ones as holes, mm.
    pub region: Region,
    /// The fittings whose cutouts touch it, by index.
    pub fittings: Vec<usize>,
    /// The module it lies on, by index, where it is one.
    pub module: Option<usize>,
    /// How far its left and right edges are cut off square, radians; positive leaves the outside face longer. Zero but
    /// at corners that aren't square.
    pub bevels: [f64; 2],
}

/// What a tube of the frame does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Upright at a module's corner.
    Post,
    /// Level, at a module's top or bottom.
    Rail,
    /// Added behind an edge so that a fitting has something to screw to.
    Backing,
}

/// A tube of the frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Member {
    /// What it does.
    pub role: Role,
    /// Its module, by index.
    pub module: usize,
    /// Its box.
    pub body: BodyBox,
}

/// Why an edge of the counter ends where it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeKind {
    /// Seen and finished.
    Finished,
    /// Against a wall or pier, with a joint.
    Wall,
    /// Against a wall with an upstand.
    Splash,
    /// A cut edge that a flange covers.
    Covered,
    /// A cut edge over an undermounted bowl, seen and finished.
    Reveal,
    /// Against another piece.
    Seam,
}

/// One tagged edge of the counter.
#[derive(Clone, Debug)]
pub struct Edge {
    /// Kind.
    pub kind: EdgeKind,
    /// Start, (u, v).
    pub from: (Length, Length),
    /// End, (u, v).
    pub to: (Length, Length),
    /// Overhang past the finished face, where the edge is finished.
    pub overhang: Option<Length>,
    /// Joint, where it meets something.
    pub joint: Option<Length>,
}

/// One piece of the counter.
#[derive(Clone, Debug)]
pub struct Piece {
    /// Its name, as `Piece 1`.
    pub name: String,
    /// Its box, (u, v).
    pub extent: Extent,
    /// Its outline with notches, and wells as holes, (u, v) mm.
    pub region: Region,
    /// Mass, kg.
    pub mass: f64,
    /// Its diagonal over the box.
    pub diagonal: Length,
    /// Its outside edges, tagged, walking counter-clockwise (v up) from the front left.
    pub edges: Vec<Edge>,
}

impl Piece {
    /// Whether it comes out of a slab of a length and a width, either way round.
    pub fn fits(&self, (length, width): (Length, Length)) -> bool {
        let (a, b) = (self.extent.width(), self.extent.height());
        (a <= length && b <= width) || (b <= length && a <= width)
    }
}

/// The counter of a leg.
#[derive(Clone, Debug)]
pub struct Counter {
    /// Its box, (u, v).
    pub extent: Extent,
    /// The whole outline with notches, and wells as holes, as if in one piece, (u, v) mm.
    pub region: Region,
    /// Its pieces, left to right.
    pub pieces: Vec<Piece>,
    /// Seams, as u.
    pub seams: Vec<Length>,
    /// Upstand pieces: (name, left u, right u, mass kg).
    pub splashes: Vec<(String, Length, Length, f64)>,
}

/// The substrate of a leg.
#[derive(Clone, Debug)]
pub struct Substrate {
    /// Its box, (u, v).
    pub extent: Extent,
    /// Its outline with notches and holes, (u, v) mm.
    pub region: Region,
    /// Joints, as u, over supports; empty when it is one piece.
    pub joints: Vec<Length>,
    /// Supports under it that screws may go into, as u of their centrelines and their span in v.
    pub screw_lines: Vec<(Length, Length, Length)>,
}
