//! A cylinder beside the fire.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::hot::is_hot;
use crate::rules::{Concern, Lack, Rule};
use crate::solve::{Cylinder, Leg, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cylinder-bay-apart-from-heat",
    severity: Severity::Stop,
    about: "A tight partition parts a cylinder bay from the space under a hot appliance: no opening of the bay leads into it.",
    why: "Gas from a leaking valve must leave the run without passing the burners.",
    instead: "close the bay with a tight wall on that side and write `partition: true`, or move the cylinder",
    origin: Origin::Trade("grill manuals quoting the outdoor-appliance standard (Z21.58 family)"),
    concerns: Concern::Vents,
    limits: &[],
    needs,
    check,
};

/// Cylinders in or beside a hot module: whether they share it, and what the job says of a partition.
fn near(solved: &Solved) -> impl Iterator<Item = (&Cylinder, &Leg, bool)> {
    let cylinders = solved.services.iter().flat_map(|services| &services.cylinders);
    cylinders.filter_map(|cylinder| {
        let leg = solved.legs.get(cylinder.leg)?;
        let apart = leg.fittings.iter().filter(|f| is_hot(f)).map(|f| f.module.abs_diff(cylinder.module)).min()?;
        (apart <= 1).then_some((cylinder, leg, apart == 0))
    })
}

fn needs(solved: &Solved) -> Vec<Lack> {
    let unsaid = near(solved).filter(|(cylinder, _, same)| cylinder.partition.is_none() && !same);
    unsaid
        .map(|(cylinder, leg, _)| {
            let subject = Subject::Module(cylinder.leg, cylinder.module);
            let instead = "write `partition: true` when a tight wall parts the bay from its neighbours";
            let module = leg.modules.get(cylinder.module).map_or("", |module| module.id.as_str());
            Lack::of_safety("services.cylinders.partition", subject, cylinder.place.as_ref(), instead)
                .for_what(format!("bay {module}"))
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let open = near(solved).filter(|(cylinder, _, same)| match cylinder.partition {
        Some(parted) => !parted,
        None => *same,
    });
    open.map(|(cylinder, leg, same)| {
        let subject = Subject::Module(cylinder.leg, cylinder.module);
        let module = leg.modules.get(cylinder.module).map_or("", |module| module.id.as_str());
        let place = cylinder.place.as_ref();
        let which = if same { "stands under a hot appliance" } else { "stands beside a hot appliance" };
        let message = format!("the cylinder in {module} {which}, and no partition is between them");
        RULE.finding(Severity::Stop, subject, place, message, RULE.instead)
    })
    .collect()
}
