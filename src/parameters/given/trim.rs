//! The base trim.

use crate::units::Length;

/// Base trim.
#[derive(Clone, Debug)]
pub struct Trim {
    /// As the job names it.
    pub name: String,
    /// Its top over the highest floor point.
    pub top: Length,
    /// Thickness.
    pub thickness: Length,
}
