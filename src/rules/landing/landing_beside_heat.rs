//! Nowhere to put a hot dish down.

use super::sides;
use crate::findings::{Finding, Origin, Severity};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{Look, Solved};

const LONG: Limit = Limit::new("long", "24 in", "beside a grill, on its one side");
const SHORT: Limit = Limit::new("short", "12 in", "beside a grill, on its other side; beside a burner, on one");
const END: Limit = Limit::new("end", "3 in", "from a burner to the counter's end or the next cutout");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "landing-beside-heat",
    severity: Severity::Warn,
    about: "A grill has clear counter on both sides, a side burner on one.",
    why: "Hot dishes are put down where there is room, on a lid or on the floor if there is none.",
    instead: "move the fitting along the run, or widen the module beside it",
    origin: Origin::Trade("outdoor variant of the kitchen planning guidelines (24 and 12 in), as restated"),
    concerns: Concern::Landing,
    limits: &[LONG, SHORT, END],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let limit = |limit| RULE.length(solved, limit);
    let short = cooking(solved).filter_map(|(leg, fitting)| {
        let grill = fitting.look == Look::Grill;
        let (long, least) = if grill { (limit(&LONG), limit(&SHORT)) } else { (limit(&SHORT), limit(&END)) };
        sides::short(&RULE, solved, (leg, fitting), long, least)
    });
    short.collect()
}
