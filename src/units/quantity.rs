//! A value together with its dimension, as expressions work on it.

use super::Length;

/// What a value measures, as powers of the base quantities.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct Dimension {
    /// Power of length.
    pub length: i8,
    /// Power of mass.
    pub mass: i8,
    /// Power of time.
    pub time: i8,
    /// Power of plane angle, kept apart so that degrees don't pass for a plain number.
    pub turn: i8,
}

impl Dimension {
    /// A plain number; falls are plain numbers too (a length per length).
    pub const NUMBER: Dimension = Dimension::of(0, 0, 0, 0);
    /// Length.
    pub const LENGTH: Dimension = Dimension::of(1, 0, 0, 0);
    /// Area.
    pub const AREA: Dimension = Dimension::of(2, 0, 0, 0);
    /// Volume.
    pub const VOLUME: Dimension = Dimension::of(3, 0, 0, 0);
    /// Mass.
    pub const MASS: Dimension = Dimension::of(0, 1, 0, 0);
    /// Mass per volume.
    pub const DENSITY: Dimension = Dimension::of(-3, 1, 0, 0);
    /// Mass per area.
    pub const AREA_MASS: Dimension = Dimension::of(-2, 1, 0, 0);
    /// Area that a volume covers.
    pub const COVERAGE: Dimension = Dimension::of(-1, 0, 0, 0);
    /// Moment of a force.
    pub const MOMENT: Dimension = Dimension::of(2, 1, -2, 0);
    /// Heat per time.
    pub const POWER: Dimension = Dimension::of(2, 1, -3, 0);
    /// Pressure.
    pub const PRESSURE: Dimension = Dimension::of(-1, 1, -2, 0);
    /// Time.
    pub const TIME: Dimension = Dimension::of(0, 0, 1, 0);
    /// Plane angle.
    pub const ANGLE: Dimension = Dimension::of(0, 0, 0, 1);

    /// From its powers.
    const fn of(length: i8, mass: i8, time: i8, turn: i8) -> Dimension {
        Dimension { length, mass, time, turn }
    }

    /// The dimension of a product; `None` when a power grows out of range.
    pub fn times(self, other: Dimension) -> Option<Dimension> {
        Some(Dimension {
            length: self.length.checked_add(other.length)?,
            mass: self.mass.checked_add(other.mass)?,
            time: self.time.checked_add(other.time)?,
            turn: self.turn.checked_add(other.turn)?,
        })
    }

    /// The dimension of a quotient; `None` when a power grows out of range.
    pub fn over(self, other: Dimension) -> Option<Dimension> {
        Some(Dimension {
            length: self.length.checked_sub(other.length)?,
            mass: self.mass.checked_sub(other.mass)?,
            time: self.time.checked_sub(other.time)?,
            turn: self.turn.checked_sub(other.turn)?,
        })
    }

    /// As a person calls it: `a length`, `an area`, `a plain number`.
    pub fn words(self) -> &'static str {
        match self {
            Dimension::NUMBER => "a plain number",
            Dimension::LENGTH => "a length",
            Dimension::AREA => "an area",
            Dimension::VOLUME => "a volume",
            Dimension::MASS => "a weight",
            Dimension::DENSITY => "a weight per volume",
            Dimension::AREA_MASS => "a weight per area",
            Dimension::COVERAGE => "an area per volume",
            Dimension::MOMENT => "a moment",
            Dimension::POWER => "a heat input",
            Dimension::PRESSURE => "a pressure",
            Dimension::TIME => "a time",
            Dimension::ANGLE => "an angle",
            _ => "a mixture of units",
        }
    }

    /// How a value of this dimension is written, for messages.
    pub fn example(self) -> &'static str {
        match self {
            Dimension::NUMBER => "2 or 1.5",
            Dimension::LENGTH => "20 3/4 in or 527 mm",
            Dimension::AREA => "40 in2 or 260 cm2",
            Dimension::MASS => "120 lb or 54 kg",
            Dimension::DENSITY => "150 lb/ft3 or 2400 kg/m3",
            Dimension::AREA_MASS => "13 lb/ft2 or 60 kg/m2",
            Dimension::VOLUME => "0.45 ft3 or 12.7 litres",
            Dimension::COVERAGE => "350 ft2/gal or 8.6 m2/litre",
            Dimension::MOMENT => "250 lbf in or 28 N m",
            Dimension::POWER => "60000 Btu/h or 17.6 kW",
            Dimension::PRESSURE => "7 in wc or 1.7 kPa",
            Dimension::TIME => "24 hours or 7 days",
            Dimension::ANGLE => "45 deg",
            _ => "20 3/4 in",
        }
    }
}

/// A value with its dimension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quantity {
    /// The value in nanometres, kilograms, seconds and radians, each to its power: sums of lengths
    /// stay whole numbers and so exact.
    pub value: f64,
    /// What it measures.
    pub dimension: Dimension,
}

/// Nanometres in a metre.
const METRE: f64 = 1e9;

impl Quantity {
    /// A plain number.
    pub const fn number(value: f64) -> Quantity {
        Quantity { value, dimension: Dimension::NUMBER }
    }

    /// A length.
    pub fn length(length: Length) -> Quantity {
        Quantity { value: length.nm() as f64, dimension: Dimension::LENGTH }
    }

    /// As a length, rounded to the nearest nanometre; `None` when it isn't one.
    pub fn as_length(self) -> Option<Length> {
        (self.dimension == Dimension::LENGTH).then(|| Length::from_nm(self.value.round() as i64))
    }

    /// In metres, kilograms, seconds and radians (so W, Pa, kg/m3, ...), to twelve significant
    /// figures, which is what the conversion to and from nanometres keeps.
    pub fn si(self) -> f64 {
        twelve_figures(self.value / METRE.powi(i32::from(self.dimension.length)))
    }
}

/// Rounded to twelve significant figures.
fn twelve_figures(value: f64) -> f64 {
    format!("{value:.11e}").parse().unwrap_or(value)
}

#[cfg(test)]
mod tests {
    use super::{Dimension, Quantity};

    #[test]
    fn products_and_quotients_have_the_dimension_that_they_must() {
        assert_eq!(Dimension::LENGTH.times(Dimension::LENGTH), Some(Dimension::AREA));
        assert_eq!(Dimension::MASS.over(Dimension::VOLUME), Some(Dimension::DENSITY));
        assert_eq!(Dimension::LENGTH.over(Dimension::LENGTH), Some(Dimension::NUMBER));
    }

    #[test]
    fn si_values_come_back_as_written() {
        let density = Quantity { value: 2250.0 * 1e-27, dimension: Dimension::DENSITY };
        assert_eq!(density.si(), 2250.0);
    }
}
