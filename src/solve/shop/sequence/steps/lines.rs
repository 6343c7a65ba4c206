//! Pipes and cables inside the run, tested while it is open.

use super::{GAS, PLAIN, POWER, Template, marks, said};
use crate::solve::Doer::{Electrician, GasFitter, Plumber};

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "gas-branches",
        name: "gas pipe inside the run",
        who: GasFitter,
        after: &["supports", "backing", "gas-pipe", "check-frames"],
        needed: |run| !run.burners.is_empty(),
        what: |run| {
            format!(
                "Have pipe and a shutoff of its own run to {}, each where a door or a panel opens to it.",
                marks(&run.burners)
            )
        },
        why: "the run is still open from above and in front, and all welding is done",
        caution: Some(GAS),
        ..PLAIN
    },
    Template {
        key: "gas-test",
        name: "pressure test of the pipe",
        who: GasFitter,
        after: &["gas-branches", "gas-pipe"],
        needed: |run| run.gas,
        what: |_| said("Have all pipe tested under pressure, appliances off it, and the test written down."),
        why: "a leak behind a board can\u{2019}t be found nor mended",
        origin: "common practice; the code in force says how",
        caution: Some(GAS),
        ..PLAIN
    },
    Template {
        key: "power-branches",
        name: "cable and boxes inside the run",
        who: Electrician,
        after: &["supports", "backing", "power-cable", "check-frames"],
        needed: |run| run.power,
        what: |_| said("Have conduit, boxes and cable set inside the run, away from gas and from hot bodies."),
        why: "the run is still open from above and in front",
        caution: Some(POWER),
        ..PLAIN
    },
    Template {
        key: "water-branches",
        name: "pipes inside the run",
        who: Plumber,
        after: &["supports", "backing", "water-pipe", "check-frames"],
        needed: |run| run.water,
        what: |_| said("Have pipes, trap and shutoffs set inside the run, and tested with water."),
        why: "the run is still open from above and in front",
        ..PLAIN
    },
];
