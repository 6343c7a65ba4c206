//! What must hold for a drawing to be true, one rule a file. Rules read only the solved run.

mod body_fits_its_module;
mod body_passes_its_cutout;
mod cutout_clears_frame_members;
mod cutout_stays_in_its_board;
mod cutout_was_measured;
mod cutouts_keep_a_strip_between_them;
mod feet_within_range;
mod fitting_inside_its_module;
mod flange_covers_its_gap;
mod published_agrees_with_measured;
mod run_fits_its_site;
pub mod stack;

use crate::findings::{Finding, Origin, Place, Severity, Subject};
use crate::solve::{Fitting, Leg, Solved};

/// One thing that must hold.
pub struct Rule {
    /// What it wants, in words joined by hyphens.
    pub name: &'static str,
    /// How much its gravest finding matters.
    pub severity: Severity,
    /// What it wants, in a sentence.
    pub about: &'static str,
    /// What goes wrong when it doesn't hold.
    pub why: &'static str,
    /// What to do about it.
    pub instead: &'static str,
    /// Where the demand comes from.
    pub origin: Origin,
    /// Everything in a run for which it doesn't hold.
    pub check: fn(&Solved) -> Vec<Finding>,
}

/// Every rule, in the order in which findings of one severity are listed.
pub const ALL: &[&Rule] = &[
    &run_fits_its_site::RULE,
    &fitting_inside_its_module::RULE,
    &cutouts_keep_a_strip_between_them::RULE,
    &cutout_stays_in_its_board::RULE,
    &cutout_clears_frame_members::RULE,
    &body_fits_its_module::RULE,
    &body_passes_its_cutout::RULE,
    &flange_covers_its_gap::RULE,
    &feet_within_range::RULE,
    &published_agrees_with_measured::RULE,
    &cutout_was_measured::RULE,
];

/// What all rules find, the gravest first, then in the order of [`ALL`], then as they lie in the run.
pub fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings: Vec<Finding> = ALL.iter().flat_map(|rule| (rule.check)(solved)).collect();
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    findings
}

impl Rule {
    /// A finding of this rule.
    fn finding(
        &self,
        severity: Severity,
        subject: Subject,
        place: Option<&Place>,
        message: String,
        instead: impl Into<String>,
    ) -> Finding {
        Finding {
            rule: self.name,
            severity,
            subject,
            message,
            instead: instead.into(),
            place: place.cloned(),
            origin: self.origin,
        }
    }
}

/// Every fitting of the run with its leg.
fn fittings(solved: &Solved) -> impl Iterator<Item = (&Leg, &Fitting)> {
    solved.legs.iter().flat_map(|leg| leg.fittings.iter().map(move |fitting| (leg, fitting)))
}

/// A fitting as messages name it: its mark and its id, as `B1 (grill)`.
fn named(fitting: &Fitting) -> String {
    format!("{} ({})", fitting.mark, fitting.id)
}
