//! A run in which gas that leaks can gather.

use std::collections::BTreeSet;

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Limit, Rule};
use crate::solve::{Fitting, Leg, ModuleKind, Solved, services};
use crate::units::Length;

const BAND: Limit = Limit::new("band", "5 in", "from the top or the base of the enclosure to the vent");
const COUNT: Limit = Limit::new("count", "2", "vents at each level that is needed");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "gas-space-is-vented",
    severity: Severity::Stop,
    about: "The space behind the fronts has vents where the gas goes: high for natural gas, which rises, low for propane, which \
            sinks, both where the gas isn't known or may be changed; two at a level, apart from one another.",
    why: "Gas that leaks into a closed run waits there for a spark. No code sizes these vents; the appliance's manual does.",
    instead: "set vents at that level at both ends, or in front and back, or leave a bay open",
    origin: Origin::Trade(
        "grill manuals (openings of 10 sq in within 5 in of top and bottom) and builders' practice by fuel; the manual governs",
    ),
    concerns: Concern::Vents,
    limits: &[BAND, COUNT],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    let burning = solved.legs.iter().any(|leg| leg.fittings.iter().any(services::burns_gas));
    match &solved.services {
        Some(services) if burning && services.fuel.is_none() => {
            let instead = "write `fuel: natural_gas`, `propane` or `convertible`";
            vec![Lack::of_safety("services.fuel", Subject::Services, services.place.as_ref(), instead)]
        }
        _ => Vec::new(),
    }
}

fn check(solved: &Solved) -> Vec<Finding> {
    let cylinders = solved.services.iter().flat_map(|services| &services.cylinders);
    let bays: BTreeSet<(usize, usize)> = cylinders.map(|cylinder| (cylinder.leg, cylinder.module)).collect();
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let (rises, sinks) = super::gases(solved, leg);
        let open = |(index, module): (usize, &crate::solve::Module)| {
            module.kind == ModuleKind::OpenBay && !bays.contains(&(at, index))
        };
        if leg.modules.iter().enumerate().any(open) {
            continue;
        }
        let own: Vec<&Fitting> = super::vents(leg).filter(|vent| !bays.contains(&(at, vent.module))).collect();
        if rises && sinks && own.is_empty() {
            let message = format!(
                "leg {} has no vents, and its gas is not known or may be changed: it needs high and low ones",
                leg.id
            );
            let instead = "set two high and two low vents, at both ends or in front and back";
            findings.push(RULE.finding(Severity::Stop, Subject::Leg(at), leg.place.as_ref(), message, instead));
            continue;
        }
        let band = RULE.length(solved, &BAND);
        let within = |length: Length| length <= band;
        if rises {
            let high: Vec<&Fitting> = own.iter().copied().filter(|v| within(super::under_the_top(leg, v))).collect();
            findings.extend(level(solved, (at, leg), &high, "high", "natural gas rises"));
        }
        if sinks {
            let low: Vec<&Fitting> = own.iter().copied().filter(|v| within(super::over_the_base(leg, v))).collect();
            findings.extend(level(solved, (at, leg), &low, "low", "propane sinks"));
        }
    }
    findings
}

/// What is wrong with the vents at one level of a leg.
fn level(solved: &Solved, (at, leg): (usize, &Leg), vents: &[&Fitting], word: &str, reason: &str) -> Option<Finding> {
    let wanted = RULE.number(solved, &COUNT) as usize;
    let band = solved.show.plain(RULE.length(solved, &BAND));
    let of = if word == "high" { "under the counter" } else { "of the base" };
    let run = solved.services.as_ref().and_then(|services| services.fuel);
    let reason = if run.is_none_or(|fuel| fuel == crate::solve::Fuel::Convertible) {
        "the gas is not known, or may be changed".to_owned()
    } else {
        reason.to_owned()
    };
    let (severity, message) = match vents.len() {
        0 => (Severity::Stop, format!("leg {} has no {word} vent within {band} {of}; {reason}", leg.id)),
        count if count < wanted => {
            let message =
                format!("leg {} has {count} {word} vent within {band} {of}, {wanted} are wanted; {reason}", leg.id);
            (Severity::Warn, message)
        }
        _ if super::apart(leg, vents) => return None,
        _ => (
            Severity::Warn,
            format!("the {word} vents of leg {} lie together on one face: no air passes through", leg.id),
        ),
    };
    let place = leg.place.as_ref();
    let instead = format!("set {wanted} {word} vents, at both ends or in front and back");
    Some(RULE.finding(severity, Subject::Leg(at), place, message, instead))
}
