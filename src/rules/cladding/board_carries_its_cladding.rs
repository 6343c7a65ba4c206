//! Cladding too heavy for the board that it hangs on.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;

const MOST: Limit = Limit::new("", "15 lb/ft2", "adhered to cement board outdoors, where its maker isn't quoted");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "board-carries-its-cladding",
    severity: Severity::Warn,
    about: "Finish and bed together weigh no more than the board carries.",
    why: "Veneer that lets go falls on feet. Codes allow adhered veneer up to 15 or 30 lb/ft2 by edition; the board's own cap is the \
          tighter one.",
    instead: "choose a lighter veneer, or a backing that carries it, and write what it carries as `carries: \"…\"`",
    origin: Origin::Trade("a cement board maker: 15 lb/ft2 outdoors, 25 indoors"),
    concerns: Concern::Cladding,
    limits: &[MOST],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let most = RULE.number(solved, &MOST);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let heavy: Vec<_> = super::clad(leg)
            .filter(|(_, _, build, finish)| finish.mass > build.carries.unwrap_or(most) + 1e-9)
            .collect();
        let Some((_, _, build, finish)) = heavy.first() else { continue };
        let faces: Vec<&str> = heavy.iter().map(|(_, word, _, _)| *word).collect();
        let per_area = |mass| solved.show.area_mass(mass);
        let message = format!(
            "the {} on the {} weighs {}; the board carries {}",
            finish.name,
            faces.join(", "),
            per_area(finish.mass),
            per_area(build.carries.unwrap_or(most))
        );
        findings.push(RULE.finding(Severity::Warn, Subject::Leg(at), leg.place.as_ref(), message, RULE.instead));
    }
    findings
}
