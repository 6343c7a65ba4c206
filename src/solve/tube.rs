//! The frame's own tube as a beam.

use super::beams::Shape;
use crate::parameters::given::{Alloy, Frame, FrameMaterial};

/// Wood, Pa: 1 400 ksi, from memory.
const WOOD: f64 = 9.65e9;

/// How the frame's tube resists bending: elasticity by second moment, N m2. Wood is solid, whatever its wall.
pub fn stiffness(frame: &Frame) -> f64 {
    let elasticity = match frame.material {
        FrameMaterial::Steel => Alloy::steel_a36().elasticity,
        FrameMaterial::Aluminium => Alloy::aluminium_6063_t5().elasticity,
        FrameMaterial::Wood => WOOD,
    };
    let (side, wall) = (frame.tube.mm() / 1e3, frame.wall.mm() / 1e3);
    let hollow = frame.material != FrameMaterial::Wood && wall > 0.0 && wall * 2.0 < side;
    let shape = if hollow {
        Shape::Tube { width: side, height: side, wall }
    } else {
        Shape::Rectangle { width: side, height: side }
    };
    elasticity * shape.section().inertia
}
