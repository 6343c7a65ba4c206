//! Lengths of base trim that meet over nothing, or at a notch.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Solved, TrimEnd};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "trim-joint-is-backed",
    severity: Severity::Warn,
    about: "Lengths of base trim meet over tube and off notches.",
    why: "A joint over nothing works open and its edges stand proud; one at a notch breaks there.",
    instead: "buy longer lengths and write them as `stock` of the trim, or add an upright where the joint falls",
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
    for piece in &solved.shop.trim.pieces {
        let Some(leg) = solved.legs.get(piece.leg) else { continue };
        let mut tell = |message: String| {
            let place = trim.place.as_ref();
            findings.push(RULE.finding(Severity::Warn, Subject::Leg(piece.leg), place, message, RULE.instead));
        };
        // Each joint is told of once, by the piece that ends there.
        if piece.ends[1] == TrimEnd::Joint(false) {
            tell(format!(
                "trim {} ends at {} along leg {} without tube behind the joint",
                piece.mark,
                plain(piece.to),
                leg.id
            ));
        }
        for (end, at) in [(piece.ends[0], piece.from), (piece.ends[1], piece.to)] {
            let near =
                |notch: &&crate::solve::TrimNotch| at > notch.from - trim.joint_off && at < notch.to + trim.joint_off;
            if let (TrimEnd::Joint(_), Some(notch)) = (end, piece.notches.iter().find(near)) {
                let mark = leg.fittings.get(notch.fitting).map_or("a fitting", |fitting| fitting.mark.as_str());
                tell(format!("trim {} meets the next length at its notch for {mark}", piece.mark));
            }
        }
    }
    findings
}
