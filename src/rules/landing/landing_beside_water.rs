//! Nowhere to put a wet dish down.

use super::sides;
use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Limit, Rule, fittings, nothing};
use crate::solve::{Look, Solved};

const LONG: Limit = Limit::new("long", "18 in", "beside an auxiliary sink, on its one side");
const SHORT: Limit = Limit::new("short", "3 in", "on its other side");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "landing-beside-water",
    severity: Severity::Warn,
    about: "A sink has clear counter on one side, and a strip on the other.",
    why: "What is washed has to stand somewhere.",
    instead: "move the sink along the run, or widen the module beside it",
    origin: Origin::Trade("kitchen planning guidelines for an auxiliary sink (3 and 18 in), as restated"),
    concerns: Concern::Landing,
    limits: &[LONG, SHORT],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let (long, least) = (RULE.length(solved, &LONG), RULE.length(solved, &SHORT));
    let sinks = fittings(solved).filter(|(_, fitting)| fitting.look == Look::Sink);
    sinks.filter_map(|at| sides::short(&RULE, solved, at, long, least)).collect()
}
