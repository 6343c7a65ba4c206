//! Something set into the run, and where it stands.

use super::{Cut, Face, Needs};
use crate::findings::Place;
use crate::units::Length;

/// A dimension that may have been published, measured, or both.
#[derive(Clone, Debug)]
pub struct Measure {
    /// From the fitting's sheet.
    pub published: Option<Length>,
    /// From the fitting in hand; wins.
    pub measured: Option<Length>,
    /// Where written.
    pub place: Option<Place>,
}

impl Measure {
    /// The length to work with: measured if there is one, else published, else zero.
    pub fn value(&self) -> Length {
        self.measured.or(self.published).unwrap_or(Length::ZERO)
    }

    /// A published dimension that nobody has measured yet.
    pub fn published(length: Length) -> Measure {
        Measure { published: Some(length), measured: None, place: None }
    }
}

/// Something set into the run.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// Its id, as `grill`.
    pub id: String,
    /// What it is called, as `grill` or `access doors`.
    pub name: String,
    /// Its mark on drawings if the job chose one, as `B1`.
    pub mark: Option<String>,
    /// How it looks from the front.
    pub look: Look,
    /// Its leg, by index.
    pub leg: usize,
    /// Its module in that leg, by index.
    pub module: usize,
    /// The face that it is set into, or that its depth counts from.
    pub face: Face,
    /// Where it stands across.
    pub across: Across,
    /// Its cutout.
    pub cut: Cut,
    /// How far its flange laps over the cutout, per side.
    pub flange: Flange,
    /// Its body behind the face or under the counter.
    pub body: Option<Body>,
    /// Clear space it needs round and behind its body.
    pub clearance: Length,
    /// Mass, kg; `None` when not given.
    pub mass: Option<f64>,
    /// Heat input, W; `None` when not given or none.
    pub heat: Option<f64>,
    /// What its manual asks for.
    pub needs: Needs,
    /// Where written.
    pub place: Option<Place>,
}

/// How a fitting looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Look {
    /// A grill with a lid.
    Grill,
    /// A burner set in the counter.
    SideBurner,
    /// A sink.
    Sink,
    /// A hole for a faucet.
    Faucet,
    /// One door, hinged on the left (pull at the right) or the right.
    Door {
        /// The pull is at the right.
        pull_right: bool,
    },
    /// A pair of doors.
    Doors,
    /// A stack of drawers, this many.
    Drawers(u8),
    /// A pull-out for waste.
    WastePullOut,
    /// A refrigerator.
    Refrigerator,
    /// An access panel.
    Panel,
    /// A vent with louvres.
    Vent,
    /// A plain hole.
    Hole,
}

/// Where a fitting stands along its face.
#[derive(Clone, Debug)]
pub struct Across {
    /// Which of its own lines is placed.
    pub line: AcrossLine,
    /// From which datum.
    pub from: AcrossFrom,
    /// How far; positive is to the right of a left datum or centreline, and to the left of a right datum.
    pub distance: Measure,
}

/// The line of a fitting that is placed across.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AcrossLine {
    /// Left edge of the cutout.
    LeftEdge,
    /// Centreline.
    Centre,
    /// Right edge of the cutout.
    RightEdge,
}

/// What a place across is from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AcrossFrom {
    /// The module's centreline.
    ModuleCentre,
    /// The module's left edge.
    ModuleLeft,
    /// The module's right edge.
    ModuleRight,
    /// The finished left end.
    FinishedLeft,
    /// The finished right end.
    FinishedRight,
    /// The frame's left end.
    FrameLeft,
    /// The frame's right end.
    FrameRight,
    /// The board's left end.
    BoardLeft,
    /// The board's right end.
    BoardRight,
    /// Another fitting's centreline, by its index.
    Fitting(usize),
    /// Along an end face: from the finished face.
    FinishedFace,
}

/// A datum for depths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DepthFrom {
    /// The finished face.
    FinishedFace,
    /// The counter's front edge.
    CounterEdge,
    /// The outside of the board.
    BoardFace,
    /// The bare frame's front.
    FrameFace,
}

/// A datum for heights. From the tops distances run down; from the floor they run up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HeightFrom {
    /// The top of the counter.
    CounterTop,
    /// The top of the substrate.
    SubstrateTop,
    /// The top of the bare frame.
    FrameTop,
    /// The highest floor point.
    Floor,
}

/// Lap of a flange over the edges of its cutout, per side; zero where there is none.
#[derive(Clone, Copy, Debug, Default)]
pub struct Flange {
    /// Over the left edge.
    pub left: Length,
    /// Over the right edge.
    pub right: Length,
    /// Over the back edge (in a counter) or the top edge (in a board).
    pub far: Length,
    /// Over the front edge (in a counter) or the bottom edge (in a board).
    pub near: Length,
}

/// A fitting's body: what has to clear the frame.
#[derive(Clone, Debug)]
pub struct Body {
    /// Along the face.
    pub width: Measure,
    /// From the finished face back, or front to back for a well.
    pub depth: Measure,
    /// Up and down.
    pub height: Measure,
}
