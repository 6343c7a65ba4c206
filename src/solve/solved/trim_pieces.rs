//! The base trim, piece by piece.

use crate::geometry::Region;
use crate::solve::Face;
use crate::units::Length;

/// The base trim of a run.
#[derive(Clone, Debug, Default)]
pub struct BaseTrim {
    /// Its pieces, leg by leg, face by face (front, left, right, back), each face by rising coordinate.
    pub pieces: Vec<TrimPiece>,
}

/// One length of base trim. Its places are along its face: u, or v on an end.
#[derive(Clone, Debug)]
pub struct TrimPiece {
    /// Its mark, unique in the run.
    pub mark: String,
    /// Its leg, by index.
    pub leg: usize,
    /// The face that it runs along.
    pub face: Face,
    /// From here, on the side that is seen.
    pub from: Length,
    /// To here.
    pub to: Length,
    /// Its top over z = 0.
    pub top: Length,
    /// The side that is seen, scribed and notched, (u or v, z), mm.
    pub region: Region,
    /// Its height at places along it, by rising place, both ends among them.
    pub stations: Vec<TrimStation>,
    /// What is cut out of its top.
    pub notches: Vec<TrimNotch>,
    /// How it ends at its lower and its higher coordinate.
    pub ends: [TrimEnd; 2],
    /// Fasteners along it.
    pub fasteners: Vec<Length>,
    /// Height of the fasteners over z = 0.
    pub fastener_z: Length,
    /// They go into tube behind the board.
    pub into_frame: bool,
    /// Mass, kg.
    pub mass: f64,
}

impl TrimPiece {
    /// Its length on the side that is seen, which is its longest.
    pub fn length(&self) -> Length {
        self.to - self.from
    }

    /// Its greatest height: the width of stock that it is cut from.
    pub fn width(&self) -> Length {
        self.stations.iter().map(|station| station.height).max().unwrap_or_default()
    }

    /// Its least height anywhere, over notches too; and where.
    pub fn narrowest(&self) -> (Length, Length) {
        let whole = self.stations.iter().map(|station| (station.height, station.at));
        let over = self.notches.iter().map(|notch| (notch.left_over, notch.from));
        whole.chain(over).min().unwrap_or_default()
    }
}

/// Height of the trim at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TrimStation {
    /// Where.
    pub at: Length,
    /// From its top to its scribed bottom.
    pub height: Length,
}

/// A cut into the top of the trim.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TrimNotch {
    /// The fitting that it clears, by index in its leg.
    pub fitting: usize,
    /// From here.
    pub from: Length,
    /// To here.
    pub to: Length,
    /// Its bottom over z = 0.
    pub bottom: Length,
    /// What is left under it at its lowest place.
    pub left_over: Length,
}

/// How a piece of trim ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum TrimEnd {
    /// Cut square: flush with the board, or at a bay.
    Square,
    /// Cut square a gap off a wall, pier or post.
    AtBound,
    /// Cut square against the back of another piece at a corner.
    Butt,
    /// Cut square; the piece round the corner butts against its back.
    Past,
    /// Cut to this angle from square at an outside corner, radians; the side that is seen is the longer one.
    Mitre(f64),
    /// Meets the next length of the same face; whether tube lies behind the joint.
    Joint(bool),
}
