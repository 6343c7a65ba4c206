//! Feet and floors against reference values.
//!
//! All but the case whose feet stand where no module puts them go through the whole solver, scattered heights with no reach:
//! in a run a foot that stands on a measured spot takes that spot's own height, the reference takes the plane's.
//! Total-least-squares slopes are information only and not compared.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::{Floor, Given, Height, Spot};
use faceline::rules;
use faceline::solve::levelling::{Surface, extensions};
use faceline::solve::solve;
use serde_json::Value;
use support::reference::{cases, compare, compare_all, id, number, numbers, points};
use support::{bare, fixed, inches, worked_example};

/// The modules of a case as a bare run: no build-ups, so that u and v count from the frame.
fn run(input: &Value, floor: Floor) -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    let leg = &mut given.legs[0];
    let widths = numbers(&input["module_widths_in"]);
    leg.modules = widths.iter().enumerate().map(|(at, width)| fixed(&format!("M{at}"), *width)).collect();
    let faces = &mut leg.faces;
    for face in [&mut faces.front, &mut faces.left, &mut faces.right, &mut faces.back] {
        *face = bare();
    }
    given.frame.depth = inches(number(input, "module_depth_in").unwrap());
    given.frame.feet.inset = inches(number(input, "foot_inset_in").unwrap());
    given.frame.feet.shortest = inches(number(input, "min_ext_in").unwrap());
    given.frame.feet.longest = inches(number(input, "max_ext_in").unwrap());
    given.frame.feet.middle_over = inches(1000.0);
    given.height = Height::CounterTop(inches(36.0));
    given.site.floor = floor;
    given
}

/// Compares foot places, ground and extensions; ground heights count from any level, so they are shifted to the first.
fn held(case: &Value, feet: &[(f64, f64)], ground: &[f64], extended: &[f64]) {
    let expected = &case["expected"];
    let wanted = points(&expected["feet_xy_in"]);
    assert_eq!(wanted.len(), feet.len(), "{}", id(case));
    for (wanted, found) in wanted.iter().zip(feet) {
        assert!((wanted[0] - found.0).abs() < 5e-4 && (wanted[1] - found.1).abs() < 5e-4, "{}", id(case));
    }
    let shift = numbers(&expected["foot_ground_z_in"])[0] - ground[0];
    let shifted: Vec<f64> = ground.iter().map(|z| z + shift).collect();
    assert!(compare_all(case, "foot_ground_z_in", &shifted));
    assert!(compare_all(case, "extensions_in", extended));
    let (low, high) = extended.iter().fold((f64::MAX, f64::MIN), |(a, b), &x| (a.min(x), b.max(x)));
    compare(case, expected, "total_range_in", high - low);
    compare(case, expected, "max_extension_in", high);
    let highest = number(expected, "highest_ground_foot").unwrap() as usize;
    assert!(extended[highest] - low <= 5e-4, "{}", id(case));
    let longest = number(&case["input"], "max_ext_in").unwrap();
    let over: Vec<f64> =
        (0..feet.len()).filter(|&foot| extended[foot] > longest + 1e-9).map(|foot| foot as f64).collect();
    assert_eq!(numbers(&expected["feet_over_range"]), over, "{}", id(case));
}

/// Compares a plane.
fn held_plane(case: &Value, plane: &Surface) {
    let expected = &case["expected"];
    let steep = plane.per_u.hypot(plane.per_v);
    compare(case, expected, "slope_x", plane.per_u);
    compare(case, expected, "slope_y", plane.per_v);
    compare(case, expected, "slope_magnitude", steep);
    compare(case, expected, "slope_in_per_ft", steep * 12.0);
    compare(case, expected, "plane_a_in", plane.at_origin);
    let downhill = (-plane.per_v).atan2(-plane.per_u).to_degrees().rem_euclid(360.0);
    compare(case, expected, "downhill_azimuth_deg", downhill);
}

/// Solves a run and compares its feet; returns its floor's plane in inches.
fn solved(case: &Value, given: &Given) -> Surface {
    let solved = solve(given).unwrap_or_else(|problems| panic!("{}: {problems:?}", id(case)));
    let leg = &solved.legs[0];
    let feet: Vec<(f64, f64)> = leg.feet.iter().map(|foot| (foot.u.inches(), foot.v.inches())).collect();
    let ground: Vec<f64> = leg.feet.iter().map(|foot| foot.ground.inches()).collect();
    let extended: Vec<f64> = leg.feet.iter().map(|foot| foot.height.inches()).collect();
    held(case, &feet, &ground, &extended);
    let highest = number(&case["expected"], "highest_ground_foot").unwrap() as usize;
    let (at, high) = solved.shop.levelling.high.expect("a run with feet has a high point");
    assert!(at == 0 && (ground[high] - ground[highest]).abs() <= 5e-4, "{}: high point", id(case));
    // What the rule tells a person is what the reference found over range: each such foot is in a module it names.
    let over: Vec<usize> = numbers(&case["expected"]["feet_over_range"]).iter().map(|foot| *foot as usize).collect();
    let told = rules::check(&solved).iter().filter(|finding| finding.rule == "feet-within-range").count();
    let modules: std::collections::BTreeSet<usize> = over.iter().map(|&foot| leg.feet[foot].module).collect();
    assert_eq!(told, modules.len(), "{}: feet out of range", id(case));
    let floor = &leg.floor;
    Surface { at_origin: floor.at_origin / 25.4, per_u: floor.per_u, per_v: floor.per_v }
}

#[test]
fn feet_reach_the_floor() {
    for case in cases("levelling") {
        let input = &case["input"];
        let shortest = number(input, "min_ext_in").unwrap();
        match input["kind"].as_str().unwrap() {
            "plane" => {
                let plane = Surface {
                    at_origin: number(input, "z0_in").unwrap_or(0.0),
                    per_u: number(input, "slope_x").unwrap(),
                    per_v: number(input, "slope_y").unwrap(),
                };
                held_plane(&case, &plane);
                if input.get("module_widths_in").is_some() {
                    let given = run(input, Floor::Fall { along: -plane.per_u, across: plane.per_v });
                    let floor = solved(&case, &given);
                    let over_patio = |p: &Vec<f64>| {
                        let top = shortest + number(input, "counter_height_above_frame_bottom_in").unwrap_or(0.0);
                        top - floor.height(p[0], p[1])
                    };
                    let corners: Vec<f64> = points(&input["counter_corners_xy_in"]).iter().map(over_patio).collect();
                    if !corners.is_empty() {
                        compare_all(&case, "counter_height_above_patio_in", &corners);
                    }
                } else {
                    let feet: Vec<(f64, f64)> = points(&input["feet_xy_in"]).iter().map(|p| (p[0], p[1])).collect();
                    let ground: Vec<f64> = feet.iter().map(|&(u, v)| plane.height(u, v)).collect();
                    held(&case, &feet, &ground, &extensions(&ground, shortest));
                }
            }
            "measured" => {
                let spots: Vec<(f64, f64, f64)> =
                    points(&input["points_xyz_in"]).iter().map(|p| (p[0], p[1], p[2])).collect();
                let plane = Surface::through(&spots).expect("the spots fix a plane");
                held_plane(&case, &plane);
                let off: Vec<f64> = spots.iter().map(|(u, v, z)| z - plane.height(*u, *v)).collect();
                let rms = (off.iter().map(|r| r * r).sum::<f64>() / off.len() as f64).sqrt();
                compare(&case, &case["expected"], "residual_rms_in", rms);
                compare(&case, &case["expected"], "residual_max_in", off.iter().fold(0.0, |m: f64, r| m.max(r.abs())));
                let spot = |&(u, v, z): &(f64, f64, f64)| Spot { u: inches(u), v: inches(v), z: inches(z) };
                let mut given = run(input, Floor::Spots(spots.iter().map(spot).collect()));
                given.frame.feet.spot_reach = inches(0.0);
                let floor = solved(&case, &given);
                compare(&case, &case["expected"], "slope_x", floor.per_u);
                compare(&case, &case["expected"], "slope_y", floor.per_v);
            }
            "direct" => {
                let heights = numbers(&input["heights_at_feet_in"]);
                let feet = points(&case["expected"]["feet_xy_in"]);
                let spot = |(at, z): (&Vec<f64>, &f64)| Spot { u: inches(at[0]), v: inches(at[1]), z: inches(*z) };
                let spots = feet.iter().zip(&heights).map(spot).collect();
                solved(&case, &run(input, Floor::Spots(spots)));
            }
            other => panic!("{}: {other} is no kind of floor that is known here", id(&case)),
        }
    }
}
