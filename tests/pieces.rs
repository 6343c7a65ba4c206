//! Pieces cut from sheet: what they add up to, where they are parted, what they are called.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::Given;
use faceline::solve::{Face, SheetPart, SheetPiece, Solved, solve};
use support::*;

fn solved(given: &Given) -> Solved {
    solve(given).expect("a run that can be solved")
}

fn of(run: &Solved, part: SheetPart) -> Vec<&SheetPiece> {
    run.shop.pieces.iter().filter(|piece| piece.part == part).collect()
}

#[test]
fn the_fronts_are_their_boards_less_the_gaps_between_them() {
    let run = solved(&terrace());
    let boards: f64 = run.legs[0].boards.iter().filter(|b| b.face == Face::Front).map(|b| b.region.area()).sum();
    let fronts = of(&run, SheetPart::Face(Face::Front));
    let pieces: f64 = fronts.iter().map(|piece| piece.region.area()).sum();
    // Three joints 1/8 in wide, the grill's notch and the bay being inside their own modules.
    let high = run.legs[0].datums.frame_top - run.legs[0].datums.frame_bottom;
    let gaps = 3.0 * inches(0.125).mm() * high.mm();
    assert!((boards - pieces - gaps).abs() < 1e-6, "{boards} less {pieces} is not {gaps}");
    assert_eq!(
        fronts.iter().map(|piece| piece.mark.as_str()).collect::<Vec<_>>(),
        ["front A", "front B", "front C", "front D"]
    );
}

#[test]
fn a_front_that_no_sheet_takes_is_parted_over_a_stud_clear_of_corners() {
    let mut given = worked_example();
    given.legs[0].modules = vec![fixed("A", 18.0), fixed("B", 80.0)];
    given.frame.studs = Some(inches(16.0));
    let run = solved(&given);
    let wide: Vec<_> = of(&run, SheetPart::Face(Face::Front)).into_iter().filter(|p| p.module == Some(1)).collect();
    assert_eq!(wide.len(), 2, "80 in of board from sheets 60 in long");
    assert!(wide.iter().all(|piece| run.shop.cutting.materials[piece.material].takes(piece.blank)));
    let joint = run
        .shop
        .cutting
        .joints
        .iter()
        .find(|joint| !joint.between_modules && joint.part == SheetPart::Face(Face::Front))
        .unwrap();
    assert!(joint.on_framing && joint.off_corner.is_none_or(|off| off >= run.shop.cutting.laying.off_corner));
    let stud = |member: &faceline::solve::Member| {
        let (u, z) = (member.body.u, member.body.z);
        member.body.v.0 == run.legs[0].datums.frame_face && (u.0 + u.1).half() == joint.at && z.1 - z.0 > u.1 - u.0
    };
    assert!(run.legs[0].members.iter().any(stud), "there is an upright whose middle is under the joint");
}

#[test]
fn a_joint_without_a_tube_says_so() {
    let mut given = worked_example();
    given.legs[0].modules = vec![fixed("A", 18.0), fixed("B", 80.0)];
    given.fittings.clear();
    let run = solved(&given);
    let joints = run.shop.cutting.joints.iter().filter(|joint| joint.part == SheetPart::Face(Face::Front));
    assert!(joints.clone().any(|joint| !joint.between_modules && !joint.on_framing), "no stud stands in 80 in");
    assert!(joints.clone().all(|joint| !joint.between_modules || joint.on_framing), "two posts carry two edges");
}

#[test]
fn bottoms_lie_in_closed_modules_and_weigh_what_their_area_does() {
    let mut given = terrace();
    given.laying.bottoms = true;
    let run = solved(&given);
    let bottoms = of(&run, SheetPart::Bottom);
    assert_eq!(
        bottoms.iter().map(|piece| piece.mark.as_str()).collect::<Vec<_>>(),
        ["bottom A", "bottom B", "bottom C"]
    );
    for piece in bottoms {
        let material = &run.shop.cutting.materials[piece.material];
        assert!((piece.mass - piece.region.area() * 1e-6 * material.mass).abs() < 1e-9);
        // 28 in of frame less two tubes of 1 1/2 in and two gaps of 1/8 in.
        assert_eq!(piece.extent.height(), inches(24.75));
    }
}

#[test]
fn no_two_pieces_share_a_mark() {
    for given in [worked_example(), terrace()] {
        let run = solved(&given);
        let marks: Vec<&str> = run.shop.pieces.iter().map(|piece| piece.mark.as_str()).collect();
        let unlike: std::collections::BTreeSet<&str> = marks.iter().copied().collect();
        assert_eq!(marks.len(), unlike.len(), "{marks:?}");
    }
}

#[test]
fn the_substrate_falls_into_pieces_at_its_joints_and_nothing_is_lost() {
    let mut given = terrace();
    given.legs[0].modules.push(fixed("E", 40.0));
    let run = solved(&given);
    let leg = &run.legs[0];
    let pieces = of(&run, SheetPart::Substrate);
    assert_eq!(pieces.len(), leg.substrate.joints.len() + 1);
    let sum: f64 = pieces.iter().map(|piece| piece.region.area()).sum();
    assert!((sum - leg.substrate.region.area()).abs() < 1e-3);
}
