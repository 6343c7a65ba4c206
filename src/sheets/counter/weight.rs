//! How many people lift a piece.

use crate::solve::Weights;
use crate::units::Length;

/// Who lifts a piece of a mass, kg, and a longest side.
pub fn lift(weights: &Weights, mass: f64, long: Length) -> String {
    Weights::crew(weights.carriers(mass, long))
}

#[cfg(test)]
mod tests {
    use super::lift;
    use crate::solve::Weights;
    use crate::units::Length;

    #[test]
    fn a_piece_is_lifted_by_one_a_crew_or_a_machine() {
        let weights = Weights { two_lift: 46.0, ..Weights::default() };
        let short = |mass| lift(&weights, mass, Length::from_mm(1800.0));
        assert_eq!(short(9.0), "1 person");
        assert_eq!(short(23.1), "1 person", "weights are known no better than to 0.25 kg");
        assert_eq!(short(23.5), "2 people");
        assert_eq!(short(138.0), "6 people");
        assert_eq!(short(139.0), "lifting gear");
        // A strip 9 ft long breaks in one pair of hands, however light; 6 ft are 1828.8 mm.
        assert_eq!(lift(&weights, 9.0, Length::from_mm(1828.8)), "1 person");
        assert_eq!(lift(&weights, 9.0, Length::from_inches(108.75)), "2 people");
        assert_eq!(lift(&weights, 30.0, Length::from_inches(108.75)), "2 people");
    }
}
