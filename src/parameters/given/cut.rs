//! What a fitting has cut for it.

use super::{DepthFrom, HeightFrom, Measure};
use crate::units::Length;

/// A fitting's cutout.
#[derive(Clone, Debug)]
pub enum Cut {
    /// A counter cutout open to the front edge, continuing down the front board.
    Notch {
        /// Along the face.
        width: Measure,
        /// To the back edge.
        depth: Measure,
        /// Datum of the depth.
        depth_from: DepthFrom,
        /// To the bottom.
        drop: Measure,
        /// Datum of the drop.
        drop_from: HeightFrom,
        /// Radius of the back corners in plan.
        radius: Length,
    },
    /// A closed cutout in the counter.
    Well {
        /// Its shape and size.
        shape: WellShape,
        /// Which of its lines is placed in depth.
        line: DepthLine,
        /// How far back that line is.
        setback: Measure,
        /// Datum of the setback.
        setback_from: DepthFrom,
    },
    /// A cutout in a front, back or end board; also a vent or pass-through.
    Opening {
        /// Along the face.
        width: Measure,
        /// Its height; `None` reaches the floor.
        height: Option<Measure>,
        /// To its top edge.
        drop: Measure,
        /// Datum of the drop.
        drop_from: HeightFrom,
        /// Radius of its corners.
        radius: Length,
        /// What sort of opening.
        sort: OpeningSort,
    },
}

/// Shape of a well.
#[derive(Clone, Debug)]
pub enum WellShape {
    /// A rectangle with rounded corners.
    Rectangle {
        /// Along the face.
        width: Measure,
        /// Front to back.
        depth: Measure,
        /// Corner radius.
        radius: Length,
    },
    /// A circle.
    Circle {
        /// Its diameter.
        diameter: Measure,
    },
}

/// The line of a well that is placed in depth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DepthLine {
    /// Edge nearest the cook.
    Front,
    /// Centre.
    Centre,
    /// Edge farthest from the cook.
    Back,
}

/// What an opening is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OpeningSort {
    /// Takes a fitting.
    Fitting,
    /// Lets air through.
    Vent,
    /// Lets a pipe or cable through.
    PassThrough,
}
