//! A fitting with everything located, and its cutouts.

use super::Extent;
use crate::findings::{Place, Subject};
use crate::geometry::Outline;
use crate::solve::{Face, Look, Measure, Needs, OpeningSort};
use crate::units::Length;

/// The plane that a cutout lies in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Plane {
    /// The counter, (u, v).
    Counter,
    /// The substrate, (u, v).
    Substrate,
    /// The front board, (u, z).
    FrontBoard,
    /// The back board, (u, z); u still runs as the cook sees it.
    BackBoard,
    /// The left end board, (v, z).
    LeftBoard,
    /// The right end board, (v, z).
    RightBoard,
}

impl Plane {
    /// The word of the `data-plane` attribute.
    pub const fn word(self) -> &'static str {
        match self {
            Plane::Counter => "counter",
            Plane::Substrate => "substrate",
            Plane::FrontBoard => "front-board",
            Plane::BackBoard => "back-board",
            Plane::LeftBoard => "left-board",
            Plane::RightBoard => "right-board",
        }
    }

    /// The board plane of a face.
    pub const fn of(face: Face) -> Plane {
        match face {
            Face::Front => Plane::FrontBoard,
            Face::Back => Plane::BackBoard,
            Face::Left => Plane::LeftBoard,
            Face::Right => Plane::RightBoard,
        }
    }
}

/// One hole in one sheet.
#[derive(Clone, Debug)]
pub struct Cutout {
    /// The plane that it is cut in.
    pub plane: Plane,
    /// Its box in that plane. A notch's front is the sheet's front edge; a notch's top in a front board is
    /// the frame top; an opening to the floor ends at the board's bottom edge.
    pub extent: Extent,
    /// Its outline in that plane, arcs and all, mm. For a notch it is closed across its open side.
    pub outline: Outline,
    /// Its corner radius (back corners for a notch); zero when sharp.
    pub radius: Length,
    /// It is open at the sheet's edge: the front for a counter notch, the top for its front board, the bottom for a
    /// bay that reaches the floor.
    pub open: bool,
    /// It is round.
    pub round: bool,
}

/// Which kind of fitting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FittingKind {
    /// Hung through the front.
    Notch,
    /// Set in the counter.
    Well,
    /// Set in a board.
    Opening(OpeningSort),
}

/// A fitting with everything located.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// Where it stands in the run: its leg, and its place in that leg's list.
    pub at: (usize, usize),
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Its mark, as `B1`; unique in the run.
    pub mark: String,
    /// Kind.
    pub kind: FittingKind,
    /// Look.
    pub look: Look,
    /// Its module, by index.
    pub module: usize,
    /// The face it is set into or counts from.
    pub face: Face,
    /// Its cutouts: a notch has three (counter, substrate, front board).
    pub cutouts: Vec<Cutout>,
    /// Left edge along its face in leg coordinates (u; v for an end face).
    pub left: Length,
    /// Right edge.
    pub right: Length,
    /// Bottom of a notch or of an opening, on z (`None` for wells).
    pub bottom: Option<Length>,
    /// Top of an opening, on z (`None` for wells and notches).
    pub top: Option<Length>,
    /// It reaches the floor.
    pub to_floor: bool,
    /// Back edge of a notch, front and back edges of a well, on v.
    pub back: Option<Length>,
    /// Front edge of a well, on v.
    pub front: Option<Length>,
    /// Lap of the flange: left, right, far (back or top), near (front or bottom).
    pub flange: FlangeLap,
    /// Its body in (u, v, z), where known.
    pub body: Option<BodyBox>,
    /// Clear space it needs.
    pub clearance: Length,
    /// Mass, kg.
    pub mass: Option<f64>,
    /// Heat input, W.
    pub heat: Option<f64>,
    /// What its manual asks for.
    pub needs: Needs,
    /// Every dimension of its sheet by name, as `width`, `depth`, `drop`, for the measure-twice sheet.
    pub measures: Vec<(&'static str, Measure)>,
    /// How it was given: datum that the depth or setback was given from, in words.
    pub given_from: String,
    /// Where written.
    pub place: Option<Place>,
}

impl Fitting {
    /// Its centreline along its face.
    pub fn centre(&self) -> Length {
        (self.left + self.right).half()
    }
    /// Width of the cutout.
    pub fn width(&self) -> Length {
        self.right - self.left
    }
    /// As what a finding is about.
    pub fn subject(&self) -> Subject {
        Subject::Fitting(self.at.0, self.at.1)
    }
    /// Its cutout in a plane, if it has one there.
    pub fn cutout(&self, plane: Plane) -> Option<&Cutout> {
        self.cutouts.iter().find(|cutout| cutout.plane == plane)
    }
}

/// Laps of a flange. Left and right go with [`Fitting::left`] and [`Fitting::right`]: the smaller coordinate
/// is left, whichever way the viewer of the face sees it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct FlangeLap {
    /// Left.
    pub left: Length,
    /// Right.
    pub right: Length,
    /// Back (counter) or top (board).
    pub far: Length,
    /// Front (counter) or bottom (board).
    pub near: Length,
}

/// A box in leg coordinates.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BodyBox {
    /// Along u.
    pub u: (Length, Length),
    /// Along v.
    pub v: (Length, Length),
    /// Along z.
    pub z: (Length, Length),
}
