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

#[cfg(test)]
mod tests {
    use super::{lift, words};
    use crate::units::{Show, System};

    #[test]
    fn a_piece_is_lifted_by_one_a_crew_or_a_machine() {
        assert_eq!(lift(9.0), "1 person");
        assert_eq!(lift(23.1), "2 people");
        assert_eq!(lift(138.0), "6 people");
        assert_eq!(lift(139.0), "lifting gear");
    }

    #[test]
    fn weights_follow_the_units_of_the_job() {
        assert_eq!(words(Show::new(System::Inches), 107.0), "236 lb");
        assert_eq!(words(Show::new(System::Millimetres), 107.0), "107 kg");
        assert_eq!(words(Show::new(System::Both), 107.0), "236 lb [107 kg]");
    }
}
