//! Lengths and the other quantities a job is written in: reading them, and showing them.
//!
//! Everything that is a length is a [`Length`], never a bare number. There is one rule for
//! turning a length into text, in [`show`].

pub mod exact;
mod length;
pub mod quantity;
pub mod reading;
pub mod show;
mod symbols;

pub use exact::Exact;
pub use length::Length;
pub use quantity::{Dimension, Quantity};
pub use show::{INCH_MARK, Show, System};
pub use symbols::converted;
pub(crate) use symbols::symbols;
