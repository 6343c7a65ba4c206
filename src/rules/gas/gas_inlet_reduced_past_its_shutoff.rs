//! A reduction to an appliance's inlet in the wrong place, or too much of one.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, named};
use crate::solve::services::{INCH_OF_WATER, equation, sizing};
use crate::solve::{PipeSize, Solved};
use crate::units::Length;

/// A connector whose length isn't given is taken at the longest that is allowed, 6 ft (2018 IFGC 411.1.3.1).
const LONGEST: Length = Length::from_sixty_fourths(72 * 64);

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "gas-inlet-reduced-past-its-shutoff",
    severity: Severity::Stop,
    about: "The pipe keeps its size up to the shutoff; it is reduced to the appliance's inlet only past it, and only if the \
            smaller size carries the appliance over its own length.",
    why: "A reduction before the shutoff is part of the house pipe and is sized with it.",
    instead: "keep the pipe's size up to the shutoff, and reduce at the connector",
    origin: Origin::Standard("2018 IFGC 402.4.1, 411.1.6"),
    concerns: Concern::Gas,
    limits: &[],
    needs: super::unsaid,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(services) = &solved.services else { return Vec::new() };
    let mut findings = Vec::new();
    for connection in &services.connections {
        let Some(fitting) = super::burners(solved).find(|fitting| fitting.id == connection.fitting) else {
            continue;
        };
        let last = services.pipe.iter().find(|segment| segment.to == connection.fitting);
        let pipe: Option<PipeSize> = last.and_then(|segment| segment.installed.or(segment.needed));
        let (Some(inlet), Some(pipe)) = (connection.inlet, pipe) else { continue };
        if inlet >= pipe {
            continue;
        }
        let place = connection.place.as_ref();
        let (small, large) = (inlet.words(), pipe.words());
        if connection.shutoff.is_none() {
            let message =
                format!("{} is reduced from {large} to {small}, and no shutoff stands before that", named(fitting));
            findings.push(RULE.finding(Severity::Warn, fitting.subject(), place, message, RULE.instead));
        }
        let (Some(gas), Some(drop), Some(heat)) = (services.gas(), services.drop, fitting.heat) else { continue };
        let length = sizing::feet(connection.connector.unwrap_or(LONGEST));
        let own = services.heat_of(equation::capacity(gas, inlet, length, drop / INCH_OF_WATER));
        let carries = connection.rated.unwrap_or(own);
        if carries < heat {
            let (carries, heat) = (solved.show.heat(carries), solved.show.heat(heat));
            findings.push(RULE.finding(
                Severity::Stop,
                fitting.subject(),
                place,
                format!(
                    "the {small} inlet of {} carries {carries} over its connector; the appliance burns {heat}",
                    named(fitting)
                ),
                format!("keep {large} up to the appliance, or shorten the connector"),
            ));
        }
    }
    findings
}
