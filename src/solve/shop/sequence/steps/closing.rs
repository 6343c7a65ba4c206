//! Trim, sealant, cleaning, the first fire, and handing over.

use super::{PLAIN, Template, WEIGHT, marks, said};
use crate::parameters::given::WaitFor;

/// These steps.
pub(super) const STEPS: &[Template] = &[
    Template {
        key: "trim",
        name: "scribe and fix the base trim",
        after: &["check-face", "fix-boards", "level"],
        needed: |run| run.trim,
        what: |_| said("Scribe the base trim to the ground, cut it, and fix it over the feet."),
        why: "it laps on the finished face; the feet can\u{2019}t be turned behind it",
        ..PLAIN
    },
    Template {
        key: "sealant",
        name: "sealant in the joints",
        after: &[
            "set-counter",
            "raised-counter",
            "join-seams",
            "splash",
            "seal-counter",
            "hang-notches",
            "set-wells",
            "check-face",
        ],
        needed: |run| run.joints,
        what: |_| said("Fill joints at walls, upstands, seams and flanges that ask for it, on clean and dry edges."),
        why: "everything that moves the counter has been done",
        wait: Some(WaitFor::Sealant),
        ..PLAIN
    },
    Template {
        key: "slide-in",
        name: "slide in what stands on the ground",
        after: &["power-test", "trim", "check-face", "fix-boards", "set-counter"],
        needed: |run| !run.standing.is_empty(),
        what: |run| format!("Slide {} in, level it, and leave its air gaps free.", marks(&run.standing)),
        why: "it would be in the way of all work round it",
        caution: Some(WEIGHT),
        ..PLAIN
    },
    Template {
        key: "clean",
        name: "take off the film and clean",
        after: &[
            "sealant",
            "slide-in",
            "set-fronts",
            "set-vents",
            "trim",
            "protect-face",
            "set-counter",
            "seal-counter",
            "leak-test",
            "power-test",
            "water-connect",
            "fix-boards",
            "lay-bottoms",
            "fix-substrate",
            "hang-notches",
            "set-wells",
            "check-frames",
        ],
        what: |_| said("Take off films and covers, sweep out every bay, and clean with what the makers allow."),
        why: "dust and film left behind a burner smoulder; stone and steel each have their own cleaner",
        ..PLAIN
    },
    Template {
        key: "first-fire",
        name: "first fire",
        after: &["clean", "leak-test", "set-vents"],
        needed: |run| !run.burners.is_empty(),
        what: |run| {
            format!(
                "Light {} by the manual, lid open, vents open, nothing that burns near; watch the flames and feel the faces round it.",
                marks(&run.burners)
            )
        },
        why: "the run is clean, tight and vented",
        caution: Some("Heat: keep people and what burns away, and a way to shut off the gas within reach."),
        ..PLAIN
    },
    Template {
        key: "hand-over",
        name: "hand over",
        after: &["clean", "first-fire"],
        what: |_| said("Hand over manuals, test reports and these sheets; show every shutoff."),
        why: "whoever uses it has to be able to stop it",
        ..PLAIN
    },
];
