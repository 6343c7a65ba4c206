//! Lengths and the other quantities a job is written in: reading them, and showing them.
//!
//! Everything that is a length is a [`Length`], never a bare number. There is one rule for
//! turning a length into text, in [`show`].

mod length;
pub mod show;

pub use length::Length;
pub use show::{INCH_MARK, Show, System};
