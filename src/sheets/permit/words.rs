//! What the sizes rest on, what can hurt someone, and who decides.

use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::solve::services::equation::Gas;
use crate::solve::{Bends, Look, Service, services};

fn note(lead: &str, text: impl Into<String>) -> (String, String) {
    (lead.to_owned(), text.into())
}

/// Fittings in a segment: `4 elbows, 1 tee`.
pub fn bends(bends: &Bends) -> String {
    let one = |count: u16, one: &str, many: &str| match count {
        0 => None,
        1 => Some(format!("1 {one}")),
        count => Some(format!("{count} {many}")),
    };
    let parts = [
        one(bends.elbows, "elbow", "elbows"),
        one(bends.elbows_45, "45\u{b0} elbow", "45\u{b0} elbows"),
        one(bends.tees, "tee", "tees"),
        one(bends.bends_180, "180\u{b0} bend", "180\u{b0} bends"),
    ];
    parts.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// Adds what the pipe's sizes rest on.
pub fn sizing(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let Some(services) = &set.solved.services else { return };
    if services.pipe.is_empty() {
        return;
    }
    let show = super::reading(set);
    let or = |value: Option<f64>| value.map_or_else(|| "not given".to_owned(), |value| show.pressure(value));
    let fuel = services.fuel.map_or("gas not given", |fuel| fuel.words());
    let mut notes = vec![note(
        "Gas",
        format!(
            "{fuel}, supply {}, allowed drop {} to the farthest appliance.",
            or(services.supply),
            or(services.drop)
        ),
    )];
    if let Some(gas) = services.gas() {
        notes.push(note(
            "Taken",
            format!(
                "{:.0} Btu in a cubic foot, gravity {:.2}, schedule 40 steel pipe, everything burning at once.",
                services.heating_value,
                gas.gravity()
            ),
        ));
    }
    if let Some(demand) = services.demand() {
        notes.push(note("Demand", format!("{} in all.", show.heat(demand))));
    }
    if services.longest > 0.0 {
        notes.push(note(
            "Method",
            format!(
                "longest length: every part by the {:.0} ft to the farthest appliance, fittings counted at their equivalent \
                 length; low-pressure equation of the 2018 IFGC, appendix A.4.",
                services.longest
            ),
        ));
    }
    if services.gas() == Some(Gas::Propane) && services.longest > 60.0 {
        notes.push(note(
            "Propane",
            "past 60 ft the sizes are computed from the code\u{2019}s equation. Rows 80 and 100 ft of its table 402.4(28) carry 6 and \
             11 % more than that equation, and are not followed.",
        ));
    }
    notes.push(note(
        "Checked by",
        "a licensed gas fitter, by the table of the code that holds here, before pipe is bought.",
    ));
    flow.notes("What the sizes rest on", &notes);
}

/// Adds the cautions.
pub fn cautions(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let legs = &set.solved.legs;
    let has = |service: Service| legs.iter().any(|leg| leg.stubs.iter().any(|stub| stub.service == service));
    let fitted = |is: fn(&crate::solve::Fitting) -> bool| legs.iter().any(|leg| leg.fittings.iter().any(is));
    let gas = fitted(services::burns_gas);
    let sink = fitted(|fitting| fitting.look == Look::Sink);
    let power =
        has(Service::Power) || fitted(|fitting| fitting.needs.power.is_some() || fitting.look == Look::Refrigerator);
    let mut notes = vec![note(
        "Who decides",
        "local code, each appliance\u{2019}s listing and manual, and licensed trades. This sheet says what was worked out and from \
         what; it replaces none of them.",
    )];
    if gas {
        notes.push(note(
            "Gas",
            "test every joint under pressure and again with leak solution before anything is closed; never with a flame. Thread \
             sealant listed for the gas, on male threads only; none on flare fittings.",
        ));
        notes.push(note(
            "Vents",
            "free area, not face size. Trim, veneer and mesh must not close them; no opening of a cylinder bay leads into a grill\u{2019}s \
             space. The appliance\u{2019}s manual gives their size.",
        ));
    }
    if fitted(|fitting| fitting.heat.is_some()) {
        notes.push(note(
            "Heat",
            "wood behind stone or stucco counts as wood. Distances are the manual\u{2019}s, measured on site.",
        ));
    }
    if power {
        notes.push(note(
            "Power",
            "for the electrician: ground-fault protection outdoors (NEC 210.8), receptacles no higher than 6 1\u{2044}2 ft (210.52(E)), \
             weather-resistant with in-use covers (406.9), bonding of metal, near a pool (680). Verify in the edition that holds.",
        ));
    }
    if sink || has(Service::Water) || has(Service::Drain) {
        notes.push(note(
            "Water",
            "for the plumber: fall of the drain all the way (1\u{2044}4 in a foot for small pipe, verify), trap and vent, backflow, a \
             shutoff and a low point to empty before frost.",
        ));
    }
    notes.push(note(
        "Weight",
        "weights are worked out, not weighed. Lift slabs on edge, notches clamped, with enough people or a machine.",
    ));
    notes.push(note(
        "Dust",
        "cutting board, stone and concrete frees silica: wet or with suction, masked, away from others.",
    ));
    flow.notes("Cautions", &notes);
}
