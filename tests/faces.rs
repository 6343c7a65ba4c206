//! Fittings in the back and in the ends: whose left is left, and how depths and laps turn round.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::*;
use faceline::solve::{Plane, solve};
use faceline::units::Length;
use support::*;

/// A freestanding run with one fitting, changed.
fn with(change: impl Fn(&mut Fitting)) -> Given {
    let mut given = worked_example();
    given.legs[0].faces.back = veneer();
    let mut one = fitting("vent", Look::Vent, 1, opening(10.0, 12.0, Some(4.0)));
    change(&mut one);
    given.fittings = vec![one];
    given
}

fn edges(given: &Given) -> (f64, f64) {
    let solved = solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"));
    let one = &solved.legs[0].fittings[0];
    (one.left.inches(), one.right.inches())
}

fn across(line: AcrossLine, from: AcrossFrom, distance: f64) -> Across {
    Across { line, from, distance: published(distance) }
}

#[test]
fn every_datum_across_leads_to_the_same_place() {
    // Module B runs from 20 1/8 to 62 1/8 in; the finished right end lies at 64 1/4 in.
    use AcrossFrom::*;
    use AcrossLine::{Centre, LeftEdge, RightEdge};
    for (line, from, distance) in [
        (Centre, ModuleCentre, -1.125),
        (Centre, ModuleLeft, 19.875),
        (Centre, ModuleRight, 22.125),
        (Centre, FinishedLeft, 40.0),
        (Centre, FinishedRight, 24.25),
        (Centre, FrameLeft, 37.875),
        (Centre, FrameRight, 22.125),
        (Centre, BoardLeft, 38.375),
        (Centre, BoardRight, 22.625),
        (LeftEdge, FinishedLeft, 35.0),
        (RightEdge, FinishedLeft, 45.0),
        (RightEdge, FinishedRight, 19.25),
    ] {
        let given = with(|one| one.across = across(line, from.clone(), distance));
        assert_eq!(edges(&given), (35.0, 45.0), "{line:?} from {from:?}");
    }
}

#[test]
fn on_the_back_the_left_edge_is_the_one_its_viewer_sees_on_the_left() {
    let given = with(|one| {
        one.face = Face::Back;
        one.across = across(AcrossLine::LeftEdge, AcrossFrom::FinishedLeft, 40.0);
        one.flange = Flange { left: inches(1.0), right: inches(2.0), ..Flange::default() };
    });
    assert_eq!(edges(&given), (30.0, 40.0));
    let solved = solve(&given).unwrap();
    let one = &solved.legs[0].fittings[0];
    assert_eq!((one.flange.left, one.flange.right), (inches(2.0), inches(1.0)), "laps go with the smaller u first");
    assert!(one.cutout(Plane::BackBoard).is_some() && one.cutout(Plane::FrontBoard).is_none());
}

#[test]
fn on_an_end_places_count_from_the_finished_face() {
    for (face, plane, line) in
        [(Face::Left, Plane::LeftBoard, AcrossLine::RightEdge), (Face::Right, Plane::RightBoard, AcrossLine::LeftEdge)]
    {
        let given = with(|one| {
            one.face = face;
            one.module = if face == Face::Left { 0 } else { 1 };
            one.across = across(line, AcrossFrom::FinishedFace, 6.0);
        });
        assert_eq!(edges(&given), (6.0, 16.0), "the edge towards the cook, as each viewer names it");
        let solved = solve(&given).unwrap();
        let leg = &solved.legs[0];
        let board = leg.boards.iter().find(|board| board.plane == plane).unwrap();
        assert_eq!(board.region.holes.len(), 1);
        assert_eq!(board.fittings, [0]);
        assert_eq!((board.extent.x0, board.extent.x1), (leg.datums.frame_face, leg.datums.frame_back));
    }
}

#[test]
fn a_datum_that_a_face_does_not_have_is_explained() {
    let on_front = with(|one| one.across = across(AcrossLine::Centre, AcrossFrom::FinishedFace, 6.0));
    let on_end = with(|one| {
        one.face = Face::Left;
        one.across = across(AcrossLine::Centre, AcrossFrom::FinishedLeft, 6.0);
    });
    for given in [on_front, on_end] {
        assert_eq!(solve(&given).unwrap_err().len(), 1);
    }
}

#[test]
fn a_well_may_count_from_the_back() {
    let given = with(|one| {
        one.look = Look::Sink;
        one.face = Face::Back;
        one.cut = well(20.0, 16.0, 1.0, 4.0);
    });
    let solved = solve(&given).unwrap();
    let (leg, one) = (&solved.legs[0], &solved.legs[0].fittings[0]);
    assert_eq!(leg.datums.finished_back, inches(2.125 + 28.0 + 2.125));
    assert_eq!((one.front, one.back), (Some(inches(12.25)), Some(inches(28.25))));
    assert_eq!(one.given_from, "finished back");
}

#[test]
fn heights_count_down_from_the_tops_and_up_from_the_floor() {
    for (from, distance) in [
        (HeightFrom::CounterTop, 12.0),
        (HeightFrom::SubstrateTop, 10.5),
        (HeightFrom::FrameTop, 9.75),
        (HeightFrom::Floor, 24.0),
    ] {
        let given = with(|one| {
            if let Cut::Opening { drop, drop_from, .. } = &mut one.cut {
                (*drop, *drop_from) = (published(distance), from);
            }
        });
        let solved = solve(&given).unwrap();
        assert_eq!(solved.legs[0].fittings[0].top, Some(inches(24.0)), "{from:?}");
    }
}

/// Check values of common practice: finish and board come off a depth, counter and substrate off a drop.
#[test]
fn a_notch_is_shallower_in_the_bare_frame_and_in_the_front_board() {
    let mut given = worked_example();
    given.fittings[0].cut = notch(33.375, 20.75, 8.5);
    let solved = solve(&given).unwrap();
    let (leg, grill) = (&solved.legs[0], &solved.legs[0].fittings[0]);
    let (d, module) = (&leg.datums, &leg.modules[1]);
    assert_eq!(grill.back.unwrap() - d.frame_face, inches(20.75 - 2.125));
    let board = grill.cutout(Plane::FrontBoard).unwrap();
    assert_eq!(board.extent.height(), inches(8.5 - 1.5 - 0.75));
    let (left, right) = (grill.left - module.left, module.right - grill.right);
    assert!((left - right).abs() <= Length::from_sixty_fourths(4), "equal margins to 1/16 in");
}
