//! The units a job may be written in, and what each is worth.
//!
//! Factors are those of NIST Special Publication 811 (2008), appendix B: the inch, foot, pound and
//! ounce are exact by definition; the Btu is the International Table one; the inch of water is the
//! conventional one.

use super::quantity::Dimension;

/// A unit as it may be written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Unit {
    /// How it is written.
    pub(crate) symbol: &'static str,
    /// What it measures.
    pub(crate) dimension: Dimension,
    /// Its worth in nanometres, kilograms, seconds and radians.
    pub(crate) scale: f64,
}

const INCH: f64 = 25.4e6;
const FOOT: f64 = 304.8e6;
const POUND: f64 = 0.453_592_37;
/// The liquid gallon is 231 cubic inches, exactly (SP 811, appendix B).
const GALLON: f64 = 231.0 * INCH * INCH * INCH;
/// Standard gravity, nm/s2 (SP 811: 9.806 65 m/s2, exactly).
const GRAVITY: f64 = 9.806_65e9;
/// Watts, in kg nm2 / s3.
const WATT: f64 = 1e18;
/// Pascals, in kg / (nm s2).
const PASCAL: f64 = 1e-9;
/// 1 Btu(IT)/h in W (SP 811: 2.930 711 E-01; 1055.055 852 62 J over 3600 s).
const BTU_PER_HOUR: f64 = 1_055.055_852_62 / 3_600.0;
/// 1 psi in Pa (SP 811: 6.894 757 E+03).
const PSI: f64 = 6_894.757;
/// Conventional inch of water in Pa (SP 811: 2.490 889 E+02).
const INCH_OF_WATER: f64 = 249.088_9;

const fn unit(symbol: &'static str, dimension: Dimension, scale: f64) -> Unit {
    Unit { symbol, dimension, scale }
}

/// Every unit, by the way it is written.
pub(crate) const UNITS: &[Unit] = &[
    unit("in", Dimension::LENGTH, INCH),
    unit("inch", Dimension::LENGTH, INCH),
    unit("inches", Dimension::LENGTH, INCH),
    unit("\"", Dimension::LENGTH, INCH),
    unit("\u{2033}", Dimension::LENGTH, INCH),
    unit("ft", Dimension::LENGTH, FOOT),
    unit("foot", Dimension::LENGTH, FOOT),
    unit("feet", Dimension::LENGTH, FOOT),
    unit("'", Dimension::LENGTH, FOOT),
    unit("\u{2032}", Dimension::LENGTH, FOOT),
    unit("mm", Dimension::LENGTH, 1e6),
    unit("cm", Dimension::LENGTH, 1e7),
    unit("m", Dimension::LENGTH, 1e9),
    unit("lb", Dimension::MASS, POUND),
    unit("oz", Dimension::MASS, POUND / 16.0),
    unit("kg", Dimension::MASS, 1.0),
    unit("g", Dimension::MASS, 1e-3),
    unit("lb/ft3", Dimension::DENSITY, POUND / (FOOT * FOOT * FOOT)),
    unit("kg/m3", Dimension::DENSITY, 1e-27),
    unit("lb/ft2", Dimension::AREA_MASS, POUND / (FOOT * FOOT)),
    unit("kg/m2", Dimension::AREA_MASS, 1e-18),
    unit("in2", Dimension::AREA, INCH * INCH),
    unit("ft2", Dimension::AREA, FOOT * FOOT),
    unit("mm2", Dimension::AREA, 1e12),
    unit("cm2", Dimension::AREA, 1e14),
    unit("m2", Dimension::AREA, 1e18),
    unit("ft3", Dimension::VOLUME, FOOT * FOOT * FOOT),
    unit("in3", Dimension::VOLUME, INCH * INCH * INCH),
    unit("yd3", Dimension::VOLUME, 27.0 * FOOT * FOOT * FOOT),
    unit("m3", Dimension::VOLUME, 1e27),
    unit("litre", Dimension::VOLUME, 1e24),
    unit("litres", Dimension::VOLUME, 1e24),
    unit("ml", Dimension::VOLUME, 1e21),
    unit("gal", Dimension::VOLUME, GALLON),
    unit("qt", Dimension::VOLUME, GALLON / 4.0),
    unit("fl oz", Dimension::VOLUME, GALLON / 128.0),
    // What a volume covers: an area for each of it.
    unit("ft2/gal", Dimension::COVERAGE, FOOT * FOOT / GALLON),
    unit("m2/litre", Dimension::COVERAGE, 1e-6),
    unit("lbf in", Dimension::MOMENT, POUND * GRAVITY * INCH),
    unit("lbf ft", Dimension::MOMENT, POUND * GRAVITY * FOOT),
    unit("N m", Dimension::MOMENT, 1e18),
    unit("Btu/h", Dimension::POWER, BTU_PER_HOUR * WATT),
    unit("kW", Dimension::POWER, 1e3 * WATT),
    unit("W", Dimension::POWER, WATT),
    unit("in wc", Dimension::PRESSURE, INCH_OF_WATER * PASCAL),
    unit("in w.c.", Dimension::PRESSURE, INCH_OF_WATER * PASCAL),
    unit("psi", Dimension::PRESSURE, PSI * PASCAL),
    unit("ksi", Dimension::PRESSURE, 1e3 * PSI * PASCAL),
    unit("MPa", Dimension::PRESSURE, 1e6 * PASCAL),
    unit("GPa", Dimension::PRESSURE, 1e9 * PASCAL),
    unit("kPa", Dimension::PRESSURE, 1e3 * PASCAL),
    unit("mbar", Dimension::PRESSURE, 1e2 * PASCAL),
    unit("Pa", Dimension::PRESSURE, PASCAL),
    // Heat per volume has the dimension of a pressure.
    unit("Btu/ft3", Dimension::PRESSURE, BTU_PER_HOUR * 3_600.0 * 1e18 / (FOOT * FOOT * FOOT)),
    unit("MJ/m3", Dimension::PRESSURE, 1e6 * PASCAL),
    unit("hour", Dimension::TIME, 3_600.0),
    unit("hours", Dimension::TIME, 3_600.0),
    unit("day", Dimension::TIME, 86_400.0),
    unit("days", Dimension::TIME, 86_400.0),
    unit("deg", Dimension::ANGLE, std::f64::consts::PI / 180.0),
    unit("\u{b0}", Dimension::ANGLE, std::f64::consts::PI / 180.0),
    unit("%", Dimension::NUMBER, 0.01),
];

/// A figure in one unit told in another; `None` when one of them is no unit, or they measure different things.
pub fn converted(value: f64, from: &str, to: &str) -> Option<f64> {
    let find = |symbol: &str| UNITS.iter().find(|unit| unit.symbol == symbol);
    let (from, to) = (find(from)?, find(to)?);
    (from.dimension == to.dimension).then(|| value * from.scale / to.scale)
}

/// The longest unit that `text` begins with, standing as a whole word.
pub(crate) fn at_start(text: &str) -> Option<Unit> {
    UNITS
        .iter()
        .filter(|unit| {
            text.strip_prefix(unit.symbol).is_some_and(|rest| {
                let wordlike = unit.symbol.ends_with(|c: char| c.is_alphanumeric());
                !(wordlike && rest.starts_with(|c: char| c.is_alphanumeric() || c == '_'))
            })
        })
        .max_by_key(|unit| unit.symbol.len())
        .copied()
}

/// The units' symbols that a misspelt one may have meant.
pub(crate) fn symbols() -> impl Iterator<Item = &'static str> {
    UNITS.iter().map(|unit| unit.symbol)
}
