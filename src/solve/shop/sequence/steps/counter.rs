//! The counter: templated or formed, cut or cast, set, joined, sealed.

use super::{DUST, PLAIN, Template, WEIGHT, said};
use crate::parameters::given::WaitFor;
use crate::solve::Doer::Fabricator;

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "template-counter",
        name: "template the counter",
        who: Fabricator,
        after: &["check-face", "fix-substrate", "check-fittings", "check-frames"],
        needed: |run| run.pieces > 0 && !run.cast,
        what: |run| {
            format!(
                "Have the counter templated on the substrate: overhang {} from the finished face, every cutout by the fitting in hand.",
                run.overhang
            )
        },
        why: "the face that the overhang is from is there; where it is templated earlier, its thickness and its spread are allowed for in writing",
        ..PLAIN
    },
    Template {
        key: "approve-counter",
        name: "sign the counter sheet",
        after: &["template-counter"],
        needed: |run| run.pieces > 0 && !run.cast,
        what: |_| said("Compare the template with the counter sheet, edge by edge, and sign the sheet."),
        why: "a slab can\u{2019}t be uncut",
        ..PLAIN
    },
    Template {
        key: "cut-counter",
        name: "cut the counter",
        who: Fabricator,
        after: &["approve-counter"],
        needed: |run| run.pieces > 0 && !run.cast,
        what: |run| format!("Have {} cut from the template and the signed sheet.", run.counter),
        why: "only what is signed is cut",
        caution: Some(DUST),
        ..PLAIN
    },
    Template {
        key: "form-counter",
        name: "form the counter",
        after: &["check-face", "fix-substrate", "check-fittings", "check-frames", "cover-ground"],
        needed: |run| run.pieces > 0 && run.cast,
        what: |run| {
            format!(
                "Form the counter, in place or in the shop, overhang {} from the finished face, with a form in every cutout; measure twice.",
                run.overhang
            )
        },
        why: "the face that the overhang is from is there; where it is formed earlier, its thickness and its spread are allowed for in writing",
        ..PLAIN
    },
    Template {
        key: "cast-counter",
        name: "cast the counter",
        after: &["form-counter", "protect-face"],
        needed: |run| run.pieces > 0 && run.cast,
        what: |run| {
            format!(
                "Cast {} with its reinforcement; keep it damp, and out of sun and frost while it hardens.",
                run.counter
            )
        },
        why: "the forms are checked, and what stands below is covered",
        wait: Some(WaitFor::Concrete),
        caution: Some("Cement burns skin and eyes: gloves and glasses; mixing makes dust: a mask."),
        ..PLAIN
    },
    Template {
        key: "set-counter",
        name: "set the counter",
        after: &["cut-counter", "cast-counter", "protect-face", "fix-substrate"],
        needed: |run| run.pieces > 0,
        what: |run| {
            let how = if run.cast {
                "Strip the forms, or bed the pieces that were cast in the shop"
            } else {
                "Dry-fit, then bed the pieces"
            };
            let pieces =
                if run.pieces == 1 { said("one piece") } else { format!("{} pieces, the heaviest", run.pieces) };
            let order = if run.raised { "; the counter that stands higher waits for the next step" } else { "" };
            format!("{how}: {pieces} of {}{order}.", run.show.mass(run.heaviest))
        },
        why: "the faces below it are dry and covered",
        caution: Some(WEIGHT),
        ..PLAIN
    },
    Template {
        key: "raised-counter",
        name: "set the raised counter",
        after: &["set-counter"],
        needed: |run| run.pieces > 0 && run.raised,
        what: |_| said("Set the counter that stands higher last, its underside against the face below it."),
        why: "it closes the way to the back of the lower one",
        caution: Some(WEIGHT),
        ..PLAIN
    },
    Template {
        key: "join-seams",
        name: "join the seams",
        after: &["set-counter", "raised-counter"],
        needed: |run| run.seams,
        what: |_| said("Level the pieces to one another and join the seams."),
        why: "pieces are joined where they lie, before anything hangs in them",
        ..PLAIN
    },
    Template {
        key: "splash",
        name: "set the upstand",
        after: &["set-counter"],
        needed: |run| run.splash,
        what: |_| said("Set the upstand on the counter, with a joint at the wall."),
        why: "it stands on the counter and hides its joint to the wall",
        ..PLAIN
    },
    Template {
        key: "seal-counter",
        name: "seal the counter",
        after: &["set-counter", "raised-counter", "join-seams", "splash"],
        needed: |run| run.pieces > 0 && run.sealed,
        what: |_| said("Seal top and edges, and the edges of the cutouts."),
        why: "the edges of the cutouts are covered once the fittings are in",
        wait: Some(WaitFor::Sealer),
        caution: Some("Solvents: fresh air and no flame."),
        ..PLAIN
    },
];
