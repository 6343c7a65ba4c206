//! A support that gives more than the counter on it can take.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "support-is-stiff-enough",
    severity: Severity::Warn,
    about: "No arm, rail or bracket deflects by more than the share of its span that suits the counter.",
    why: "Stone and tile crack long before the metal under them yields.",
    instead: "take a deeper section, shorten the span, or stand a post under it",
    origin: Origin::FromMemory,
    concerns: Concern::Counter,
    limits: &[],
    needs: super::unweighed::unweighed,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let soft = super::checked(solved).filter(|(_, check)| !check.is_stiff());
    soft.map(|(support, check)| {
        let millimetres = |length: crate::units::Length| format!("{:.2} mm ({:.3} in)", length.mm(), length.inches());
        let message = format!(
            "{} ({}, {}) gives {} over {} under {}; 1/{:.0} of {}, {}, is the most",
            support.mark,
            support.role.words(),
            support.section,
            millimetres(check.deflection),
            solved.show.prose(check.span),
            check.load_words,
            check.share,
            if check.held == "overhang" { "twice its reach" } else { "its span" },
            millimetres(check.most)
        );
        let instead = super::remedy(check, RULE.instead);
        RULE.finding(Severity::Warn, super::subject(support), support.place.as_ref(), message, instead)
    })
    .collect()
}
