//! The finish on the boards, up to the face that the counter is measured from.

use super::{Causes, DUST, PLAIN, Template, said};
use crate::parameters::given::WaitFor;

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "cover-ground",
        name: "cover ground and walls",
        after: &["fix-boards"],
        needed: |run| run.finished() || run.cast,
        what: |_| said("Cover the ground and the walls beside the run."),
        why: "mortar stains stone for good",
        ..PLAIN
    },
    Template {
        key: "tape-joints",
        name: "tape the joints",
        after: &["fix-boards"],
        needed: |run| run.finished() && run.boards > 1,
        what: |_| said("Bed mesh tape over every board joint and outside corner."),
        why: "a joint that isn\u{2019}t taped cracks through the finish",
        wait: Some(WaitFor::JointMortar),
        ..PLAIN
    },
    Template {
        key: "base-coat",
        name: "skim coat, base with mesh",
        after: &["tape-joints", "cover-ground"],
        needed: |run| run.skim_coat.is_some(),
        what: |run| {
            format!(
                "Trowel the base of {} with its mesh, to straight-edges at the finished ends.",
                run.skim_coat.as_deref().unwrap_or("the skim coat")
            )
        },
        why: "the mesh lies in the base, under the coat that is seen",
        wait: Some(WaitFor::SkimCoat),
        caution: Some("Cement burns skin and eyes: gloves and glasses."),
        ..PLAIN
    },
    Template {
        key: "top-coat",
        name: "skim coat, finish",
        after: &["base-coat"],
        needed: |run| run.skim_coat.is_some(),
        what: |_| {
            said(
                "Trowel the finish coat to the finished-face line; keep it out of the sun and from frost while it dries.",
            )
        },
        why: "it goes on a base that is hard",
        wait: Some(WaitFor::SkimCoat),
        caution: Some("Cement burns skin and eyes: gloves and glasses."),
        ..PLAIN
    },
    Template {
        key: "veneer",
        name: "set the veneer",
        after: &["tape-joints", "cover-ground"],
        needed: |run| run.veneer.is_some(),
        what: |run| {
            format!(
                "Set {} in its bed to the finished-face line, corners first, clear of the ground and of every opening.",
                run.veneer.as_deref().unwrap_or("the veneer")
            )
        },
        why: "the boards carry it, and it makes the face that the counter is measured from",
        wait: Some(WaitFor::Veneer),
        caution: Some(DUST),
        ..PLAIN
    },
    Template {
        key: "tile",
        name: "set the tile",
        after: &["tape-joints", "cover-ground"],
        needed: |run| run.tile.is_some(),
        what: |run| {
            format!(
                "Set {} to the finished-face line, with soft joints at corners and where the boards\u{2019} own joints are.",
                run.tile.as_deref().unwrap_or("the tile")
            )
        },
        why: "the boards carry it, and it makes the face that the counter is measured from",
        wait: Some(WaitFor::Tile),
        caution: Some(DUST),
        ..PLAIN
    },
    Template {
        key: "grout",
        name: "grout the tile",
        after: &["tile"],
        needed: |run| run.tile.is_some(),
        what: |_| said("Grout the tile; leave corners and movement joints free for sealant."),
        why: "thin-set has to hold before grout is pressed in",
        wait: Some(WaitFor::Grout),
        ..PLAIN
    },
    Template {
        key: "check-face",
        name: "measure the finished face",
        after: &["top-coat", "veneer", "grout"],
        needed: Causes::finished,
        what: |_| {
            said(
                "Measure the finished face and ends as they stand, at both ends, high and low, against the finished-face line.",
            )
        },
        why: "the datum of every counter cut is there for the first time",
        ..PLAIN
    },
    Template {
        key: "protect-face",
        name: "film over the finished faces",
        after: &["check-face"],
        needed: Causes::finished,
        what: |_| said("Put protection film or board over the finished faces and the top edges."),
        why: "the counter is carried and set over them",
        ..PLAIN
    },
];
