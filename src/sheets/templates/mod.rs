//! Full-size templates: every part at 1:1, on tiles or on a roll.

mod piece;
pub mod pieces;

pub use piece::{Corner, Family, Line, LineKind, Template};
