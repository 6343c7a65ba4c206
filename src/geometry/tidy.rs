//! Outlines without edges of no length, and circles as circles.

use super::outline::arc_of;
use super::{Outline, Region, Vertex};

/// Corners nearer than this are one, mm.
const SAME: f64 = 1e-7;

impl Outline {
    /// The same outline without corners that fall together; what goes round one centre becomes two half circles.
    pub fn tidied(&self) -> Outline {
        let apart = |a: &Vertex, b: &Vertex| (a.x - b.x).hypot(a.y - b.y) > SAME;
        let vertices: Vec<Vertex> = self.edges().filter(|(a, b)| apart(a, b)).map(|(a, _)| a).collect();
        let tidy = Outline { vertices };
        let arcs: Option<Vec<_>> = tidy.edges().map(|(a, b)| arc_of(a, b)).collect();
        let Some((first, rest)) = arcs.as_deref().and_then(<[_]>::split_first) else { return tidy };
        let one = rest.iter().all(|arc| {
            (arc.center - first.center).hypot() < 1e-6
                && (arc.radii.x - first.radii.x).abs() < 1e-6
                && arc.sweep_angle * first.sweep_angle > 0.0
        });
        let sweep: f64 = arcs.iter().flatten().map(|arc| arc.sweep_angle).sum();
        if !one || (sweep.abs() - std::f64::consts::TAU).abs() > 1e-9 {
            return tidy;
        }
        let circle = Outline::from_circle(first.center.x, first.center.y, first.radii.x);
        if sweep > 0.0 { circle } else { circle.reversed() }
    }
}

impl Region {
    /// The same region, each outline tidied.
    pub fn tidied(&self) -> Region {
        Region { outer: self.outer.tidied(), holes: self.holes.iter().map(Outline::tidied).collect() }
    }
}

#[cfg(test)]
mod tests {
    use super::Outline;

    #[test]
    fn a_square_that_is_rounded_to_a_circle_is_one() {
        let round = Outline::from_corners(10.0, 20.0, 50.0, 60.0).rounded(|_| 20.0).tidied();
        assert_eq!(round.vertices.len(), 2);
        assert!((round.area() - std::f64::consts::PI * 400.0).abs() < 1e-6);
        assert_eq!(round.bounds(), Outline::from_circle(30.0, 40.0, 20.0).bounds());
    }

    #[test]
    fn a_slot_keeps_its_ends_and_loses_what_has_no_length() {
        let slot = Outline::from_corners(0.0, 0.0, 100.0, 30.0).rounded(|_| 15.0);
        let tidy = slot.tidied();
        assert_eq!((slot.vertices.len(), tidy.vertices.len()), (8, 6));
        assert!((slot.area() - tidy.area()).abs() < 1e-9);
    }
}
