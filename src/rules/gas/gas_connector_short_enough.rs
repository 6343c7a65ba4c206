//! A connector too long, or too weak for its appliance.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Lack, Limit, Rule, named};
use crate::solve::Solved;

const LONGEST: Limit = Limit::new("", "6 ft", "length of a connector");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "gas-connector-short-enough",
    severity: Severity::Stop,
    about: "Each gas appliance hangs on one connector, no longer than 6 ft and rated for its full input.",
    why: "A connector is the weakest part of the way and is made for short ones. It passes through no wall of the run.",
    instead: "bring the pipe and its shutoff nearer, or choose a connector that is rated for the input",
    origin: Origin::Standard("2018 IFGC 411.1.3.1 and 411.1.6"),
    concerns: Concern::Gas,
    limits: &[LONGEST],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    let Some(services) = &solved.services else { return super::unsaid(solved) };
    let of = |id: &str| services.connections.iter().find(|connection| connection.fitting == id);
    let without = super::burners(solved).filter(|fitting| of(&fitting.id).is_some_and(|c| c.connector.is_none()));
    without
        .map(|fitting| {
            let place = of(&fitting.id).and_then(|connection| connection.place.as_ref());
            let instead = "write `connector: \"3 ft\"` in its connection";
            Lack::of_safety("services.connections.connector", fitting.subject(), place, instead)
                .for_what(named(fitting))
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(services) = &solved.services else { return Vec::new() };
    let longest = RULE.length(solved, &LONGEST);
    let show = solved.show;
    let mut findings = Vec::new();
    for connection in &services.connections {
        let fitting = super::burners(solved).find(|fitting| fitting.id == connection.fitting);
        let Some(fitting) = fitting else { continue };
        let place = connection.place.as_ref();
        let mut tell = |message: String, instead: &str| {
            findings.push(RULE.finding(Severity::Stop, fitting.subject(), place, message, instead));
        };
        if let Some(length) = connection.connector.filter(|length| *length > longest) {
            let (length, longest) = (show.way(length), show.way(longest));
            tell(format!("the connector of {} is {length} long; {longest} is the most", named(fitting)), RULE.instead);
        }
        if let (Some(rated), Some(heat)) = (connection.rated, fitting.heat)
            && rated < heat
        {
            let (rated, heat) = (show.heat(rated), show.heat(heat));
            tell(
                format!("the connector of {} is rated for {rated}; the appliance burns {heat}", named(fitting)),
                "choose a connector that is rated for the full input",
            );
        }
    }
    findings
}
