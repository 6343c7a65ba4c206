//! A roof over the fire.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Lack, Limit, Rule, named};
use crate::solve::{Overhead, Solved};

const LOWEST: Limit = Limit::new("", "5 ft", "from the counter to anything above a hot fitting");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "nothing-that-burns-overhead",
    severity: Severity::Stop,
    about: "Nothing that burns is above a hot fitting unless its manual says how far; a roof that doesn't burn is high enough and \
            has a hood.",
    why: "A flare-up lights a pergola, and smoke under a closed roof goes nowhere.",
    instead: "move the run from under it, or protect the roof and fit a hood as the appliance's manual says",
    origin: Origin::Trade(
        "grill manuals: never under an unprotected combustible roof; 5 ft least and a hood: trade pages",
    ),
    concerns: Concern::Heat,
    limits: &[LOWEST],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    let Some((_, fitting)) = cooking(solved).next() else { return Vec::new() };
    let subject = fitting.subject();
    match &solved.around.overhead {
        Overhead::Unsaid => {
            let instead = "write `overhead: open`, or `overhead: roof(height: \"8 ft\", combustible: true)`";
            vec![
                Lack::of_safety("site.overhead", Subject::Job, solved.job.place.as_ref(), instead)
                    .for_what(named(fitting)),
            ]
        }
        Overhead::Roof { combustible: None, place, .. } => {
            let instead = "write `combustible: true` if any of it burns, or `false`";
            vec![
                Lack::of_safety("site.overhead.combustible", subject, place.as_ref(), instead).for_what(named(fitting)),
            ]
        }
        _ => Vec::new(),
    }
}

fn check(solved: &Solved) -> Vec<Finding> {
    let Overhead::Roof { name, height, combustible, hood, place } = &solved.around.overhead else { return Vec::new() };
    let lowest = RULE.length(solved, &LOWEST);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (leg, fitting) in cooking(solved) {
        let above = *height - leg.datums.counter_top;
        let mut tell = |severity, message: String, instead: &str| {
            findings.push(RULE.finding(severity, fitting.subject(), place.as_ref(), message, instead));
        };
        let (name_of, found) = (named(fitting), plain(above));
        match (combustible, fitting.needs.above) {
            (Some(true), Some(wanted)) if above < wanted => {
                let wanted = plain(wanted);
                let message =
                    format!("the {name} burns and is {found} over the counter at {name_of}; its manual asks {wanted}");
                tell(Severity::Stop, message, RULE.instead);
            }
            (Some(true), None) => {
                let message = format!("the {name} burns and is {found} over the counter at {name_of}");
                let instead =
                    "don't cook under it, or write what the manual allows as `clear_of_combustibles: (above: \"…\")`";
                tell(Severity::Stop, message, instead);
            }
            _ if above < lowest => {
                let message =
                    format!("the {name} is {found} over the counter at {name_of}; {} is the least", plain(lowest));
                tell(Severity::Warn, message, "raise the roof, or move the fitting from under it");
            }
            _ if !hood => {
                let message = format!("{name_of} stands under the {name} without a hood");
                tell(
                    Severity::Warn,
                    message,
                    "fit a hood that reaches past the cooking surface, and write `hood: true`",
                );
            }
            _ => {}
        }
    }
    findings
}
