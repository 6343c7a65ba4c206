//! Before anything stands: marks on the ground, fittings unpacked, pipes and cable brought up.

use super::{GAS, PLAIN, POWER, Template, marks, said};
use crate::solve::Doer::{Electrician, GasFitter, Plumber};

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "mark-out",
        name: "mark out the run",
        what: |run| {
            let high = run.high.as_ref().map_or(String::new(), |id| format!("; the high point lies under module {id}"));
            format!("Mark the finished face and both finished ends on the ground, and find its high point{high}.")
        },
        why: "every length of the drawings starts at these lines, every height at that point",
        ..PLAIN
    },
    Template {
        key: "check-fittings",
        name: "unpack and measure the fittings",
        needed: |run| !run.fittings.is_empty(),
        what: |run| {
            format!(
                "Unpack {}, check them against the order, and fill in the measure-twice sheet.",
                marks(&run.fittings)
            )
        },
        why: "sheets are revised and boxes are mixed up; a cut is for good",
        ..PLAIN
    },
    Template {
        key: "gas-pipe",
        name: "gas pipe to the run, capped",
        who: GasFitter,
        after: &["mark-out"],
        needed: |run| run.gas,
        what: |_| said("Have the gas pipe brought up where the plan shows it, with its shutoff, and capped."),
        why: "what comes up through the ground has to be there before a frame stands over it",
        caution: Some(GAS),
        ..PLAIN
    },
    Template {
        key: "power-cable",
        name: "cable to the run",
        who: Electrician,
        after: &["mark-out"],
        needed: |run| run.power,
        what: |_| said("Have the cable brought up where the plan shows it, in conduit, dead and capped."),
        why: "what comes up through the ground has to be there before a frame stands over it",
        caution: Some(POWER),
        ..PLAIN
    },
    Template {
        key: "water-pipe",
        name: "water and drain to the run",
        who: Plumber,
        after: &["mark-out"],
        needed: |run| run.water,
        what: |_| said("Have water and drain brought up where the plan shows them, and closed."),
        why: "what comes up through the ground has to be there before a frame stands over it",
        ..PLAIN
    },
];
