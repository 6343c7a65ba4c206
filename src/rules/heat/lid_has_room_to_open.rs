//! A lid that meets the wall behind it.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Limit, Rule, fittings, named, nothing};
use crate::solve::{Look, Plane, Solved};
use crate::units::Length;

const SWING: Limit = Limit::new("", "4 in", "behind the cutout, for a lid of which nothing is known");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "lid-has-room-to-open",
    severity: Severity::Warn,
    about: "The lid of a grill opens without meeting what stands behind it.",
    why: "A lid that stops half way up burns hands, and marks the wall.",
    instead: "move the grill forward, or the run off the wall; a splash counts too",
    origin: Origin::Trade("vendors' guides: 3 to 4 in and more behind a grill; the manual in hand governs"),
    concerns: Concern::Heat,
    limits: &[SWING],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (leg, fitting) in fittings(solved).filter(|(_, fitting)| fitting.look == Look::Grill) {
        if leg.back.is_open() || leg.back.height <= leg.datums.counter_top || fitting.cutout(Plane::Counter).is_none() {
            continue;
        }
        let splash = solved.counter.splash.map_or(Length::ZERO, |splash| splash.thickness + solved.counter.wall_joint);
        let found = leg.back.at_counter - splash - fitting.back.unwrap_or(leg.datums.frame_back);
        let wanted = fitting.needs.lid.unwrap_or_else(|| RULE.length(solved, &SWING));
        if found < wanted {
            let plain = |length| solved.show.plain(length);
            findings.push(RULE.finding(
                Severity::Warn,
                fitting.subject(),
                fitting.place.as_ref(),
                format!("the lid of {} has {} behind it; {} is wanted", named(fitting), plain(found), plain(wanted)),
                "write the lid's own swing as `lid: \"…\"` if its manual gives it, or leave more room behind",
            ));
        }
    }
    findings
}
