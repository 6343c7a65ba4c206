//! How many people lift a piece.

use crate::solve::Weights;

/// More people than this don't get round a piece: lifting gear.
const CREW: u32 = 6;

/// Who lifts a mass, kg.
pub fn lift(weights: &Weights, mass: f64) -> String {
    match weights.people(mass) {
        0 | 1 => "1 person".to_owned(),
        people if people > CREW => "lifting gear".to_owned(),
        people => format!("{people} people"),
    }
}

#[cfg(test)]
mod tests {
    use super::lift;
    use crate::solve::Weights;

    #[test]
    fn a_piece_is_lifted_by_one_a_crew_or_a_machine() {
        let weights = Weights { two_lift: 46.0, ..Weights::default() };
        assert_eq!(lift(&weights, 9.0), "1 person");
        assert_eq!(lift(&weights, 23.1), "1 person", "weights are known no better than to 0.25 kg");
        assert_eq!(lift(&weights, 23.5), "2 people");
        assert_eq!(lift(&weights, 138.0), "6 people");
        assert_eq!(lift(&weights, 139.0), "lifting gear");
    }
}
