//! Seats along a counter's back: room for knees under it, and width for each.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "seats-have-knee-space",
    severity: Severity::Warn,
    about: "Where people sit at a counter's back it hangs over far enough for their knees, and is long enough for all of them.",
    why: "A counter that hangs over by two inches is a shelf: nobody sits at it.",
    instead: "give the leg a greater back overhang, or fewer seats",
    origin: Origin::Trade(
        "kitchen planning guidelines, seating: knees 18 in deep at 30 in high, 15 in at 36 in, 12 in at 42 in",
    ),
    concerns: Concern::Landing,
    limits: &[],
    needs: nothing,
    check,
};

/// Height of a counter over the floor, and the clear depth for knees that goes with it, in.
const KNEES: [(f64, f64); 3] = [(30.0, 18.0), (36.0, 15.0), (42.0, 12.0)];

/// Knee depth at a height, between the steps of the guideline as along a line.
fn knees(height: Length) -> Length {
    let h = height.inches();
    let depth = match KNEES {
        [low, ..] if h <= low.0 => low.1,
        [.., high] if h >= high.0 => high.1,
        [a, b, _] if h <= b.0 => a.1 + (b.1 - a.1) * (h - a.0) / (b.0 - a.0),
        [_, b, c] => b.1 + (c.1 - b.1) * (h - b.0) / (c.0 - b.0),
    };
    Length::from_inches(depth)
}

fn check(solved: &Solved) -> Vec<Finding> {
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let Some(seating) = leg.seating else { continue };
        let d = &leg.datums;
        let (found, wanted) = (d.counter_back - d.finished_back, knees(d.counter_top));
        let mut say = |message: String, instead: String| {
            findings.push(RULE.finding(Severity::Warn, Subject::Leg(index), leg.place.as_ref(), message, instead));
        };
        if !leg.back.is_open() {
            let instead = "seat people where they can reach the counter".to_owned();
            say(format!("leg {} has seats at its back, against {}", leg.id, leg.back.name), instead);
        } else if found < wanted {
            say(
                format!(
                    "leg {} leaves {} for knees under a counter {} high; {} is wanted",
                    leg.id,
                    plain(found),
                    plain(d.counter_top),
                    plain(wanted)
                ),
                format!("make its back overhang {} or more, with supports as the fabricator asks", plain(wanted)),
            );
        }
        let needed = seating.width * i64::from(seating.seats);
        let long = d.counter_right - d.counter_left;
        if needed > long {
            say(
                format!(
                    "{} seats of {} want {}; leg {} is {} long",
                    seating.seats,
                    plain(seating.width),
                    plain(needed),
                    leg.id,
                    plain(long)
                ),
                format!("seat {} there", (long.nm() / seating.width.nm().max(1)).max(0)),
            );
        }
    }
    findings
}
