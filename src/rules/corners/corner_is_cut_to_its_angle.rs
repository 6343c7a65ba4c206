//! A corner that isn't square: what has to be cut to its angle, and by how much.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Face, JointKind, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "corner-is-cut-to-its-angle",
    severity: Severity::Note,
    about: "At a corner that is not square the boards' meeting edges are bevelled, and counter and substrate are cut to \
            the measured angle.",
    why: "A board cut square gapes at the corner, and a counter cut square leaves the wall by an inch over its length.",
    instead: "set the saw to the angle, and check it with the diagonals on the counter sheet",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

/// A twentieth of a degree: less than a saw's scale tells.
const SQUARE: f64 = 0.05;

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for joint in &solved.joints {
        let JointKind::Corner(corner) = &joint.kind else { continue };
        let angle = 180.0 - corner.turn.abs().to_degrees();
        if (angle - 90.0).abs() < SQUARE {
            continue;
        }
        let boards: Vec<String> = [(joint.left, 1), (joint.right, 0)]
            .into_iter()
            .flat_map(|(leg, side)| solved.legs[leg].boards.iter().map(move |board| (board, side)))
            .filter(|(board, side)| board.face == Face::Front && board.bevels[*side].abs() > 1e-6)
            .map(|(board, side)| {
                let longer = if board.bevels[side] > 0.0 { "outside" } else { "inside" };
                format!(
                    "{} ({:.1} degrees off square, {longer} longer)",
                    board.name,
                    board.bevels[side].abs().to_degrees()
                )
            })
            .collect();
        let (left, right) = (&solved.legs[joint.left], &solved.legs[joint.right]);
        let and =
            if boards.is_empty() { String::new() } else { format!(" The boards' edges there: {}.", boards.join(", ")) };
        findings.push(RULE.finding(
            Severity::Note,
            Subject::Leg(joint.right),
            joint.place.as_ref(),
            format!("legs {} and {} meet at {angle:.1} degrees between their finished faces.{and}", left.id, right.id),
            "measure the angle again on the frames before boards and counter are cut",
        ));
    }
    findings
}
