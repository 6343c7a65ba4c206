//! Weights in the job's units, and how many people lift one.

use crate::units::{Show, System};

/// Pounds in a kilogram.
const POUNDS: f64 = 2.204_622_621_8;
/// What one person is taken to lift, kg (50 lb): common practice, no source.
const A_PERSON: f64 = 23.0;
/// More people than this don't get round a piece: lifting gear.
const CREW: u32 = 6;

/// A weight: `236 lb`, `107 kg`, or both.
pub fn words(show: Show, kilograms: f64) -> String {
    let (pounds, kilos) = (format!("{:.0} lb", kilograms * POUNDS), format!("{kilograms:.0} kg"));
    match show.system {
        System::Inches => pounds,
        System::Millimetres => kilos,
        System::Both => format!("{pounds} [{kilos}]"),
    }
}

/// What one person is taken to lift, in the job's units.
pub fn a_person(show: Show) -> &'static str {
    match show.system {
        System::Inches => "50 lb",
        System::Millimetres => "23 kg",
        System::Both => "50 lb [23 kg]",
    }
}

/// Who lifts a piece.
pub fn lift(kilograms: f64) -> String {
    match (kilograms / A_PERSON).ceil().max(1.0) {
        n if n > f64::from(CREW) => "lifting gear".to_owned(),
        n if n <= 1.0 => "1 person".to_owned(),
        n => format!("{n:.0} people"),
    }
}
