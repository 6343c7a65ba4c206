//! Every step that a run may need: what makes it needed, what comes before it, and why.

use super::causes::Causes;
use crate::parameters::given::WaitFor;
use crate::solve::Doer::{self, Builder, Electrician, Fabricator, GasFitter, Plumber};

/// A step as the table has it.
pub struct Template {
    /// Its key.
    pub key: &'static str,
    /// Its name.
    pub name: &'static str,
    /// Who does it.
    pub who: Doer,
    /// The keys of the steps before it.
    pub after: &'static [&'static str],
    /// Whether a run needs it.
    pub needed: fn(&Causes) -> bool,
    /// What is done.
    pub what: fn(&Causes) -> String,
    /// Why it comes now.
    pub why: &'static str,
    /// What is waited for after it.
    pub wait: Option<WaitFor>,
    /// Where the order comes from.
    pub origin: &'static str,
    /// Where it can hurt.
    pub caution: Option<&'static str>,
}

const GAS: &str = "Gas: only a licensed gas fitter, by the code in force and the appliance\u{2019}s manual.";
const POWER: &str = "Power: only a licensed electrician, by the code in force.";
const DUST: &str =
    "Dust harms the lungs: score and snap or cut wet, outdoors, with extraction and a mask (OSHA 29 CFR 1926.1153).";
const WEIGHT: &str = "Weight: enough people or a lifting aid, hands clear, and nobody under it.";
const PRACTICE: &str = "common practice";

const PLAIN: Template = Template {
    key: "",
    name: "",
    who: Builder,
    after: &[],
    needed: |_| true,
    what: |_| String::new(),
    why: "",
    wait: None,
    origin: PRACTICE,
    caution: None,
};

fn said(text: &str) -> String {
    text.to_owned()
}

fn marks(list: &[String]) -> String {
    list.join(", ")
}

/// All of them, in the order in which they are taken up where several could be next.
pub const ALL: &[Template] = &[
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
        caution: Some(WEIGHT),
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
        key: "fix-boards",
        name: "fix the boards",
        after: &["cut-boards", "supports", "backing", "gas-test", "power-branches", "water-branches"],
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
        after: &["cut-substrate", "supports", "backing", "gas-test", "power-branches", "water-branches"],
        needed: |run| run.substrate,
        what: |_| said("Lay the substrate, joints over supports, and screw it on its screw lines."),
        why: "it closes the run from above, so that all under it has to be in",
        ..PLAIN
    },
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
    Template {
        key: "template-counter",
        name: "template the counter",
        who: Fabricator,
        after: &["check-face", "fix-substrate", "check-fittings", "check-frames"],
        needed: |run| run.pieces > 0 && !run.cast,
        what: |run| {
            format!(
                "Have the counter templated on the substrate: overhang {} from the finished face, every cutout by the fitting in hand.",
                run.show.prose(run.overhang)
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
                run.show.prose(run.overhang)
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
            format!("{how}: {pieces} of {}.", run.show.mass(run.heaviest))
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
    Template {
        key: "hang-notches",
        name: "hang what hangs through the front",
        after: &["set-counter", "raised-counter", "join-seams", "splash", "seal-counter", "check-fittings"],
        needed: |run| !run.notches.is_empty(),
        what: |run| {
            let liner = if run.liner { ", the liner first" } else { "" };
            format!("Hang {}{liner}, and check its clearances against its manual.", marks(&run.notches))
        },
        why: "it bears on the counter and its flange laps over it",
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
        what: |_| {
            said("Hand over manuals, test reports and these sheets; show every shutoff, and how to turn the feet.")
        },
        why: "whoever uses it has to be able to stop it",
        ..PLAIN
    },
];
