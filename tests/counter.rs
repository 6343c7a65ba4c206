//! The counter and the substrate of a leg: where they end, what their edges meet, where they are joined.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::*;
use faceline::solve::{EdgeKind, Solved, solve};
use faceline::units::Length;
use support::*;

/// The worked example between a wall on the left that leans in by 3/8 in and open air on the right, with a wall behind.
fn between_walls() -> Given {
    let mut given = worked_example();
    let leg = &mut given.legs[0];
    leg.left = Bound { lean: inches(0.375), ..wall("house wall", 0.5) };
    leg.back = wall("garden wall", 1.0);
    leg.faces.left = bare();
    given
}

fn solved(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

fn kinds(solved: &Solved, piece: usize) -> Vec<EdgeKind> {
    solved.legs[0].counter.pieces[piece].edges.iter().map(|edge| edge.kind).collect()
}

#[test]
fn a_wall_that_leans_in_is_kept_off_at_its_tightest() {
    let solved = solved(&between_walls());
    let leg = &solved.legs[0];
    let d = &leg.datums;
    assert_eq!(d.frame_left, Length::ZERO, "an end without build-up is finished where its frame ends");
    assert_eq!(leg.left.at, inches(-0.875), "at the floor: gap and lean");
    assert_eq!(leg.left.at_counter, inches(-0.5), "at counter height: the gap");
    assert_eq!(d.counter_left, inches(-0.25), "a joint of 1/4 in off the wall");
    assert_eq!(d.counter_right, d.finished_right + inches(1.0));
    assert_eq!(d.counter_back, d.finished_back + inches(0.75));
}

#[test]
fn edges_walk_counter_clockwise_and_say_what_they_meet() {
    use EdgeKind::{Covered, Finished, Splash, Wall};
    let mut given = between_walls();
    assert_eq!(kinds(&solved(&given), 0), [Finished, Covered, Covered, Covered, Finished, Finished, Wall, Wall]);
    given.counter.splash = Some(support_splash());
    let solved = solved(&given);
    assert_eq!(kinds(&solved, 0), [Finished, Covered, Covered, Covered, Finished, Finished, Splash, Wall]);
    let edges = &solved.legs[0].counter.pieces[0].edges;
    assert!(edges.windows(2).all(|pair| pair[0].to == pair[1].from));
    assert_eq!(edges.last().map(|edge| edge.to), edges.first().map(|edge| edge.from));
    assert_eq!(edges[0].overhang, Some(inches(1.0)));
    assert_eq!((edges[7].overhang, edges[7].joint), (None, Some(inches(0.25))));
    let splash = &solved.legs[0].counter.splashes[0];
    let wanted = (splash.2 - splash.1).mm() * 101.6 * 19.05 * 1e-9 * 2300.0;
    assert!((splash.3 - wanted).abs() < 1e-9);
}

fn support_splash() -> Splash {
    Splash { height: inches(4.0), thickness: inches(0.75) }
}

#[test]
fn seams_make_pieces_that_add_up() {
    let mut given = worked_example();
    given.counter.seams = vec![(0, inches(41.125)), (0, inches(20.125))];
    given.counter.corner_radius = inches(0.5);
    let solved = solved(&given);
    let counter = &solved.legs[0].counter;
    let names: Vec<&str> = counter.pieces.iter().map(|piece| piece.name.as_str()).collect();
    assert_eq!(names, ["Piece 1", "Piece 2", "Piece 3"]);
    assert_eq!(counter.seams, [inches(20.125), inches(41.125)]);
    let sum: f64 = counter.pieces.iter().map(|piece| piece.region.area()).sum();
    assert!((sum - counter.region.area()).abs() < 1e-6);
    // The second piece ends inside the notch: front, the notch's left side and half its back, seam, back, seam.
    use EdgeKind::{Covered, Finished, Seam};
    assert_eq!(kinds(&solved, 1), [Finished, Covered, Covered, Seam, Finished, Seam]);
    assert_eq!(counter.pieces[1].diagonal, Length::from_mm(21.0_f64.hypot(32.625) * 25.4));
}

#[test]
fn corners_are_rounded_where_they_are_free_and_at_the_notch() {
    let quarter = |radius: f64| (1.0 - std::f64::consts::FRAC_PI_4) * radius * radius;
    let area = |change: fn(&mut Given)| {
        let mut given = worked_example();
        change(&mut given);
        solved(&given).legs[0].counter.region.area() / 25.4 / 25.4
    };
    let sharp = area(|_| {});
    let round = area(|given| given.counter.corner_radius = inches(0.5));
    // Four corners and the two at the notch's mouth.
    assert!((sharp - round - 6.0 * quarter(0.5)).abs() < 1e-9);
    let back = area(|given| {
        if let Cut::Notch { radius, .. } = &mut given.fittings[0].cut {
            *radius = inches(0.375);
        }
    });
    // The notch's back corners keep material.
    assert!((back - sharp - 2.0 * quarter(0.375)).abs() < 1e-9);
    let walled = area(|given| {
        given.counter.corner_radius = inches(0.5);
        given.legs[0].left = wall("wall", 0.0);
        given.counter.wall_joint = inches(-0.0);
        given.counter.overhang_left = inches(7.0);
    });
    let plain = area(|given| {
        given.legs[0].left = wall("wall", 0.0);
        given.counter.wall_joint = inches(0.0);
    });
    assert!((plain - walled - 4.0 * quarter(0.5)).abs() < 1e-9, "none at the wall, where an overhang says nothing");
}

#[test]
fn the_substrate_follows_its_rule_at_free_edges_and_the_run_at_bounds() {
    for (edge, front, right) in [
        (SubstrateEdge::Frame, 2.125, -2.125),
        (SubstrateEdge::Board, 1.625, -1.625),
        (SubstrateEdge::Finish, 0.0, 0.0),
        (SubstrateEdge::HeldBack(inches(0.5)), 0.5, -0.5),
    ] {
        let mut given = between_walls();
        given.substrate.edge = edge;
        let solved = solved(&given);
        let (leg, extent) = (&solved.legs[0], solved.legs[0].substrate.extent);
        assert_eq!(extent.y0, inches(front));
        assert_eq!(extent.x1 - leg.datums.finished_right, inches(right));
        assert_eq!(extent.x0, Length::ZERO);
        assert_eq!(extent.y1, leg.datums.finished_back);
        let notch = leg.fittings[0].cutout(faceline::solve::Plane::Substrate).unwrap();
        assert_eq!((notch.extent.y0, notch.extent.y1), (inches(front), inches(21.25)));
    }
}

#[test]
fn joints_lie_over_module_edges_within_a_sheets_length() {
    let solved = solved(&terrace());
    let substrate = &solved.legs[0].substrate;
    // 1 5/8 in to 116 5/8 in: edges at 20 1/8, 62 1/8, 86 1/8; the last within 96 in of the start.
    assert_eq!(substrate.joints, [inches(86.125)]);
    assert!(substrate.screw_lines.iter().any(|line| line.0 == inches(86.125 - 0.75)));
    assert!(substrate.screw_lines.iter().any(|line| line.0 == inches(86.125 + 0.75)));
}

#[test]
fn a_shorter_sheet_has_more_joints() {
    let mut given = terrace();
    given.stock.substrate.sheets = vec![(inches(36.0), inches(66.0))];
    // From 1 5/8 in the edge at 62 1/8 is the last within 66 in; from there the run's end is.
    assert_eq!(solved(&given).legs[0].substrate.joints, [inches(62.125)]);
    given.stock.substrate.sheets = vec![(inches(66.0), inches(36.0))];
    given.stock.substrate.turned = true;
    assert_eq!(solved(&given).legs[0].substrate.joints, [inches(62.125)], "turned by a quarter");
}
