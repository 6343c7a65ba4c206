//! An outline with holes.

use super::Outline;

/// An outer outline less its holes.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Region {
    /// The outside, counter-clockwise (y up).
    pub outer: Outline,
    /// The holes, each counter-clockwise on its own.
    pub holes: Vec<Outline>,
}

impl Region {
    /// An outline without holes.
    pub fn solid(outer: Outline) -> Region {
        Region { outer, holes: Vec::new() }
    }

    /// Area of the material, mm2.
    pub fn area(&self) -> f64 {
        self.outer.area().abs() - self.holes.iter().map(|hole| hole.area().abs()).sum::<f64>()
    }

    /// Centroid of the material, mm.
    pub fn centroid(&self) -> (f64, f64) {
        let sign = |outline: &Outline| outline.area().signum();
        let (mut mx, mut my) = self.outer.moments();
        (mx, my) = (mx * sign(&self.outer), my * sign(&self.outer));
        for hole in &self.holes {
            let (hx, hy) = hole.moments();
            (mx, my) = (mx - hx * sign(hole), my - hy * sign(hole));
        }
        (mx / self.area(), my / self.area())
    }

    /// All outlines, the outer one first.
    pub fn outlines(&self) -> impl Iterator<Item = &Outline> {
        std::iter::once(&self.outer).chain(&self.holes)
    }
}
