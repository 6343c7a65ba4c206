//! Boards and substrate, measured twice, cut and fixed.

use super::{DUST, PLAIN, Template, said};

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "measure-boards",
        name: "measure twice for the boards",
        after: &["check-frames", "check-fittings"],
        needed: |run| run.boards > 0,
        what: |_| {
            said(
                "Measure every opening from the bare frame and from the board\u{2019}s own edge; compare with the board templates.",
            )
        },
        why: "the finished face is not there yet: the columns \u{201c}from board\u{201d} and \u{201c}from frame\u{201d} are the ones to use",
        ..PLAIN
    },
    Template {
        key: "cut-boards",
        name: "cut the boards",
        after: &["measure-boards"],
        needed: |run| run.boards > 0,
        what: |run| format!("Cut the {} boards with their openings, and label each piece.", run.boards),
        why: "they are cut to what was measured",
        caution: Some(DUST),
        ..PLAIN
    },
    Template {
        key: "lay-bottoms",
        name: "cut and lay the bottoms",
        after: &["check-frames", "supports", "backing", "gas-test", "power-branches", "water-branches"],
        needed: |run| run.bottoms > 0,
        what: |run| {
            let all = if run.bottoms == 1 { said("the bottom") } else { format!("the {} bottoms", run.bottoms) };
            format!("Cut {all} of the modules round what comes up through the ground, label and lay each.")
        },
        why: "pipes and cables are where they stay, and boards and substrate don\u{2019}t close the way in yet",
        caution: Some(DUST),
        ..PLAIN
    },
    Template {
        key: "fix-boards",
        name: "fix the boards",
        after: &["cut-boards", "lay-bottoms", "supports", "backing", "gas-test", "power-branches", "water-branches"],
        needed: |run| run.boards > 0,
        what: |_| said("Fix the boards, heads flush, off the floor, with their joints on framing; leave vents open."),
        why: "all that they hide is in and tested",
        ..PLAIN
    },
    Template {
        key: "measure-substrate",
        name: "measure twice for the substrate",
        after: &["fix-boards", "check-frames", "check-fittings"],
        needed: |run| run.substrate,
        what: |_| {
            said(
                "Measure the substrate\u{2019}s edges and cutouts from the board face, as the substrate template gives them.",
            )
        },
        why: "the board face is what is there on the day it is cut",
        ..PLAIN
    },
    Template {
        key: "cut-substrate",
        name: "cut the substrate",
        after: &["measure-substrate"],
        needed: |run| run.substrate,
        what: |_| said("Cut the substrate with its cutouts; paint its cut edges."),
        why: "cut edges drink water",
        caution: Some(DUST),
        ..PLAIN
    },
    Template {
        key: "fix-substrate",
        name: "fix the substrate",
        after: &["cut-substrate", "lay-bottoms", "supports", "backing", "gas-test", "power-branches", "water-branches"],
        needed: |run| run.substrate,
        what: |_| said("Lay the substrate, joints over supports, and screw it on its screw lines."),
        why: "it closes the run from above, so that all under it has to be in",
        ..PLAIN
    },
];
