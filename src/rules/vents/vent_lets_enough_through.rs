//! A vent whose face is larger than what it lets through.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Lack, Limit, Rule, named};
use crate::solve::Solved;

const LEAST: Limit = Limit::new("", "10 in2", "free area of a vent");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "vent-lets-enough-through",
    severity: Severity::Warn,
    about: "Each vent of a run that burns gas has the free area that manuals ask for; the face of a louvre is not its free area.",
    why: "Blades and mesh close about half of a panel: from memory, 40 to 60 % of its face is open.",
    instead: "choose a larger vent, and write the free area that its maker states",
    origin: Origin::Trade("grill manuals: 10 sq in for each opening; the manual in hand governs"),
    concerns: Concern::Vents,
    limits: &[LEAST],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    let least = RULE.number(solved, &LEAST);
    let mut lacks = Vec::new();
    for leg in solved.legs.iter().filter(|leg| super::gases(solved, leg) != (false, false)) {
        for vent in super::vents(leg) {
            let face = super::face_area(vent);
            if vent.needs.free_area.is_none() && face >= least && super::free_area(vent) < least {
                let instead = "write the free area that its maker states, as `free_area: \"12 in2\"`";
                lacks.push(
                    Lack::of_safety(format!("{}.free_area", vent.id), vent.subject(), vent.place.as_ref(), instead)
                        .for_what(named(vent)),
                );
            }
        }
    }
    lacks
}

fn check(solved: &Solved) -> Vec<Finding> {
    let least = RULE.number(solved, &LEAST);
    let show = solved.show;
    let mut findings = Vec::new();
    for leg in solved.legs.iter().filter(|leg| super::gases(solved, leg) != (false, false)) {
        for vent in super::vents(leg) {
            let (face, free) = (super::face_area(vent), vent.needs.free_area);
            let message = match free {
                Some(free) if free > face => {
                    format!("{} is said to have {} free in a face of {}", named(vent), show.area(free), show.area(face))
                }
                Some(free) if free < least => {
                    format!("{} lets {} through; {} is wanted", named(vent), show.area(free), show.area(least))
                }
                None if face < least => {
                    format!(
                        "the whole face of {} is {}; {} free is wanted",
                        named(vent),
                        show.area(face),
                        show.area(least)
                    )
                }
                _ => continue,
            };
            findings.push(RULE.finding(Severity::Warn, vent.subject(), vent.place.as_ref(), message, RULE.instead));
        }
    }
    findings
}
