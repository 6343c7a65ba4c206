//! `faceline` reads one text model of an outdoor kitchen, solves it, and draws it.
//!
//! The map of the house, an arrow pointing only up this list:
//! [`units`], [`geometry`], [`findings`], [`model`], [`parameters`], [`solve`], [`rules`],
//! [`drawing`], [`sheets`], [`write`], [`cli`].

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
