//! What is fixed to the faces of the frame.

use crate::units::Length;

/// Board and finish on the four faces of a leg.
#[derive(Clone, Debug)]
pub struct Faces {
    /// Towards the cook.
    pub front: Build,
    /// The left end.
    pub left: Build,
    /// The right end.
    pub right: Build,
    /// The back.
    pub back: Build,
}

/// What is fixed to the frame on one face.
#[derive(Clone, Debug)]
pub struct Build {
    /// Thickness of the board; zero for none.
    pub board: Length,
    /// As the job names it.
    pub board_name: String,
    /// What covers the board; `None` leaves it bare.
    pub finish: Option<Finish>,
    /// Control or movement joints in the finish, this far apart; `None` when the job names none.
    pub joints: Option<Length>,
    /// What the board carries, kg/m2, where its maker is quoted.
    pub carries: Option<f64>,
}

impl Build {
    /// Thickness of what covers the board.
    pub fn finish_thickness(&self) -> Length {
        self.finish.as_ref().map_or(Length::ZERO, Finish::total)
    }

    /// Board and finish together: how far the finished face stands proud of the bare frame.
    pub fn total(&self) -> Length {
        self.board + self.finish_thickness()
    }
}

/// What covers a board.
#[derive(Clone, Debug, PartialEq)]
pub struct Finish {
    /// Which kind.
    pub kind: FinishKind,
    /// As the job names it.
    pub name: String,
    /// Thickness of the outer layer.
    pub thickness: Length,
    /// Thickness of the bed it lies in; zero for none.
    pub bed: Length,
    /// The finished face may lie this much either way.
    pub spread: Length,
    /// Mass per area of finish and bed, kg/m2.
    pub mass: f64,
}

impl Finish {
    /// Outer layer and bed together.
    pub fn total(&self) -> Length {
        self.thickness + self.bed
    }
}

/// Kind of finish, with what its drawing needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FinishKind {
    /// Troweled skim coat.
    SkimCoat,
    /// Thin stone veneer in courses.
    Veneer,
    /// Tile on a grid.
    Tile {
        /// Width of a tile.
        width: Length,
        /// Height of a tile.
        height: Length,
        /// Joint between tiles.
        joint: Length,
        /// Half-width offset from row to row.
        staggered: bool,
    },
}

/// A face of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    /// Towards the cook.
    Front,
    /// The left end as the cook sees it.
    Left,
    /// The right end as the cook sees it.
    Right,
    /// Away from the cook.
    Back,
}
