//! Gas and power in one bay.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Service, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "power-apart-from-gas",
    severity: Severity::Warn,
    about: "Gas and power come up in different bays.",
    why: "A leak and a spark should not share a bay, nor should a wrench and a cable.",
    instead: "bring one of them up in the next bay; outside, trenches for both keep 12 in where local code says so",
    origin: Origin::Trade("builders' guides"),
    concerns: Concern::WaterAndPower,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for (index, module) in leg.modules.iter().enumerate() {
            let here = |service| {
                leg.stubs.iter().find(|stub| stub.service == service && module.left <= stub.u && stub.u < module.right)
            };
            if let (Some(_), Some(power)) = (here(Service::Gas), here(Service::Power)) {
                let message = format!("gas and power come up in one bay, module {}", module.id);
                let place = power.place.as_ref();
                findings.push(RULE.finding(Severity::Warn, Subject::Module(at, index), place, message, RULE.instead));
            }
        }
    }
    findings
}
