//! Statics of straight beams: reactions, shear, moment, deflection, stress.
//!
//! Any consistent units go: what is said of metres, newtons and pascals holds as well of inches, pounds-force and psi. Plain
//! numbers, no crate of units: everything here is a handful of formulas whose inputs are converted once, where they are
//! called (`solve/shop/supports`). Euler-Bernoulli, deflection by shear neglected; forces and deflections count downwards.

mod beam;
mod curve;
mod section;

pub use beam::{Beam, Held, Load};
pub use curve::Bent;
pub use section::{Section, Shape};
