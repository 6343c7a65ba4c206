//! A box of exact lengths.

use crate::geometry::Outline;
use crate::units::Length;

/// A box of exact lengths in some plane: x0 <= x1, y0 <= y1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extent {
    /// Least first coordinate.
    pub x0: Length,
    /// Least second coordinate.
    pub y0: Length,
    /// Greatest first coordinate.
    pub x1: Length,
    /// Greatest second coordinate.
    pub y1: Length,
}

impl Extent {
    /// First side.
    pub fn width(&self) -> Length {
        self.x1 - self.x0
    }
    /// Second side.
    pub fn height(&self) -> Length {
        self.y1 - self.y0
    }
    /// Middle of the first coordinate.
    pub fn centre_x(&self) -> Length {
        (self.x0 + self.x1).half()
    }
    /// Middle of the second coordinate.
    pub fn centre_y(&self) -> Length {
        (self.y0 + self.y1).half()
    }
    /// As an outline, mm.
    pub fn outline(&self) -> Outline {
        Outline::from_corners(self.x0.mm(), self.y0.mm(), self.x1.mm(), self.y1.mm())
    }
    /// What of it lies within another box; they have to meet.
    pub fn held_to(&self, other: &Extent) -> Extent {
        Extent {
            x0: self.x0.max(other.x0),
            y0: self.y0.max(other.y0),
            x1: self.x1.min(other.x1),
            y1: self.y1.min(other.y1),
        }
    }
    /// Whether the insides share anything.
    pub fn meets(&self, other: &Extent) -> bool {
        self.x0 < other.x1 && other.x0 < self.x1 && self.y0 < other.y1 && other.y0 < self.y1
    }
}
