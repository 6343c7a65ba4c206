//! A piece too heavy for those who carry it.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;

const EACH: Limit = Limit::new("", "75 lb", "for each who lifts (from memory: 100 to 150 lb for two)");
/// So many lift a piece where the job doesn't say, common practice.
const CREW: u8 = 4;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "piece-can-be-lifted",
    severity: Severity::Note,
    about: "Each piece of the counter can be lifted by as many as there are.",
    why: "A slab that slips takes feet with it, and a notched one breaks when one end is set down first.",
    instead: "write how many lift as `lifters: 6`, bring a lift or a cart, or set a seam; carry it on edge, notches clamped",
    origin: Origin::FromMemory,
    concerns: Concern::Counter,
    limits: &[EACH],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let each = RULE.number(solved, &EACH);
    let people = solved.counter.needs.lifters.unwrap_or(CREW).max(1);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for piece in &leg.counter.pieces {
            let share = piece.mass / f64::from(people);
            if share > each {
                let mass = |mass| solved.show.mass(mass);
                let message = format!(
                    "{} weighs {}: {} for each of {people}; {} is the most",
                    piece.name,
                    mass(piece.mass),
                    mass(share),
                    mass(each)
                );
                let place = solved.counter.place.as_ref();
                findings.push(RULE.finding(Severity::Note, Subject::Counter(at), place, message, RULE.instead));
            }
        }
    }
    findings
}
