//! Clear counter on both sides of a fitting.

use crate::findings::{Finding, Severity};
use crate::rules::hot::beside;
use crate::rules::{Rule, named};
use crate::solve::{Fitting, Leg, Solved};
use crate::units::Length;

/// A finding where a fitting has less than `long` on its better side, or less than `least` on the other.
pub fn short(
    rule: &Rule,
    solved: &Solved,
    (leg, fitting): (&Leg, &Fitting),
    long: Length,
    least: Length,
) -> Option<Finding> {
    let (left, right) = beside(leg, fitting)?;
    if left.max(right) >= long && left.min(right) >= least {
        return None;
    }
    let plain = |length| solved.show.plain(length);
    let (left, right, long, least) = (plain(left), plain(right), plain(long), plain(least));
    let message = format!(
        "{} has {left} of clear counter on its left and {right} on its right; {long} on one side and {least} on the other are wanted",
        named(fitting)
    );
    Some(rule.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, rule.instead))
}
