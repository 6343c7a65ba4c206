//! A foot with more on it than it carries.

use super::loads::over;
use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "foot-carries-its-load",
    severity: Severity::Warn,
    about: "No foot carries more than it is rated for when all feet of its module bear.",
    why: "A plastic foot that is overloaded creeps until it splits, and the counter follows it down.",
    instead: "choose stronger feet and write their rating, add feet, or spread them on plates",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    over(solved, &RULE, |load| load.all, |_| true, "with all feet of the module bearing")
}
