//! Too little room to stand before the run.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Limit, Rule};
use crate::solve::Solved;

const ONE: Limit = Limit::new("", "48 in", "clear floor before a run for one cook");
const TWO: Limit = Limit::new("two", "54 in", "for two cooks");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "aisle-wide-enough",
    severity: Severity::Warn,
    about: "Before the run there is room to cook and to pass.",
    why: "An open drawer or a hot lid bars a narrow aisle.",
    instead: "move the run back, or whatever stands before it",
    origin: Origin::Trade("outdoor kitchen guides: 48 in for one cook, 54 in for two"),
    concerns: Concern::Landing,
    limits: &[ONE, TWO],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    if solved.around.aisle.is_some() {
        return Vec::new();
    }
    let instead = "write the clear floor before the run, as `aisle: \"5 ft\"` under `site`";
    vec![Lack::of_practice("site.aisle", Subject::Job, solved.job.place.as_ref(), instead)]
}

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(found) = solved.around.aisle else { return Vec::new() };
    let cooks = solved.around.people.len();
    let (wanted, whom) =
        if cooks > 1 { (RULE.length(solved, &TWO), "two cooks") } else { (RULE.length(solved, &ONE), "one cook") };
    if found >= wanted {
        return Vec::new();
    }
    let plain = |length| solved.show.plain(length);
    let message = format!("the aisle is {} wide; {} is wanted for {whom}", plain(found), plain(wanted));
    vec![RULE.finding(Severity::Warn, Subject::Job, solved.job.place.as_ref(), message, RULE.instead)]
}
