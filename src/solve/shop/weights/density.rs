//! Densities of what a run is made of, kg/m3.

use crate::parameters::given::{Figure, FrameMaterial, Given};

/// Densities, kg/m3.
pub struct Densities {
    /// Of the frame's tube.
    pub frame: f64,
    /// Of wood.
    pub wood: f64,
    /// Of the boards on the faces.
    pub board: f64,
    /// Of the substrate.
    pub substrate: f64,
    /// Of the counter.
    pub counter: f64,
}

impl Densities {
    /// Of a job.
    pub fn of(given: &Given) -> Densities {
        Densities {
            frame: given.materials.si(frame_figure(given)),
            wood: given.materials.si(Figure::Wood),
            board: given.materials.si(Figure::Board),
            substrate: given.materials.si(substrate_figure(given)),
            counter: given.counter.density,
        }
    }
}

/// Which density the frame goes by.
pub fn frame_figure(given: &Given) -> Figure {
    match given.frame.material {
        FrameMaterial::Steel => Figure::Steel,
        FrameMaterial::Aluminium => Figure::Aluminium,
        FrameMaterial::Wood => Figure::Wood,
    }
}

/// Which density the substrate goes by: as its name says, else by whether it burns.
pub fn substrate_figure(given: &Given) -> Figure {
    let name = given.substrate.name.to_lowercase();
    if name.contains("steel") {
        Figure::Steel
    } else if name.contains("alumin") {
        Figure::Aluminium
    } else if given.substrate.combustible == Some(false) {
        Figure::Board
    } else {
        Figure::Plywood
    }
}
