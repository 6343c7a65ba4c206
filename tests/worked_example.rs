//! The worked example of the design, number by number.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::drawing::{Group, Item};
use faceline::sheets;
use faceline::solve::{Datum, Plane, Role, solve};
use support::{inches, terrace, worked_example};

#[test]
fn the_notch_from_every_datum() {
    let solved = solve(&worked_example()).unwrap();
    let leg = &solved.legs[0];
    let (d, grill) = (&leg.datums, &leg.fittings[0]);
    assert_eq!(d.at(Datum::FrameFace), inches(2.125), "the finished face stands 2 1/8 in proud of the bare frame");
    assert_eq!(d.at(Datum::BoardFace), inches(1.625));

    let (back, bottom) = (grill.back.unwrap(), grill.bottom.unwrap());
    assert_eq!(d.from(Datum::FinishedFace, back), inches(21.25));
    assert_eq!(d.from(Datum::CounterEdge, back), inches(22.25));
    assert_eq!(d.from(Datum::BoardFace, back), inches(19.625));
    assert_eq!(d.from(Datum::FrameFace, back), inches(19.125));
    assert_eq!(d.drop(Datum::CounterTop, bottom), inches(9.0));
    assert_eq!(d.drop(Datum::FrameTop, bottom), inches(6.75));
    assert_eq!(d.from(Datum::FinishedLeftEnd, grill.centre()), inches(41.125));
    assert_eq!(d.from(Datum::FrameLeftEnd, grill.centre()), inches(39.0));
    assert_eq!(d.from(Datum::FinishedLeftEnd, grill.left), inches(24.4375));
}

#[test]
fn measured_from_the_bare_frame_the_flange_leaves_a_gap() {
    let solved = solve(&worked_example()).unwrap();
    let (d, grill) = (&solved.legs[0].datums, &solved.legs[0].fittings[0]);
    // The mistake: 21 1/4 in laid off from the bare frame.
    let mistaken = d.at(Datum::FrameFace) + inches(21.25);
    let too_deep = mistaken - grill.back.unwrap();
    assert_eq!(too_deep, inches(2.125));
    assert_eq!(too_deep - grill.flange.far, inches(1.375));
}

#[test]
fn the_look_sheets_come_out_with_the_same_numbers() {
    let solved = solve(&terrace()).unwrap();
    let leg = &solved.legs[0];
    let d = &leg.datums;
    assert_eq!(d.frame_bottom, inches(2.0));
    assert_eq!(d.frame_top, inches(33.75));
    assert_eq!(d.finished_right, inches(2.125 + 114.0 + 2.125));
    let marks: Vec<(&str, &str)> = leg.fittings.iter().map(|f| (f.mark.as_str(), f.id.as_str())).collect();
    let wanted = [
        ("A1", "waste"),
        ("B1", "grill"),
        ("B2", "doors"),
        ("C1", "drawer1"),
        ("C2", "drawer2"),
        ("C3", "drawer3"),
        ("D1", "fridge"),
    ];
    assert_eq!(marks, wanted);
    let names: Vec<&str> = leg.boards.iter().map(|board| board.name.as_str()).collect();
    let wanted =
        ["front A", "front B", "front C", "front D", "left end", "right end", "back A", "back B", "back C", "back D"];
    assert_eq!(names, wanted);
    assert_eq!(leg.boards[0].extent.x0, inches(1.625));
    assert_eq!(leg.boards[3].extent.x1, d.finished_right - inches(1.625));
    // Front B: 42 by 31 3/4 in less the notch (33 3/8 by 6 3/4) less the doors.
    let area = leg.boards[1].region.area() / 25.4 / 25.4;
    assert!((area - (42.0 * 31.75 - 33.375 * 6.75 - 30.5 * 16.5)).abs() < 1e-6);
    // The bay reaches the board's bottom edge, and its cutout says so.
    let fridge = leg.fittings[6].cutout(Plane::FrontBoard).unwrap();
    assert!(fridge.open && fridge.extent.y0 == d.frame_bottom);
    // Highest ground under the left back foot; every other foot reaches down to the fall.
    let foot = leg.feet[1];
    assert_eq!((foot.ground, foot.height), (inches(0.0), inches(2.0)));
    let ground = |u: f64, v: f64| -(u - 3.625) / 48.0 - (28.625 - v) / 96.0;
    for foot in &leg.feet {
        assert!((foot.ground.inches() - ground(foot.u.inches(), foot.v.inches())).abs() < 1e-6);
        assert!((foot.height.inches() - (2.0 - foot.ground.inches())).abs() < 1e-6);
    }
    assert_eq!(leg.feet.len(), 4 * 4 + 2, "B is wider than 36 in and has a middle pair");
}

#[test]
fn the_front_frame_follows_the_look_sheet() {
    let solved = solve(&terrace()).unwrap();
    let leg = &solved.legs[0];
    let front: Vec<_> = leg.members.iter().filter(|m| m.body.v.0 == leg.datums.frame_face).collect();
    let has = |u0: f64, z0: f64, u1: f64, z1: f64| {
        front.iter().any(|m| m.body.u == (inches(u0), inches(u1)) && m.body.z == (inches(z0), inches(z1)))
    };
    let (a, left, right) = (20.125, 24.4375, 57.8125);
    assert!(has(a + 1.5, 32.25, left - 0.125, 33.75), "top rail, broken at the notch");
    assert!(has(a + 1.5, 25.375, 60.625, 26.875), "rail under the notch");
    assert!(has(right + 0.125, 26.875 - 0.0, right + 1.625, 32.25), "upright beside the notch");
    assert!(has(a + 1.5, 23.125, 60.625, 24.625), "rail over the doors");
    assert!(has(a + 1.5, 4.875, 60.625, 6.375), "rail under the doors");
    assert!(!front.iter().any(|m| m.role == Role::Rail && m.module == 3 && m.body.z.0 == inches(2.0)));
    assert!(leg.members.iter().any(|m| m.role == Role::Backing && m.body.v.0 == inches(21.375)), "behind the notch");
}

/// The section sheet says all nine numbers where the tape may be held, and what the mistake costs.
#[test]
fn the_section_sheet_carries_the_nine_numbers() {
    let solved = solve(&worked_example()).unwrap();
    let pages = sheets::draw(&solved, &[], |kind| matches!(kind, sheets::Kind::Section(..)))
        .expect("the sheet can be lettered");
    let mut texts = Vec::new();
    pages.iter().for_each(|page| collect(&page.root, &mut texts));
    let show = solved.show;
    let table = [
        ("finished face", 21.25),
        ("counter edge", 22.25),
        ("board face", 19.625),
        ("bare frame", 19.125),
        ("counter top", 9.0),
    ];
    let rest =
        [("frame top", 6.75), ("finished left end", 41.125), ("frame left end", 39.0), ("finished left end", 24.4375)];
    for (from, length) in table.into_iter().chain(rest) {
        let length = show.text(inches(length));
        assert!(texts.iter().any(|text| text == from), "{from} is named");
        assert!(texts.contains(&length), "{length} from {from}");
    }
    let mistake =
        ["21\u{2009}1\u{2044}4\u{2033}", "2\u{2009}1\u{2044}8\u{2033} too deep", "1\u{2009}3\u{2044}8\u{2033} gap"];
    assert!(mistake.iter().all(|part| texts.iter().any(|text| text.contains(part))), "the mistake in numbers");
}

fn collect(group: &Group, texts: &mut Vec<String>) {
    for item in &group.items {
        match item {
            Item::Group(inner) => collect(inner, texts),
            Item::Text(text) => texts.push(text.content()),
            Item::Path(_) => {}
        }
    }
}
