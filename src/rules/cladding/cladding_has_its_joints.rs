//! A long face without joints in its finish.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{Face, FinishKind, Solved};

const COAT: Limit = Limit::new("coat", "16 ft", "between control joints in a direct-applied coat");
const TILE: Limit = Limit::new("tile", "12 ft", "between movement joints in tile outdoors");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cladding-has-its-joints",
    severity: Severity::Warn,
    about: "A long face has joints in its finish: a coat every 16 ft and 150 square feet, tile every 8 to 12 ft, and both at every \
            corner and where the ground under them changes.",
    why: "Where no joint is made, the finish makes one.",
    instead: "write where they are, as `joints: \"8 ft\"` under `build_up`; their width follows the current edition of EJ171",
    origin: Origin::Trade("an exterior finish bulletin (16 ft, 150 sq ft); TCNA EJ171 as quoted (8 to 12 ft)"),
    concerns: Concern::Cladding,
    limits: &[COAT, TILE],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for (face, word, build, finish) in super::clad(leg) {
            let limit = match finish.kind {
                FinishKind::SkimCoat => &COAT,
                FinishKind::Tile { .. } => &TILE,
                FinishKind::Veneer => continue,
            };
            let d = &leg.datums;
            let long = match face {
                Face::Front | Face::Back => d.finished_right,
                Face::Left | Face::Right => d.finished_back,
            };
            let (found, most) = (build.joints.unwrap_or(long).min(long), RULE.length(solved, limit));
            if found > most {
                let way = |length| solved.show.way(length);
                let message = format!(
                    "the {} of the {word} goes {} without a joint; {} is the most",
                    finish.name,
                    way(found),
                    way(most)
                );
                findings.push(RULE.finding(
                    Severity::Warn,
                    Subject::Leg(at),
                    leg.place.as_ref(),
                    message,
                    RULE.instead,
                ));
            }
        }
    }
    findings
}
