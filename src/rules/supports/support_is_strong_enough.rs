//! A support bent past what its metal is allowed.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "support-is-strong-enough",
    severity: Severity::Warn,
    about: "No arm, rail or bracket is bent to more than its metal is allowed: the least yield stress over its safety factor.",
    why: "Metal that yields stays bent: the fitting sinks, the counter cracks at the cutout's corner.",
    instead: "take a stiffer section, stand a post under it, or set the fitting on the floor; an engineer decides where people can be hurt",
    origin: Origin::Trade(
        "49 CFR 178.46 table 2 for 6061-T6; A36 and 6063-T5 by handbook tables; bending by beam formulas",
    ),
    concerns: Concern::Counter,
    limits: &[],
    needs: super::unweighed::unweighed,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let weak = super::checked(solved).filter(|(_, check)| !check.is_strong());
    weak.map(|(support, check)| {
        let mpa = |stress: f64| format!("{:.0} MPa ({:.1} ksi)", stress / 1e6, stress / 6.894_757e6);
        let message = format!(
            "{} ({}, {}) is bent to {} by {}; its metal is allowed {}",
            support.mark,
            support.role.words(),
            support.section,
            mpa(check.stress),
            check.load_words,
            mpa(check.allowed)
        );
        let instead = super::remedy(check, RULE.instead);
        RULE.finding(Severity::Warn, super::subject(support), support.place.as_ref(), message, instead)
    })
    .collect()
}
