//! From what was written to plain values: names, arithmetic, overrides, defaults.

pub mod given;

pub use given::Given;
