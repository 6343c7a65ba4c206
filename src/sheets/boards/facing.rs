//! How a board lies on the trestles: its outside up, as someone sees it who looks at that face of the run.

use crate::geometry::{Outline, Region};
use crate::solve::{Board, Datum, Face, Leg};
use crate::units::Length;

/// A board with its own coordinates: x to the right from its left edge as seen, y up from its bottom edge.
#[derive(Clone, Copy, Debug)]
pub struct Facing<'s> {
    /// The leg.
    pub leg: &'s Leg,
    /// The board.
    pub board: &'s Board,
}

impl Facing<'_> {
    /// Whether its plane's first coordinate runs to the left as seen: behind the run, and at its left end.
    pub fn flips(&self) -> bool {
        matches!(self.board.face, Face::Back | Face::Left)
    }

    /// Its x of a plane's first coordinate (u, or v on an end).
    pub fn x(&self, along: Length) -> Length {
        if self.flips() { self.board.extent.x1 - along } else { along - self.board.extent.x0 }
    }

    /// Its y of a height.
    pub fn y(&self, z: Length) -> Length {
        z - self.board.extent.y0
    }

    /// The finished face that the run's own dimensions start from, along this board.
    pub fn datum(&self) -> Datum {
        match self.board.face {
            Face::Front => Datum::FinishedLeftEnd,
            Face::Back => Datum::FinishedRightEnd,
            Face::Left | Face::Right => Datum::FinishedFace,
        }
    }

    /// x of that datum.
    pub fn datum_x(&self) -> Length {
        self.x(self.leg.datums.at(self.datum()))
    }

    /// The datum lies at the board's right as seen, so that tapes run to the left.
    pub fn is_read_leftwards(&self) -> bool {
        self.datum_x() > self.board.extent.width().half()
    }

    /// x of the board's own edge on the datum's side.
    pub fn edge_x(&self) -> Length {
        if self.is_read_leftwards() { self.board.extent.width() } else { Length::ZERO }
    }

    /// A region of the plane, as seen.
    pub fn region(&self, region: &Region) -> Region {
        Region {
            outer: self.outline(&region.outer),
            holes: region.holes.iter().map(|hole| self.outline(hole)).collect(),
        }
    }

    /// An outline of the plane, as seen.
    pub fn outline(&self, outline: &Outline) -> Outline {
        let (x0, x1, y0) = (self.board.extent.x0.mm(), self.board.extent.x1.mm(), self.board.extent.y0.mm());
        let flips = self.flips();
        outline.mapped(|x, y| (if flips { x1 - x } else { x - x0 }, y - y0), flips)
    }

    /// What the edges at the left and the right as seen are towards, for the title.
    pub fn seen_from(&self) -> &'static str {
        match self.board.face {
            Face::Front => "as seen from the front",
            Face::Back => "as seen from behind",
            Face::Left => "as seen from the left, the front at its right",
            Face::Right => "as seen from the right, the front at its left",
        }
    }
}
