//! A heavy fitting for which no support found room.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "heavy-fitting-finds-its-arms",
    severity: Severity::Warn,
    about: "Under every heavy fitting that hangs in the counter, arms lie front to back, clear of its body and of all else.",
    why: "What hangs by its flange alone leans on the edge of the cutout, where a slab is weakest.",
    instead: "make the module wider or deeper, or stand the fitting on a shelf or a liner that carries it",
    origin: Origin::CommonPractice,
    concerns: Concern::Counter,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let unheld = solved.shop.supports.unheld.iter().filter_map(|((leg, index), why)| {
        let fitting = solved.legs.get(*leg)?.fittings.get(*index)?;
        let message = format!("{} hangs without arms: {why}", crate::rules::named(fitting));
        let subject = Subject::Fitting(*leg, *index);
        Some(RULE.finding(Severity::Warn, subject, fitting.place.as_ref(), message, RULE.instead))
    });
    unheld.collect()
}
