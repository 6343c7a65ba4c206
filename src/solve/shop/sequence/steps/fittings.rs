//! Fittings hung and set, connected, tested and closed in.

use super::{GAS, PLAIN, POWER, Template, WEIGHT, marks, said};
use crate::solve::Doer::{Electrician, GasFitter, Plumber};

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "hang-notches",
        name: "hang what hangs through the front",
        after: &["set-counter", "raised-counter", "join-seams", "splash", "seal-counter", "check-fittings"],
        needed: |run| !run.notches.is_empty(),
        what: |run| {
            let liner = if run.liner { ", the liner first" } else { "" };
            let arms = if run.on_arms.is_empty() {
                String::new()
            } else {
                format!("; {} on the support arms, not on the counter", marks(&run.on_arms))
            };
            format!("Hang {}{liner}{arms}; check clearances against the manual.", marks(&run.notches))
        },
        why: "its flange laps over the counter, which has to lie and be sealed first",
        caution: Some(WEIGHT),
        ..PLAIN
    },
    Template {
        key: "set-wells",
        name: "set what lies in the counter",
        after: &["set-counter", "raised-counter", "join-seams", "splash", "seal-counter", "check-fittings"],
        needed: |run| !run.wells.is_empty(),
        what: |run| format!("Set {} in the counter.", marks(&run.wells)),
        why: "the counter carries them, and their pipes are still reached from the front",
        ..PLAIN
    },
    Template {
        key: "gas-connect",
        name: "connect the gas",
        who: GasFitter,
        after: &["hang-notches", "set-wells", "gas-test"],
        needed: |run| !run.burners.is_empty(),
        what: |run| {
            let from = if run.cylinders { ", regulator and cylinder last" } else { "" };
            format!("Have {} connected through their own shutoffs{from}.", marks(&run.burners))
        },
        why: "they hang where they stay, and nothing is in the way of a hand",
        caution: Some(GAS),
        ..PLAIN
    },
    Template {
        key: "leak-test",
        name: "leak test",
        who: GasFitter,
        after: &["gas-connect"],
        needed: |run| !run.burners.is_empty(),
        what: |_| said("Have every joint tested for leaks under working pressure, and the test written down."),
        why: "doors and drawers close the fittings in next",
        origin: "common practice; the appliances\u{2019} manuals and the code in force say how",
        caution: Some("Gas: never with a flame. No smoking, no sparks, shutoffs closed until it is tight."),
        ..PLAIN
    },
    Template {
        key: "power-connect",
        name: "connect the power",
        who: Electrician,
        after: &["hang-notches", "set-wells", "power-branches", "set-counter", "fix-boards"],
        needed: |run| run.power,
        what: |_| said("Have outlets and what is wired connected, behind a ground-fault device."),
        why: "boards and counter are on, so that covers sit where they stay",
        caution: Some(POWER),
        ..PLAIN
    },
    Template {
        key: "power-test",
        name: "electrical test",
        who: Electrician,
        after: &["power-connect"],
        needed: |run| run.power,
        what: |_| said("Have earth, insulation and the ground-fault device tested, and the test written down."),
        why: "before anything is plugged in or closed in",
        origin: "common practice; the code in force says how",
        caution: Some(POWER),
        ..PLAIN
    },
    Template {
        key: "water-connect",
        name: "connect the water and fill",
        who: Plumber,
        after: &["set-wells", "water-branches"],
        needed: |run| run.water,
        what: |_| said("Have taps, trap and drain connected; fill, empty, and feel every joint."),
        why: "a drip is found while the front is open",
        ..PLAIN
    },
    Template {
        key: "set-vents",
        name: "set the vents",
        after: &["check-face", "fix-boards"],
        needed: |run| !run.vents.is_empty(),
        what: |run| format!("Set {}, and see that nothing behind or before them closes them.", marks(&run.vents)),
        why: "they sit on the finished face, and no gas is let in before they are open",
        ..PLAIN
    },
    Template {
        key: "set-fronts",
        name: "set doors, drawers, panels",
        after: &[
            "check-face",
            "fix-boards",
            "set-counter",
            "leak-test",
            "power-test",
            "water-connect",
            "check-fittings",
        ],
        needed: |run| !run.fronts.is_empty(),
        what: |run| format!("Set {} in their openings, screwed to the backing.", marks(&run.fronts)),
        why: "what they close in is connected and tested",
        ..PLAIN
    },
];
