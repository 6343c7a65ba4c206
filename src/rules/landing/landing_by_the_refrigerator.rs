//! Nowhere to put down what comes out of the refrigerator.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Limit, Rule, fittings, named, nothing};
use crate::solve::{Leg, Look, Plane, Solved};
use crate::units::Length;

const WIDE: Limit = Limit::new("", "15 in", "clear counter over a refrigerator or beside it");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "landing-by-the-refrigerator",
    severity: Severity::Warn,
    about: "Over a refrigerator under the counter, or right beside it, the counter is clear.",
    why: "A door held open with a knee while both hands are full stays open.",
    instead: "set the cutout that is over the refrigerator somewhere else",
    origin: Origin::Trade("kitchen planning guidelines, as restated"),
    concerns: Concern::Landing,
    limits: &[WIDE],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let wanted = RULE.length(solved, &WIDE);
    let cold = fittings(solved).filter(|(_, fitting)| fitting.look == Look::Refrigerator);
    let short = cold.filter_map(|(leg, fitting)| {
        let found = clear(leg, (fitting.left, fitting.right));
        let plain = |length| solved.show.plain(length);
        (found < wanted).then(|| {
            let message =
                format!("{} of counter is clear at {}; {} is wanted", plain(found), named(fitting), plain(wanted));
            RULE.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, RULE.instead)
        })
    });
    short.collect()
}

/// The longest stretch of counter without a cutout that lies at least in part over these.
fn clear(leg: &Leg, over: (Length, Length)) -> Length {
    let mut cuts: Vec<(Length, Length)> =
        leg.fittings.iter().filter_map(|f| f.cutout(Plane::Counter)).map(|c| (c.extent.x0, c.extent.x1)).collect();
    cuts.sort();
    cuts.push((leg.counter.extent.x1, leg.counter.extent.x1));
    let (mut at, mut longest) = (leg.counter.extent.x0, Length::ZERO);
    for (start, end) in cuts {
        if start > over.0 && at < over.1 {
            longest = longest.max(start - at);
        }
        at = at.max(end);
    }
    longest
}
