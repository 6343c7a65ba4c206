//! A cutout that runs out of the sheet that it is cut in.

use std::collections::BTreeMap;

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, named, nothing};
use crate::solve::{Board, Cutout, Extent, Leg, Plane, Solved};
use crate::units::Length;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "cutout-stays-in-its-board",
    severity: Severity::Stop,
    about: "A cutout leaves its sheet only where it is meant to be open.",
    why: "A sheet cut through is two pieces, and an edge that isn't there carries no flange.",
    instead: "move the cutout, or make it smaller",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for leg in &solved.legs {
        let boards = boards(leg);
        for fitting in &leg.fittings {
            for cutout in &fitting.cutouts {
                let whole = match cutout.plane {
                    // The substrate follows the counter and is not looked at by itself.
                    Plane::Substrate => continue,
                    Plane::Counter => Some(&leg.counter.extent),
                    plane => boards.get(&(plane, fitting.module)),
                };
                let sheet = cutout.plane.word().replace('-', " ");
                for (by, side) in whole.map(|whole| past(cutout, fitting.to_floor, whole)).unwrap_or_default() {
                    let by = solved.show.plain(by);
                    findings.push(RULE.finding(
                        Severity::Stop,
                        fitting.subject(),
                        fitting.place.as_ref(),
                        format!(
                            "{} runs {by} past the {side} of the {sheet}; its cutout has to stay inside",
                            named(fitting)
                        ),
                        format!("move it or make it smaller by more than {by}"),
                    ));
                }
            }
        }
    }
    findings
}

/// The boxes of a leg's boards, by plane and module.
fn boards(leg: &Leg) -> BTreeMap<(Plane, usize), Extent> {
    let of_module = |board: &Board| board.module.map(|module| ((board.plane, module), board.extent));
    leg.boards.iter().filter_map(of_module).collect()
}

/// By how much, and where, a cutout leaves a sheet other than at the side where it is open. A side that a cutout merely
/// reaches counts too: nothing is left there.
fn past(cutout: &Cutout, to_floor: bool, whole: &Extent) -> Vec<(Length, &'static str)> {
    let cut = cutout.extent;
    let (upper, lower) = match cutout.plane {
        Plane::Counter | Plane::Substrate => ("back edge", "front edge"),
        _ => ("top edge", "bottom edge"),
    };
    let open_below = cutout.open && (cutout.plane == Plane::Counter || to_floor);
    let open_above = cutout.open && !open_below;
    let mut sides = vec![(whole.x0 - cut.x0, "left edge"), (cut.x1 - whole.x1, "right edge")];
    if !open_above {
        sides.push((cut.y1 - whole.y1, upper));
    }
    if !open_below {
        sides.push((whole.y0 - cut.y0, lower));
    }
    sides.into_iter().filter(|(by, _)| *by >= Length::ZERO).collect()
}
