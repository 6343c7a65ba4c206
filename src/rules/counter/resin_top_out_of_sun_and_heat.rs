//! A top bound by resin, outdoors.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "resin-top-out-of-sun-and-heat",
    severity: Severity::Warn,
    about: "A counter that resin binds, engineered quartz or solid surface, lies in the shade and away from grills.",
    why: "Sun yellows the resin, heat marks and cracks it; makers void their warranty outdoors.",
    instead: "choose natural stone, porcelain or concrete; or write `sun: false` and ask the maker in writing",
    origin: Origin::Trade("fabricators' pages; composites near heat: common practice"),
    concerns: Concern::Counter,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    if solved.counter.needs.resin != Some(true) {
        return Vec::new();
    }
    let place = solved.counter.place.as_ref();
    let mut findings = Vec::new();
    for (_, fitting) in cooking(solved) {
        let message = format!("resin binds the {}, and {} is set into it", solved.counter.name, named(fitting));
        findings.push(RULE.finding(Severity::Warn, Subject::Counter(fitting.at.0), place, message, RULE.instead));
    }
    if findings.is_empty() && solved.around.sun != Some(false) {
        let message =
            format!("resin binds the {}, and the job doesn't say that it lies in the shade", solved.counter.name);
        findings.push(RULE.finding(Severity::Warn, Subject::Counter(0), place, message, RULE.instead));
    }
    findings
}
