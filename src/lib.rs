//! `faceline` reads one text model of an outdoor kitchen, solves it, and draws it.
//!
//! The map of the house, an arrow pointing only up this list:
//! [`units`], [`geometry`], [`findings`], [`model`], [`parameters`], [`solve`], [`rules`],
//! [`drawing`], [`sheets`], [`write`], [`cli`].

// Nothing that a user types may end in a panic. A test that panics has failed: that is what these are for there.
#![cfg_attr(not(test), warn(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::todo))]

pub mod cli;
pub mod drawing;
pub mod findings;
pub mod geometry;
pub mod model;
pub mod parameters;
pub mod rules;
pub mod sheets;
pub mod solve;
pub mod units;
pub mod write;
