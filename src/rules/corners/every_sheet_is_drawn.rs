//! Sheets that this version doesn't draw yet for legs that meet.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "every-sheet-is-drawn",
    severity: Severity::Warn,
    about: "Every sheet that a run needs is drawn for it.",
    why: "A sheet that shows a leg as if it stood alone would be cut from; none is better than a wrong one.",
    instead: "work from the plan, the elevations, the counter sheet, the substrate and board templates, the sections and the schedules",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let legs: Vec<&str> = (0..solved.legs.len())
        .filter(|leg| !solved.stands_alone(*leg))
        .map(|leg| solved.legs[leg].id.as_str())
        .collect();
    if legs.is_empty() {
        return Vec::new();
    }
    let message = format!(
        "for legs that meet others ({}) these sheets aren't drawn yet: end elevations and \
          sections of a leg that stands before another",
        legs.join(", ")
    );
    vec![RULE.finding(Severity::Warn, Subject::Job, None, message, RULE.instead)]
}
