//! Forces, moments and stresses as sheets have them.

use crate::units::{Show, System};

/// Newtons in a pound-force (SP 811).
const POUND_FORCE: f64 = 4.448_222;
/// Newton metres in a pound-force inch (SP 811).
const POUND_INCH: f64 = 0.112_984_8;
/// Pascals in a psi (SP 811).
const PSI: f64 = 6_894.757;

/// A force given in newtons, to the pound or ten newtons.
pub fn force(show: Show, newtons: f64) -> String {
    match show.system {
        System::Inches | System::Both => format!("{:.0} lb", newtons / POUND_FORCE),
        System::Millimetres => format!("{:.0} N", (newtons / 10.0).round() * 10.0),
    }
}

/// A moment given in newton metres.
pub fn moment(show: Show, newton_metres: f64) -> String {
    match show.system {
        System::Inches | System::Both => format!("{:.0} lb in", newton_metres / POUND_INCH),
        System::Millimetres => format!("{newton_metres:.0} N m"),
    }
}

/// A stress given in pascals, by its figures; the heading has [`stress_unit`].
pub fn stress(show: Show, pascals: f64) -> String {
    match show.system {
        System::Inches | System::Both => format!("{:.1}", pascals / PSI / 1e3),
        System::Millimetres => format!("{:.0}", pascals / 1e6),
    }
}

/// Unit of stresses.
pub fn stress_unit(show: Show) -> &'static str {
    match show.system {
        System::Inches | System::Both => "ksi",
        System::Millimetres => "MPa",
    }
}

/// A deflection, too small for a tape's fractions: thousandths of an inch or hundredths of a millimetre.
pub fn deflection(show: Show, length: crate::units::Length) -> String {
    match show.system {
        System::Inches | System::Both => format!("{:.3}", length.inches()),
        System::Millimetres => format!("{:.2}", length.mm()),
    }
}

/// Unit of deflections.
pub fn deflection_unit(show: Show) -> &'static str {
    match show.system {
        System::Inches | System::Both => "in",
        System::Millimetres => "mm",
    }
}
