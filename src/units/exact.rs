//! Figures without rounding, for counts that are rounded up: four bags that are full to the brim are never five.

use super::{Length, Quantity};
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Signed, ToPrimitive, Zero};
use std::iter::Sum;
use std::ops::{Add, Div, Mul, Sub};

/// A fraction of whole numbers, in nanometres to whatever power, or a plain number.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Exact(BigRational);

/// Nanometres in a metre, a foot, an inch; cubic nanometres in a gallon of 231 cubic inches.
const METRE: i64 = 1_000_000_000;
const FOOT: i64 = 304_800_000;
const INCH: i64 = 25_400_000;
const GALLON: i64 = 231;

impl Exact {
    /// Nothing.
    pub fn zero() -> Exact {
        Exact(BigRational::zero())
    }

    /// A whole number.
    pub fn whole(count: i128) -> Exact {
        Exact(BigRational::from_integer(BigInt::from(count)))
    }

    /// A fraction; a denominator of zero gives zero.
    pub fn ratio(above: i128, below: i128) -> Exact {
        if below == 0 { Exact::zero() } else { Exact(BigRational::new(BigInt::from(above), BigInt::from(below))) }
    }

    /// A length, nm.
    pub fn length(length: Length) -> Exact {
        Exact::whole(i128::from(length.nm()))
    }

    /// A decimal as it is written, as `0.45` or `-12`, without an exponent.
    pub fn decimal(text: &str) -> Option<Exact> {
        let (sign, body) = text.strip_prefix('-').map_or((1, text), |rest| (-1, rest));
        let (whole, part) = body.split_once('.').unwrap_or((body, ""));
        let figures = format!("{whole}{part}");
        if figures.is_empty() || !figures.bytes().all(|byte| byte.is_ascii_digit()) {
            return None;
        }
        let above: BigInt = figures.parse().ok()?;
        let below = BigInt::from(10).pow(u32::try_from(part.len()).ok()?);
        Some(Exact(BigRational::new(above * sign, below)))
    }

    /// A figure with its unit as it is written, as `0.45 ft3`, `20 3/4 in` or `10 %`; `None` for anything that takes
    /// arithmetic, and for units of mass, heat and pressure, of which nothing is counted.
    pub fn read(text: &str) -> Option<Exact> {
        let text = text.trim();
        let end =
            text.find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | '/' | ' ' | '-'))).unwrap_or(text.len());
        let (figures, unit) = (text.get(..end)?.trim(), text.get(end..)?.trim());
        Some(mixed(figures)? * scale(unit)?)
    }

    /// A quantity to the twelve figures that [`Quantity::si`] keeps, in nanometres to its power.
    pub fn of(quantity: Quantity) -> Exact {
        let text = format!("{:.11e}", quantity.si());
        let (figures, power) = text.split_once('e').unwrap_or((&text, "0"));
        let power: i32 = power.parse().unwrap_or(0);
        let figures = Exact::decimal(figures).unwrap_or_else(Exact::zero);
        figures * tens(power) * tens(9 * i32::from(quantity.dimension.length))
    }

    /// Rounded up to a whole number, not less than none.
    pub fn up(&self) -> u64 {
        if self.0.is_negative() { 0 } else { self.0.ceil().to_integer().to_u64().unwrap_or(u64::MAX) }
    }

    /// The nearest float.
    pub fn to_f64(&self) -> f64 {
        self.0.to_f64().unwrap_or(0.0)
    }

    /// In a unit of the given worth, as a float: nanometres to a power over a unit's own.
    pub fn per(&self, unit: &Exact) -> f64 {
        (self.clone() / unit.clone()).to_f64()
    }

    /// Whether it is more than nothing.
    pub fn is_positive(&self) -> bool {
        self.0.is_positive()
    }

    /// Itself, or nothing where it is less.
    pub fn not_less_than_nothing(self) -> Exact {
        if self.0.is_negative() { Exact::zero() } else { self }
    }
}

/// A power of ten.
fn tens(power: i32) -> Exact {
    let ten = BigInt::from(10).pow(power.unsigned_abs());
    Exact(if power < 0 { BigRational::new(BigInt::one(), ten) } else { BigRational::from_integer(ten) })
}

/// `3`, `0.45`, `3/8`, `20 3/4` or `20-3/4`.
fn mixed(figures: &str) -> Option<Exact> {
    let fraction = |text: &str| {
        let (above, below) = text.split_once('/')?;
        let (above, below) = (Exact::decimal(above.trim())?, Exact::decimal(below.trim())?);
        below.is_positive().then(|| above / below)
    };
    if !figures.contains('/') {
        return Exact::decimal(figures);
    }
    match figures.split_once([' ', '-']) {
        Some((whole, part)) => Some(Exact::decimal(whole)? + fraction(part.trim())?),
        None => fraction(figures),
    }
}

/// What a unit is worth in nanometres to its power.
pub fn scale(unit: &str) -> Option<Exact> {
    let of = |base: i64, power: i32| Exact(BigRational::from_integer(BigInt::from(base).pow(power.unsigned_abs())));
    let gallon = || of(INCH, 3) * Exact::whole(i128::from(GALLON));
    Some(match unit {
        "" => Exact::whole(1),
        "%" => Exact::ratio(1, 100),
        "in" | "inch" | "inches" | "\"" | "\u{2033}" => of(INCH, 1),
        "ft" | "foot" | "feet" | "'" | "\u{2032}" => of(FOOT, 1),
        "mm" => of(METRE / 1000, 1),
        "cm" => of(METRE / 100, 1),
        "m" => of(METRE, 1),
        "in2" => of(INCH, 2),
        "ft2" => of(FOOT, 2),
        "mm2" => of(METRE / 1000, 2),
        "cm2" => of(METRE / 100, 2),
        "m2" => of(METRE, 2),
        "in3" => of(INCH, 3),
        "ft3" => of(FOOT, 3),
        "yd3" => of(FOOT * 3, 3),
        "m3" => of(METRE, 3),
        "litre" | "litres" => of(METRE / 10, 3),
        "ml" => of(METRE / 100, 3),
        "gal" => gallon(),
        "qt" => gallon() / Exact::whole(4),
        "fl oz" => gallon() / Exact::whole(128),
        "ft2/gal" => of(FOOT, 2) / gallon(),
        "m2/litre" => of(METRE, 2) / of(METRE / 10, 3),
        _ => return None,
    })
}

impl Add for Exact {
    type Output = Exact;
    fn add(self, other: Exact) -> Exact {
        Exact(self.0 + other.0)
    }
}

impl Sub for Exact {
    type Output = Exact;
    fn sub(self, other: Exact) -> Exact {
        Exact(self.0 - other.0)
    }
}

impl Mul for Exact {
    type Output = Exact;
    fn mul(self, other: Exact) -> Exact {
        Exact(self.0 * other.0)
    }
}

/// Division; by nothing it gives nothing.
impl Div for Exact {
    type Output = Exact;
    fn div(self, other: Exact) -> Exact {
        if other.0.is_zero() { Exact::zero() } else { Exact(self.0 / other.0) }
    }
}

impl Sum for Exact {
    fn sum<I: Iterator<Item = Exact>>(parts: I) -> Exact {
        parts.fold(Exact::zero(), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::{Exact, scale};
    use crate::units::reading;
    use crate::units::symbols::UNITS;

    #[test]
    fn a_full_bag_is_one_bag_and_a_hair_more_is_two() {
        let bag = Exact::read("0.45 ft3").unwrap();
        let four = Exact::whole(4) * bag.clone();
        assert_eq!((four.clone() / bag.clone()).up(), 4);
        assert_eq!(((four.clone() + Exact::whole(1)) / bag.clone()).up(), 5);
        assert_eq!(((four - Exact::whole(1)) / bag).up(), 4);
    }

    #[test]
    fn what_is_read_here_is_what_is_read_there() {
        for text in
            ["0.45 ft3", "20 3/4 in", "20-3/4 in", "3/8 in", "10 %", "350 ft2/gal", "12.7 litres", "18.3 in3", "100"]
        {
            let (exact, read) = (Exact::read(text).unwrap(), reading::quantity(text).unwrap());
            assert!((exact.to_f64() / read.value - 1.0).abs() < 1e-14, "{text}");
            assert!((Exact::of(read).to_f64() / read.value - 1.0).abs() < 1e-11, "{text}");
        }
        for text in ["2 * 3 in", "3 lb", "in", "1/0 in", "5 ft 3 in", "1 2 in"] {
            assert_eq!(Exact::read(text), None, "{text}");
        }
    }

    #[test]
    fn units_are_worth_the_same_as_in_the_table() {
        for unit in UNITS {
            if let Some(exact) = scale(unit.symbol) {
                assert!((exact.to_f64() / unit.scale - 1.0).abs() < 1e-15, "{}", unit.symbol);
            }
        }
    }
}
