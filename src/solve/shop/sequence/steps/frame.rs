//! Frames set, levelled, joined and measured; what holds up and backs the rest.

use super::{PLAIN, Template, said};

const FRAMES: &str = "Weight: enough people, hands clear. A frame that isn\u{2019}t bolted to its neighbours tips, a narrow one (under a \
                      third of its height wide or deep) at a touch: prop it, or bolt it at once.";
const HOT_WORK: &str = "Hot work: where anything is welded, nothing that burns near, an extinguisher and a watch after; eyes and skin covered; zinc on \
                        galvanised tube makes poisonous fume: grind it off, fresh air, a mask for it.";

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "set-frames",
        name: "set the frames",
        after: &["mark-out", "gas-pipe", "power-cable", "water-pipe"],
        what: |run| match run.modules {
            1 => said("Set the module on its marks, the bare frame behind the finished-face line by its build-up."),
            count => format!(
                "Set all {count} modules on their marks, left to right, bare frames behind the finished-face line by their build-up."
            ),
        },
        why: "the finished face is where the line is, not the frame",
        caution: Some(FRAMES),
        ..PLAIN
    },
    Template {
        key: "level",
        name: "level the frames",
        after: &["set-frames"],
        needed: |run| run.feet > 0,
        what: |run| {
            let from =
                run.high.as_ref().map_or(said("the high point"), |id| format!("module {id}, which stands highest"));
            format!(
                "Set all {} feet to the heights of the feet schedule, from {from}, and check with a level both ways.",
                run.feet
            )
        },
        why: "a counter lies as its frames lie, and no later step can mend it",
        ..PLAIN
    },
    Template {
        key: "join-modules",
        name: "bolt the modules together",
        after: &["level"],
        needed: |run| run.modules > 1,
        what: |_| said("Bolt the modules together, fronts in one line and tops in one plane."),
        why: "boards and counter run over the joints between modules",
        ..PLAIN
    },
    Template {
        key: "join-corner",
        name: "close the corners",
        after: &["join-modules"],
        needed: |run| run.corners > 0,
        what: |run| {
            format!(
                "Check the angle of {} by its two lengths and its diagonal, then bolt the legs together.",
                if run.corners == 1 { said("the corner") } else { format!("all {} corners", run.corners) }
            )
        },
        why: "a corner that is out shows in every piece that turns it",
        ..PLAIN
    },
    Template {
        key: "check-frames",
        name: "measure the frames as they stand",
        after: &["level", "join-modules", "join-corner"],
        what: |_| {
            said("Measure frame ends, faces, tops and openings against the front elevation; write down what differs.")
        },
        why: "boards are cut to the frame that is there",
        ..PLAIN
    },
    Template {
        key: "supports",
        name: "set the supports",
        after: &["check-frames"],
        needed: |run| run.supports > 0,
        what: |run| format!("Set and fasten all {} supports where plan and sections show them.", run.supports),
        why: "no one reaches them once substrate and boards are on, and nothing is welded near a pipe",
        caution: Some(HOT_WORK),
        ..PLAIN
    },
    Template {
        key: "backing",
        name: "set the backing",
        after: &["check-frames"],
        needed: |run| run.backing > 0,
        what: |run| format!("Set the backing ({} lengths) behind every edge that a fitting screws to.", run.backing),
        why: "the substrate closes the way in from above, the boards the way in from the front",
        ..PLAIN
    },
];
