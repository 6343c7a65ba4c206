//! Dimensions: single, running from a datum, and in chains.
//!
//! The end of a dimension line says what it means: an open circle is where the tape starts, an arrow is where it is
//! read; two arrows are a plain size. Only dimensions that start at a finished face are in the accent.

mod chain;
mod drop;
mod linear;
mod running;

pub use chain::{Chain, Part};
pub use drop::Drop;
pub use linear::{Across, Dimension, Number};
pub use running::{Running, Side, Stop, apart, spread};

/// First dimension line off the outline, mm.
pub const FIRST: f64 = 10.0;
/// Between dimension lines, mm.
pub const NEXT: f64 = 7.0;
/// White between an object and its witness line, mm.
pub const GAP: f64 = 1.5;
/// Witness line past the dimension line, mm.
pub const PAST: f64 = 2.0;
/// Number above its line, mm.
pub const ABOVE: f64 = 1.25;
/// Radius of the open circle where a tape starts, mm.
pub const ORIGIN: f64 = 0.9;
