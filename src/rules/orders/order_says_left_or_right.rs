//! A door that would be ordered without its hinge side.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "order-says-left-or-right",
    severity: Severity::Warn,
    about: "Every order says left or right where a thing has a left and a right.",
    why: "A door hinged on the wrong side opens against the cook or a wall, and is seldom taken back.",
    instead: "write `hinge: left` or `hinge: right` with the fitting",
    origin: Origin::CommonPractice,
    concerns: Concern::Orders,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for order in &solved.shop.orders {
        for line in order.lines.iter().filter(|line| line.missing.iter().any(|missing| missing == "hinge side")) {
            for &(leg, index) in &line.fittings {
                let Some(fitting) = solved.legs.get(leg).and_then(|leg| leg.fittings.get(index)) else { continue };
                let message = format!(
                    "the order to the {} doesn't say on which side {} is hinged",
                    order.supplier.words(),
                    named(fitting)
                );
                let instead = "write `hinge: left` or `hinge: right` with it, after a look at which way it has to open";
                let subject = Subject::Fitting(leg, index);
                findings.push(RULE.finding(Severity::Warn, subject, fitting.place.as_ref(), message, instead));
            }
        }
    }
    findings
}
