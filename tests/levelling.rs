//! Feet: where they stand, what ground they stand on, what they carry. Reference values are in `reference_levelling.rs`.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::{Floor, FloorStep, Given, Spot};
use faceline::solve::solve;
use faceline::solve::statics::{shared, tripod};
use proptest::prelude::*;
use support::{fixed, inches, worked_example};

/// Loads add up to the weight, and their moments about both axes to the weight's: equilibrium, from Newton.
fn in_equilibrium(feet: &[(f64, f64)], loads: &[f64], weight: f64, centre: (f64, f64)) {
    let sum: f64 = loads.iter().sum();
    let about_y: f64 = loads.iter().zip(feet).map(|(load, foot)| load * foot.0).sum();
    let about_x: f64 = loads.iter().zip(feet).map(|(load, foot)| load * foot.1).sum();
    assert!((sum - weight).abs() < 1e-6 * weight, "{loads:?} add up to {sum}, not {weight}");
    assert!((about_y - weight * centre.0).abs() < 1e-3 * weight, "{loads:?} about y");
    assert!((about_x - weight * centre.1).abs() < 1e-3 * weight, "{loads:?} about x");
}

/// The stiffness method on its own: a rigid plate on unit springs, w = a + b x + c y, its three equations by Cramer's rule.
fn on_springs(feet: &[(f64, f64)], weight: f64, centre: (f64, f64)) -> Vec<f64> {
    let sum = |of: &dyn Fn(&(f64, f64)) -> f64| feet.iter().map(of).sum::<f64>();
    let (n, x, y) = (feet.len() as f64, sum(&|p| p.0), sum(&|p| p.1));
    let (xx, xy, yy) = (sum(&|p| p.0 * p.0), sum(&|p| p.0 * p.1), sum(&|p| p.1 * p.1));
    let right = [weight, weight * centre.0, weight * centre.1];
    let matrix = [[n, x, y], [x, xx, xy], [y, xy, yy]];
    let det = |m: [[f64; 3]; 3]| {
        m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
            + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0])
    };
    let with = |column: usize| {
        let mut m = matrix;
        (0..3).for_each(|row| m[row][column] = right[row]);
        det(m) / det(matrix)
    };
    let (a, b, c) = (with(0), with(1), with(2));
    feet.iter().map(|foot| a + b * foot.0 + c * foot.1).collect()
}

#[test]
fn four_feet_share_by_the_textbook_formula_for_an_off_centre_load() {
    // W/4 (1 ± 2 ex/a ± 2 ey/b) for feet at the corners of a by b: the core formula of eccentric footings on four points.
    let (a, b, weight) = (800.0, 600.0, 200.0);
    let feet = [(0.0, 0.0), (0.0, b), (a, 0.0), (a, b)];
    let (ex, ey) = (100.0, -60.0);
    let loads = shared(&feet, weight, (a / 2.0 + ex, b / 2.0 + ey));
    for (foot, load) in feet.iter().zip(&loads) {
        let (sx, sy) = (if foot.0 > 0.0 { 1.0 } else { -1.0 }, if foot.1 > 0.0 { 1.0 } else { -1.0 });
        let wanted = weight / 4.0 * (1.0 + sx * 2.0 * ex / a + sy * 2.0 * ey / b);
        assert!((load - wanted).abs() < 1e-9, "{load} is not {wanted}");
    }
}

#[test]
fn a_box_that_rocks_stands_on_a_diagonal() {
    // The centre a hand's breadth off the middle: with one foot free the diagonal next to it carries nearly all.
    let feet = [(0.0, 0.0), (0.0, 600.0), (800.0, 0.0), (800.0, 600.0)];
    let most = tripod(&feet, 100.0, (400.0, 300.0));
    assert!(
        most.iter().all(|load| (load - 50.0).abs() < 1e-9),
        "in the middle each diagonal takes half a foot: {most:?}"
    );
    // Off the middle, by moments: without the front left foot 800 (FR + BR) = 500 W and 600 (BL + BR) = 300 W, so that BL has
    // 0.375, FR 0.5 and BR 0.125; without the back left one likewise, mirrored; without a right one it would tip.
    let most = tripod(&feet, 100.0, (500.0, 300.0));
    for (load, wanted) in most.iter().zip([37.5, 37.5, 50.0, 50.0]) {
        assert!((load - wanted).abs() < 1e-9, "{most:?}");
    }
    let three = [(0.0, 0.0), (800.0, 0.0), (400.0, 600.0)];
    assert_eq!(tripod(&three, 90.0, (400.0, 200.0)).iter().map(|load| load.round()).collect::<Vec<_>>(), [30.0; 3]);
}

#[test]
fn feet_in_a_line_carry_what_lies_on_it() {
    let loads = shared(&[(0.0, 0.0), (0.0, 600.0)], 80.0, (35.0, 150.0));
    assert!((loads[0] - 60.0).abs() < 1e-9 && (loads[1] - 20.0).abs() < 1e-9, "the lever: {loads:?}");
}

#[test]
fn a_foot_cannot_pull() {
    // So far out that a plane of loads would lift the far feet: the near pair carries all.
    let feet = [(0.0, 0.0), (0.0, 600.0), (800.0, 0.0), (800.0, 600.0)];
    let loads = shared(&feet, 100.0, (800.0, 300.0));
    assert!(loads.iter().all(|load| *load >= 0.0));
    in_equilibrium(&feet, &loads, 100.0, (800.0, 300.0));
}

proptest! {
    #[test]
    fn loads_are_in_equilibrium_and_those_of_springs(
        across in prop::collection::vec(20.0..900.0_f64, 1..5),
        depth in 300.0..900.0_f64,
        (x, y) in (0.0..1.0_f64, 0.0..1.0_f64),
        weight in 20.0..900.0_f64,
    ) {
        let mut u = 0.0;
        let mut feet = vec![(0.0, 0.0), (0.0, depth)];
        for step in &across {
            u += step;
            feet.extend([(u, 0.0), (u, depth)]);
        }
        let centre = (u * x, depth * y);
        let loads = shared(&feet, weight, centre);
        in_equilibrium(&feet, &loads, weight, centre);
        let springs = on_springs(&feet, weight, centre);
        if springs.iter().all(|load| *load > 1e-6 * weight) {
            for (found, wanted) in loads.iter().zip(&springs) {
                prop_assert!((found - wanted).abs() < 1e-4 * weight, "{} {}", found, wanted);
            }
        }
        // Rocking never puts less on the worst foot than bearing, and never more than all of it.
        let most = tripod(&feet, weight, centre);
        for (all, worst) in loads.iter().zip(&most) {
            prop_assert!(worst + 1e-9 >= *all && *worst <= weight * (1.0 + 1e-9));
        }
    }
}

fn given(floor: Floor) -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    given.site.floor = floor;
    given
}

fn spot(u: f64, v: f64, z: f64) -> Spot {
    Spot { u: inches(u), v: inches(v), z: inches(z) }
}

#[test]
fn a_floor_through_its_spots_is_the_spots_and_bends_between_them() {
    // A ridge along u = 30 in, half an inch over both ends; the best plane through these is level.
    let spots = [0.0, 30.0, 60.0].iter().flat_map(|&u| {
        let z = if u == 30.0 { 0.5 } else { 0.0 };
        [spot(u, 0.0, z), spot(u, 30.0, z)]
    });
    let solved = solve(&given(Floor::ThroughSpots(spots.collect()))).unwrap();
    let floor = &solved.legs[0].floor;
    assert!(floor.per_u.abs() < 1e-12 && floor.per_v.abs() < 1e-12);
    let at = |u: f64| floor.height(u * 25.4, 10.0 * 25.4) / 25.4;
    assert!((at(30.0) - at(0.0) - 0.5).abs() < 1e-9);
    assert!((at(45.0) - at(60.0) - 0.25).abs() < 1e-9, "half-way down it is half as high");
    for foot in &solved.legs[0].feet {
        assert!((foot.ground.mm() - floor.height(foot.u.mm(), foot.v.mm())).abs() < 1e-5);
    }
}

#[test]
fn feet_beyond_a_surveyed_step_reach_down_to_it() {
    let mut given = given(Floor::Level);
    given.site.survey.steps.push(FloorStep {
        from: (30.0 * 25.4, -100.0),
        to: (30.0 * 25.4, 5000.0),
        drop: inches(1.5),
        place: None,
    });
    let solved = solve(&given).unwrap();
    let short = inches(2.0);
    for foot in &solved.legs[0].feet {
        let wanted = if foot.u > inches(30.0) { short + inches(1.5) } else { short };
        assert_eq!(foot.height, wanted, "at {} in", foot.u.inches());
    }
}

#[test]
fn wide_and_deep_boxes_have_feet_between() {
    let mut given = given(Floor::Level);
    given.legs[0].modules = vec![fixed("A", 36.0), fixed("B", 60.0), fixed("C", 80.0)];
    given.frame.depth = inches(40.0);
    let solved = solve(&given).unwrap();
    let feet = &solved.legs[0].feet;
    let across = |module: usize| {
        let mut places: Vec<_> = feet.iter().filter(|foot| foot.module == module).map(|foot| foot.u).collect();
        places.dedup();
        places.len()
    };
    // 36 in: the two sides. 60 in: 57 in between the outer ones, two parts. 80 in: 77 in, three parts of 30 in at most.
    assert_eq!([across(0), across(1), across(2)], [2, 3, 4]);
    let rows: std::collections::BTreeSet<_> = feet.iter().map(|foot| foot.v).collect();
    assert_eq!(rows.len(), 3, "40 in deep: a row between front and back");
}
