//! Rooms that are taken from the survey, against walls worked out by hand.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::findings::Problem;
use faceline::geometry::PlanPoint;
use faceline::parameters::given::*;
use faceline::solve::{Solved, solve};
use faceline::units::{Length, System};
use proptest::prelude::*;
use support::{bare, fixed, inches, module, open, wall, worked_example};

const MM: f64 = 25.4;

/// A surveyed wall through points in inches.
fn line(name: &str, points: &[(f64, f64)]) -> SurveyWall {
    let points = points.iter().map(|p| (p.0 * MM, p.1 * MM)).collect();
    SurveyWall { name: name.to_owned(), points, place: None }
}

/// A square post about a point, inches.
fn post(at: (f64, f64), side: f64) -> SurveyPost {
    SurveyPost { name: "post".to_owned(), at: (at.0 * MM, at.1 * MM), size: (side * MM, side * MM), place: None }
}

/// A bare leg of a drawer box of 18 in and of what is left, 30 in deep from finished face to back, its counter 1 in over
/// the front; its room as surveyed. At x = y = 0.
fn leg(walls: &[SurveyWall], left: Bound, right: Bound) -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    given.frame.depth = inches(30.0);
    given.counter.overhang_back = Length::ZERO;
    given.site.survey.walls = walls.to_vec();
    let leg = &mut given.legs[0];
    leg.faces = Faces { front: bare(), left: bare(), right: bare(), back: bare() };
    leg.modules = vec![fixed("A", 18.0), module("B", Width::WhatIsLeft)];
    (leg.left, leg.right) = (left, right);
    leg.own.surveyed = Some(FromSurvey::default());
    given
}

fn solved(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

fn refused(given: &Given) -> Problem {
    let problems = solve(given).expect_err("it is refused");
    assert_eq!(problems.len(), 1, "{problems:#?}");
    problems.into_iter().next().unwrap()
}

/// The room of the first leg, inches.
fn room(solved: &Solved) -> f64 {
    solved.legs[0].room.unwrap().given.inches()
}

#[test]
fn between_two_square_walls() {
    // Faces at x = -10 in and 110 in: 120 in clear. Gaps of 1/2 in and 3/4 in leave 118 3/4 in.
    let walls =
        [line("west wall", &[(-10.0, -20.0), (-10.0, 50.0)]), line("east wall", &[(110.0, -20.0), (110.0, 50.0)])];
    let solved = solved(&leg(&walls, wall("w", 0.5), wall("e", 0.75)));
    assert_eq!(room(&solved), 120.0);
    let leg = &solved.legs[0];
    assert_eq!(leg.datums.finished_right, inches(118.75));
    assert_eq!(leg.modules[1].width(), inches(100.75));
    // It keeps its gap to the wall at its left: slid 9 1/2 in to the left of where it was put.
    assert!((leg.placement.origin.x + 9.5 * MM).abs() < 1e-9, "{:?}", leg.placement);
    assert_eq!(leg.surveyed, Some(["west wall".to_owned(), "east wall".to_owned()]));
    let stated = |name: &str| solved.defaults.iter().find(|one| one.name == name).cloned().expect(name);
    let said = stated("room of leg leg1");
    assert_eq!(said.value, "120 in");
    assert_eq!(stated("room of leg leg1, from").value, "west wall");
    assert_eq!(stated("room of leg leg1, to").value, "east wall");
    assert!(said.origin.contains("rounded down to 1/64 in"));
    assert_eq!(stated("leg leg1, finished left end").value, "9 1/2 in to the left of `at`");
}

#[test]
fn a_skewed_wall_counts_where_it_stands_nearest() {
    // The right wall runs from (112, -20) to (106, 40): x falls 1 in in every 10 in of y. Nearest is the leg's back, at
    // y = 30: x = 112 - 5 = 107. Leaning the other way, from (106, -20) to (112, 40), the counter's front counts, at
    // y = -1: x = 106 + 1.9 = 107.9, and 107.9 * 64 = 6905.6: 6905/64 in.
    let back = [line("wall", &[(112.0, -20.0), (106.0, 40.0)])];
    assert_eq!(room(&solved(&leg(&back, open(), wall("e", 0.0)))), 107.0);
    let front = [line("wall", &[(106.0, -20.0), (112.0, 40.0)])];
    assert_eq!(room(&solved(&leg(&front, open(), wall("e", 0.0)))), 6905.0 / 64.0);
    // Both skewed: the left one, x = -2 - (y + 20) / 20, stands nearest at the counter's front: -2.95.
    let both = [line("left", &[(-2.0, -20.0), (-5.0, 40.0)]), back[0].clone()];
    let solved_ = solved(&leg(&both, wall("w", 0.25), wall("e", 0.25)));
    assert_eq!(room(&solved_), ((107.0_f64 + 2.95) * 64.0).floor() / 64.0);
    assert!((solved_.legs[0].placement.origin.x - (-2.95 + 0.25) * MM).abs() < 1e-9);
    // What a wall leans is taken off afterwards, as from a room that is written.
    let lean = Bound { lean: inches(0.5), ..wall("e", 0.0) };
    let leaning = solved(&leg(&back, open(), lean));
    assert_eq!(room(&leaning), 106.5);
    // In millimetres it is rounded down to a half.
    let mut metric = leg(&front, open(), wall("e", 0.0));
    metric.job.units = System::Millimetres;
    assert_eq!(solved(&metric).legs[0].room.unwrap().given, Length::from_mm(2740.5));
}

#[test]
fn one_end_and_posts_and_ways_of_doors() {
    let wall_at = |x: f64| line("wall", &[(x, -20.0), (x, 50.0)]);
    // From its finished left end where that is open, whatever stands farther left.
    let left_open = solved(&leg(&[wall_at(-3.0), wall_at(96.5)], open(), wall("e", 0.5)));
    assert_eq!(room(&left_open), 96.5);
    assert_eq!(left_open.legs[0].surveyed.as_ref().unwrap()[0], "its finished left end");
    assert_eq!(left_open.legs[0].placement.origin, PlanPoint::new(0.0, 0.0));
    // A post before the wall: its near side is at 80 - 3 = 77 in. One that only stands behind the leg doesn't bound it.
    let mut given = leg(&[wall_at(96.5)], open(), Bound { kind: BoundKind::Post, ..wall("p", 0.5) });
    given.site.survey.posts = vec![post((80.0, 26.0), 6.0), post((60.0, 33.0), 6.0)];
    assert_eq!(room(&solved(&given)), 77.0);
    // A door in the wall at the right, hinged at y = 40, shut towards the cook, opening over the leg's back: the leaf of
    // 30 in sweeps to x = 96.5 - 30 at y = 40; at the back, 10 in lower, to 96.5 - sqrt(900 - 100).
    let mut given = leg(&[wall_at(96.5)], open(), wall("e", 0.0));
    given.site.survey.doors = vec![DoorSwing {
        name: "door".to_owned(),
        hinge: (96.5 * MM, 40.0 * MM),
        shut: -90.0_f64.to_radians(),
        opens: -90.0_f64.to_radians(),
        width: 30.0 * MM,
        place: None,
    }];
    let swept = 96.5 - 800.0_f64.sqrt();
    assert_eq!(room(&solved(&given)), (swept * 64.0).floor() / 64.0);
    // A step in the floor across the leg's line.
    let mut given = leg(&[wall_at(96.5)], open(), wall("e", 0.0));
    given.site.survey.steps =
        vec![FloorStep { from: (90.0 * MM, -9.0 * MM), to: (90.0 * MM, 60.0 * MM), drop: inches(4.0), place: None }];
    assert_eq!(room(&solved(&given)), 90.0);
}

#[test]
fn a_corner_against_two_walls() {
    // Two legs in the corner of two walls at 88.6 degrees, the first at the survey's zero: its room ends where the walls
    // meet, 136 in from its finished left end; the second's starts there and ends at a wall across its way.
    let angle = 88.6_f64.to_radians();
    let corner = (136.0, 30.5);
    let down = |along: f64| (corner.0 - along * angle.cos(), corner.1 - along * angle.sin());
    let (a, b) = (down(0.0), down(110.0));
    // The third wall stands square to the second one, 110 in from the corner.
    let third = (b.0 - 60.0 * angle.sin(), b.1 + 60.0 * angle.cos());
    let mut given = leg(&[line("walls", &[(-40.0, 30.5), a, b, third])], open(), open());
    given.legs[0].back = wall("walls", 0.5);
    given.legs[0].modules.push(fixed("C", 20.0));
    let mut second = given.legs[0].clone();
    second.id = "leg2".to_owned();
    second.modules = vec![fixed("D", 40.0), module("E", Width::WhatIsLeft)];
    second.right = wall("third", 0.25);
    given.legs.push(second);
    given.joints = vec![Joint {
        left: 0,
        right: 1,
        kind: JointKind::Corner(Corner {
            turn: std::f64::consts::PI - angle,
            through: Through::Left,
            seam: CornerSeam::Butt,
            radius: Length::ZERO,
            inner: CornerShape::Common,
            outer: CornerShape::Common,
        }),
        place: None,
    }];
    // The first leg's own right end meets the second: no bound of its own is written.
    let solved_ = solved(&given);
    let rooms: Vec<f64> = solved_.legs.iter().map(|leg| leg.room.unwrap().given.inches()).collect();
    assert_eq!(rooms[0], 136.0);
    // 110 in from where the walls meet: the third wall is square to the leg.
    assert!((rooms[1] - 110.0).abs() <= 1.0 / 64.0, "{rooms:?}");
    // The same lengths, written: nothing is laid out otherwise.
    let mut written = given.clone();
    for (leg, room) in written.legs.iter_mut().zip(&rooms) {
        leg.own.surveyed = None;
        leg.room = Some(inches(*room));
    }
    let by_hand = solved(&written);
    for (one, other) in solved_.legs.iter().zip(&by_hand.legs) {
        assert_eq!(one.datums.finished_right, other.datums.finished_right);
        assert_eq!(one.placement.origin, other.placement.origin);
    }
}

#[test]
fn what_the_survey_does_not_tell_is_said() {
    let wall_at = |x: f64| line(if x < 0.0 { "west wall" } else { "east wall" }, &[(x, -20.0), (x, 50.0)]);
    let (w, e) = (wall("w", 0.5), wall("e", 0.5));
    let said = |given: &Given| refused(given).message;
    assert_eq!(
        said(&leg(&[], w.clone(), e.clone())),
        "nothing that was surveyed bounds leg leg1 over its depth of 31 in"
    );
    assert_eq!(
        said(&leg(&[wall_at(-10.0)], w.clone(), e.clone())),
        "west wall bounds leg leg1 at its left, but nothing that was surveyed at its right over its depth of 31 in"
    );
    assert_eq!(
        said(&leg(&[wall_at(110.0)], w.clone(), e.clone())),
        "east wall bounds leg leg1 at its right, but nothing that was surveyed at its left over its depth of 31 in"
    );
    // A wall that ends before the leg's front doesn't bound it.
    let short = line("stub", &[(110.0, -40.0), (110.0, -1.0)]);
    assert!(
        said(&leg(&[wall_at(-10.0), short], w.clone(), e.clone())).contains("nothing that was surveyed at its right")
    );
    let across = line("fence", &[(-20.0, 10.0), (120.0, 12.0)]);
    assert_eq!(
        said(&leg(&[across], w.clone(), e.clone())),
        "fence crosses leg leg1 as it was surveyed, so the survey gives no room for it"
    );
    let no_end = refused(&leg(&[wall_at(-10.0), wall_at(110.0)], w.clone(), open()));
    assert!(no_end.message.ends_with("but its right end is open"), "{}", no_end.message);
    assert!(no_end.instead.contains("right: wall("), "{}", no_end.instead);
    // Too long for what was surveyed: it says so, and from where to where.
    let mut long = leg(&[wall_at(-10.0), wall_at(40.0)], w.clone(), e.clone());
    long.legs[0].modules[0].width = Width::Fixed(inches(60.0));
    let long = refused(&long);
    assert!(long.message.contains("it has 50 in, as surveyed from west wall to east wall"), "{}", long.message);
    assert!(long.instead.contains("or survey its walls again"), "{}", long.instead);
    // Widths that are all fixed are solved, and a rule says what is too long.
    let mut fixed_ = leg(&[wall_at(-10.0), wall_at(40.0)], w, e);
    fixed_.legs[0].modules = vec![fixed("A", 60.0)];
    let findings = faceline::rules::check(&solved(&fixed_));
    let found = findings.iter().find(|finding| finding.rule == "run-fits-its-site").expect("it is too long");
    assert!(found.message.contains("as surveyed from west wall to east wall"), "{}", found.message);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, ..ProptestConfig::default() })]

    /// Turning and moving the survey and the run together changes nothing along the leg; and the room is the least that
    /// a tape finds at any depth, to the rounding.
    #[test]
    fn turning_survey_and_run_together_changes_nothing(
        turn in -3.1_f64..3.1, at in (-400.0_f64..400.0, -400.0_f64..400.0),
        left in (-12.0_f64..-2.0, -6.0_f64..6.0), right in (90.0_f64..150.0, -6.0_f64..6.0),
    ) {
        let walls = [
            line("left", &[(left.0, -20.0), (left.0 + left.1, 50.0)]),
            line("right", &[(right.0, -20.0), (right.0 + right.1, 50.0)]),
        ];
        let given = leg(&walls, wall("w", 0.5), wall("e", 0.5));
        let one = solved(&given);
        let on = |wall: (f64, f64), y: f64| wall.0 + wall.1 * (y + 20.0) / 70.0;
        let clear = |y: f64| (on(left, y), on(right, y));
        let most = (0..=310).map(|k| clear(-1.0 + f64::from(k) * 0.1).0).fold(f64::NEG_INFINITY, f64::max);
        let least = (0..=310).map(|k| clear(-1.0 + f64::from(k) * 0.1).1).fold(f64::INFINITY, f64::min);
        let off = least - most - room(&one);
        // A micrometre is forgiven, so that a wall drawn on a step of the rounding keeps it.
        prop_assert!(off > -4e-5 && off < 1.0 / 64.0, "{off}");
        let mut turned = given.clone();
        let (sin, cos) = turn.sin_cos();
        let place = |p: (f64, f64)| (p.0 * cos - p.1 * sin + at.0 * MM, p.0 * sin + p.1 * cos + at.1 * MM);
        for wall in &mut turned.site.survey.walls {
            wall.points.iter_mut().for_each(|p| *p = place(*p));
        }
        turned.legs[0].origin = place((0.0, 0.0));
        turned.legs[0].angle = turn;
        let other = solved(&turned);
        // A room that lies on a step of the rounding may fall to either side of it.
        prop_assert!((room(&other) - room(&one)).abs() < 1e-9 || !(1e-4..=1.0 / 64.0 - 1e-4).contains(&off));
        let (a, b) = (one.legs[0].placement.origin, other.legs[0].placement.origin);
        let (x, y) = place((a.x, a.y));
        prop_assert!((b.x - x).hypot(b.y - y) < 1e-6);
    }

    /// A leg laid out as surveyed runs into nothing that was surveyed, wherever walls, a post, a door and a step are; or it
    /// says why it can't be laid out.
    #[test]
    fn what_is_laid_out_as_surveyed_clears_what_was_surveyed(
        turn in -3.1_f64..3.1,
        left in (-12.0_f64..-2.0, -9.0_f64..9.0), right in (70.0_f64..150.0, -9.0_f64..9.0),
        at in (40.0_f64..150.0, -15.0_f64..45.0), side in 1.0_f64..20.0,
        hinge in (40.0_f64..150.0, -30.0_f64..60.0), swing in (-3.1_f64..3.1, -3.1_f64..3.1), leaf in 10.0_f64..40.0,
        step in (50.0_f64..170.0, 50.0_f64..170.0),
    ) {
        let walls = [
            line("left", &[(left.0, -60.0), (left.0 + left.1, 90.0)]),
            line("right", &[(right.0, -60.0), (right.0 + right.1, 90.0)]),
        ];
        let mut given = leg(&walls, wall("w", 0.5), wall("e", 0.5));
        let survey = &mut given.site.survey;
        survey.posts = vec![post(at, side)];
        survey.doors = vec![DoorSwing {
            name: "door".to_owned(),
            hinge: (hinge.0 * MM, hinge.1 * MM),
            shut: swing.0,
            opens: swing.1,
            width: leaf * MM,
            place: None,
        }];
        let ends = [(step.0 * MM, -40.0 * MM), (step.1 * MM, 80.0 * MM)];
        survey.steps = vec![FloorStep { from: ends[0], to: ends[1], drop: inches(4.0), place: None }];
        // Posts lie along x and y: the rest is turned round them only in the first half of the cases.
        if turn > 0.0 {
            survey.posts.clear();
            let (sin, cos) = turn.sin_cos();
            let place = |p: (f64, f64)| (p.0 * cos - p.1 * sin, p.0 * sin + p.1 * cos);
            survey.walls.iter_mut().for_each(|wall| wall.points.iter_mut().for_each(|p| *p = place(*p)));
            survey.doors.iter_mut().for_each(|door| (door.hinge, door.shut) = (place(door.hinge), door.shut + turn));
            survey.steps.iter_mut().for_each(|step| (step.from, step.to) = (place(step.from), place(step.to)));
            given.legs[0].angle = turn;
        }
        match solve(&given) {
            Ok(solved) => {
                let met: Vec<String> = faceline::rules::check(&solved)
                    .into_iter()
                    .filter(|found| found.rule == "run-clears-what-was-surveyed")
                    .map(|found| found.message)
                    .collect();
                prop_assert!(met.is_empty(), "{met:?}");
            }
            Err(problems) => {
                prop_assert!(problems.iter().all(|one| !one.message.is_empty() && !one.instead.is_empty()));
            }
        }
    }
}
