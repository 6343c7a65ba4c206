//! Layouts against reference values.
//!
//! The reference picks modules from a catalogue so that the least is left over; the model states widths and has what is
//! left computed. So each run that the reference calls best is stated as fixed widths between the bounds, with a
//! filler that takes what is left: it has to come to the reference's leftover, and where nothing is left the run has to
//! fill its room exactly. A joint between neighbours is stated as a filler of that width. Left out: cases without a
//! solution, since there is no catalogue to search here.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::{Given, Module, ModuleKind, Width};
use faceline::solve::solve;
use serde_json::Value;
use support::reference::{cases, compare, id, number};
use support::{bare, fixed, inches, module, wall, worked_example};

/// What is left over has to be this wide to be a filler: the step of widths, 1/16 in.
const STEP: f64 = 0.0625;

fn filler(id: &str, width: Width) -> Module {
    Module { kind: ModuleKind::Filler, ..module(id, width) }
}

fn run(input: &Value, widths: &[f64], leftover: f64) -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    let leg = &mut given.legs[0];
    leg.left = wall("left wall", number(input, "end_gap_left_in").unwrap());
    leg.right = wall("right wall", number(input, "end_gap_right_in").unwrap());
    leg.room = Some(inches(number(input, "clear_in").unwrap()));
    (leg.faces.left, leg.faces.right) = (bare(), bare());
    leg.modules.clear();
    let joint = number(input, "joint_in").unwrap_or(0.0);
    for (at, width) in widths.iter().enumerate() {
        if at > 0 && joint > 0.0 {
            leg.modules.push(filler(&format!("J{at}"), Width::Fixed(inches(joint))));
        }
        leg.modules.push(fixed(&format!("M{at}"), *width));
    }
    if leftover >= STEP {
        leg.modules.push(filler("F", Width::WhatIsLeft));
    }
    given
}

#[test]
fn the_best_runs_fill_their_room() {
    let mut compared = 0;
    for case in cases("layout") {
        let (input, expected) = (&case["input"], &case["expected"]);
        if expected["feasible"] != true {
            continue;
        }
        let leftover = number(expected, "leftover_in").unwrap();
        for example in expected["examples"].as_array().unwrap() {
            let modules = example.as_array().unwrap();
            let widths: Vec<f64> = modules.iter().map(|module| module[1].as_f64().unwrap()).collect();
            let solved = solve(&run(input, &widths, leftover)).unwrap_or_else(|p| panic!("{}: {p:?}", id(&case)));
            let leg = &solved.legs[0];
            let room = leg.room.unwrap();
            let free = (room.given - room.needed).inches();
            let left = if leftover >= STEP { leg.modules.last().unwrap().width().inches() } else { 0.0 };
            compare(&case, expected, "leftover_in", left + free);
            compare(&case, expected, "modules", widths.len() as f64);
            compared += 1;
        }
    }
    assert!(compared > 0, "no case could be stated");
}
