//! The datums of a leg: every face that a person might hold a tape to, and where it lies.

use crate::units::Length;

/// A face, edge or level that a length may be given from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Datum {
    /// Along u: the outside of the left end's finish.
    FinishedLeftEnd,
    /// Along u: the outside of the left end's board.
    BoardLeftEnd,
    /// Along u: the bare frame's left end.
    FrameLeftEnd,
    /// Along u: the bare frame's right end.
    FrameRightEnd,
    /// Along u: the outside of the right end's board.
    BoardRightEnd,
    /// Along u: the outside of the right end's finish.
    FinishedRightEnd,
    /// Along u: the counter's left edge.
    CounterLeftEdge,
    /// Along u: the counter's right edge.
    CounterRightEdge,
    /// Along v: the counter's front edge.
    CounterEdge,
    /// Along v: the outside of the front's finish.
    FinishedFace,
    /// Along v: the outside of the front's board.
    BoardFace,
    /// Along v: the bare frame's front.
    FrameFace,
    /// Along v: the bare frame's back.
    FrameBack,
    /// Along v: the outside of the back's board.
    BoardBack,
    /// Along v: the outside of the back's finish.
    FinishedBack,
    /// Along v: the counter's back edge.
    CounterBack,
    /// Along z: the highest floor point under the feet.
    Floor,
    /// Along z: the underside of the bare frame.
    FrameBottom,
    /// Along z: the top of the bare frame.
    FrameTop,
    /// Along z: the top of the substrate.
    SubstrateTop,
    /// Along z: the top of the counter.
    CounterTop,
}

/// Which way a datum's lengths run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// Along the face, to the right.
    U,
    /// Depth, away from the cook.
    V,
    /// Up.
    Z,
}

impl Datum {
    /// The axis it lies across.
    pub const fn axis(self) -> Axis {
        use Datum::*;
        match self {
            FinishedLeftEnd | BoardLeftEnd | FrameLeftEnd | FrameRightEnd | BoardRightEnd | FinishedRightEnd
            | CounterLeftEdge | CounterRightEdge => Axis::U,
            CounterEdge | FinishedFace | BoardFace | FrameFace | FrameBack | BoardBack | FinishedBack | CounterBack => {
                Axis::V
            }
            Floor | FrameBottom | FrameTop | SubstrateTop | CounterTop => Axis::Z,
        }
    }

    /// As drawings name it.
    pub const fn words(self) -> &'static str {
        use Datum::*;
        match self {
            FinishedLeftEnd => "finished left end",
            BoardLeftEnd => "board left end",
            FrameLeftEnd => "frame left end",
            FrameRightEnd => "frame right end",
            BoardRightEnd => "board right end",
            FinishedRightEnd => "finished right end",
            CounterLeftEdge => "counter left edge",
            CounterRightEdge => "counter right edge",
            CounterEdge => "counter edge",
            FinishedFace => "finished face",
            BoardFace => "board face",
            FrameFace => "bare frame",
            FrameBack => "frame back",
            BoardBack => "board back",
            FinishedBack => "finished back",
            CounterBack => "counter back edge",
            Floor => "floor, high point",
            FrameBottom => "frame bottom",
            FrameTop => "frame top",
            SubstrateTop => "substrate top",
            CounterTop => "counter top",
        }
    }

    /// Whether it is the outside of a finish: drawn in the accent, with a flag.
    pub const fn is_finished(self) -> bool {
        matches!(self, Datum::FinishedFace | Datum::FinishedLeftEnd | Datum::FinishedRightEnd | Datum::FinishedBack)
    }
}

/// Where each datum of a leg lies on its axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Datums {
    /// The board's left end.
    pub board_left: Length,
    /// The frame's left end.
    pub frame_left: Length,
    /// The frame's right end.
    pub frame_right: Length,
    /// The board's right end.
    pub board_right: Length,
    /// The finished right end.
    pub finished_right: Length,
    /// The counter's left edge.
    pub counter_left: Length,
    /// The counter's right edge.
    pub counter_right: Length,
    /// The counter's front edge (negative by the overhang).
    pub counter_front: Length,
    /// The board's face.
    pub board_face: Length,
    /// The frame's front.
    pub frame_face: Length,
    /// The frame's back.
    pub frame_back: Length,
    /// The back board's outside.
    pub board_back: Length,
    /// The finished back.
    pub finished_back: Length,
    /// The counter's back edge.
    pub counter_back: Length,
    /// The frame's underside.
    pub frame_bottom: Length,
    /// The frame's top.
    pub frame_top: Length,
    /// The substrate's top.
    pub substrate_top: Length,
    /// The counter's top.
    pub counter_top: Length,
}

impl Datums {
    /// Where a datum lies on its own axis, in leg coordinates. The finished left end, the finished face and
    /// the floor are the zeros.
    pub const fn at(&self, datum: Datum) -> Length {
        use Datum::*;
        match datum {
            FinishedLeftEnd | FinishedFace | Floor => Length::ZERO,
            BoardLeftEnd => self.board_left,
            FrameLeftEnd => self.frame_left,
            FrameRightEnd => self.frame_right,
            BoardRightEnd => self.board_right,
            FinishedRightEnd => self.finished_right,
            CounterLeftEdge => self.counter_left,
            CounterRightEdge => self.counter_right,
            CounterEdge => self.counter_front,
            BoardFace => self.board_face,
            FrameFace => self.frame_face,
            FrameBack => self.frame_back,
            BoardBack => self.board_back,
            FinishedBack => self.finished_back,
            CounterBack => self.counter_back,
            FrameBottom => self.frame_bottom,
            FrameTop => self.frame_top,
            SubstrateTop => self.substrate_top,
            CounterTop => self.counter_top,
        }
    }

    /// How far a coordinate lies from a datum, positive towards +u, +v, +z.
    pub fn from(&self, datum: Datum, coordinate: Length) -> Length {
        coordinate - self.at(datum)
    }

    /// The same length measured from another datum of the same axis; `None` across axes.
    pub fn converted(&self, length: Length, from: Datum, to: Datum) -> Option<Length> {
        (from.axis() == to.axis()).then(|| length + self.at(from) - self.at(to))
    }

    /// How far a level lies below the top of the counter, or another level: a drop, positive downwards.
    pub fn drop(&self, from: Datum, z: Length) -> Length {
        self.at(from) - z
    }
}
