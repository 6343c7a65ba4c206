//! How much gas a pipe carries: the low-pressure equation of the fuel-gas codes.
//!
//! Q = 2313 · D^2.623 · (ΔH / (Cr · L))^0.541, Q in ft3/h, D in inches, L in feet, ΔH in inches of water.
//! Source: 2018 IFGC, appendix A.4 (low pressure, under 1.5 psi); Cr from IFGC table 402.4 (IRC table G2413.4). The other
//! printing of the same equation, with 19.17, gives 0.6 % more. This one lies within 0.4 % of the printed tables 402.4(3)
//! and (4), and of the rows of 402.4(28) up to 60 ft. The rows of 402.4(28) labelled 80 and 100 ft carry 6 % and 11 % more
//! than the code's own equation: propane past 60 ft is computed here and never taken from them.

use crate::parameters::given::{Bends, PipeSize};

/// A gas as the equation knows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gas {
    /// Natural gas of specific gravity 0.60.
    Natural,
    /// Undiluted propane of specific gravity 1.50.
    Propane,
}

impl Gas {
    /// Cr of the equation.
    pub const fn cr(self) -> f64 {
        match self {
            Gas::Natural => 0.6094,
            Gas::Propane => 1.2462,
        }
    }

    /// Specific gravity that Cr is made for.
    pub const fn gravity(self) -> f64 {
        match self {
            Gas::Natural => 0.60,
            Gas::Propane => 1.50,
        }
    }
}

/// The pressure from which the equation no longer holds, Pa (1.5 psi).
pub const HIGHEST: f64 = 1.5 * 6_894.757;

const FACTOR: f64 = 2313.0;
const OF_DIAMETER: f64 = 2.623;
const OF_DROP: f64 = 0.541;

/// What a pipe carries over a length, ft, with a drop, inches of water: ft3/h.
pub fn capacity(gas: Gas, size: PipeSize, length: f64, drop: f64) -> f64 {
    if length <= 0.0 || drop <= 0.0 {
        return if drop <= 0.0 { 0.0 } else { f64::INFINITY };
    }
    FACTOR * size.inside().powf(OF_DIAMETER) * (drop / (gas.cr() * length)).powf(OF_DROP)
}

/// The drop over a length, ft, at a flow, ft3/h: inches of water.
pub fn drop(gas: Gas, size: PipeSize, length: f64, flow: f64) -> f64 {
    gas.cr() * length * (flow / (FACTOR * size.inside().powf(OF_DIAMETER))).powf(1.0 / OF_DROP)
}

/// The length of straight pipe, ft, that resists as much as these fittings: n · D / 12 each, n of 30 for a 90 degree elbow, 14
/// for 45 degrees, 60 for a tee that the gas turns in, 67 for a 180 degree bend. Source: IRC/IFGC table A.2.2 (n for 45
/// degrees taken back from its 0.73 ft). The code adds them from four in a segment on; here every one is added.
pub fn equivalent(size: PipeSize, bends: &Bends) -> f64 {
    let n = 30.0 * f64::from(bends.elbows)
        + 14.0 * f64::from(bends.elbows_45)
        + 60.0 * f64::from(bends.tees)
        + 67.0 * f64::from(bends.bends_180);
    n * size.inside() / 12.0
}
