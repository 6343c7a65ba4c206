//! Layouts against reference values.
//!
//! The reference picks modules from a catalogue so that the least is left over; the model states widths and has what is
//! left computed. So each run that the reference calls best is stated as fixed widths between the bounds, with a
//! filler that takes what is left: it has to come to the reference's leftover, and where nothing is left the run has to
//! fill its room exactly. Left out: cases without a solution (no catalogue to search here) and cases with a joint
//! between neighbouring modules (boxes of a leg touch).

mod support;

use faceline::parameters::given::{Given, ModuleKind, Width};
use faceline::solve::solve;
use serde_json::Value;
use support::reference::{cases, compare, id, number};
use support::{bare, fixed, inches, module, wall, worked_example};

fn run(input: &Value, widths: &[f64], filler: bool) -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    let leg = &mut given.legs[0];
    leg.left = wall("left wall", number(input, "end_gap_left_in").unwrap());
    leg.right = wall("right wall", number(input, "end_gap_right_in").unwrap());
    leg.room = Some(inches(number(input, "clear_in").unwrap()));
    (leg.faces.left, leg.faces.right) = (bare(), bare());
    leg.modules = widths.iter().enumerate().map(|(at, width)| fixed(&format!("M{at}"), *width)).collect();
    if filler {
        let mut last = module("F", Width::WhatIsLeft);
        last.kind = ModuleKind::Filler;
        leg.modules.push(last);
    }
    given
}

#[test]
fn the_best_runs_fill_their_room() {
    let mut compared = 0;
    for case in cases("layout") {
        let (input, expected) = (&case["input"], &case["expected"]);
        let joint = number(input, "joint_in").unwrap_or(0.0);
        if expected["feasible"] != true || joint != 0.0 {
            continue;
        }
        let leftover = number(expected, "leftover_in").unwrap();
        for example in expected["examples"].as_array().unwrap() {
            let modules = example.as_array().unwrap();
            let widths: Vec<f64> = modules.iter().map(|module| module[1].as_f64().unwrap()).collect();
            let solved = solve(&run(input, &widths, leftover > 0.0)).unwrap_or_else(|p| panic!("{}: {p:?}", id(&case)));
            let leg = &solved.legs[0];
            let room = leg.room.unwrap();
            assert_eq!(room.given, room.needed, "{}", id(&case));
            let left = if leftover > 0.0 { leg.modules.last().unwrap().width().inches() } else { 0.0 };
            compare(&case, expected, "leftover_in", left);
            compare(&case, expected, "modules", widths.len() as f64);
            compared += 1;
        }
    }
    assert!(compared > 0, "no case could be stated");
}
