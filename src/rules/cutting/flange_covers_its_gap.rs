//! A flange that may not reach over the edge of its cutout.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::stack::{Term, stack};
use crate::rules::{Concern, Rule, fittings, named, nothing};
use crate::solve::{Fitting, FittingKind, Leg, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "flange-covers-its-gap",
    severity: Severity::Stop,
    about: "A flange covers the edge of its cutout even when cut, finish and placing are all off at once.",
    why: "A cut can't be made smaller: where the flange falls short, a gap stays open for good.",
    instead: "cut closer, hold the finish to a smaller spread, or choose a smaller cutout",
    origin: Origin::CommonPractice,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (leg, fitting) in fittings(solved) {
        let (far, near) = match fitting.kind {
            FittingKind::Opening(_) => ("top", "bottom"),
            FittingKind::Notch | FittingKind::Well => ("back", "front"),
        };
        let laps = &fitting.flange;
        for (lap, side) in [(laps.left, "left"), (laps.right, "right"), (laps.far, far), (laps.near, near)] {
            if lap > Length::ZERO {
                findings.extend(side_finding(solved, leg, fitting, lap, side));
            }
        }
    }
    findings
}

/// What a lap may be off by. A notch is cut from the board's face, while its body hangs on the finished face:
/// only its back lap also loses what the finish stands off.
fn terms(solved: &Solved, leg: &Leg, fitting: &Fitting, lap: Length, side: &str) -> Vec<Term> {
    let off = |tolerance: Length| Term { factor: 1.0, nominal: 0.0, tolerance: tolerance.mm(), count: 1 };
    let mut terms = vec![Term { nominal: lap.mm(), ..off(solved.tolerances.cut) }, off(solved.tolerances.placing)];
    if fitting.kind == FittingKind::Notch && side == "back" {
        terms.extend(leg.finish(fitting.face).map(|finish| off(finish.spread)));
    }
    terms
}

fn side_finding(solved: &Solved, leg: &Leg, fitting: &Fitting, lap: Length, side: &str) -> Option<Finding> {
    let terms = terms(solved, leg, fitting, lap, side);
    let sum = stack(&terms);
    let least = solved.tolerances.least_cover;
    let (worst, rss) = (Length::from_mm(sum.nominal - sum.worst), Length::from_mm(sum.nominal - sum.rss));
    if worst >= least {
        return None;
    }
    let plain = |length| solved.show.plain(length);
    let with_finish = if terms.len() > 2 { ", finish" } else { "" };
    let said = |length: Length| {
        if length < Length::ZERO {
            format!("a gap of {}", plain(-length))
        } else {
            format!("a cover of {}", plain(length))
        }
    };
    let severity = if worst < Length::ZERO { Severity::Stop } else { Severity::Warn };
    Some(RULE.finding(
        severity,
        fitting.subject(),
        fitting.place.as_ref(),
        format!(
            "the {side} flange of {} laps {}: with cut{with_finish} and placing off at once (worst case) it leaves {}, \
             by root sum of squares {}; {} of cover is wanted",
            named(fitting),
            plain(lap),
            said(worst),
            said(rss),
            plain(least)
        ),
        format!("win {} by closer tolerances or a smaller cutout", plain(least - worst)),
    ))
}
