//! The turn from one leg to the next, exact at right angles.

use crate::units::Length;
use std::f64::consts::FRAC_PI_2;

/// Angles this near to a right one are right ones, radians: a thousandth of a second of arc, far less than any tape or
/// protractor tells.
const RIGHT: f64 = 5e-9;

/// A turn of +u, clockwise positive (towards the cook).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turn {
    /// Radians.
    pub angle: f64,
    /// Its sine; exact for right angles.
    pub sin: f64,
    /// Its cosine; exact for right angles.
    pub cos: f64,
}

impl Turn {
    /// A turn of this many radians.
    pub fn of(angle: f64) -> Turn {
        if (angle.abs() - FRAC_PI_2).abs() < RIGHT {
            return Turn { angle: FRAC_PI_2 * angle.signum(), sin: angle.signum(), cos: 0.0 };
        }
        let (sin, cos) = angle.sin_cos();
        Turn { angle, sin, cos }
    }

    /// Whether the cook stands in the corner.
    pub fn is_inside(&self) -> bool {
        self.sin > 0.0
    }

    /// How far beyond the line where the finished faces meet, along its own u away from itself, a leg's line at depth
    /// `own` meets the other leg's upright plane at depth `other`.
    pub fn beyond(&self, own: Length, other: Length) -> Length {
        if self.cos == 0.0 {
            return if self.sin > 0.0 { other } else { -other };
        }
        Length::from_mm((other.mm() - own.mm() * self.cos) / self.sin)
    }

    /// How far beyond that line a leg's line at depth `own` meets the plane that halves the corner.
    pub fn halving(&self, own: Length) -> Length {
        if self.cos == 0.0 {
            return if self.sin > 0.0 { own } else { -own };
        }
        Length::from_mm(own.mm() * (self.angle / 2.0).tan())
    }
}

#[cfg(test)]
mod tests {
    use super::Turn;
    use crate::units::Length;

    #[test]
    fn at_a_right_angle_beyond_is_the_other_depth_exactly() {
        let (own, other) = (Length::from_nm(123), Length::from_nm(987_654_321));
        assert_eq!(Turn::of(std::f64::consts::FRAC_PI_2).beyond(own, other), other);
        assert_eq!(Turn::of((-90.0_f64).to_radians()).beyond(own, other), -other);
    }

    #[test]
    fn the_halving_plane_passes_through_points_of_equal_depth() {
        for degrees in [30.0_f64, 45.0, 80.0, 91.4, -45.0, -100.0] {
            let turn = Turn::of(degrees.to_radians());
            let deep = Length::from_inches(30.0);
            assert!((turn.beyond(deep, deep) - turn.halving(deep)).abs() < Length::from_nm(10), "{degrees}");
        }
    }
}
