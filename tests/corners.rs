//! Runs that turn corners: what each datum is there, areas, mirrors, turns, and that any run is solved or explained.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::geometry::{LegPoint, Outline, Region};
use faceline::parameters::given::*;
use faceline::rules;
use faceline::sheets;
use faceline::solve::{Datum, Face as Side, Plane, Solved, solve};
use faceline::units::{Length, System};
use proptest::prelude::*;
use std::f64::consts::PI;
use support::reference::{cases, compare, compare_all, id, number};
use support::{bare, fitting, fixed, inches, module, notch, open, published, veneer, wall, well, worked_example};

const MM: f64 = 25.4;

/// A corner at an angle between the faces in degrees, the cook inside it.
fn inside(degrees: f64) -> Corner {
    Corner {
        turn: PI - degrees.to_radians(),
        through: Through::Left,
        seam: CornerSeam::Butt,
        radius: Length::ZERO,
        inner: CornerShape::Common,
        outer: CornerShape::Common,
    }
}

fn outside(degrees: f64) -> Corner {
    Corner { turn: degrees.to_radians() - PI, ..inside(90.0) }
}

fn joint(left: usize, right: usize, corner: Corner) -> Joint {
    Joint { left, right, kind: JointKind::Corner(corner), place: None }
}

/// Legs like that of the worked example, with these modules, joined by these corners in order. Ends are open.
fn run(legs: &[&[f64]], corners: &[Corner]) -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    let first = given.legs[0].clone();
    given.legs = legs
        .iter()
        .enumerate()
        .map(|(at, widths)| {
            let name = |module: usize| format!("{}{module}", char::from(b'A' + at as u8));
            let modules = widths.iter().enumerate().map(|(module, width)| fixed(&name(module), *width)).collect();
            Leg { id: format!("leg{}", at + 1), modules, ..first.clone() }
        })
        .collect();
    given.joints = corners.iter().enumerate().map(|(at, corner)| joint(at, at + 1, *corner)).collect();
    given
}

/// The same, of bare frames of a depth and a counter without overhangs: outlines are what the frames are.
fn plain(legs: &[&[f64]], corners: &[Corner], depth: f64) -> Given {
    let mut given = run(legs, corners);
    given.frame.depth = inches(depth);
    let counter = &mut given.counter;
    counter.wall_joint = Length::ZERO;
    counter.corner_radius = Length::ZERO;
    for overhang in [
        &mut counter.overhang_front,
        &mut counter.overhang_left,
        &mut counter.overhang_right,
        &mut counter.overhang_back,
    ] {
        *overhang = Length::ZERO;
    }
    for leg in &mut given.legs {
        leg.faces = Faces { front: bare(), left: bare(), right: bare(), back: bare() };
    }
    given
}

fn solved(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

#[test]
fn the_datums_of_an_inside_corner() {
    // Build-up 2 1/8 in on a frame 28 in deep: the back of the frame lies 30 1/8 in behind the finished face.
    let solved = solved(&run(&[&[18.0, 42.0, 40.0], &[24.0, 30.0]], &[inside(90.0)]));
    let (through, butting) = (&solved.legs[0].datums, &solved.legs[1].datums);
    // The frame that runs through ends at the other frame's back; the finished faces meet 30 1/8 in before that.
    assert_eq!(through.frame_left, inches(2.125));
    assert_eq!(through.frame_right, inches(2.125 + 100.0));
    assert_eq!(through.finished_right, inches(102.125 - 30.125));
    // Its board ends at the other's bare frame, its counter where the front edges meet.
    assert_eq!(through.board_right, through.finished_right + inches(2.125));
    assert_eq!(through.counter_right, through.finished_right - inches(1.0));
    // The one that butts starts, as seen, at the other's finished face; its board at the other's board (1 5/8 in
    // farther), its frame at the other's bare frame.
    assert_eq!(butting.at(Datum::FinishedLeftEnd), Length::ZERO);
    assert_eq!(butting.board_left, inches(-1.625));
    assert_eq!(butting.frame_left, inches(-2.125));
    assert_eq!(butting.counter_left, inches(1.0));
    assert_eq!(butting.finished_right, inches(-2.125 + 54.0 + 2.125));
    // In plan the second leg's origin is the line where the faces meet, and it runs towards the cook.
    let (first, second) = (solved.legs[0].placement, solved.legs[1].placement);
    assert!((second.origin.x - first.origin.x - through.finished_right.mm()).abs() < 1e-9);
    let along = second.to_plan(LegPoint::new(100.0, 0.0));
    assert!((along.x - second.origin.x).abs() < 1e-9 && (along.y - second.origin.y + 100.0).abs() < 1e-9);
    // The through leg's end carries the other's back board; the butting leg has no end board there.
    assert!(solved.legs[0].boards.iter().any(|board| board.face == Side::Right));
    assert!(!solved.legs[1].boards.iter().any(|board| board.face == Side::Left));
}

#[test]
fn the_datums_of_an_outside_corner() {
    let mut given = run(&[&[40.0], &[50.0]], &[outside(90.0)]);
    let solved_ = solved(&given);
    let (through, butting) = (&solved_.legs[0].datums, &solved_.legs[1].datums);
    // The frame stays a build-up back from the other's finished face, as at an end that is clad.
    assert_eq!(through.frame_right, through.finished_right - inches(2.125));
    assert_eq!(through.board_right, through.finished_right - inches(1.625));
    assert_eq!(through.counter_right, through.finished_right + inches(1.0));
    // The butting frame begins at the through frame's back; its board goes on to the through board.
    assert_eq!(butting.frame_left, inches(30.125));
    assert_eq!(butting.board_left, inches(2.125));
    assert_eq!(butting.counter_left, inches(-1.0));
    // With the other leg through, the roles change places.
    let JointKind::Corner(corner) = &mut given.joints[0].kind else { unreachable!() };
    corner.through = Through::Right;
    let other = solved(&given);
    assert_eq!(other.legs[1].datums.frame_left, inches(2.125));
    assert_eq!(other.legs[0].datums.frame_right, other.legs[0].datums.finished_right - inches(30.125));
}

#[test]
fn rooms_are_measured_to_where_the_walls_meet() {
    let mut given = run(&[&[18.0], &[24.0]], &[inside(90.0)]);
    for leg in &mut given.legs {
        leg.back = wall("wall", 0.5);
        leg.faces.back = bare();
    }
    given.legs[0].room = Some(inches(120.0));
    given.legs[0].modules.push(module("L", Width::WhatIsLeft));
    given.legs[1].room = Some(inches(100.0));
    given.legs[1].modules.push(module("M", Width::WhatIsLeft));
    let solved_ = solved(&given);
    // 120 in from the finished left end to the wall behind the other leg: 1/2 in gap, 28 in frame, 2 1/8 in build-up.
    assert_eq!(solved_.legs[0].datums.finished_right, inches(120.0 - 0.5 - 28.0 - 2.125));
    assert_eq!(solved_.legs[0].datums.frame_right, inches(120.0 - 0.5));
    // The other's clear length is what the first leg's depth leaves of its wall.
    assert_eq!(solved_.legs[1].datums.finished_right, inches(100.0 - 0.5 - 28.0 - 2.125));
    for leg in &solved_.legs {
        let room = leg.room.unwrap();
        assert_eq!(room.given, room.needed);
    }
    // A deeper first leg leaves the second one less, to the inch.
    given.legs[0].own.depth = Some(inches(31.0));
    let deeper = solved(&given);
    assert_eq!(deeper.legs[1].datums.finished_right, solved_.legs[1].datums.finished_right - inches(3.0));
    assert_eq!(deeper.legs[0].datums.finished_right, solved_.legs[0].datums.finished_right);
    // Too little room says by how much and what binds.
    given.legs[1].room = Some(inches(50.0));
    let problems = solve(&given).unwrap_err();
    assert!(problems[0].message.contains("leg2 is") && problems[0].message.contains("corners"), "{problems:?}");
}

#[test]
fn an_l_is_two_straight_legs_less_the_overlap() {
    let (a, b, deep, over) = (72.0, 60.0, 30.125, 1.0);
    let solved_ = solved(&run(&[&[a - 2.125 + deep], &[b]], &[inside(90.0)]));
    let slab = &solved_.slabs[0];
    let straight = |length: f64, open: bool| {
        let mut given = run(&[&[length]], &[]);
        if !open {
            given.legs[0].faces.right = bare();
        }
        solved(&given).legs[0].counter.region.area() / MM / MM
    };
    // The counters of both, each to the far edge of the other: as long as the finished lengths, back boarded 1/2 in.
    let depth = over + deep + 0.5 + over;
    let finished = (a + over - over, b + over - over);
    let ell = (finished.0 + finished.1) * depth + depth * depth;
    assert!((slab.region.area() / MM / MM - ell).abs() < 1e-6, "{} {ell}", slab.region.area() / MM / MM);
    let two = (finished.0 + depth) * depth + (finished.1 + depth) * depth - depth * depth;
    assert!((ell - two).abs() < 1e-9);
    assert!(straight(10.0, true) > 0.0);
    let pieces: f64 = solved_.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|piece| piece.region.area()).sum();
    assert!((pieces - slab.region.area()).abs() < 1e-3, "{pieces} {}", slab.region.area());
}

#[test]
fn a_corner_that_is_out_of_square_is_cut_to_its_angle() {
    let solved_ = solved(&run(&[&[100.0], &[60.0]], &[inside(88.6)]));
    let (through, butting) = (&solved_.legs[0], &solved_.legs[1]);
    // The boards' bevels are what the corner is off square; in a corner that is too sharp their insides are longer.
    let bevel = -(1.4_f64).to_radians();
    let right = through.boards.iter().find(|board| board.face == Side::Front).unwrap().bevels[1];
    let left = butting.boards.iter().find(|board| board.face == Side::Front).unwrap().bevels[0];
    assert!((right - bevel).abs() < 1e-9 && (left - bevel).abs() < 1e-9, "{right} {left} {bevel}");
    // No frame reaches into the other: all corners of one lie on one side of the other's bare face.
    let d = &butting.datums;
    for v in [d.frame_face, d.frame_back] {
        let corner = butting.placement.to_plan(LegPoint::new(d.frame_left.mm(), v.mm()));
        let there = through.placement.to_leg(corner);
        assert!(there.y < through.datums.frame_face.mm() + 1e-5, "{there:?}");
    }
    // The counter's seam lies along the through leg's front edge: the butting piece ends at 88.6 degrees.
    let piece = &butting.counter.pieces[0];
    let seam = piece.edges.iter().find(|edge| edge.kind == faceline::solve::EdgeKind::Seam).unwrap();
    let (du, dv) = ((seam.to.0 - seam.from.0).mm(), (seam.to.1 - seam.from.1).mm());
    let angle = dv.abs().atan2(du).to_degrees();
    assert!((angle - 88.6).abs() < 1e-6 || (angle - 91.4).abs() < 1e-6, "{angle}");
    let total: f64 = solved_.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|p| p.region.area()).sum();
    assert!((total - solved_.slabs[0].region.area()).abs() < 1e-3);
}

/// The edges of boards that meet, inside and outside of the board, in the plan: mitred ones fall together; one that butts
/// lies in the face of the through board, and the through board ends in the plane of the other's bare frame.
#[test]
fn bevelled_boards_meet_in_their_planes() {
    for angle in [75.0, 88.6, 90.0, 120.0, 135.0] {
        for corner in [inside(angle), outside(angle)] {
            for through in [Through::Left, Through::Right, Through::Neither] {
                let solved_ = solved(&run(&[&[150.0], &[160.0]], &[Corner { through, ..corner }]));
                let (left, right) = (&solved_.legs[0], &solved_.legs[1]);
                let edge = |leg: &faceline::solve::Leg, side: usize| {
                    let boards: Vec<_> = leg.boards.iter().filter(|board| board.face == Side::Front).collect();
                    let board = if side == 0 { boards[0] } else { boards[boards.len() - 1] };
                    let (u, way) = if side == 0 { (board.extent.x0, 1.0) } else { (board.extent.x1, -1.0) };
                    let thick = (leg.datums.frame_face - leg.datums.board_face).mm();
                    let back = u.mm() + way * thick * board.bevels[side].tan();
                    let to_plan = |u: f64, v: f64| leg.placement.to_plan(LegPoint::new(u, v));
                    [to_plan(u.mm(), leg.datums.board_face.mm()), to_plan(back, leg.datums.frame_face.mm())]
                };
                let (a, b) = (edge(left, 1), edge(right, 0));
                let what = format!("{angle} {:?} {through:?}: {a:?} {b:?}", corner.turn);
                if through == Through::Neither {
                    assert!(a[0].distance(b[0]) < 1e-5 && a[1].distance(b[1]) < 1e-5, "{what}");
                    continue;
                }
                // Both points of an edge lie in one plane that is parallel to the other leg's face.
                for (ends, across) in [(a, right), (b, left)] {
                    let [p, q] = ends.map(|end| across.placement.to_leg(end).y);
                    assert!((p - q).abs() < 1e-5, "{what}: {p} {q}");
                    let d = &across.datums;
                    assert!([d.board_face, d.frame_face].iter().any(|v| (v.mm() - p).abs() < 1e-5), "{what}: {p}");
                }
            }
        }
    }
}

/// Seams in every manner leave pieces that add up to the whole, with and without a rounding.
#[test]
fn pieces_add_up_however_the_corner_is_seamed() {
    for angle in [60.0, 88.6, 90.0, 120.0, 135.0] {
        for corner in [inside(angle), outside(angle)] {
            for seam in [CornerSeam::Butt, CornerSeam::Mitre, CornerSeam::None] {
                for through in [Through::Left, Through::Right] {
                    let shapes = [CornerShape::Round(inches(2.0)), CornerShape::Clipped(inches(3.0))];
                    for (radius, outer) in [(0.0, shapes[0]), (1.5, shapes[1]), (1.5, shapes[0])] {
                        let corner = Corner { seam, through, radius: inches(radius), outer, ..corner };
                        let solved_ = solved(&run(&[&[150.0], &[160.0]], &[corner]));
                        let pieces: Vec<&Region> =
                            solved_.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|p| &p.region).collect();
                        let total: f64 = pieces.iter().map(|region| region.area()).sum();
                        let whole = solved_.slabs[0].region.area();
                        assert!((total - whole).abs() < 1e-2, "{angle} {corner:?}: {total} {whole}");
                        assert_eq!(pieces.len(), if seam == CornerSeam::None { 1 } else { 2 });
                    }
                }
            }
        }
    }
}

/// A clipped inside corner is filled by a triangle: half its two sides times the sine of the angle between them, one piece
/// of it however the corner is seamed but mitred, its edge seen.
#[test]
fn a_clipped_inside_corner_is_filled() {
    for angle in [60.0_f64, 88.6, 90.0, 120.0] {
        for corner in [inside(angle), outside(angle)] {
            for through in [Through::Left, Through::Right] {
                for seam in [CornerSeam::Butt, CornerSeam::Mitre, CornerSeam::None] {
                    let of = |inner| {
                        let corner = Corner { seam, through, inner, ..corner };
                        solved(&run(&[&[150.0], &[160.0]], &[corner]))
                    };
                    let area = |solved: &Solved| solved.slabs[0].region.area() / MM / MM;
                    let (sharp, clipped) = (of(CornerShape::Common), of(CornerShape::Clipped(inches(5.0))));
                    let filled = 25.0 * angle.to_radians().sin() / 2.0;
                    let what = format!("{angle} {:?} {through:?} {seam:?}", corner.turn);
                    assert!((area(&clipped) - area(&sharp) - filled).abs() < 1e-6, "{what}");
                    let pieces: f64 =
                        clipped.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|p| p.region.area()).sum();
                    assert!((pieces / MM / MM - area(&clipped)).abs() < 1e-4, "{what}");
                    // The straight edge that fills it: 2 * 5 in * sin(angle / 2), seen, in the whole outline.
                    let long = 10.0 * (angle.to_radians() / 2.0).sin() * MM;
                    let edge = |edge: &&faceline::solve::Edge| {
                        let (du, dv) = ((edge.to.0 - edge.from.0).mm(), (edge.to.1 - edge.from.1).mm());
                        (du.hypot(dv) - long).abs() < 1e-3 && edge.kind == faceline::solve::EdgeKind::Finished
                    };
                    assert_eq!(clipped.slabs[0].edges.iter().filter(edge).count(), 1, "{what}");
                    // The substrate isn't filled: it ends with the frames.
                    let under = |solved: &Solved| solved.slabs[0].substrate.area();
                    assert!((under(&clipped) - under(&sharp)).abs() < 1e-6, "{what}");
                }
            }
        }
    }
    // Build-up 2 1/8 in and overhang 1 in: a clip of 12 in hangs 3 1/8 in and 6 in past the frames, one of 15 in 10 5/8 in, and
    // 10 in is the most for 1 1/2 in of concrete.
    let said = |by: f64| {
        let corner = Corner { inner: CornerShape::Clipped(inches(by)), ..inside(90.0) };
        let findings = rules::check(&solved(&run(&[&[150.0], &[160.0]], &[corner])));
        let own = findings.into_iter().filter(|found| found.rule == "counter-overhang-supported");
        own.map(|found| found.message).filter(|message| message.starts_with("what fills")).collect::<Vec<_>>()
    };
    assert!(said(12.0).is_empty());
    assert_eq!(
        said(15.0),
        ["what fills the corner between legs leg1 and leg2 hangs 10 5/8 in past their frames; 10 in is the most"]
    );
    let refused = |inner| {
        let problems = solve(&run(&[&[40.0], &[60.0]], &[Corner { inner, ..inside(90.0) }])).err().unwrap_or_default();
        problems.first().map(|problem| problem.message.clone())
    };
    let message = refused(CornerShape::Clipped(inches(90.0))).expect("it has no room");
    assert!(message.contains("more than its edges have room for"), "{message}");
}

/// Every outline of the reference that a run of legs can state, through the whole solver.
#[test]
fn reference_outlines_through_the_whole_solver() {
    let mut compared = Vec::new();
    for case in cases("geometry") {
        let name = id(&case);
        for (at, given) in stated(name).into_iter().enumerate() {
            let mut given = given;
            let input = &case["input"];
            given.counter.thickness = inches(number(input, "thickness_in").unwrap());
            given.counter.density = number(input, "density_lb_ft3").unwrap() * 0.45359237 / 0.3048_f64.powi(3);
            let solved_ = solved(&given);
            let slab = &solved_.slabs[0];
            let expected = &case["expected"];
            compare(&case, expected, "net_area_in2", slab.region.area() / MM / MM);
            compare(&case, expected, "outer_perimeter_in", slab.region.outer.perimeter() / MM);
            let holes: f64 = slab.region.holes.iter().map(Outline::perimeter).sum();
            compare(&case, expected, "cutout_perimeter_in", holes / MM);
            let pieces = || slab.pieces.iter().map(|(leg, piece, _)| &solved_.legs[*leg].counter.pieces[*piece]);
            let mass: f64 = pieces().map(|piece| piece.mass).sum();
            assert!(compare(&case, expected, "weight_lb", mass / 0.45359237), "{name}");
            let mut areas: Vec<f64> = pieces().map(|piece| piece.region.area() / MM / MM).collect();
            if expected.get("seam_piece_areas_in2").is_some() {
                areas.sort_by(f64::total_cmp);
                compare_all(&case, "seam_piece_areas_in2", &areas);
            }
            compared.push(format!("{name}/{at}"));
        }
    }
    assert_eq!(compared.len(), 9, "{compared:?}");
}

/// Every mitred offset of the reference: the bare outline (without notches, cutouts and rounded corners) is a run whose
/// counter lies flush with bare frames, and its offset the same run with overhangs on all sides.
#[test]
fn mitred_offsets_are_runs_with_overhangs() {
    let mut compared = Vec::new();
    for case in cases("geometry") {
        let (name, expected) = (id(&case), &case["expected"]);
        let Some(offset) = number(&case["input"], "offset_in") else { continue };
        let runs = match name {
            "geo-s01" => vec![plain(&[&[96.0]], &[], 30.0)],
            "geo-s02" => vec![plain(&[&[120.0]], &[], 28.0)],
            _ => stated(name),
        };
        for mut given in runs {
            given.fittings.clear();
            let counter = &mut given.counter;
            for overhang in [
                &mut counter.overhang_front,
                &mut counter.overhang_left,
                &mut counter.overhang_right,
                &mut counter.overhang_back,
            ] {
                *overhang = inches(offset);
            }
            let own = &mut given.legs[0].own;
            match name {
                "geo-s09" => own.corners = [CornerShape::Common; 4],
                // The clip moves out by the offset, square to itself: x - y = 72 becomes 72 + offset * sqrt(2), and from
                // the corner of the wider edges, x - y = 84 + 2 * offset, so much is clipped off both.
                "geo-s06" => {
                    own.corners[1] = CornerShape::Clipped(inches(12.0 + offset * (2.0 - 2.0_f64.sqrt())));
                }
                // The slanted end falls 15 in over 30 in; moved out square to itself it lies offset * sqrt(5) / 2 farther
                // along, and half an offset more at the front edge, which lies an offset before the face.
                "geo-s10" => {
                    own.skew[1] = inches(-0.5 * (30.0 + 2.0 * offset));
                    own.overhang_right = Some(inches(offset * (5.0_f64.sqrt() + 1.0) / 2.0));
                }
                _ => {}
            }
            let solved_ = solved(&given);
            let region = solved_.slabs.first().map_or(&solved_.legs[0].counter.region, |slab| &slab.region);
            assert!(compare(&case, expected, "offset_area_in2", region.area() / MM / MM), "{name}");
            assert!(compare(&case, expected, "offset_perimeter_in", region.outer.perimeter() / MM), "{name}");
            compared.push(name.to_owned());
        }
    }
    // All that give an offset; the L and the U by both ways of walking them.
    let each =
        ["geo-s01", "geo-s02", "geo-s03", "geo-s03", "geo-s04", "geo-s05", "geo-s05", "geo-s06", "geo-s09", "geo-s10"];
    assert_eq!(compared, each);
}

/// The runs that have the outline of a case.
fn stated(case: &str) -> Vec<Given> {
    let right = |corner: Corner| Corner { through: Through::Right, ..corner };
    let left_edge = |given: &mut Given, leg: usize, at: f64| {
        let one = given.fittings.last_mut().unwrap();
        one.leg = leg;
        one.across = Across { line: AcrossLine::LeftEdge, from: AcrossFrom::FinishedLeft, distance: published(at) };
    };
    match case {
        // An L, walked round its outside, and as the cook inside it sees it.
        "geo-s03" => vec![
            plain(&[&[80.0], &[72.0]], &[right(outside(90.0))], 28.0),
            plain(&[&[72.0], &[80.0]], &[inside(90.0)], 28.0),
        ],
        "geo-s04" => {
            let mut given = plain(&[&[102.0], &[84.0]], &[right(outside(90.0))], 30.0);
            let mut grill = notch(34.0, 25.5, 9.0);
            if let Cut::Notch { radius, .. } = &mut grill {
                *radius = inches(0.375);
            }
            given.fittings.push(fitting("grill", Look::Grill, 0, grill));
            left_edge(&mut given, 0, 24.0);
            // The sink: x 107 to 125, y 52 to 66; the second leg's face is x = 132, its u runs with y.
            given.fittings.push(fitting("sink", Look::Sink, 0, well(14.0, 18.0, 2.0, 7.0)));
            left_edge(&mut given, 1, 52.0);
            vec![given]
        }
        "geo-s05" => vec![
            // Walked round the outside: front y = 0 in the middle, the side legs run away from it.
            plain(&[&[54.0], &[84.0], &[66.0]], &[outside(90.0), right(outside(90.0))], 30.0),
            // From inside the U.
            plain(&[&[66.0], &[84.0], &[54.0]], &[inside(90.0), right(inside(90.0))], 30.0),
        ],
        "geo-s06" => {
            let mut given = plain(&[&[84.0]], &[], 36.0);
            given.legs[0].own.corners[1] = CornerShape::Clipped(inches(12.0));
            given.fittings.push(fitting("sink", Look::Sink, 0, well(22.5, 18.0, 0.75, 8.0)));
            left_edge(&mut given, 0, 20.0);
            vec![given]
        }
        "geo-s09" => {
            let mut given = plain(&[&[150.0]], &[], 42.0);
            given.legs[0].own.corners = [
                CornerShape::Common,
                CornerShape::Common,
                CornerShape::Round(inches(6.0)),
                CornerShape::Round(inches(6.0)),
            ];
            let mut grill = notch(36.25, 24.0, 9.0);
            if let Cut::Notch { radius, .. } = &mut grill {
                *radius = inches(0.5);
            }
            given.fittings.push(fitting("grill", Look::Grill, 0, grill));
            left_edge(&mut given, 0, 54.0);
            for (name, at, width, depth, radius, setback) in [
                ("one", 12.0, 20.0, 16.0, 1.0, 8.0),
                ("two", 108.0, 12.5, 20.5, 0.5, 5.0),
                ("three", 134.5, 3.0, 3.0, 1.5, 28.5),
            ] {
                given.fittings.push(fitting(name, Look::Sink, 0, well(width, depth, radius, setback)));
                left_edge(&mut given, 0, at);
            }
            vec![given]
        }
        "geo-s07" => {
            let mut given = plain(&[&[78.0]], &[], 32.0);
            let round = CornerShape::Round(inches(3.0));
            given.legs[0].own.corners = [round, round, CornerShape::Common, CornerShape::Common];
            let circle = Cut::Well {
                shape: WellShape::Circle { diameter: published(21.25) },
                line: DepthLine::Centre,
                setback: published(17.0),
                setback_from: DepthFrom::FinishedFace,
            };
            given.fittings.push(fitting("ring", Look::SideBurner, 0, circle));
            vec![given]
        }
        "geo-s10" => {
            let mut given = plain(&[&[90.0]], &[], 30.0);
            given.legs[0].own.skew[1] = inches(-15.0);
            vec![given]
        }
        _ => Vec::new(),
    }
}

#[test]
fn an_arc_and_a_slope_have_the_area_that_they_add() {
    let straight = solved(&plain(&[&[80.0]], &[], 30.0)).legs[0].counter.region.area();
    let mut given = plain(&[&[80.0]], &[], 30.0);
    given.legs[0].own.front = FrontEdge::Sloped(inches(0.0), inches(6.0));
    let sloped = solved(&given).legs[0].counter.region.area();
    assert!(((sloped - straight) / MM / MM - 240.0).abs() < 1e-6);
    given.legs[0].own.front = FrontEdge::Arc(inches(5.0));
    let arc = solved(&given).legs[0].counter.region.area();
    let (chord, rise) = (80.0_f64, 5.0);
    let radius = (chord * chord / 4.0 + rise * rise) / (2.0 * rise);
    let angle = 2.0 * (chord / 2.0 / radius).asin();
    let segment = radius * radius * (angle - angle.sin()) / 2.0;
    assert!(((arc - straight) / MM / MM - segment).abs() < 1e-6);
}

/// What a notch takes of a counter whose front edge is an arc, against a sum of thin strips (Simpson's rule).
#[test]
fn a_notch_in_an_arc_takes_what_lies_over_it() {
    let (chord, rise, wide, deep) = (80.0_f64, 5.0, 30.0, 20.0);
    let mut given = plain(&[&[chord]], &[], 30.0);
    given.legs[0].own.front = FrontEdge::Arc(inches(rise));
    let whole = solved(&given).legs[0].counter.region.area() / MM / MM;
    given.fittings.push(fitting("grill", Look::Grill, 0, notch(wide, deep, 9.0)));
    let bitten = solved(&given);
    let radius = (chord * chord / 4.0 + rise * rise) / (2.0 * rise);
    let over = |x: f64| (radius * radius - x * x).sqrt() - (radius - rise) + deep;
    let steps = 200;
    let step = wide / f64::from(steps);
    let strips: f64 = (0..=steps)
        .map(|k| {
            let weight = if k == 0 || k == steps {
                1.0
            } else if k % 2 == 1 {
                4.0
            } else {
                2.0
            };
            weight * over(-wide / 2.0 + f64::from(k) * step)
        })
        .sum::<f64>()
        * step
        / 3.0;
    // The corner radius of the notch is nought in this job.
    let taken = whole - bitten.legs[0].counter.region.area() / MM / MM;
    assert!((taken - strips).abs() < 1e-6, "{taken} {strips}");
    assert!(bitten.legs[0].counter.region.outer.vertices.iter().filter(|v| v.bulge > 0.0).count() == 2);
}

/// Seams through a notch, through a sink and across an arc: as on a straight leg they are made, and a rule warns.
#[test]
fn seams_through_cutouts_of_a_corner_run_leave_pieces_that_add_up() {
    let mut given = run(&[&[60.0, 42.0, 40.0], &[60.0, 40.0]], &[inside(88.6)]);
    given.legs[1].own.front = FrontEdge::Arc(inches(3.0));
    given.fittings.push(fitting("grill", Look::Grill, 0, notch(30.0, 20.0, 9.0)));
    let mut sink = fitting("sink", Look::Sink, 0, well(14.0, 18.0, 2.0, 7.0));
    sink.leg = 1;
    given.fittings.push(sink);
    let whole = solved(&given);
    let (grill, sink) = (whole.legs[0].fittings[0].centre(), whole.legs[1].fittings[0].centre());
    for (leg, u, through) in [(0, grill, "grill"), (1, sink, "sink"), (1, sink + inches(25.0), "")] {
        given.counter.seams = vec![(leg, u)];
        let parted = solved(&given);
        let slab = &parted.slabs[0];
        assert_eq!(slab.pieces.len(), 3, "{through}");
        let total: f64 =
            slab.pieces.iter().map(|(leg, at, _)| parted.legs[*leg].counter.pieces[*at].region.area()).sum();
        assert!((total - slab.region.area()).abs() < 1e-3, "{through}: {total}");
        let warned = rules::check(&parted).iter().any(|finding| finding.rule == "seam-clear-of-cutouts");
        assert_eq!(warned, !through.is_empty(), "{through}");
    }
}

#[test]
fn a_diagonal_front_is_a_leg_between_two_obtuse_corners() {
    let corner = Corner { through: Through::Neither, seam: CornerSeam::None, ..inside(135.0) };
    let solved_ = solved(&run(&[&[40.0], &[30.0], &[50.0]], &[corner, corner]));
    let middle = &solved_.legs[1].datums;
    // Each frame stops at the line that halves the corner: 2 1/8 in of build-up times tan 22.5 degrees beyond.
    let beyond = 2.125 * (PI / 8.0).tan();
    assert!((middle.frame_left.inches() + beyond).abs() < 1e-6);
    assert!((middle.finished_right.inches() - (30.0 - 2.0 * beyond)).abs() < 1e-6);
    assert_eq!(solved_.slabs[0].pieces.len(), 1);
    let turn = solved_.legs[2].placement.angle - solved_.legs[0].placement.angle;
    assert!((turn + PI / 2.0).abs() < 1e-12);
}

#[test]
fn a_step_in_height_clads_the_side_of_the_higher_leg() {
    let mut given = run(&[&[40.0], &[30.0]], &[]);
    given.legs[0].own.height = Some(Height::CounterTop(inches(30.0)));
    given.joints = vec![Joint { left: 0, right: 1, kind: JointKind::Step, place: None }];
    let solved_ = solved(&given);
    let (low, high) = (&solved_.legs[0], &solved_.legs[1]);
    // The higher leg's finished end is both legs' datum; the lower frame runs on under the cladding.
    assert_eq!(high.datums.frame_left, inches(2.125));
    assert_eq!(low.datums.frame_right, low.datums.finished_right + inches(2.125));
    assert_eq!(low.datums.counter_right, low.datums.finished_right - inches(0.25));
    assert_eq!(low.datums.counter_top, inches(30.0));
    assert!((high.placement.origin.x - low.datums.finished_right.mm()).abs() < 1e-9);
    let side = high.boards.iter().find(|board| board.face == Side::Left).unwrap();
    assert_eq!(side.extent.y0, low.datums.frame_top);
    assert!(!low.boards.iter().any(|board| board.face == Side::Right));
    given.legs[0].own.height = None;
    assert!(solve(&given).unwrap_err()[0].message.contains("equally high"));
}

#[test]
fn a_raised_bar_stands_behind_its_leg() {
    let mut given = run(&[&[80.0], &[80.0]], &[]);
    let bar = &mut given.legs[1].own;
    bar.behind = Some(0);
    bar.depth = Some(inches(6.0));
    bar.height = Some(Height::CounterTop(inches(42.0)));
    bar.overhang_back = Some(inches(12.0));
    given.legs[1].faces.back = veneer();
    let solved_ = solved(&given);
    let (leg, bar) = (&solved_.legs[0].datums, &solved_.legs[1].datums);
    // The frames touch; the bar's finished face stands over the counter, which ends a joint before it.
    assert_eq!(leg.finished_back, leg.frame_back - inches(2.125));
    assert_eq!(leg.counter_back, leg.finished_back - inches(0.25));
    let face = solved_.legs[1].placement.origin.y - solved_.legs[0].placement.origin.y;
    assert!((face - leg.finished_back.mm()).abs() < 1e-9);
    assert_eq!(bar.counter_back, bar.finished_back + inches(12.0));
    let front = solved_.legs[1].boards.iter().find(|board| board.face == Side::Front).unwrap();
    assert_eq!(front.extent.y0, leg.frame_top);
}

#[test]
fn what_cannot_be_is_explained() {
    let two = || run(&[&[60.0], &[60.0]], &[inside(90.0)]);
    let says = |given: &Given, word: &str| {
        let problems = solve(given).unwrap_err();
        assert!(problems.iter().any(|problem| problem.message.contains(word)), "{word}: {problems:#?}");
    };
    let mut given = two();
    given.joints.push(joint(0, 1, inside(90.0)));
    says(&given, "meets two legs");
    let mut given = two();
    given.joints.push(joint(1, 0, inside(90.0)));
    says(&given, "ring");
    let mut given = two();
    given.joints[0].right = 0;
    says(&given, "meets itself");
    let mut given = two();
    given.legs[1].own.placed = true;
    says(&given, "placed twice");
    says(&run(&[&[60.0], &[60.0]], &[inside(3.0)]), "angle of a corner");
    says(&run(&[&[20.0], &[60.0]], &[inside(90.0)]), "too short");
    let corner = Corner { radius: inches(200.0), ..inside(90.0) };
    says(&run(&[&[60.0], &[60.0]], &[corner]), "more than its edges have room for");
    let mut given = two();
    given.fittings.push(fitting("grill", Look::Grill, 0, notch(30.0, 20.0, 9.0)));
    given.fittings[0].across =
        Across { line: AcrossLine::RightEdge, from: AcrossFrom::FinishedRight, distance: published(0.0) };
    says(&given, "into a corner");
}

fn mirrored(given: &Given) -> Given {
    let mut other = given.clone();
    other.legs.reverse();
    let last = other.legs.len() - 1;
    for leg in &mut other.legs {
        leg.modules.reverse();
        std::mem::swap(&mut leg.left, &mut leg.right);
        std::mem::swap(&mut leg.faces.left, &mut leg.faces.right);
        leg.own.corners.swap(0, 1);
        leg.own.corners.swap(2, 3);
        leg.own.skew.swap(0, 1);
        if let FrontEdge::Sloped(a, b) = leg.own.front {
            leg.own.front = FrontEdge::Sloped(b, a);
        }
    }
    for joint in &mut other.joints {
        (joint.left, joint.right) = (last - joint.right, last - joint.left);
        if let JointKind::Corner(corner) = &mut joint.kind {
            corner.through = match corner.through {
                Through::Left => Through::Right,
                Through::Right => Through::Left,
                Through::Neither => Through::Neither,
            };
        }
    }
    let counter = &mut other.counter;
    std::mem::swap(&mut counter.overhang_left, &mut counter.overhang_right);
    other
}

/// The corners of an outline, sorted, to a micrometre.
fn corners(outline: &Outline) -> Vec<(i64, i64)> {
    let mut all: Vec<(i64, i64)> =
        outline.vertices.iter().map(|v| ((v.x * 1e3).round() as i64, (v.y * 1e3).round() as i64)).collect();
    all.sort();
    all
}

fn close(a: &[(i64, i64)], b: &[(i64, i64)]) -> bool {
    a.len() == b.len() && a.iter().all(|p| b.iter().any(|q| (p.0 - q.0).abs() <= 2 && (p.1 - q.1).abs() <= 2))
}

fn any_corner() -> impl Strategy<Value = Corner> {
    let shape = prop_oneof![
        Just(CornerShape::Common),
        (0_i64..128).prop_map(|r| CornerShape::Round(Length::from_sixty_fourths(r))),
        (1_i64..256).prop_map(|c| CornerShape::Clipped(Length::from_sixty_fourths(c))),
    ];
    let angle = prop_oneof![2 => Just(90.0), 2 => 60.0..150.0, 1 => Just(135.0), 1 => -10.0..400.0];
    let inner = prop_oneof![
        3 => Just(CornerShape::Common),
        1 => (1_i64..512).prop_map(|c| CornerShape::Clipped(Length::from_sixty_fourths(c))),
    ];
    (angle, any::<bool>(), 0_u8..3, 0_u8..3, 0_i64..192, inner, shape).prop_map(
        |(angle, within, through, seam, radius, inner, outer)| {
            let corner = if within { inside(angle) } else { outside(angle) };
            Corner {
                through: [Through::Left, Through::Right, Through::Neither][through as usize],
                seam: [CornerSeam::Butt, CornerSeam::Mitre, CornerSeam::None][seam as usize],
                radius: Length::from_sixty_fourths(radius),
                inner,
                outer,
                ..corner
            }
        },
    )
}

fn any_run() -> impl Strategy<Value = Given> {
    let leg = prop::collection::vec(12.0_f64..60.0, 1..4);
    let extras = (0_u8..16, 0_usize..4, -20.0_f64..80.0);
    (prop::collection::vec(leg, 1..5), prop::collection::vec(any_corner(), 4), prop::collection::vec(extras, 0..4))
        .prop_map(|(legs, corners, extras)| {
            let legs: Vec<Vec<f64>> =
                legs.into_iter().map(|l| l.into_iter().map(|w| (w * 16.0).round() / 16.0).collect()).collect();
            let slices: Vec<&[f64]> = legs.iter().map(Vec::as_slice).collect();
            let mut given = run(&slices, &corners[..legs.len() - 1]);
            for (which, leg, value) in extras {
                let leg = leg % given.legs.len();
                let size = inches((value * 16.0).round() / 16.0);
                match which {
                    0 => given.legs[leg].own.front = FrontEdge::Sloped(size, inches(1.0)),
                    1 => given.legs[leg].own.front = FrontEdge::Arc(size),
                    2 => given.legs[leg].own.skew[0] = size,
                    3 => given.legs[leg].own.corners[1] = CornerShape::Clipped(size),
                    4 => given.legs[leg].own.depth = Some(size),
                    5 => given.legs[leg].room = Some(size * 3),
                    6 => given.counter.seams.push((leg, size)),
                    7 => given.legs[leg].back = wall("wall", value.abs() / 16.0),
                    8 => given.counter.overhang_front = size,
                    9 => {
                        given.legs[leg].own.height = Some(Height::CounterTop(size));
                        if let Some(joint) = given.joints.get_mut(leg) {
                            joint.kind = JointKind::Step;
                        }
                    }
                    10 => {
                        let mut one =
                            fitting(&format!("n{}", given.fittings.len()), Look::Grill, 0, notch(10.0, 20.0, 9.0));
                        one.leg = leg;
                        given.fittings.push(one);
                    }
                    11 => given.legs[leg].own.behind = Some((leg + 1) % given.legs.len()),
                    which => {
                        let edge = [Face::Back, Face::Front, Face::Left, Face::Right][usize::from(which - 12)];
                        let (along, width) = (size.abs(), inches(6.0));
                        let cut = NotchCut::Edge { edge, along, width, depth: inches(1.0 + value.abs() / 8.0) };
                        let (name, radius) = ("notch".to_owned(), inches(0.375));
                        given.counter.notches.push(Notch { leg, name, cut, radius, place: None });
                    }
                }
            }
            given
        })
}

/// How many runs are made up: `PROPTEST_CASES`, or as many.
fn cases_or(count: u32) -> u32 {
    std::env::var("PROPTEST_CASES").ok().and_then(|text| text.parse().ok()).unwrap_or(count)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: cases_or(400), failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_run_is_solved_or_explained(given in any_run()) {
        match solve(&given) {
            Ok(solved) => {
                for slab in &solved.slabs {
                    let pieces = || slab.pieces.iter().map(|(leg, at, _)| &solved.legs[*leg].counter.pieces[*at]);
                    let total: f64 = pieces().map(|piece| piece.region.area()).sum();
                    prop_assert!(slab.region.area() > 0.0);
                    prop_assert!((total - slab.region.area()).abs() < 1e-2, "{} {}", total, slab.region.area());
                }
                for leg in &solved.legs {
                    prop_assert!(leg.counter.region.outer.area() > 0.0);
                    for board in &leg.boards {
                        prop_assert!(board.region.outer.area() > 0.0, "{}", board.name);
                    }
                    let d = &leg.datums;
                    prop_assert_eq!(leg.modules[0].left, d.frame_left);
                    for fitting in &leg.fittings {
                        let _ = fitting.cutout(Plane::Counter);
                    }
                }
                let _ = rules::check(&solved);
            }
            Err(problems) => {
                prop_assert!(!problems.is_empty());
                for problem in &problems {
                    prop_assert!(!problem.message.is_empty() && !problem.instead.is_empty());
                    prop_assert!(!problem.message.contains("add up"), "{}", problem.message);
                }
            }
        }
    }

    #[test]
    fn turning_the_whole_run_changes_no_number_of_a_leg(given in any_run(), angle in -7.0_f64..7.0, x in -1e5_f64..1e5) {
        let Ok(still) = solve(&given) else { return Ok(()) };
        let mut turned = given.clone();
        turned.legs[0].angle = angle;
        turned.legs[0].origin = (x, -x / 3.0);
        let Ok(turned) = solve(&turned) else { panic!("it solved before it was turned") };
        for (a, b) in still.legs.iter().zip(&turned.legs) {
            let (mut a, mut b) = (a.clone(), b.clone());
            b.placement = a.placement;
            a.floor = b.floor.clone();
            for (a, b) in a.feet.iter_mut().zip(&mut b.feet) {
                // The floor is level here; its height under a foot is worked out through the plan.
                prop_assert!((a.ground - b.ground).abs() < Length::from_nm(100));
                (a.ground, a.height) = (b.ground, b.height);
            }
            prop_assert_eq!(format!("{a:?}"), format!("{b:?}"));
        }
        prop_assert_eq!(format!("{:?}", still.slabs), format!("{:?}", turned.slabs));
    }

    #[test]
    fn a_mirrored_run_has_mirrored_templates(given in any_run()) {
        let mut given = given;
        given.fittings.clear();
        given.counter.seams.clear();
        given.counter.notches.clear();
        given.legs.iter_mut().for_each(|leg| leg.own.behind = None);
        let Ok(one) = solve(&given) else { return Ok(()) };
        let other = match solve(&mirrored(&given)) {
            Ok(other) => other,
            Err(problems) => return Err(TestCaseError::fail(format!("{problems:?}"))),
        };
        for (a, b) in one.legs.iter().zip(other.legs.iter().rev()) {
            let axis = a.datums.finished_right.mm() / 2.0;
            prop_assert!((a.datums.finished_right - b.datums.finished_right).abs() <= Length::from_nm(4));
            let turned = a.counter.region.outer.mirrored(axis);
            prop_assert!(close(&corners(&turned), &corners(&b.counter.region.outer)), "{:?} {:?}", turned, b.counter.region.outer);
            let under = a.substrate.region.outer.mirrored(axis);
            prop_assert!(close(&corners(&under), &corners(&b.substrate.region.outer)), "{:?} {:?}", under, b.substrate.region.outer);
            prop_assert_eq!(a.boards.len(), b.boards.len());
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 60, failure_persistence: None, ..ProptestConfig::default() })]

    /// Plans, counter sheets and pictures of made-up runs on any paper have no label on another or on a line.
    #[test]
    fn made_up_runs_have_legible_plans_counter_sheets_and_pictures(given in any_run(), paper in 0_usize..4, units in 0_usize..3) {
        let mut given = given;
        let (name, width, height) =
            [("A4", 297.0, 210.0), ("A3", 420.0, 297.0), ("A1", 841.0, 594.0), ("ANSI B", 431.8, 279.4)][paper];
        (given.paper.name, given.paper.width, given.paper.height) = (name.to_owned(), width, height);
        given.job.units = [System::Inches, System::Millimetres, System::Both][units];
        let Ok(solved) = solve(&given) else { return Ok(()) };
        let findings = rules::check(&solved);
        // Legs by themselves have tests of their own.
        let met = (0..solved.legs.len()).all(|leg| !solved.stands_alone(leg));
        let wanted = |kind: sheets::Kind| match kind {
            sheets::Kind::Plan => met,
            sheets::Kind::Client(..) | sheets::Kind::Axonometric => true,
            sheets::Kind::Counter(leg) | sheets::Kind::Substrate(leg) => solved.slabs.iter().any(|slab| slab.legs.first() == Some(&leg)),
            _ => false,
        };
        let drawn = sheets::draw(&solved, &findings, wanted);
        prop_assert!(drawn.is_ok(), "{:?}", drawn.err());
    }
}

#[test]
fn an_open_end_stays_open() {
    assert_eq!(open().kind, BoundKind::Open);
}
