//! The base trim, piece by piece.

use crate::geometry::Region;
use crate::solve::Face;
use crate::units::Length;

/// The base trim of a run.
#[derive(Clone, Debug, Default)]
pub struct BaseTrim {
    /// Its pieces, leg by leg, face by face, left to right.
    pub pieces: Vec<TrimPiece>,
}

/// One length of base trim.
#[derive(Clone, Debug)]
pub struct TrimPiece {
    /// Its mark, unique in the run.
    pub mark: String,
    /// Its leg, by index.
    pub leg: usize,
    /// The face that it runs along.
    pub face: Face,
    /// From here along the face (u, or v on an end).
    pub from: Length,
    /// To here.
    pub to: Length,
    /// Its outline, scribed and notched, in (u or v, z), mm.
    pub region: Region,
    /// Fasteners along it.
    pub fasteners: Vec<Length>,
    /// Mass, kg.
    pub mass: f64,
}
