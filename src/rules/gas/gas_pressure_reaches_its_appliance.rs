//! Too little pressure left at an appliance.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule};
use crate::solve::services::equation::Gas;
use crate::solve::{Solved, services};

const NATURAL: Limit = Limit::new("", "5 in wc", "natural gas at an appliance's inlet");
const PROPANE: Limit =
    Limit::new("propane", "10 in wc", "propane at an appliance's inlet (from memory: its manifold wants 10 to 11)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "gas-pressure-reaches-its-appliance",
    severity: Severity::Warn,
    about: "What the pipe loses on the way leaves an appliance the pressure that its regulator works from.",
    why: "Below its inlet pressure an appliance gives less heat than its rating and burns badly.",
    instead: "choose larger pipe, a lesser drop or a higher supply; the appliance's rating plate says what it wants",
    origin: Origin::Standard("2015 IRC appendix A.1 (IFGC A.1): about 5 in w.c. at a residential inlet"),
    concerns: Concern::Gas,
    limits: &[NATURAL, PROPANE],
    needs: super::unsaid,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let Some(services) = &solved.services else { return Vec::new() };
    let limit = if services.gas() == Some(Gas::Propane) { &PROPANE } else { &NATURAL };
    let wanted = RULE.number(solved, limit);
    let show = solved.show;
    let short = |appliance: &services::Appliance| {
        let pressure = appliance.pressure.filter(|pressure| *pressure < wanted)?;
        let subject = appliance.fitting.map_or(Subject::Services, |(leg, index)| Subject::Fitting(leg, index));
        let left = show.pressure(pressure.max(0.0));
        Some(RULE.finding(
            Severity::Warn,
            subject,
            appliance.place.as_ref(),
            format!(
                "{left} is left at {} ({}); {} is wanted there",
                appliance.name,
                appliance.id,
                show.pressure(wanted)
            ),
            "choose larger pipe on its way, or have the supply measured",
        ))
    };
    services.appliances.iter().filter_map(short).collect()
}
