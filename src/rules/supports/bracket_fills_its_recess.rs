//! A bracket that is thicker or thinner than the substrate that it is let into.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Solved, SupportRole};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "bracket-fills-its-recess",
    severity: Severity::Warn,
    about: "A bracket under an overhang lies on the frame and is as thick as the substrate round it: its top is level with it.",
    why: "A proud bracket lifts the counter, which then bears on a line and cracks; a low one leaves the overhang on nothing.",
    instead: "take a bar as thick as the substrate, pack a thinner one up to it, or thicken the substrate",
    origin: Origin::Geometry,
    concerns: Concern::Counter,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut found = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let own = |one: &&crate::solve::Support| one.leg == index && one.role == SupportRole::Bracket;
        // A leg's brackets are of one section: they are told together.
        let Some(bracket) = solved.shop.supports.members.iter().find(own) else { continue };
        let off = bracket.body.z.1 - leg.datums.substrate_top;
        if off == Length::ZERO {
            continue;
        }
        let (by, thick) = (solved.show.plain(off.abs()), solved.show.plain(solved.substrate.thickness));
        let (severity, end) = if off > Length::ZERO {
            (Severity::Warn, format!("stand {by} over it and lift the counter"))
        } else {
            (Severity::Note, format!("leave {by} between them and the counter past it"))
        };
        let message = format!("brackets of {} in a substrate of {thick} {end}", bracket.section);
        found.push(RULE.finding(severity, Subject::Leg(index), bracket.place.as_ref(), message, RULE.instead));
    }
    found
}
