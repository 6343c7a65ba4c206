//! A run heavier than the floor that it stands on is said to carry.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Rule};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "floor-carries-the-run",
    severity: Severity::Warn,
    about: "Where the job says what the floor carries, no leg weighs more over its footprint.",
    why: "Decks and roof terraces are made for people, some 40 to 100 lb/ft2; a stone run with a stone top weighs as much and stands there \
          for good.",
    instead: "ask who answers for the deck or the roof, spread the feet on beams, or choose a lighter counter and finish",
    origin: Origin::CommonPractice,
    concerns: Concern::Materials,
    limits: &[],
    needs,
    check,
};

/// The weights of what is set in, where it matters.
fn needs(solved: &Solved) -> Vec<Lack> {
    if solved.around.carries.is_none() {
        return Vec::new();
    }
    let unknown =
        solved.shop.weights.unknown.iter().filter_map(|&(leg, index)| solved.legs.get(leg)?.fittings.get(index));
    unknown
        .map(|fitting| {
            let instead = "write what its sheet or its box says as `weight: \"135 lb\"`";
            Lack::of_practice("weight", fitting.subject(), fitting.place.as_ref(), instead)
                .for_what(super::super::named(fitting))
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(carries) = solved.around.carries else { return Vec::new() };
    let over = |(at, floor): (usize, &crate::solve::FloorLoad)| {
        let leg = solved.legs.get(at).filter(|_| floor.spread() > carries + 1e-9)?;
        let message = format!(
            "leg {} weighs {} and presses {} on its footprint; the floor carries {}",
            leg.id,
            solved.show.mass(floor.mass),
            solved.show.area_mass(floor.spread()),
            solved.show.area_mass(carries)
        );
        Some(RULE.finding(Severity::Warn, Subject::Leg(at), leg.place.as_ref(), message, RULE.instead))
    };
    solved.shop.weights.floors.iter().enumerate().filter_map(over).collect()
}
