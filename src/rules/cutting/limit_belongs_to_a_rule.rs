//! A limit that the job sets and that no rule has.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, limit, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "limit-belongs-to-a-rule",
    severity: Severity::Stop,
    about: "Every limit that the job sets is a rule's, and measures what the rule's own does.",
    why: "A limit that is misspelt changes nothing, while everybody thinks that it does.",
    instead: "`faceline rule NAME` shows a rule's limits and what they are",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let faults = solved.limits.iter().filter_map(|set| limit::fault(set).map(|fault| (set, fault)));
    faults
        .map(|(set, (message, instead))| {
            RULE.finding(Severity::Stop, Subject::Job, set.place.as_ref(), message, instead)
        })
        .collect()
}
