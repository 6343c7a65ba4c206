//! The tubes that are added round cutouts.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::*;
use faceline::solve::{Member, Role, Solved, solve};
use support::*;

fn solved(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

/// Level tubes of a module's front, from the top down, as (bottom, top) in inches.
fn levels(solved: &Solved, module: usize) -> Vec<(f64, f64)> {
    let leg = &solved.legs[0];
    let level = |m: &&Member| {
        let b = &m.body;
        m.module == module
            && b.v.0 == leg.datums.frame_face
            && b.v.1 < leg.datums.frame_back
            && b.u.1 - b.u.0 > b.z.1 - b.z.0
    };
    let mut levels: Vec<(f64, f64)> =
        leg.members.iter().filter(level).map(|m| (m.body.z.0.inches(), m.body.z.1.inches())).collect();
    levels.sort_by(|a, b| b.0.total_cmp(&a.0));
    levels.dedup();
    levels
}

#[test]
fn a_narrow_strip_between_drawers_has_one_rail_in_its_middle() {
    // Drawers at 4, 11 1/2 and 21 1/2 in down: strips of 2 in, their middles 10 1/2 and 20 1/2 in down.
    let wanted = [(32.25, 33.75), (24.75, 26.25), (14.75, 16.25), (4.875, 6.375), (2.0, 3.5)];
    assert_eq!(levels(&solved(&terrace()), 2), wanted);
}

#[test]
fn a_bay_that_reaches_the_floor_has_no_bottom_rail() {
    let solved = solved(&terrace());
    let lowest = levels(&solved, 3).last().copied();
    assert!(lowest.is_some_and(|(bottom, _)| bottom > 3.5), "{lowest:?}");
    // Its jambs stand clear of the posts by 24 in less gaps and tubes: backing down to the frame's bottom.
    let leg = &solved.legs[0];
    let jambs = leg.members.iter().filter(|m| {
        let b = &m.body;
        m.module == 3 && m.role == Role::Backing && b.z.0 == leg.datums.frame_bottom && b.z.1 - b.z.0 > b.u.1 - b.u.0
    });
    assert_eq!(jambs.count(), 2);
}

#[test]
fn an_open_bay_has_no_bottom_rail_in_front_and_no_board() {
    let mut given = terrace();
    given.legs[0].modules[0].kind = ModuleKind::OpenBay;
    given.fittings.remove(1);
    let solved = solved(&given);
    assert_eq!(levels(&solved, 0), [(32.25, 33.75)]);
    let names: Vec<&str> = solved.legs[0].boards.iter().map(|board| board.name.as_str()).collect();
    assert!(!names.contains(&"front A") && names.contains(&"back A"), "{names:?}");
}

#[test]
fn rails_run_beside_a_well() {
    let mut given = worked_example();
    given.fittings = vec![fitting("sink", Look::Sink, 1, well(20.0, 16.0, 1.0, 5.0))];
    let solved = solved(&given);
    let leg = &solved.legs[0];
    let beside: Vec<f64> = leg
        .members
        .iter()
        .filter(|m| m.role == Role::Backing && m.body.z.1 == leg.datums.frame_top)
        .map(|m| m.body.u.0.inches())
        .collect();
    // The sink from 31 1/8 to 51 1/8 in, a gap of 1/8 in on each side.
    assert_eq!(beside, [29.5, 51.25]);
    assert!(leg.substrate.screw_lines.iter().any(|line| line.0 == inches(30.25)));
}

#[test]
fn a_filler_too_narrow_for_posts_hangs_between_its_neighbours() {
    let mut given = worked_example();
    given.legs[0].modules.insert(1, Module { kind: ModuleKind::Filler, ..fixed("F", 1.5) });
    given.fittings[0].module = 2;
    let solved = solved(&given);
    let leg = &solved.legs[0];
    assert!(leg.members.iter().all(|member| member.module != 1));
    assert!(leg.feet.iter().all(|foot| foot.module != 1));
    assert!(leg.boards.iter().any(|board| board.name == "front F"));
}
