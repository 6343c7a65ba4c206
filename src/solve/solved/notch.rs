//! A notch in the counter's outline that no fitting makes.

use super::Extent;
use crate::findings::Place;
use crate::solve::Face;
use crate::units::Length;

/// A notch out of an edge of a leg's counter, and of the substrate under it.
#[derive(Clone, Debug)]
pub struct CounterNotch {
    /// What it is, as `notch`, or the name of the post that stands in it.
    pub name: String,
    /// The edge that it is cut out of.
    pub edge: Face,
    /// Its box, (u, v), as far out as the counter's edge.
    pub extent: Extent,
    /// Radius of its inside corners.
    pub radius: Length,
    /// Clear space round the post that stands in it.
    pub clearance: Option<Length>,
    /// Where written.
    pub place: Option<Place>,
}
