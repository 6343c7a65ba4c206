//! What holds of every run: it is solved whole or explained, adds up exactly, and doesn't depend on where it stands.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::findings::Problem;
use faceline::geometry::LegPoint;
use faceline::parameters::given::*;
use faceline::rules;
use faceline::solve::{Axis, Datum, Plane, Role, Solved, solve};
use faceline::units::{Length, System};
use proptest::prelude::*;
use support::*;

const DATUMS: [Datum; 21] = [
    Datum::FinishedLeftEnd,
    Datum::BoardLeftEnd,
    Datum::FrameLeftEnd,
    Datum::FrameRightEnd,
    Datum::BoardRightEnd,
    Datum::FinishedRightEnd,
    Datum::CounterLeftEdge,
    Datum::CounterRightEdge,
    Datum::CounterEdge,
    Datum::FinishedFace,
    Datum::BoardFace,
    Datum::FrameFace,
    Datum::FrameBack,
    Datum::BoardBack,
    Datum::FinishedBack,
    Datum::CounterBack,
    Datum::Floor,
    Datum::FrameBottom,
    Datum::FrameTop,
    Datum::SubstrateTop,
    Datum::CounterTop,
];

/// Any length at all, likely ones more often.
fn length() -> impl Strategy<Value = Length> {
    prop_oneof![
        6 => (-64_i64..64 * 130).prop_map(Length::from_sixty_fourths),
        2 => (0_i64..4000).prop_map(|mm| Length::from_nm(mm * 1_000_000)),
        1 => prop_oneof![
            Just(Length::ZERO),
            Just(Length::from_nm(1)),
            Just(Length::from_nm(i64::MIN)),
            Just(Length::from_nm(i64::MAX)),
            Just(Length::from_nm(1_000_000_000_000)),
        ],
        1 => any::<i64>().prop_map(Length::from_nm),
    ]
}

fn number() -> impl Strategy<Value = f64> {
    prop_oneof![-1.0..1.0, Just(0.0), Just(f64::NAN), Just(f64::INFINITY), Just(-1e300), 1.0..5000.0]
}

/// Sets one value of a job, chosen by `which`, to something else.
fn change(given: &mut Given, which: u8, value: Length, plain: f64, pick: usize) {
    let legs = given.legs.len();
    let leg = &mut given.legs[pick % legs];
    let modules = leg.modules.len();
    let fittings = given.fittings.len();
    let fitting = &mut given.fittings[pick % fittings];
    let measure = Measure { published: Some(value), measured: None, place: None };
    match which {
        0 => given.frame.depth = value,
        1 => given.frame.tube = value,
        2 => given.frame.height = Some(value),
        3 => given.frame.feet.inset = value,
        4 => given.frame.rough_gap = value,
        5 => given.counter.thickness = value,
        6 => given.counter.overhang_front = value,
        7 => given.counter.corner_radius = value,
        8 => given.counter.seams.push((pick % (legs + 1), value)),
        9 => given.substrate.edge = SubstrateEdge::HeldBack(value),
        10 => given.height = Height::FrameTop(value),
        11 => leg.room = Some(value),
        12 => leg.left = Bound { kind: BoundKind::Wall, gap: value, ..open() },
        13 => leg.right = Bound { kind: BoundKind::Pier, lean: value, ..open() },
        14 => leg.back = Bound { kind: BoundKind::Wall, gap: inches(1.0), lean: value, ..open() },
        15 => leg.faces.front.board = value,
        16 => leg.modules[pick % modules].width = Width::Fixed(value),
        17 => leg.modules[pick % modules].width = Width::WhatIsLeft,
        18 => leg.modules[pick % modules].width = Width::Range(value, inches(60.0)),
        19 => leg.modules[pick % modules].kind = ModuleKind::OpenBay,
        20 => leg.modules[pick % modules].kind = ModuleKind::Filler,
        21 => {
            fitting.cut = Cut::Notch {
                width: measure,
                depth: published(21.0),
                depth_from: DepthFrom::BoardFace,
                drop: published(9.0),
                drop_from: HeightFrom::FrameTop,
                radius: inches(0.5),
            }
        }
        22 => {
            fitting.cut = Cut::Notch {
                width: published(20.0),
                depth: measure,
                depth_from: DepthFrom::CounterEdge,
                drop: published(9.0),
                drop_from: HeightFrom::SubstrateTop,
                radius: value,
            }
        }
        23 => {
            fitting.cut = Cut::Well {
                shape: WellShape::Circle { diameter: measure },
                line: DepthLine::Centre,
                setback: published(14.0),
                setback_from: DepthFrom::FrameFace,
            }
        }
        24 => {
            fitting.cut = Cut::Opening {
                width: published(12.0),
                height: pick.is_multiple_of(2).then(|| published(10.0)),
                drop: measure,
                drop_from: HeightFrom::Floor,
                radius: value,
                sort: OpeningSort::Vent,
            }
        }
        25 => fitting.face = [Face::Front, Face::Left, Face::Right, Face::Back][pick % 4],
        26 => fitting.across.from = AcrossFrom::Fitting(pick % (fittings + 1)),
        27 => {
            fitting.across = Across { line: AcrossLine::RightEdge, from: AcrossFrom::FinishedRight, distance: measure }
        }
        28 => fitting.across = Across { line: AcrossLine::LeftEdge, from: AcrossFrom::FinishedFace, distance: measure },
        29 => fitting.module = pick,
        30 => fitting.leg = pick % 3,
        31 => fitting.mark = Some("A1".to_owned()),
        32 => fitting.body = Some(Body { width: measure, depth: published(20.0), height: published(12.0) }),
        33 => given.site.floor = Floor::Fall { along: plain, across: plain / 3.0 },
        34 => {
            let spot = |u: f64, v: f64, z| Spot { u: inches(u), v: inches(v), z };
            given.site.floor =
                Floor::Spots(vec![spot(0.0, 0.0, value), spot(50.0, 3.0, inches(0.5)), spot(20.0, 30.0, inches(0.1))]);
        }
        35 => given.counter.density = plain,
        36 => leg.angle = plain,
        37 => leg.origin = (plain, 100.0),
        38 => given.job.units = [System::Inches, System::Millimetres, System::Both][pick % 3],
        39 => given.counter.splash = Some(Splash { height: value, thickness: inches(0.75) }),
        40 => leg.modules.truncate(pick % (modules + 1)),
        41 => fitting.flange = Flange { left: value, right: value, far: value, near: value },
        42 => given.tolerances.least_strip = value,
        43 => given.site.floor = Floor::Spots(Vec::new()),
        44 => fitting.id = "grill".to_owned(),
        _ => {
            let mut other = given.legs[0].clone();
            other.id = "leg2".to_owned();
            other.modules.iter_mut().for_each(|module| module.id.push('2'));
            given.legs.push(other);
        }
    }
}

/// A change of a job: which, and the values for it.
type Change = (u8, Length, f64, usize);

fn changes() -> impl Strategy<Value = Vec<Change>> {
    prop::collection::vec((0_u8..46, length(), number(), 0_usize..9), 0..5)
}

/// The look sheets' run with some values changed.
fn job(changes: &[Change]) -> Given {
    let mut given = terrace();
    for &(which, value, plain, pick) in changes {
        if given.legs.iter().all(|leg| !leg.modules.is_empty()) {
            change(&mut given, which, value, plain, pick);
        }
    }
    given
}

/// What every solved run keeps.
fn sound(solved: &Solved) {
    let mut marks = std::collections::BTreeSet::new();
    for leg in &solved.legs {
        let d = &leg.datums;
        assert_eq!(leg.modules.first().unwrap().left, d.frame_left);
        assert_eq!(leg.modules.last().unwrap().right, d.frame_right);
        assert!(leg.modules.windows(2).all(|pair| pair[0].right == pair[1].left));
        assert!(leg.modules.iter().all(|module| module.width() > Length::ZERO && !module.why.is_empty()));
        if let Some(room) = leg.room {
            let free = leg.modules.iter().any(|module| module.asked == Width::WhatIsLeft);
            assert!(!free || room.given == room.needed);
        }
        for fitting in &leg.fittings {
            assert!(marks.insert(fitting.mark.clone()), "{} comes twice", fitting.mark);
            assert!(fitting.left < fitting.right && !fitting.given_from.is_empty());
            for cutout in &fitting.cutouts {
                assert!(cutout.extent.width() > Length::ZERO && cutout.extent.height() > Length::ZERO);
                assert!(cutout.outline.area() > 0.0);
            }
        }
        for member in &leg.members {
            let b = &member.body;
            assert!(b.u.0 < b.u.1 && b.v.0 < b.v.1 && b.z.0 < b.z.1, "{member:?}");
        }
        for fitting in &leg.fittings {
            // What is added round cutouts keeps clear of every cutout of its module's front.
            let Some(cut) = fitting.cutout(Plane::FrontBoard).map(|cutout| cutout.extent) else { continue };
            let added = leg.members.iter().filter(|m| m.module == fitting.module && m.role == Role::Backing);
            for body in added.map(|m| m.body).filter(|body| body.v == (d.frame_face, d.frame_face + solved.frame.tube))
            {
                let meets = body.u.0 < cut.x1 && cut.x0 < body.u.1 && body.z.0 < cut.y1 && cut.y0 < body.z.1;
                assert!(!meets, "{} and {body:?}", fitting.id);
            }
        }
        for board in &leg.boards {
            assert!(board.region.outer.area() > 0.0, "{}", board.name);
            let _ = board.region.outer.bounds();
        }
        assert!(leg.counter.pieces.iter().all(|piece| piece.mass.is_finite()));
        assert!(leg.counter.region.outer.area() > 0.0 && leg.substrate.region.outer.area() > 0.0);
        assert!(leg.feet.iter().all(|foot| foot.ground <= Length::ZERO));
        assert!(leg.feet.iter().all(|foot| foot.height == d.frame_bottom - foot.ground));
    }
}

fn explained(problems: &[Problem]) {
    assert!(!problems.is_empty());
    assert!(problems.iter().all(|problem| !problem.message.is_empty() && !problem.instead.is_empty()));
}

/// How many random cases: 1500, or what `FACELINE_CASES` says.
fn env_cases() -> u32 {
    std::env::var("FACELINE_CASES").ok().and_then(|count| count.parse().ok()).unwrap_or(1500)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: env_cases(), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_job_is_solved_whole_or_explained(changes in changes()) {
        match solve(&job(&changes)) {
            Ok(solved) => {
                sound(&solved);
                let findings = rules::check(&solved);
                prop_assert!(findings.is_sorted_by(|a, b| a.severity >= b.severity));
            }
            Err(problems) => explained(&problems),
        }
    }

    #[test]
    fn any_length_converted_to_another_datum_and_back_is_itself(
        front in 0_i64..512, left in 0_i64..512, overhang in -64_i64..256, length in -640_i64..64 * 130,
    ) {
        let mut given = worked_example();
        given.legs[0].faces.front.board = Length::from_sixty_fourths(front);
        given.legs[0].faces.left.board = Length::from_sixty_fourths(left);
        given.counter.overhang_front = Length::from_sixty_fourths(overhang);
        given.fittings.clear();
        let solved = solve(&given).unwrap();
        let (d, length) = (&solved.legs[0].datums, Length::from_sixty_fourths(length));
        for from in DATUMS {
            for to in DATUMS {
                match d.converted(length, from, to) {
                    Some(there) => {
                        prop_assert_eq!(d.converted(there, to, from), Some(length));
                        prop_assert_eq!(d.at(from) + length, d.at(to) + there);
                    }
                    None => prop_assert_ne!(from.axis(), to.axis()),
                }
            }
        }
    }

    #[test]
    fn turning_a_leg_changes_no_number_of_it(angle in -7.0_f64..7.0, x in -1e5_f64..1e5, y in -1e5_f64..1e5) {
        let still = terrace();
        let mut turned = terrace();
        turned.legs[0].angle = angle;
        turned.legs[0].origin = (x, y);
        let (still, turned) = (solve(&still).unwrap(), solve(&turned).unwrap());
        let (mut a, mut b) = (still.legs[0].clone(), turned.legs[0].clone());
        prop_assert_eq!(b.placement.angle, angle);
        b.placement = a.placement;
        prop_assert_eq!(format!("{a:?}"), format!("{b:?}"));
        a.id.clear();
    }

    #[test]
    fn what_is_left_makes_the_total_exact(
        room in 64_i64 * 70..64 * 200, least in 64_i64 * 10..64 * 20, more in 0_i64..64 * 12, lefts in 0_usize..4, gap in 0_i64..128,
        lean in -64_i64..64,
    ) {
        let mut given = worked_example();
        given.fittings.clear();
        let leg = &mut given.legs[0];
        leg.room = Some(Length::from_sixty_fourths(room));
        (leg.left, leg.right) = (wall("left", 0.0), wall("right", 0.0));
        leg.left.gap = Length::from_sixty_fourths(gap);
        leg.right.lean = Length::from_sixty_fourths(lean);
        (leg.faces.left, leg.faces.right) = (bare(), bare());
        let range = Width::Range(Length::from_sixty_fourths(least), Length::from_sixty_fourths(least + more));
        leg.modules = vec![fixed("A", 18.0), module("B", range), module("C", range)];
        leg.modules.extend((0..lefts).map(|at| module(&format!("L{at}"), Width::WhatIsLeft)));
        match solve(&given) {
            Ok(solved) => {
                sound(&solved);
                let leg = &solved.legs[0];
                let room = leg.room.unwrap();
                let full = leg.modules[1..3].iter().all(|m| m.width() == Length::from_sixty_fourths(least + more));
                prop_assert!(room.given == room.needed || (full && lefts == 0));
                let (least, most) = (Length::from_sixty_fourths(least), Length::from_sixty_fourths(least + more));
                let within = leg.modules[1..3].iter().all(|m| m.width() >= least && m.width() <= most);
                prop_assert!(within);
                let nearest = leg.right.at.min(leg.right.at_counter) - leg.datums.finished_right;
                prop_assert_eq!(nearest, Length::ZERO, "the gap is kept at the tightest level");
            }
            Err(problems) => {
                explained(&problems);
                prop_assert!(problems[0].message.contains("too long for its room"));
            }
        }
    }
}

#[test]
fn all_reasons_are_given_at_once() {
    let mut given = terrace();
    given.frame.depth = Length::ZERO;
    given.counter.thickness = inches(-1.0);
    given.fittings[1].module = 12;
    given.fittings[2].id = "grill".to_owned();
    let problems = solve(&given).unwrap_err();
    for word in [
        "the frame's depth is 0 in",
        "thickness is -1 in",
        "a module that isn't there",
        "two fittings are called grill",
    ] {
        assert!(problems.iter().any(|problem| problem.message.contains(word)), "{word}: {problems:#?}");
    }
}

#[test]
fn stock_trim_hands_and_waits_out_of_all_reason_are_told_each() {
    let mut given = terrace();
    given.stock.board.kerf = inches(50.0);
    given.laying.gap = inches(40.0);
    given.stock.board.offcuts = vec![Offcut { name: " ".to_owned(), size: (inches(30.0), inches(30.0)), place: None }];
    given.stock.bars.lengths = vec![inches(96.0)];
    given.stock.bars.end_trim = inches(96.0);
    given.counter.needs.lifters = Some(0);
    given.waits.insert(WaitFor::Veneer, Wait { hours: 1e9, origin: "the job".to_owned() });
    let problems = solve(&given).unwrap_err();
    for word in [
        "the kerf of the boards is 50 in",
        "the gap between boards is 40 in",
        "an offcut has no name",
        "cutting 96 in off the end leaves nothing of a bar 96 in long",
        "nobody lifts the counter",
        "the wait for veneer is longer than ten years",
    ] {
        assert!(problems.iter().any(|problem| problem.message.contains(word)), "{word}: {problems:#?}");
    }
    assert_eq!(problems.len(), 6, "{problems:#?}");
}

#[test]
fn a_run_that_cannot_fit_says_by_how_much_and_what_binds() {
    let mut given = worked_example();
    let leg = &mut given.legs[0];
    leg.room = Some(inches(60.0));
    leg.modules.push(module("C", Width::Range(inches(10.0), inches(20.0))));
    leg.modules.push(module("D", Width::WhatIsLeft));
    let problems = solve(&given).unwrap_err();
    let message = &problems[0].message;
    for word in [
        "17 1/4 in too long",
        "A (18 in, fixed)",
        "C (at least 10 in)",
        "D (what is left, at least 3 in)",
        "4 1/4 in of gaps",
    ] {
        assert!(message.contains(word), "{word}: {message}");
    }
}

#[test]
fn alignments_in_a_ring_name_their_members() {
    let mut given = terrace();
    given.fittings[1].across.from = AcrossFrom::Fitting(2);
    given.fittings[2].across.from = AcrossFrom::Fitting(1);
    given.fittings[3].across.from = AcrossFrom::Fitting(2);
    let problems = solve(&given).unwrap_err();
    assert_eq!(problems.len(), 1, "{problems:#?}");
    assert!(problems[0].message.contains("waste") && problems[0].message.contains("doors"));
}

#[test]
fn the_legs_of_a_run_stand_on_one_floor() {
    let mut given = terrace();
    let mut second = given.legs[0].clone();
    second.id = "leg2".to_owned();
    second.modules = vec![fixed("E", 24.0), fixed("F", 30.0)];
    (second.origin, second.angle) = ((3000.0, -900.0), -std::f64::consts::FRAC_PI_2);
    given.legs.push(second);
    let solved = solve(&given).unwrap();
    let (first, second) = (&solved.legs[0], &solved.legs[1]);
    for foot in &second.feet {
        let there = second.placement.to_plan(LegPoint::new(foot.u.mm(), foot.v.mm()));
        let here = first.placement.to_leg(there);
        let ground = first.floor.height(here.x, here.y);
        assert!((second.floor.height(foot.u.mm(), foot.v.mm()) - ground).abs() < 1e-6);
        assert!((foot.ground.mm() - ground).abs() < 1e-5);
    }
    let highest = solved.legs.iter().flat_map(|leg| &leg.feet).map(|foot| foot.ground).max();
    assert_eq!(highest, Some(Length::ZERO));
}

#[test]
fn every_axis_has_its_datums() {
    let on = |axis| DATUMS.iter().filter(|datum| datum.axis() == axis).count();
    assert_eq!((on(Axis::U), on(Axis::V), on(Axis::Z)), (8, 8, 5));
}
