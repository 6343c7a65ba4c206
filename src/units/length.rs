//! A length, exact for whole millimetres, inches and every 1/64 in.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// A signed length in whole nanometres: 1 mm, 1 in and 1/64 in (396 875 nm) are exact, and sums
/// never drift. The range is some nine million kilometres.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

/// Nanometres in an inch (exact by definition: 1 in = 25.4 mm, NIST SP 811).
const INCH: i64 = 25_400_000;
/// Nanometres in a millimetre.
const MILLIMETRE: i64 = 1_000_000;

impl Length {
    /// No length at all.
    pub const ZERO: Length = Length(0);

    /// From whole nanometres.
    pub const fn from_nm(nm: i64) -> Length {
        Length(nm)
    }

    /// From millimetres, rounded to the nearest nanometre. Not-a-number gives zero; the range is clamped.
    pub fn from_mm(mm: f64) -> Length {
        Length((mm * MILLIMETRE as f64).round() as i64)
    }

    /// From inches, rounded to the nearest nanometre.
    pub fn from_inches(inches: f64) -> Length {
        Length((inches * INCH as f64).round() as i64)
    }

    /// From a whole number of sixty-fourths of an inch, exactly.
    pub const fn from_sixty_fourths(count: i64) -> Length {
        Length(count * (INCH / 64))
    }

    /// In whole nanometres.
    pub const fn nm(self) -> i64 {
        self.0
    }

    /// In millimetres.
    pub fn mm(self) -> f64 {
        self.0 as f64 / MILLIMETRE as f64
    }

    /// In inches.
    pub fn inches(self) -> f64 {
        self.0 as f64 / INCH as f64
    }

    /// Half of it, towards minus infinity by at most half a nanometre.
    pub const fn half(self) -> Length {
        Length(self.0.div_euclid(2))
    }

    /// Without its sign.
    pub const fn abs(self) -> Length {
        Length(self.0.abs())
    }

    /// Multiplied by a plain number, rounded to the nearest nanometre.
    pub fn scaled(self, by: f64) -> Length {
        Length((self.0 as f64 * by).round() as i64)
    }

    /// The nearest whole multiple of `step` (halves away from zero); itself when the step is not positive.
    pub fn rounded_to(self, step: Length) -> Length {
        if step.0 <= 0 {
            return self;
        }
        let (sign, size) = (self.0.signum(), self.0.abs());
        Length(sign * ((size + step.0 / 2) / step.0) * step.0)
    }
}

impl Add for Length {
    type Output = Length;
    fn add(self, other: Length) -> Length {
        Length(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Length;
    fn sub(self, other: Length) -> Length {
        Length(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Length;
    fn neg(self) -> Length {
        Length(self.0.saturating_neg())
    }
}

impl Mul<i64> for Length {
    type Output = Length;
    fn mul(self, by: i64) -> Length {
        Length(self.0.saturating_mul(by))
    }
}

impl AddAssign for Length {
    fn add_assign(&mut self, other: Length) {
        *self = *self + other;
    }
}

impl SubAssign for Length {
    fn sub_assign(&mut self, other: Length) {
        *self = *self - other;
    }
}

impl Sum for Length {
    fn sum<I: Iterator<Item = Length>>(parts: I) -> Length {
        parts.fold(Length::ZERO, Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::Length;

    #[test]
    fn millimetres_inches_and_sixty_fourths_are_exact() {
        assert_eq!(Length::from_mm(25.4), Length::from_inches(1.0));
        assert_eq!(Length::from_sixty_fourths(64), Length::from_mm(25.4));
        assert_eq!(Length::from_inches(33.375).nm(), 847_725_000);
    }

    #[test]
    fn rounding_is_to_the_nearest_step_and_symmetric() {
        let sixteenth = Length::from_sixty_fourths(4);
        assert_eq!(Length::from_inches(0.97).rounded_to(sixteenth), Length::from_inches(1.0));
        assert_eq!(Length::from_inches(-0.97).rounded_to(sixteenth), Length::from_inches(-1.0));
        assert_eq!(Length::from_inches(1.03125).rounded_to(sixteenth), Length::from_inches(1.0625));
    }
}
