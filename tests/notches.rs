//! Notches in the counter's outline that no fitting makes: where they lie, what they take, what can't be.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::geometry::Region;
use faceline::parameters::given::*;
use faceline::rules;
use faceline::sheets;
use faceline::solve::{EdgeKind, Solved, solve};
use faceline::units::{Length, System};
use std::f64::consts::PI;
use support::{bare, fitting, fixed, inches, notch, open, published, wall, well, worked_example};

const MM: f64 = 25.4;

/// A bare leg of 100 in by 30 in whose counter hangs over by 2 in at the back and by nothing elsewhere, with a post of
/// 6 in about (60, 32), inches: it reaches from 57 to 63 along the leg and from 29 to 35 behind the face.
fn leg() -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    given.frame.depth = inches(28.0);
    let counter = &mut given.counter;
    (counter.overhang_front, counter.overhang_left, counter.overhang_right) =
        (Length::ZERO, Length::ZERO, Length::ZERO);
    counter.overhang_back = inches(4.0);
    given.site.survey.posts = vec![SurveyPost {
        name: "post".to_owned(),
        at: (60.0 * MM, 32.0 * MM),
        size: (6.0 * MM, 6.0 * MM),
        place: None,
    }];
    let leg = &mut given.legs[0];
    leg.faces = Faces { front: bare(), left: bare(), right: bare(), back: bare() };
    leg.modules = vec![fixed("A", 40.0), fixed("B", 60.0)];
    given
}

fn round_post(leg: usize) -> Notch {
    Notch {
        leg,
        name: "post".to_owned(),
        cut: NotchCut::Post { post: 0, clearance: inches(0.25) },
        radius: inches(0.5),
        place: None,
    }
}

fn out_of(edge: Face, along: f64, width: f64, depth: f64) -> Notch {
    let cut = NotchCut::Edge { edge, along: inches(along), width: inches(width), depth: inches(depth) };
    Notch { leg: 0, name: "notch".to_owned(), cut, radius: Length::ZERO, place: None }
}

fn solved(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

fn refused(given: &Given) -> String {
    let problems = solve(given).expect_err("it is refused");
    assert!(problems.iter().all(|problem| !problem.instead.is_empty()));
    problems[0].message.clone()
}

fn square_inches(region: &Region) -> f64 {
    region.area() / MM / MM
}

fn stops(given: &Given, rule: &str) -> Vec<String> {
    rules::check(&solved(given)).into_iter().filter(|found| found.rule == rule).map(|found| found.message).collect()
}

#[test]
fn round_a_surveyed_post() {
    let mut given = leg();
    let whole = square_inches(&solved(&given).legs[0].counter.region);
    assert!((whole - 3200.0).abs() < 1e-9);
    // Not notched, the counter stands over the post; with the notch nothing does: the frame ends 1 in before it.
    let rule = "run-clears-what-was-surveyed";
    assert_eq!(stops(&given, rule), ["leg leg1 stands over post as it was surveyed"]);
    given.counter.notches.push(round_post(0));
    assert!(stops(&given, rule).is_empty());
    let solved_ = solved(&given);
    let one = &solved_.legs[0].notches[0];
    assert_eq!(one.edge, Face::Back);
    // 1/4 in clear: 56 3/4 in to 63 1/4 in, and from 28 3/4 in to the counter's edge at 32 in.
    let e = one.extent;
    assert_eq!([e.x0, e.x1, e.y0, e.y1], [56.75, 63.25, 28.75, 32.0].map(inches));
    // Two inside corners of 1/2 in keep what a square takes more than a quarter circle.
    let kept = 2.0 * 0.25 * (1.0 - PI / 4.0);
    let taken = whole - square_inches(&solved_.legs[0].counter.region);
    assert!((taken - (6.5 * 3.25 - kept)).abs() < 1e-6, "{taken}");
    // The pieces are the whole; the edges of the notch are seen, and the back edge falls into two.
    let piece = &solved_.legs[0].counter.pieces[0];
    assert!((square_inches(&piece.region) - (whole - taken)).abs() < 1e-6);
    let back = |edge: &&faceline::solve::Edge| edge.from.1 == inches(32.0) && edge.to.1 == inches(32.0);
    let long: Vec<Length> = piece.edges.iter().filter(back).map(|edge| edge.from.0 - edge.to.0).collect();
    assert_eq!(long, [inches(36.75), inches(56.75)]);
    assert_eq!(piece.edges.iter().filter(|edge| edge.kind == EdgeKind::Finished).count(), 8);
    // The substrate ends with the frame, at 28 in: the notch doesn't reach it. With one flush with a deeper frame it does.
    assert!((square_inches(&solved_.legs[0].substrate.region) - 2800.0).abs() < 1e-6);
    given.frame.depth = inches(30.0);
    given.counter.overhang_back = inches(2.0);
    let deeper = solved(&given);
    let kept = 2.0 * 0.25 * (1.0 - PI / 4.0);
    let under = 3000.0 - square_inches(&deeper.legs[0].substrate.region);
    assert!((under - (6.5 * 1.25 - kept)).abs() < 1e-6, "{under}");
    // Then the frame stands in the post's way, and that is said.
    assert_eq!(stops(&given, rule), ["leg leg1 has its frame where post stands"]);
}

#[test]
fn turned_and_on_every_edge() {
    // Run and post turned and moved together: the same notch.
    let mut given = leg();
    given.counter.notches.push(round_post(0));
    let still = solved(&given).legs[0].notches[0].extent;
    let turn = PI / 2.0;
    given.legs[0].angle = turn;
    given.legs[0].origin = (500.0, -300.0);
    let (x, y) = given.site.survey.posts[0].at;
    given.site.survey.posts[0].at = (500.0 - y, -300.0 + x);
    let turned = solved(&given).legs[0].notches[0].extent;
    assert!((turned.x0 - still.x0).abs() < Length::from_nm(10) && (turned.y1 - still.y1).abs() < Length::from_nm(10));
    // A notch of 4 by 3 in out of each edge takes 12 in² each; two out of one edge, 24; seams through them add up.
    for edge in [Face::Front, Face::Back, Face::Left, Face::Right] {
        let mut given = leg();
        given.counter.notches = vec![out_of(edge, 10.0, 4.0, 3.0), out_of(edge, 20.0, 4.0, 3.0)];
        given.counter.seams = vec![(0, inches(12.0)), (0, inches(50.0))];
        let solved_ = solved(&given);
        let region = &solved_.legs[0].counter.region;
        assert!((square_inches(region) - (3200.0 - 24.0)).abs() < 1e-6, "{edge:?} {}", square_inches(region));
        let pieces: f64 = solved_.legs[0].counter.pieces.iter().map(|piece| square_inches(&piece.region)).sum();
        assert!((pieces - square_inches(region)).abs() < 1e-6, "{edge:?}");
        assert_eq!(solved_.legs[0].counter.pieces.len(), 3);
    }
}

/// Two legs that meet, a post behind the first, a pier behind the second.
fn corner() -> Given {
    let mut given = leg();
    let mut second = given.legs[0].clone();
    second.id = "leg2".to_owned();
    second.modules = vec![fixed("C", 50.0), fixed("D", 50.0)];
    given.legs.push(second);
    given.joints = vec![Joint {
        left: 0,
        right: 1,
        kind: JointKind::Corner(Corner {
            turn: PI / 2.0,
            through: Through::Left,
            seam: CornerSeam::Butt,
            radius: inches(1.0),
            inner: CornerShape::Common,
            outer: CornerShape::Common,
        }),
        place: None,
    }];
    given
}

#[test]
fn on_a_leg_that_turns_a_corner() {
    let mut given = corner();
    let whole = square_inches(&solved(&given).slabs[0].region);
    given.counter.notches = vec![Notch { leg: 1, ..out_of(Face::Back, 40.0, 6.0, 5.0) }, round_post(0)];
    let solved_ = solved(&given);
    let kept = 2.0 * 0.25 * (1.0 - PI / 4.0);
    let taken = whole - square_inches(&solved_.slabs[0].region);
    assert!((taken - (30.0 + 6.5 * 3.25 - kept)).abs() < 1e-6, "{taken}");
    let pieces: f64 = solved_.legs.iter().flat_map(|leg| &leg.counter.pieces).map(|p| square_inches(&p.region)).sum();
    assert!((pieces - (whole - taken)).abs() < 1e-6);
    assert_eq!((solved_.legs[0].notches.len(), solved_.legs[1].notches.len()), (1, 1));
}

#[test]
fn what_can_not_be_notched_is_said() {
    let with = |notches: Vec<Notch>| {
        let mut given = leg();
        given.counter.notches = notches;
        given
    };
    let moved = |x: f64, y: f64| {
        let mut given = with(vec![round_post(0)]);
        given.site.survey.posts[0].at = (x * MM, y * MM);
        refused(&given)
    };
    assert!(moved(60.0, 15.0).starts_with("post stands inside the counter of leg leg1, clear of its edges: with its"));
    assert!(moved(60.0, 40.0).starts_with("post stands off the counter of leg leg1"));
    assert!(moved(99.0, 31.0).starts_with("post stands across two edges of the counter of leg leg1"));
    let corner = "a notch of the counter reaches a corner of the counter of leg leg1, through it, or into a cutout";
    assert_eq!(refused(&with(vec![out_of(Face::Back, 95.0, 6.0, 3.0)])), corner);
    assert_eq!(refused(&with(vec![out_of(Face::Back, 50.0, 6.0, 33.0)])), corner);
    assert_eq!(refused(&with(vec![out_of(Face::Back, 50.0, 6.0, 3.0), out_of(Face::Back, 55.0, 6.0, 3.0)])), corner);
    // Out of two edges, into each other.
    assert_eq!(refused(&with(vec![out_of(Face::Back, 90.0, 6.0, 8.0), out_of(Face::Right, 20.0, 8.0, 8.0)])), corner);
    // Into a grill's notch, and into a sink.
    let mut grill = with(vec![out_of(Face::Back, 60.0, 6.0, 9.0)]);
    grill.fittings.push(fitting("grill", Look::Grill, 1, notch(30.0, 24.0, 9.0)));
    assert_eq!(refused(&grill), corner);
    let mut sink = with(vec![out_of(Face::Back, 60.0, 30.0, 12.0)]);
    sink.fittings.push(fitting("sink", Look::Sink, 1, well(20.0, 16.0, 1.0, 8.0)));
    assert_eq!(refused(&sink), "the cutout of sink lies across an edge of the counter");
}

/// A sink 2 in before a notch: the strip between them is told.
#[test]
fn a_strip_beside_a_notch_is_warned_of() {
    let rule = "cutouts-keep-a-strip-between-them";
    let mut given = leg();
    // 29 in deep to the notch round the post; the sink from 9 in to 26 3/4 in, 2 in before it.
    given.counter.notches.push(round_post(0));
    given.fittings.push(fitting("sink", Look::Sink, 1, well(20.0, 17.75, 1.0, 9.0)));
    given.fittings[0].across.distance = published(-10.0);
    assert_eq!(
        stops(&given, rule),
        ["B1 (sink) and the counter's notch, post leave a strip of 2 in in the counter; 3 in is wanted"]
    );
    given.fittings[0].cut = well(20.0, 16.0, 1.0, 9.0);
    assert!(stops(&given, rule).is_empty());
}

/// An upstand along a wall stops at a notch and goes on beyond it; a seam parts it as it does the counter.
#[test]
fn an_upstand_stops_at_a_notch() {
    let mut given = leg();
    given.legs[0].back = wall("wall", 0.0);
    given.counter.wall_joint = Length::ZERO;
    given.counter.splash = Some(Splash { height: inches(4.0), thickness: inches(0.75) });
    given.counter.notches = vec![out_of(Face::Back, 50.0, 6.0, 3.0)];
    given.counter.seams = vec![(0, inches(70.0))];
    let solved = solved(&given);
    let long: Vec<(f64, f64)> =
        solved.legs[0].counter.splashes.iter().map(|(_, a, b, _)| (a.inches(), b.inches())).collect();
    assert_eq!(long, [(0.0, 50.0), (56.0, 70.0), (70.0, 100.0)]);
}

#[test]
fn a_sharp_notch_is_warned_of_and_a_notched_post_bounds_no_room() {
    let rule = "inside-corner-has-a-radius";
    let mut given = leg();
    given.counter.notches.push(round_post(0));
    assert!(stops(&given, rule).is_empty());
    given.counter.notches[0].radius = inches(0.125);
    let said = stops(&given, rule);
    assert_eq!(said, ["the notch round post of leg leg1 has inside corners of 1/8 in radius; 3/8 in is the least"]);
    // The room is taken from the survey: to the post, unless the counter is notched round it.
    let mut given = leg();
    given.legs[0].own.surveyed = Some(FromSurvey::default());
    (given.legs[0].left, given.legs[0].right) = (open(), wall("wall", 0.0));
    let face = vec![(100.5 * MM, -50.0 * MM), (100.5 * MM, 90.0 * MM)];
    given.site.survey.walls.push(SurveyWall { name: "wall".to_owned(), points: face, place: None });
    let room = |given: &Given| solved(given).legs[0].room.unwrap().given;
    assert_eq!(room(&given), inches(57.0));
    given.counter.notches.push(round_post(0));
    assert_eq!(room(&given), inches(100.5));
}

/// Counter, substrate, plan and templates' sheets of notched runs are drawn without a label on another or on a line.
#[test]
fn notched_runs_are_legible_on_any_paper() {
    let mut one = leg();
    one.counter.notches = vec![round_post(0), out_of(Face::Left, 10.0, 5.0, 4.0), out_of(Face::Front, 20.0, 6.0, 5.0)];
    let mut two = corner();
    two.counter.notches = vec![Notch { leg: 1, ..out_of(Face::Back, 40.0, 6.0, 5.0) }, round_post(0)];
    for given in [one, two] {
        for (name, width, height) in
            [("A4", 297.0, 210.0), ("A3", 420.0, 297.0), ("ANSI A", 279.4, 215.9), ("A1", 841.0, 594.0)]
        {
            for units in [System::Inches, System::Millimetres, System::Both] {
                let mut given = given.clone();
                (given.paper.name, given.paper.width, given.paper.height) = (name.to_owned(), width, height);
                given.job.units = units;
                let solved = solved(&given);
                let findings = rules::check(&solved);
                let wanted = |kind: sheets::Kind| {
                    matches!(kind, sheets::Kind::Plan | sheets::Kind::Counter(_) | sheets::Kind::Substrate(_))
                };
                let drawn = sheets::draw(&solved, &findings, wanted);
                let drawn = drawn.unwrap_or_else(|problems| panic!("{name} {units:?}: {problems:#?}"));
                assert!(drawn.len() >= 3);
            }
        }
    }
}
