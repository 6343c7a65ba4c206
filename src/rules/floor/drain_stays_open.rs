//! A drain that the run stands on or shuts in.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{Face, Leg, Look, ModuleKind, Service, Solved};
use crate::units::Length;

const CLEAR: Limit = Limit::new("", "3 in", "from the middle of a drain to the middle of a foot");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "drain-stays-open",
    severity: Severity::Warn,
    about: "No foot stands on a drain, and a drain under the run can be reached through a front that opens.",
    why: "A drain that can't be cleaned stops, and the terrace drains into the run.",
    instead: "move the module's edges so that no foot meets it, and set a door or panel before it; notch base trim where water runs",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[CLEAR],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let clear = RULE.length(solved, &CLEAR);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let gullies = solved.around.drains.iter().filter(|(of, _, _)| *of == at).map(|&(_, u, v)| (u, v, false));
        let stubs = leg.stubs.iter().filter(|stub| stub.service == Service::Drain).map(|stub| (stub.u, stub.v, true));
        for (u, v, pipe) in gullies.chain(stubs) {
            let away = |foot: &crate::solve::Foot| Length::from_mm((foot.u - u).mm().hypot((foot.v - v).mm()));
            if let Some((index, foot)) = leg.feet.iter().enumerate().min_by_key(|(_, foot)| away(foot))
                && away(foot) < clear
            {
                let message = format!(
                    "a foot stands {} from the drain at {}; {} is wanted",
                    plain(away(foot)),
                    plain(u),
                    plain(clear)
                );
                findings.push(RULE.finding(
                    Severity::Warn,
                    Subject::Foot(at, index),
                    leg.place.as_ref(),
                    message,
                    RULE.instead,
                ));
            }
            if !pipe && shut_in(leg, u, v) {
                let message = format!("nothing opens before the drain at {} under leg {}", plain(u), leg.id);
                findings.push(RULE.finding(
                    Severity::Warn,
                    Subject::Leg(at),
                    leg.place.as_ref(),
                    message,
                    RULE.instead,
                ));
            }
        }
    }
    findings
}

/// Whether a place under the run has no front before it that opens.
fn shut_in(leg: &Leg, u: Length, v: Length) -> bool {
    let d = &leg.datums;
    if v < Length::ZERO || v > d.finished_back {
        return false;
    }
    let Some(at) = leg.modules.iter().position(|module| module.left <= u && u < module.right) else { return false };
    let opens = |look| matches!(look, Look::Door { .. } | Look::Doors | Look::Panel | Look::Refrigerator);
    let front =
        |f: &crate::solve::Fitting| f.module == at && opens(f.look) && matches!(f.face, Face::Front | Face::Back);
    leg.modules[at].kind != ModuleKind::OpenBay && !leg.fittings.iter().any(front)
}
