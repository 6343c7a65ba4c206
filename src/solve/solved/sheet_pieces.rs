//! Pieces cut from sheet.

use super::Extent;
use crate::geometry::Region;
use crate::solve::Face;

/// What a sheet piece is part of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SheetPart {
    /// A face of a leg, in that face's plane: (u, z) or (v, z).
    Face(Face),
    /// The bottom of a module, (u, v).
    Bottom,
    /// The substrate, (u, v).
    Substrate,
}

/// One piece cut from sheet.
#[derive(Clone, Debug)]
pub struct SheetPiece {
    /// Its mark, unique in the run and the same on every sheet, list and label.
    pub mark: String,
    /// What it is part of.
    pub part: SheetPart,
    /// Its leg, by index.
    pub leg: usize,
    /// Its module, by index, where it is one.
    pub module: Option<usize>,
    /// The sheet material, by index in `Cutting::materials`.
    pub material: usize,
    /// Its box in the plane of its part.
    pub extent: Extent,
    /// Its outline in that plane, less its cutouts, mm.
    pub region: Region,
    /// How far its left and right edges are cut off square, radians, as `Board::bevels`.
    pub bevels: [f64; 2],
    /// What it may not do on the stock: be turned by a quarter.
    pub fixed_way: bool,
    /// Mass, kg; of the bare piece.
    pub mass: f64,
}
