//! A body too big for the hole that it has to go through.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::stack::{Term, stack};
use crate::rules::{Concern, Rule, fittings, named, nothing};
use crate::solve::{BodyBox, Face, Fitting, FittingKind, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "body-passes-its-cutout",
    severity: Severity::Stop,
    about: "A fitting's body goes through its cutout, even when the cut comes out small by its tolerance.",
    why: "A cutout and a body are often read off different lines of a sheet, or off different sheets.",
    instead: "check the cutout and the body on the fitting in hand",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (_, fitting) in fittings(solved) {
        let Some(body) = &fitting.body else { continue };
        for (name, hole, size) in sides(fitting, body) {
            // Both edges of the cut may be off.
            let off = Term { factor: 1.0, nominal: 0.0, tolerance: solved.tolerances.cut.mm(), count: 2 };
            let play = stack(&[Term { nominal: (hole - size).mm(), tolerance: 0.0, count: 1, ..off }, off]);
            let least = Length::from_mm(play.nominal - play.worst);
            if least >= Length::ZERO {
                continue;
            }
            let severity = if size > hole { Severity::Stop } else { Severity::Warn };
            findings.push(RULE.finding(
                severity,
                fitting.subject(),
                fitting.place.as_ref(),
                format!(
                    "the body of {} is {} in {name}, its cutout {}: {} of play, in the worst case {}; none below 0 is wanted",
                    named(fitting),
                    plain(size),
                    plain(hole),
                    plain(hole - size),
                    plain(least)
                ),
                format!("make the cutout {} greater in {name}, or measure the body again", plain(-least)),
            ));
        }
    }
    findings
}

/// The sides in which a body has to pass: (name, size of the cutout, size of the body). A bowl that is hung from under
/// the counter, a well without a flange, doesn't pass through it. A bay that reaches the floor is open below.
fn sides(fitting: &Fitting, body: &BodyBox) -> Vec<(&'static str, Length, Length)> {
    let size = |(low, high): (Length, Length)| high - low;
    let flange = fitting.flange;
    let hung = [flange.left, flange.right, flange.far, flange.near].iter().any(|lap| *lap > Length::ZERO);
    let along = if matches!(fitting.face, Face::Left | Face::Right) { size(body.v) } else { size(body.u) };
    let width = ("width", fitting.width(), along);
    match (fitting.kind, fitting.front, fitting.back) {
        (FittingKind::Well, _, _) if !hung => Vec::new(),
        (FittingKind::Well, Some(front), Some(back)) => vec![width, ("depth", back - front, size(body.v))],
        (FittingKind::Notch, _, Some(back)) => vec![width, ("depth", back, body.v.1)],
        (FittingKind::Opening(_), ..) => {
            let mut sides = vec![width];
            if let (Some(bottom), Some(top), false) = (fitting.bottom, fitting.top, fitting.to_floor) {
                sides.push(("height", top - bottom, size(body.z)));
            }
            sides
        }
        _ => Vec::new(),
    }
}
