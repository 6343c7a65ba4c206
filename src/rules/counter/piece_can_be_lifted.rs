//! A piece too heavy for those who carry it.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Solved, Weights};

/// So many lift a piece where the job doesn't say, common practice.
const CREW: u32 = 4;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "piece-can-be-lifted",
    severity: Severity::Note,
    about: "Each piece of the counter can be lifted by as many as there are: by four where the job doesn't say.",
    why: "A slab that slips takes feet with it, and a notched one breaks when one end is set down first.",
    instead: "bring a lift or a cart, or set a seam; where more than four lift it, write how many as `lifters`; carry it on edge, notches clamped",
    origin: Origin::FromMemory,
    concerns: Concern::Counter,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let weights = &solved.shop.weights;
    let people = solved.counter.needs.lifters.map_or(CREW, u32::from).max(1);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for piece in &leg.counter.pieces {
            let wanted = weights.carriers(piece.mass, piece.extent.width().max(piece.extent.height()));
            if wanted > people {
                let mass = |mass| solved.show.mass(mass);
                let message = format!(
                    "{} weighs {}: {} for each of {people}; {} is the most, so it wants {}",
                    piece.name,
                    mass(piece.mass),
                    mass(piece.mass / f64::from(people)),
                    mass(weights.each()),
                    Weights::crew(wanted)
                );
                let place = solved.counter.place.as_ref();
                findings.push(RULE.finding(Severity::Note, Subject::Counter(at), place, message, RULE.instead));
            }
        }
    }
    findings
}
