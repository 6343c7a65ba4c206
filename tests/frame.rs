//! The tubes that are added round cutouts.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::*;
use faceline::solve::{BodyBox, Member, Role, Solved, solve};
use faceline::units::Length;
use support::made_up::{Dice, sample};
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
    let mut given = terrace();
    let lowest = levels(&solved(&given), 3).last().copied();
    assert!(lowest.is_some_and(|(bottom, _)| bottom > 3.5), "{lowest:?}");
    // Its posts stand 1 3/8 in off the opening of 24 1/4 in: a tube of 1 1/2 in and its gap don't pass, so none is cut.
    let jambs = |solved: &Solved| {
        let leg = &solved.legs[0];
        let upright = |m: &&Member| {
            let b = &m.body;
            let tall = b.z.0 == leg.datums.frame_bottom && b.z.1 - b.z.0 > b.u.1 - b.u.0;
            m.module == 3 && m.role == Role::Backing && tall
        };
        leg.members.iter().filter(upright).count()
    };
    assert_eq!(jambs(&solved(&given)), 0);
    // Beside 23 in they do, down to the frame's bottom.
    given.fittings[6].cut = opening(23.0, 4.0, None);
    assert_eq!(jambs(&solved(&given)), 2);
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

/// Tubes and supports that share some space, two by two, in words.
fn overlaps(solved: &Solved) -> Vec<String> {
    let met = |p: (Length, Length), q: (Length, Length)| p.0 < q.1 && q.0 < p.1;
    let mut found = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let tubes =
            leg.members.iter().map(|one| (format!("{:?} of {}", one.role, leg.modules[one.module].id), one.body));
        let supports = solved.shop.supports.members.iter().filter(|one| one.leg == at);
        let all: Vec<(String, BodyBox)> = tubes.chain(supports.map(|one| (one.mark.clone(), one.body))).collect();
        for (index, (name, a)) in all.iter().enumerate() {
            for (other, b) in &all[index + 1..] {
                if met(a.u, b.u) && met(a.v, b.v) && met(a.z, b.z) {
                    found.push(format!("{name} and {other}: {a:?} {b:?}"));
                }
            }
        }
    }
    found
}

/// Every tube's section across its length is the frame's own: none is as thin as what happened to be left for it.
fn slivers(solved: &Solved) -> Vec<String> {
    let mut found = Vec::new();
    for leg in &solved.legs {
        for one in &leg.members {
            let b = &one.body;
            let sides = [b.u.1 - b.u.0, b.v.1 - b.v.0, b.z.1 - b.z.0];
            if sides.iter().filter(|side| **side == solved.frame.tube).count() < 2 {
                found.push(format!("{:?} of {}: {b:?}", one.role, leg.modules[one.module].id));
            }
        }
    }
    found
}

/// The terrace with openings of any size put into its modules, alone and side by side.
fn made_up(seed: u64) -> Option<Solved> {
    let mut dice = Dice(seed);
    let mut given = terrace();
    given.frame.studs = (dice.roll(2) == 0).then(|| inches(16.0));
    for fitting in &mut given.fittings {
        if let Cut::Opening { width, .. } = &mut fitting.cut {
            width.published = Some(inches(dice.sixteenths(10, 24)));
        }
    }
    for module in 0..given.legs[0].modules.len() {
        let (side, drop) = (dice.sixteenths(4, 14), dice.sixteenths(5, 20));
        let mut one = fitting("x", Look::Panel, module, opening(side, drop, Some(dice.sixteenths(3, 12))));
        one.id = format!("x{module}");
        one.across = Across {
            line: AcrossLine::Centre,
            from: AcrossFrom::ModuleLeft,
            distance: published(dice.sixteenths(6, 14)),
        };
        given.fittings.push(one);
    }
    solve(&given).ok()
}

#[test]
fn no_tube_or_support_lies_in_another() {
    for name in ["terrace", "island", "courtyard", "corner", "bar"] {
        let solved = sample(name);
        assert!(overlaps(&solved).is_empty(), "{name}: {:#?}", overlaps(&solved));
        assert!(slivers(&solved).is_empty(), "{name}: {:#?}", slivers(&solved));
    }
    let mut tried = 0;
    for seed in 1..=80 {
        for solved in
            [made_up(seed), support::made_up::solved(support::meeting::job(seed, None)).ok()].into_iter().flatten()
        {
            tried += 1;
            assert!(overlaps(&solved).is_empty(), "seed {seed}: {:#?}", overlaps(&solved));
            assert!(slivers(&solved).is_empty(), "seed {seed}: {:#?}", slivers(&solved));
        }
    }
    assert!(tried > 40, "{tried} runs could be solved");
}
