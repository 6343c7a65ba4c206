//! A sink that nothing leads to or from.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, fittings, named, nothing};
use crate::solve::{Look, Service, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "sink-has-water-and-drain",
    severity: Severity::Warn,
    about: "Where there is a sink, water comes up in the run and a drain goes down.",
    why: "A drain needs fall all the way, 1/4 in a foot for small pipe (from memory), and can't be added under a finished terrace. \
          The plumber also asks where the supply is shut off and emptied before frost.",
    instead: "write where water and drain come up, under `stubs`, and ask the plumber about fall, trap, vent and frost",
    origin: Origin::CommonPractice,
    concerns: Concern::WaterAndPower,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let dry = fittings(solved).filter(|(_, fitting)| fitting.look == Look::Sink).filter_map(|(leg, fitting)| {
        let has = |service| leg.stubs.iter().any(|stub| stub.service == service);
        let what = match (has(Service::Water), has(Service::Drain)) {
            (true, true) => return None,
            (true, false) => "no drain goes down",
            (false, true) => "no water comes up",
            (false, false) => "neither water comes up nor a drain goes down",
        };
        let message = format!("{what} in leg {} for {}", leg.id, named(fitting));
        Some(RULE.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, RULE.instead))
    });
    dry.collect()
}
