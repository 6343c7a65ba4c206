//! A foot that is overloaded once its module rocks.

use super::loads::over;
use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "foot-carries-a-rocking-module",
    severity: Severity::Warn,
    about: "No foot carries more than it is rated for when its module rocks on three of its feet.",
    why: "On an uneven floor a rigid box stands on three feet, two of which carry nearly all of it: a plastic foot splits, a small one \
          goes through paving.",
    instead: "set every foot until none turns by hand, or choose stronger feet and write their rating, add feet, or spread them on plates",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    // One that is overloaded with all feet bearing has been told of.
    let rating = solved.frame.foot_rating;
    over(solved, &RULE, |load| load.tripod, |load| load.all <= rating, "when the module rocks on three feet")
}
