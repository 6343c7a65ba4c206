//! What a run weighs, against figures worked by hand from published weights.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod program;
mod support;

use faceline::parameters::given::*;
use faceline::solve::{LiftKind, Solved, solve};
use support::*;

const POUND: f64 = 0.453_592_37;

fn solved(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

/// A bare box of one module, 36 in wide, without anything in it.
fn one_box() -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    // Nothing is added between its sides: the table is of the box alone.
    given.supports.apart = inches(60.0);
    let leg = &mut given.legs[0];
    leg.modules = vec![fixed("A", 36.0)];
    let faces = &mut leg.faces;
    for face in [&mut faces.front, &mut faces.left, &mut faces.right, &mut faces.back] {
        *face = bare();
    }
    for overhang in [
        &mut given.counter.overhang_front,
        &mut given.counter.overhang_left,
        &mut given.counter.overhang_right,
        &mut given.counter.overhang_back,
    ] {
        *overhang = inches(0.0);
    }
    given
}

fn near(found: f64, wanted: f64, share: f64) {
    assert!((found / wanted - 1.0).abs() < share, "found {found}, wanted {wanted}");
}

#[test]
fn tubes_weigh_what_a_table_of_mechanical_tubing_says() {
    // 1 1/2 x 1 1/2 x 0.120 in steel: 2.25 lb/ft; a box of four posts and eight rails (trade facts, section 8).
    let mut given = one_box();
    given.frame.wall = inches(0.12);
    let solved = solved(&given);
    let leg = &solved.legs[0];
    let long = |member: &faceline::solve::Member| {
        let side = |(low, high): (faceline::units::Length, faceline::units::Length)| (high - low).inches();
        side(member.body.u).max(side(member.body.v)).max(side(member.body.z))
    };
    let feet: f64 = leg.members.iter().map(|member| long(member) / 12.0).sum();
    near(solved.shop.weights.modules[0][0].frame, feet * 2.25 * POUND, 0.005);
    // The same in aluminium: 0.78 lb/ft.
    given.frame.material = FrameMaterial::Aluminium;
    near(solve(&given).unwrap().shop.weights.modules[0][0].frame, feet * 0.78 * POUND, 0.005);
}

#[test]
fn a_sheet_of_board_weighs_what_its_maker_says() {
    // Half-inch board, 2.9 lb/ft2 (a cement board maker); the front of a 36 in box.
    let mut given = one_box();
    given.legs[0].faces.front = board_only();
    let solved = solved(&given);
    let area = solved.legs[0].boards[0].region.area() / (304.8 * 304.8);
    near(solved.shop.weights.modules[0][0].boards, area * 2.9 * POUND, 1e-3);
}

#[test]
fn granite_of_three_centimetres_weighs_its_square_feet() {
    // 3 cm at 168 lb/ft3: 16.5 lb/ft2 (trade facts, computed from density); 36 by 28 in are 7 ft2.
    let mut given = one_box();
    given.counter.thickness = faceline::units::Length::from_mm(30.0);
    given.counter.density = 168.0 * 16.018_463_37;
    let solved = solved(&given);
    near(solved.shop.weights.modules[0][0].counter, 7.0 * 16.5 * POUND, 0.005);
    near(solved.shop.weights.counter_pieces[0][0], 7.0 * 16.5 * POUND, 0.005);
}

#[test]
fn a_box_that_is_the_same_all_round_balances_in_its_middle() {
    let solved = solved(&one_box());
    let (d, centre) = (&solved.legs[0].datums, solved.shop.weights.modules[0][0].centre);
    assert!((centre.0 - (d.frame_left + d.frame_right).half().mm()).abs() < 1e-6);
    assert!((centre.1 - (d.frame_face + d.frame_back).half().mm()).abs() < 1e-6);
}

#[test]
fn a_weight_at_the_front_draws_the_centre_forward_by_its_share() {
    let given = one_box();
    let before = solved(&given).shop.weights.modules[0][0];
    let mut heavy = given.clone();
    heavy.fittings = vec![Fitting {
        mass: Some(before.total()),
        ..fitting("drawers", Look::Drawers(3), 0, opening(20.0, 5.0, Some(20.0)))
    }];
    let solved = solved(&heavy);
    let after = solved.shop.weights.modules[0][0];
    // Its body isn't known: it is taken to lie in the middle, so that the centre stays near where it was.
    assert!((after.centre.0 - before.centre.0).abs() < 1.0);
    assert!((after.fittings - before.total()).abs() < 1e-9);
    assert!((after.on_feet() - after.total()).abs() < 1e-12);
}

#[test]
fn what_stands_on_the_floor_is_not_on_the_feet() {
    let mut given = one_box();
    given.fittings =
        vec![Fitting { mass: Some(50.0), ..fitting("refrigerator", Look::Refrigerator, 0, opening(24.0, 4.0, None)) }];
    let solved = solved(&given);
    let module = solved.shop.weights.modules[0][0];
    assert_eq!((module.fittings, module.on_floor), (50.0, 50.0));
    assert!((module.total() - module.on_feet() - 50.0).abs() < 1e-9);
    assert!((solved.shop.weights.floors[0].mass - module.total()).abs() < 1e-9);
}

#[test]
fn modules_carry_every_pound_of_the_counter_between_them_in_every_sample() {
    for job in program::jobs() {
        let solved = program::solved(&job);
        let weights = &solved.shop.weights;
        let pieces: f64 = solved.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|piece| piece.mass).sum();
        let splashes: f64 = solved.legs.iter().flat_map(|leg| &leg.counter.splashes).map(|splash| splash.3).sum();
        let carried: f64 = weights.modules.iter().flatten().map(|module| module.counter).sum();
        near(carried, pieces + splashes, 1e-6);
        let lifted =
            weights.lifts.iter().filter(|lift| lift.kind == LiftKind::Counter).map(|lift| lift.mass).sum::<f64>();
        near(lifted, pieces, 1e-9);
        let all: f64 = weights.modules.iter().flatten().map(|module| module.total()).sum();
        near(weights.total, all + weights.trim, 1e-9);
        for (leg, modules) in solved.legs.iter().zip(&weights.modules) {
            for weight in modules {
                let d = &leg.datums;
                assert!(weight.centre.1 > d.counter_front.mm() && weight.centre.1 < d.counter_back.mm(), "{job:?}");
            }
        }
    }
}

#[test]
fn what_two_lift_is_said_once_and_rule_and_weights_go_by_it() {
    // A slab of one module, and a crew for which it is just too heavy or just not.
    let mut given = one_box();
    let mass = solved(&given).shop.weights.counter_pieces[0][0];
    given.counter.needs.lifters = Some(3);
    let heavy = |given: &Given| {
        let solved = solved(given);
        let found = faceline::rules::check(&solved);
        let told = found.iter().any(|one| one.rule == "piece-can-be-lifted");
        (told, solved.shop.weights.people(mass))
    };
    for (two, told, people) in [(mass * 0.6, true, 4), (mass * 0.7, false, 3)] {
        given.materials.worth[Figure::TwoLift as usize] =
            Some(Worth { exact: faceline::units::Exact::zero(), si: two, text: String::new(), given: true });
        assert_eq!(heavy(&given), (told, people), "two lift {two} kg of {mass}");
    }
}
