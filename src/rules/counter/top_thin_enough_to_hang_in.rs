//! A counter too thick for what hangs in it.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Lack, Limit, Rule, named};
use crate::solve::Solved;

const USUAL: Limit =
    Limit::new("", "1 1/4 in", "counter that a hung appliance takes without shims, where its manual isn't quoted");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "top-thin-enough-to-hang-in",
    severity: Severity::Warn,
    about: "The counter, edge build-up and all, is no thicker than an appliance that hangs in it takes.",
    why: "On a thicker top the control panel sits too high over its opening, or the flange doesn't reach the face.",
    instead: "shim the supports as the manual shows, or thin the edge at the cutout",
    origin: Origin::Trade("an appliance's planning guide: tops over 1 1/4 in need shims"),
    concerns: Concern::Counter,
    limits: &[USUAL],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    if solved.counter.thickness <= RULE.length(solved, &USUAL) {
        return Vec::new();
    }
    let unknown = cooking(solved).filter(|(_, fitting)| fitting.needs.most_top.is_none());
    unknown
        .map(|(_, fitting)| {
            let instead = "write the thickest counter that its manual allows, as `most_top: \"2 in\"`";
            let input = format!("{}.most_top", fitting.id);
            Lack::of_practice(input, fitting.subject(), fitting.place.as_ref(), instead).for_what(named(fitting))
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let found = solved.counter.thickness;
    let plain = |length| solved.show.plain(length);
    let thick = cooking(solved).filter_map(|(_, fitting)| {
        let most = fitting.needs.most_top?;
        (found > most).then(|| {
            let message = format!("the counter is {} thick; {} takes {}", plain(found), named(fitting), plain(most));
            RULE.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, RULE.instead)
        })
    });
    thick.collect()
}
