//! Board and finish that stand in the wet.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{FinishKind, Solved};
use crate::units::Length;

const VENEER: Limit = Limit::new("veneer", "2 in", "from stone veneer to paving");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cladding-clears-the-floor",
    severity: Severity::Warn,
    about: "Board and finish end over the floor's highest point; stone veneer 2 in over paving, and 4 in over soil.",
    why: "Board draws water up behind its finish, and frost takes it off. Base trim closes the gap, and can be renewed.",
    instead: "raise the frame on its feet, or end the finish higher behind the base trim",
    origin: Origin::Trade(
        "a cement board specification (1/4 in); the manufactured-veneer guide to ASTM C1780 (2 and 4 in)",
    ),
    concerns: Concern::Cladding,
    limits: &[VENEER],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let plain = |length| solved.show.plain(length);
    // As boards are laid: `boards.off_floor`.
    let board = solved.shop.cutting.laying.off_floor;
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let found = leg.datums.frame_bottom;
        let limit = |kind| if kind == FinishKind::Veneer { RULE.length(solved, &VENEER) } else { board };
        let low: Vec<_> = super::clad(leg).filter(|(_, _, _, finish)| found < limit(finish.kind)).collect();
        let Some((_, _, _, finish)) = low.first() else { continue };
        let faces: Vec<&str> = low.iter().map(|(_, word, _, _)| *word).collect();
        let wanted: Length = limit(finish.kind);
        let message = format!(
            "the {} of the {} ends {} over the floor's high point; {} is wanted",
            finish.name,
            faces.join(", "),
            plain(found),
            plain(wanted)
        );
        findings.push(RULE.finding(Severity::Warn, Subject::Leg(at), leg.place.as_ref(), message, RULE.instead));
    }
    findings
}
