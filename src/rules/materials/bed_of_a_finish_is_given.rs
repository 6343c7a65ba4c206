//! Veneer or tile without the bed that it lies in: its mortar can't be counted, and its face isn't where it is said to be.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, cladding, nothing};
use crate::solve::{FinishKind, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "bed-of-a-finish-is-given",
    severity: Severity::Note,
    about: "Veneer and tile have a bed of some thickness.",
    why: "Mortar is bought by the thickness of its bed, and the finished face stands proud by it: an eighth of an inch forgotten is an eighth \
          off in every cut.",
    instead: "write the bed with the finish, as `bed: \"3/16 in\"`",
    origin: Origin::CommonPractice,
    concerns: Concern::Materials,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let without: Vec<_> = cladding::clad(leg)
            .filter(|(_, _, _, finish)| finish.kind != FinishKind::SkimCoat && finish.bed == Length::ZERO)
            .collect();
        let Some((_, _, _, finish)) = without.first() else { continue };
        let faces: Vec<&str> = without.iter().map(|(_, word, _, _)| *word).collect();
        let message = format!(
            "the {} on the {} has no bed: its mortar is counted by a usual one, which the finished face leaves out",
            finish.name,
            faces.join(", ")
        );
        findings.push(RULE.finding(Severity::Note, Subject::Leg(at), leg.place.as_ref(), message, RULE.instead));
    }
    findings
}
