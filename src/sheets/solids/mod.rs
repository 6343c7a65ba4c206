//! The run as solids in space, seen in a parallel projection with what is hidden left out.
//!
//! Faces are flat and are painted by the functions of the client elevation, through an affine map for each face and cut
//! to what is seen of it.

mod counters;
mod facet;
mod fittings;
mod hidden;
mod legs;
mod model;
mod paint;
mod projection;
mod section;
mod site;
mod space;
#[cfg(test)]
mod tests;

pub use facet::{Facet, Skin};
pub use hidden::{seen, turned};
pub use model::{Model, pose_of};
pub use paint::{Picture, paint};
pub use projection::{Projection, System};
pub use section::cut;

use crate::solve::Solved;

/// The faces of some legs with their counters and fittings. `square`: seen square on, in an elevation.
pub fn run<'s>(solved: &'s Solved, legs: &[usize], view: &Projection, square: bool) -> Model<'s> {
    let mut model = Model::new(solved);
    let flat = square.then(|| view.right());
    for &leg in legs {
        self::legs::leg(&mut model, leg);
        fittings::fittings(&mut model, leg, view.towards, flat);
    }
    counters::counters(&mut model, legs);
    model
}

/// Adds what the run stands on and against.
pub fn site(model: &mut Model<'_>, view: &Projection) {
    self::site::site(model, view);
    self::site::floor(model);
}
