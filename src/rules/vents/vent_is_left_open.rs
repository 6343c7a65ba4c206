//! A vent that something covers.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Limit, Rule, named, nothing};
use crate::solve::{BoundKind, Face, Solved};
use crate::units::Length;

const AIR: Limit = Limit::new("air", "2 in", "from a vent to what stands before it");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "vent-is-left-open",
    severity: Severity::Warn,
    about: "No base trim runs over a vent, and nothing stands close before one. The finish is cut out round it as the board is.",
    why: "A vent that is clad over or stands against a wall lets nothing through, and nobody sees it.",
    instead: "raise the vent over the trim, notch the trim, or move the vent to a free face",
    origin: Origin::CommonPractice,
    concerns: Concern::Vents,
    limits: &[AIR],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let air = RULE.length(solved, &AIR);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for leg in &solved.legs {
        for vent in super::vents(leg) {
            let mut tell = |message: String| {
                findings.push(RULE.finding(Severity::Warn, vent.subject(), vent.place.as_ref(), message, RULE.instead));
            };
            let bottom = vent.bottom.unwrap_or_default();
            if let Some(trim) = solved.trim.as_ref().filter(|trim| trim.top > bottom) {
                tell(format!("the {} covers the lower {} of {}", trim.name, plain(trim.top - bottom), named(vent)));
            }
            let d = &leg.datums;
            let (bound, room) = match vent.face {
                Face::Front => continue,
                Face::Left => (&leg.left, -leg.left.at),
                Face::Right => (&leg.right, leg.right.at - d.finished_right),
                Face::Back => (&leg.back, leg.back.at - d.finished_back),
            };
            let shut = bound.kind != BoundKind::Open && bound.height > bottom && room < air;
            if shut {
                let room = plain(room.max(Length::ZERO));
                tell(format!(
                    "{} opens onto {} at {room}; {} of air is wanted before it",
                    named(vent),
                    bound.name,
                    plain(air)
                ));
            }
        }
    }
    findings
}
