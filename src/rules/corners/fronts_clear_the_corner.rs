//! A drawer or a door that runs into the other leg at an inside corner, or stands behind it.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::{Face, Fitting, JointKind, Leg, Look, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "fronts-clear-the-corner",
    severity: Severity::Stop,
    about: "What opens in a front near an inside corner clears the other leg's face and its pulls, and stands where it \
            can be reached.",
    why: "A drawer that meets the pulls of the other leg never opens, and that is found out when both are in.",
    instead: "put a filler between the corner and the front, or make it wider",
    origin: Origin::Geometry,
    concerns: Concern::Landing,
    limits: &[],
    needs: nothing,
    check,
};

/// How far a pull stands out of a front: 1 1/2 in, from memory, verify.
const PULL: Length = Length::from_sixty_fourths(96);
/// Clear space between a moving front and what it passes: 1/4 in, from memory, verify.
const PASS: Length = Length::from_sixty_fourths(16);

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for joint in &solved.joints {
        let JointKind::Corner(corner) = &joint.kind else { continue };
        if corner.turn <= 0.0 {
            continue;
        }
        for (own, other, at_right) in [(joint.left, joint.right, true), (joint.right, joint.left, false)] {
            let (leg, across) = (&solved.legs[own], &solved.legs[other]);
            for (_, fitting) in leg.on_face(Face::Front).filter(|(_, fitting)| opens(fitting.look)) {
                let beyond = |u: Length| if at_right { u - leg.datums.finished_right } else { -u };
                let (near, lap) =
                    if at_right { (fitting.right, fitting.flange.right) } else { (fitting.left, fitting.flange.left) };
                // Positive: this far short of the corner.
                let short = -beyond(near) - lap;
                let wanted = room(across, fitting, corner.turn, at_right);
                if short >= wanted {
                    continue;
                }
                let plain = |length| solved.show.plain(length);
                let behind = short < Length::ZERO;
                let message = if behind {
                    format!("{} reaches {} past the corner, behind leg {}", named(fitting), plain(-short), across.id)
                } else {
                    format!(
                        "{} is {} from the corner; to open past leg {} and its pulls it wants {}",
                        named(fitting),
                        plain(short),
                        across.id,
                        plain(wanted)
                    )
                };
                findings.push(RULE.finding(
                    if behind { Severity::Stop } else { Severity::Warn },
                    fitting.subject(),
                    fitting.place.as_ref(),
                    message,
                    format!("move it {} away from the corner, with a filler between", plain(wanted - short)),
                ));
            }
        }
    }
    findings
}

/// Whether a front moves when it is used.
fn opens(look: Look) -> bool {
    matches!(look, Look::Door { .. } | Look::Doors | Look::Drawers(_) | Look::WastePullOut | Look::Refrigerator)
}

/// How far from the corner a front has to be: the pulls of the other leg stand in its way where they are within its
/// travel, and at less than a right angle the other face itself comes nearer the farther the front is out.
fn room(across: &Leg, fitting: &Fitting, turn: f64, at_right: bool) -> Length {
    let travel = fitting.body.map_or(fitting.width(), |body| (body.v.1 - body.v.0).max(Length::ZERO));
    let near = |other: &Fitting| if at_right { other.left } else { across.datums.finished_right - other.right };
    let met = across.on_face(Face::Front).any(|(_, other)| opens(other.look) && near(other) < travel);
    let pull = if met { PULL } else { Length::ZERO };
    // A point d short of the corner and t out of the face lies d sin + t cos in front of the other face.
    let wanted = (PASS + pull).mm();
    let (sin, cos) = turn.sin_cos();
    Length::from_mm(((wanted - (travel.mm() * cos).min(0.0)) / sin).max(wanted))
}
