//! What is the same on all legs: sheet, frame, counter.

use crate::findings::Place;
use crate::solve::{CounterMaterial, CounterNeeds, FrameMaterial, Splash};
use crate::units::Length;

/// A sheet material.
#[derive(Clone, Debug)]
pub struct SheetFacts {
    /// Its name.
    pub name: String,
    /// Its thickness.
    pub thickness: Length,
    /// Whether it burns, where that is known.
    pub combustible: Option<bool>,
    /// Where written.
    pub place: Option<Place>,
}

/// The bare frame.
#[derive(Clone, Copy, Debug)]
pub struct FrameFacts {
    /// Outside of the tube.
    pub tube: Length,
    /// Wall of the tube.
    pub wall: Length,
    /// Clear space between a board's opening and the frame, each side.
    pub rough_gap: Length,
    /// Shortest setting of a foot.
    pub foot_shortest: Length,
    /// Longest setting of a foot.
    pub foot_longest: Length,
    /// What one foot carries, kg.
    pub foot_rating: f64,
    /// What it is made of.
    pub material: FrameMaterial,
    /// How its tube resists bending: elasticity by second moment, N m2.
    pub stiffness: f64,
}

/// The counter's material and edge.
#[derive(Clone, Debug)]
pub struct CounterFacts {
    /// Family.
    pub material: CounterMaterial,
    /// As the job names it.
    pub name: String,
    /// Thickness.
    pub thickness: Length,
    /// Mass per volume, kg/m3.
    pub density: f64,
    /// Joint to walls.
    pub wall_joint: Length,
    /// Joint between pieces.
    pub seam_joint: Length,
    /// Radius of free corners in plan.
    pub corner_radius: Length,
    /// Radius of the arris.
    pub arris: Length,
    /// Drip groove, width and depth; zero for none.
    pub drip: Length,
    /// Upstand.
    pub splash: Option<Splash>,
    /// Tolerance on the outline.
    pub tolerance: Length,
    /// Slab, support, lifting.
    pub needs: CounterNeeds,
    /// Where written.
    pub place: Option<Place>,
}
