//! A counter too high or too low for those who work at it.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Limit, Rule};
use crate::solve::Solved;

const SEATED: Limit = Limit::new("seated", "34 in", "highest work surface where accessible heights are asked for");
const LOW: Limit = Limit::new("low", "7 in", "farthest under the elbow (from memory)");
const HIGH: Limit = Limit::new("high", "2 in", "nearest under the elbow (from memory)");
/// Height of the elbow over the standing height, from memory.
const ELBOW: f64 = 0.63;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "counter-height-suits-its-people",
    severity: Severity::Warn,
    about: "The counter's height suits the people who are named; where accessible heights are asked for it is 34 in at most.",
    why: "A counter can't be lowered when it is built; backs and shoulders pay for an inch.",
    instead: "change the height of the run, or give one part of it another height",
    origin: Origin::Standard("2010 ADA Standards 804.3.2 and 902.3 (34 in); elbow heights: from memory"),
    concerns: Concern::Landing,
    limits: &[SEATED, LOW, HIGH],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    let unknown = solved.around.people.iter().filter(|person| person.stature.is_none() && !person.seated);
    unknown
        .map(|person| {
            let instead = "write their height, as `stature: \"5 ft 8 in\"`, or `seated: true`";
            Lack::of_practice("site.people.stature", Subject::Job, person.place.as_ref(), instead)
                .for_what(&person.name)
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let around = &solved.around;
    let plain = |length| solved.show.plain(length);
    let seated = RULE.length(solved, &SEATED);
    let mut findings = Vec::new();
    let Some(leg) = solved.legs.first() else { return findings };
    let top = leg.datums.counter_top;
    let asks = around.people.iter().find(|person| person.seated);
    if (around.accessible || asks.is_some()) && top > seated {
        let place = asks.and_then(|person| person.place.as_ref()).or(solved.job.place.as_ref());
        let whom = asks.map_or_else(String::new, |person| format!(" for {}", person.name));
        let message =
            format!("the counter is {} high; {} is the highest accessible one{whom}", plain(top), plain(seated));
        findings.push(RULE.finding(Severity::Warn, Subject::Job, place, message, RULE.instead));
    }
    for person in around.people.iter().filter(|person| !person.seated) {
        let Some(stature) = person.stature else { continue };
        let elbow = stature.scaled(ELBOW);
        let (low, high) = (elbow - RULE.length(solved, &LOW), elbow - RULE.length(solved, &HIGH));
        if top < low || top > high {
            let round =
                |length: crate::units::Length| plain(length.rounded_to(crate::units::Length::from_sixty_fourths(32)));
            let message = format!(
                "the counter is {} high; {} works best at one from {} to {}",
                plain(top),
                person.name,
                round(low),
                round(high)
            );
            findings.push(RULE.finding(Severity::Note, Subject::Job, person.place.as_ref(), message, RULE.instead));
        }
    }
    findings
}
