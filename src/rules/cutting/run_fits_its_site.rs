//! A leg longer than the room between what bounds it.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "run-fits-its-site",
    severity: Severity::Stop,
    about: "A leg, with its build-ups and the gaps at its ends, is no longer than its room at the tightest level.",
    why: "Boxes that are welded too wide are found out on the day they are carried in.",
    instead: "make a module narrower, or take a width as what is left",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let Some(room) = leg.room else { continue };
        let plain = |length| solved.show.plain(length);
        let over = room.needed - room.given;
        let from = leg.surveyed.as_ref();
        let from = from.map_or_else(String::new, |[left, right]| format!(", as surveyed from {left} to {right}"));
        let sum = format!("leg {} needs {}, its room is {}{from}", leg.id, plain(room.needed), plain(room.given));
        if over > Length::ZERO {
            let widths: Vec<String> =
                leg.modules.iter().take(12).map(|module| format!("{} {}", module.id, plain(module.width()))).collect();
            findings.push(RULE.finding(
                Severity::Stop,
                Subject::Leg(index),
                leg.place.as_ref(),
                format!("{sum}: {} too long. Its modules: {}", plain(over), widths.join(", ")),
                format!("take {} off the modules, or let one of them be what is left", plain(over)),
            ));
        } else if -over >= solved.show.step() && !leg.left.is_open() && !leg.right.is_open() {
            findings.push(RULE.finding(
                Severity::Note,
                Subject::Leg(index),
                leg.place.as_ref(),
                format!("{sum}: {} stays free beside the run, beyond the gaps asked for", plain(-over)),
                "let one module be what is left, or make the gaps that much wider",
            ));
        }
    }
    findings
}
