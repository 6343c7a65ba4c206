//! Notches in the counter's outline that no fitting makes.

use super::Face;
use crate::findings::Place;
use crate::units::Length;

/// A notch out of an edge of a leg's counter, and of the substrate under it.
#[derive(Clone, Debug)]
pub struct Notch {
    /// The leg, by index.
    pub leg: usize,
    /// What it is, as `notch`, or the post's name.
    pub name: String,
    /// Its place and size.
    pub cut: NotchCut,
    /// Radius of its inside corners.
    pub radius: Length,
    /// Where written.
    pub place: Option<Place>,
}

/// Place and size of a notch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotchCut {
    /// Round a post of the survey, by index, out of the edge that it stands in.
    Post {
        /// The post.
        post: usize,
        /// Clear space round it.
        clearance: Length,
    },
    /// As measured.
    Edge {
        /// The edge that it is cut out of.
        edge: Face,
        /// Its side nearer to the finished left end (front, back), or to the finished face (ends).
        along: Length,
        /// Along the edge.
        width: Length,
        /// From the counter's edge.
        depth: Length,
    },
}
