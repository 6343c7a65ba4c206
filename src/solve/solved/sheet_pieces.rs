//! Pieces cut from sheet.

use super::{Board, Extent, Plane};
use crate::geometry::Region;
use crate::solve::Face;
use crate::units::Length;

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
    /// Its box in the plane of its part, of the outside where its edges are bevelled.
    pub extent: Extent,
    /// Its outline in that plane, less its cutouts, mm.
    pub region: Region,
    /// The fittings whose cutouts touch it, by index in its leg.
    pub fittings: Vec<usize>,
    /// How far its left and right edges are cut off square, radians, as `Board::bevels`.
    pub bevels: [f64; 2],
    /// What has to be cut out of the sheet: its box, and what a bevel adds to it.
    pub blank: (Length, Length),
    /// What it may not do on the stock: be turned by a quarter.
    pub fixed_way: bool,
    /// Mass, kg; of the bare piece.
    pub mass: f64,
}

impl SheetPiece {
    /// The piece as a board on its face, under its own mark; `None` for a bottom or a piece of substrate.
    pub fn as_board(&self) -> Option<Board> {
        let SheetPart::Face(face) = self.part else { return None };
        Some(Board {
            name: self.mark.clone(),
            face,
            plane: Plane::of(face),
            extent: self.extent,
            region: self.region.clone(),
            fittings: self.fittings.clone(),
            module: self.module,
            bevels: self.bevels,
        })
    }
}

/// A joint between two pieces of one face, or of a leg's substrate.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SheetJoint {
    /// The leg, by index.
    pub leg: usize,
    /// What is joined.
    pub part: SheetPart,
    /// It runs along the part's first coordinate, at one height or depth; else it stands across it.
    pub level: bool,
    /// Where it is: the middle of the gap.
    pub at: Length,
    /// From here to here along it.
    pub span: (Length, Length),
    /// It is the edge between two modules, each with a post of its own.
    pub between_modules: bool,
    /// It lies on tubes as far as there is board.
    pub on_framing: bool,
    /// From it to the nearest cutout's corner that lies beside it.
    pub off_corner: Option<Length>,
}
