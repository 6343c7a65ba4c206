//! What may be off.

use crate::units::Length;

/// What may be off.
#[derive(Clone, Copy, Debug)]
pub struct Tolerances {
    /// Of a cut edge, either way.
    pub cut: Length,
    /// Of placing the fitting in its cutout, either way.
    pub placing: Length,
    /// Published against measured before it is worth a word.
    pub published: Length,
    /// Least width of material left between two cutouts or beside an edge.
    pub least_strip: Length,
    /// Least cover of a flange in the worst case.
    pub least_cover: Length,
}
