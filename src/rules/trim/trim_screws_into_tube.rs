//! Base trim without anything to screw to.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "trim-screws-into-tube",
    severity: Severity::Warn,
    about: "Every fastener of the base trim goes into tube behind the board.",
    why: "Cement board alone does not hold a screw; trim that is only glued comes off in frost.",
    instead: "add a rail behind the foot of the board, or raise the top of the trim so that it laps over one",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for piece in solved.shop.trim.pieces.iter().filter(|piece| !piece.into_frame || piece.fasteners.is_empty()) {
        let message = format!(
            "trim {} has no tube behind it at {} over the floor, where its fasteners go",
            piece.mark,
            plain(piece.fastener_z)
        );
        let place = solved.trim.as_ref().and_then(|trim| trim.place.as_ref());
        findings.push(RULE.finding(Severity::Warn, Subject::Leg(piece.leg), place, message, RULE.instead));
    }
    findings
}
