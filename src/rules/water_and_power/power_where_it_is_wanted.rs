//! An appliance without electricity, or a receptacle out of place.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, fittings, named, nothing};
use crate::solve::{Look, Service, Solved};

const HIGHEST: Limit = Limit::new("", "78 in", "highest receptacle over the ground");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "power-where-it-is-wanted",
    severity: Severity::Warn,
    about: "What needs electricity has it in its leg, on a receptacle that is reached, protected by a ground-fault interrupter, \
            weather-resistant and under an in-use cover.",
    why: "A cord over a wet terrace is the other way.",
    instead: "write where power comes up, under `stubs`; a licensed electrician places and protects it, and bonds metal that has to be",
    origin: Origin::Trade("NEC 210.52(E), 210.8(A)(3) as quoted in trade pages; 406.9 from memory"),
    concerns: Concern::WaterAndPower,
    limits: &[HIGHEST],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let highest = RULE.length(solved, &HIGHEST);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    let hungry =
        fittings(solved).filter(|(_, fitting)| fitting.look == Look::Refrigerator || fitting.needs.power.is_some());
    for (leg, fitting) in hungry {
        if !leg.stubs.iter().any(|stub| stub.service == Service::Power) {
            let message = format!("no power comes up in leg {} for {}", leg.id, named(fitting));
            findings.push(RULE.finding(
                Severity::Warn,
                fitting.subject(),
                fitting.place.as_ref(),
                message,
                RULE.instead,
            ));
        }
    }
    for (at, leg) in solved.legs.iter().enumerate() {
        for stub in leg.stubs.iter().filter(|stub| stub.service == Service::Power) {
            if let Some(z) = stub.z.filter(|z| *z > highest) {
                let message = format!("power comes up to {}; {} is the highest", plain(z), plain(highest));
                findings.push(RULE.finding(
                    Severity::Warn,
                    Subject::Leg(at),
                    stub.place.as_ref(),
                    message,
                    RULE.instead,
                ));
            }
        }
    }
    findings
}
