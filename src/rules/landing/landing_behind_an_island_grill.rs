//! A fire at the far edge of a counter that people can reach from behind.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Limit, Rule, named, nothing};
use crate::solve::Solved;

const BEHIND: Limit = Limit::new("", "9 in", "counter behind a hot fitting where nothing stands behind the run");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "landing-behind-an-island-grill",
    severity: Severity::Warn,
    about: "Where a run is open behind, the counter goes on behind a hot fitting.",
    why: "Someone who walks or sits behind the run touches the hood or is met by a flare-up.",
    instead: "move the fitting forward, let the counter hang over farther at the back, or stand something behind it",
    origin: Origin::Trade("kitchen planning guidelines for a cooking surface in an island, as restated"),
    concerns: Concern::Landing,
    limits: &[BEHIND],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let wanted = RULE.length(solved, &BEHIND);
    let open = cooking(solved).filter(|(leg, _)| leg.back.is_open());
    let short = open.filter_map(|(leg, fitting)| {
        let found = leg.datums.counter_back - fitting.back?;
        let plain = |length| solved.show.plain(length);
        (found < wanted).then(|| {
            let message =
                format!("{} of counter is behind {}; {} is wanted", plain(found), named(fitting), plain(wanted));
            RULE.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, RULE.instead)
        })
    });
    short.collect()
}
