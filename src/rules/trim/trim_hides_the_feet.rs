//! Base trim that leaves feet, or the edge of the board, to be seen.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "trim-hides-the-feet",
    severity: Severity::Warn,
    about: "The base trim laps over the foot of the board as far as it is to.",
    why: "Trim that ends short of the board shows the feet and lets leaves and mice under the run.",
    instead: "raise the top of the trim, or leave it out and let `trim.lap` decide",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(trim) = &solved.trim else { return Vec::new() };
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        if !solved.shop.trim.pieces.iter().any(|piece| piece.leg == at) {
            continue;
        }
        let lap = trim.top - leg.datums.frame_bottom;
        if lap < trim.lap {
            let wanted = leg.datums.frame_bottom + trim.lap;
            let message = if lap > Length::ZERO {
                format!(
                    "the {} laps {} over the board of leg {}; {} is wanted",
                    trim.name,
                    plain(lap),
                    leg.id,
                    plain(trim.lap)
                )
            } else {
                format!(
                    "the {} ends {} under the board of leg {} and leaves its feet to be seen",
                    trim.name,
                    plain(-lap),
                    leg.id
                )
            };
            findings.push(RULE.finding(
                Severity::Warn,
                Subject::Leg(at),
                trim.place.as_ref(),
                message,
                format!("write `top: \"{}\"` for the trim, or leave it out", plain(wanted)),
            ));
        }
    }
    findings
}
