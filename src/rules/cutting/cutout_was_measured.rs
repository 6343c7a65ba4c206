//! Dimensions that nobody has held a tape to yet.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, fittings, named, nothing};
use crate::solve::{FittingKind, OpeningSort, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cutout-was-measured",
    severity: Severity::Note,
    about: "Every dimension of a cutout was measured on the fitting in hand.",
    why: "Sheets are revised, and boxes are mixed up; a cut is for good.",
    instead: "measure the fitting in hand and write the figure as measured",
    origin: Origin::CommonPractice,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    // A hole for a pipe has no fitting to hold a tape to.
    let held = |fitting: &crate::solve::Fitting| fitting.kind != FittingKind::Opening(OpeningSort::PassThrough);
    for (_, fitting) in fittings(solved).filter(|(_, fitting)| held(fitting)) {
        let open: Vec<String> = fitting
            .measures
            .iter()
            .filter(|(name, measure)| measure.measured.is_none() && !name.starts_with("body"))
            .map(|(name, measure)| format!("{name} {}", solved.show.plain(measure.value())))
            .collect();
        if !open.is_empty() {
            findings.push(RULE.finding(
                Severity::Note,
                fitting.subject(),
                fitting.place.as_ref(),
                format!("{} was never measured: {} as published", named(fitting), open.join(", ")),
                "measure the fitting in hand before cutting, and write the figure as measured",
            ));
        }
    }
    findings
}
