//! A hot body that touches the sides of its cutout.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Limit, Rule, named, nothing};
use crate::solve::Solved;

const GAP: Limit = Limit::new("", "1/4 in", "air on each side of a hot body in its cutout");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "body-has-its-air-gap",
    severity: Severity::Warn,
    about: "Air passes between a hot body and the sides of its cutout.",
    why: "Combustion air comes up there, and metal that heats grows; a body held fast cracks the stone.",
    instead: "cut wider as the manual's own cutout says, or measure the body again",
    origin: Origin::Trade("a grill manual: 1/4 in at the sides of the chassis; the manual in hand governs"),
    concerns: Concern::Heat,
    limits: &[GAP],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let gap = RULE.length(solved, &GAP);
    let plain = |length| solved.show.plain(length);
    let tight = cooking(solved).filter_map(|(_, fitting)| {
        let body = fitting.body.as_ref()?;
        let found = (body.u.0 - fitting.left).min(fitting.right - body.u.1);
        (found < gap).then(|| {
            RULE.finding(
                Severity::Warn,
                fitting.subject(),
                fitting.place.as_ref(),
                format!("{} has {} of air at its sides; {} is wanted", named(fitting), plain(found), plain(gap)),
                RULE.instead,
            )
        })
    });
    tight.collect()
}
