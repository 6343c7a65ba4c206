//! A counter that touches a wall.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;

const JOINT: Limit = Limit::new("", "1/16 in", "least joint between counter and wall");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "counter-joint-at-walls",
    severity: Severity::Warn,
    about: "A soft joint parts the counter from every wall, pier and post.",
    why: "Counter, wall and frame grow and settle each on its own; without a joint the weakest cracks.",
    instead: "leave 1/8 in and fill it with sealant",
    origin: Origin::Trade("a fabricator's tolerance page: 1/8 in, 1/16 either way"),
    concerns: Concern::Counter,
    limits: &[JOINT],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let (found, least) = (solved.counter.wall_joint, RULE.length(solved, &JOINT));
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let against: Vec<&str> = [&leg.left, &leg.right, &leg.back]
            .into_iter()
            .filter(|bound| !bound.is_open())
            .map(|bound| bound.name.as_str())
            .collect();
        if found < least && !against.is_empty() {
            let plain = |length| solved.show.plain(length);
            let message = format!(
                "the counter has a joint of {} to the {}; {} is the least",
                plain(found),
                against.join(" and the "),
                plain(least)
            );
            let place = solved.counter.place.as_ref();
            findings.push(RULE.finding(Severity::Warn, Subject::Counter(at), place, message, RULE.instead));
        }
    }
    findings
}
