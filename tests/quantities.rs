//! What has to be bought for a run: full containers, figures of the job's own, and what may never buy more or less.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::parameters::given::*;
use faceline::solve::{MaterialLine, Solved, solve};
use faceline::units::{Exact, reading};
use proptest::prelude::*;
use support::*;

fn solved(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:#?}"))
}

fn set(given: &mut Given, figure: Figure, text: &str) {
    let quantity = reading::quantity(text).unwrap();
    let exact = Exact::read(text).unwrap_or_else(|| Exact::of(quantity));
    given.materials.worth[figure as usize] =
        Some(Worth { exact, si: quantity.si(), text: text.to_owned(), given: true });
}

/// The line whose name begins so.
fn line<'s>(solved: &'s Solved, name: &str) -> &'s MaterialLine {
    let found = solved.shop.quantities.iter().find(|line| line.name.starts_with(name));
    let names = || solved.shop.quantities.iter().map(|line| line.name.as_str()).collect::<Vec<_>>();
    found.unwrap_or_else(|| panic!("no {name} among {:?}", names()))
}

/// The worked example with a counter of 8 ft2 by 1 1/2 in: 1 ft3 without waste.
fn cast() -> Given {
    let mut given = worked_example();
    given.fittings.clear();
    given.legs[0].modules = vec![fixed("A", 36.0)];
    let faces = &mut given.legs[0].faces;
    for face in [&mut faces.front, &mut faces.left, &mut faces.right, &mut faces.back] {
        *face = bare();
    }
    given.frame.depth = inches(30.0);
    for overhang in [&mut given.counter.overhang_front, &mut given.counter.overhang_back] {
        *overhang = inches(1.0);
    }
    for overhang in [&mut given.counter.overhang_left, &mut given.counter.overhang_right] {
        *overhang = inches(0.0);
    }
    set(&mut given, Figure::ConcreteWaste, "0 %");
    given
}

#[test]
fn a_counter_that_fills_its_bags_to_the_brim_buys_no_bag_more() {
    let mut given = cast();
    let bags = |given: &Given| line(&solved(given), "cast concrete").count;
    set(&mut given, Figure::ConcreteYield, "0.25 ft3");
    assert_eq!(line(&solved(&given), "cast concrete").net, 1.0);
    assert_eq!(bags(&given), 4);
    // A third of a cubic foot is no decimal fraction: three fill the counter all the same.
    set(&mut given, Figure::ConcreteYield, "1/3 ft3");
    assert_eq!(bags(&given), 3);
    // A hair more of counter, or a hair less in the bag, and one more is wanted.
    given.counter.thickness += faceline::units::Length::from_nm(1);
    assert_eq!(bags(&given), 4);
    let mut given = cast();
    set(&mut given, Figure::ConcreteYield, "0.2499999999 ft3");
    assert_eq!(bags(&given), 5);
}

#[test]
fn a_tenth_of_waste_that_fills_the_bags_buys_no_bag_more() {
    let mut given = cast();
    set(&mut given, Figure::ConcreteWaste, "10 %");
    set(&mut given, Figure::ConcreteYield, "0.275 ft3");
    assert_eq!(line(&solved(&given), "cast concrete").count, 4);
}

#[test]
fn screws_of_a_plain_box_are_counted_along_its_posts_and_rails() {
    // A front of one module 36 in wide, posts at both ends, no studs: two lines of screws, and screws along two rails
    // between the posts, 33 in: 4 each at 8 in apart.
    let mut given = cast();
    given.legs[0].faces.front = board_only();
    let solved = solved(&given);
    let board = &solved.legs[0].boards[0];
    let high = board.extent.height();
    let posts = 2 * ((high.inches() - 1.0) / 8.0).ceil() as u64 + 2;
    assert_eq!(line(&solved, "board screws, outer").net, (posts + 2 * 4) as f64);
}

#[test]
fn figures_that_a_line_took_for_want_of_the_jobs_own_are_stated_with_their_origin() {
    let mut given = worked_example();
    let solved = solved(&given);
    let assumed = &solved.shop.figures;
    let yielded = assumed.iter().find(|used| used.name == "materials.mortar.yield").unwrap();
    assert_eq!((yielded.value.as_str(), yielded.origin), ("0.45 ft3", "from memory, verify"));
    assert!(assumed.iter().all(|used| !used.name.contains("skim")), "the run has no skim coat");
    set(&mut given, Figure::MortarYield, "0.5 ft3");
    let solved = solve(&given).unwrap();
    assert!(solved.shop.figures.iter().all(|used| used.name != "materials.mortar.yield"));
    assert!(line(&solved, "polymer-modified").origin.contains("yield: given"));
}

#[test]
fn every_line_says_how_it_was_worked_out() {
    for given in [worked_example(), terrace()] {
        for line in &solved(&given).shop.quantities {
            assert!(line.count > 0 && line.net > 0.0 && !line.how.is_empty(), "{line:?}");
            assert!(line.how.contains(|c: char| c.is_ascii_digit()), "{}", line.how);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    /// More area never buys less: a wider module, all else alike, buys no less of anything.
    #[test]
    fn a_wider_run_never_buys_less(width in 20u32..60, more in 1u32..24) {
        let of = |width: u32| {
            let mut given = worked_example();
            given.fittings.clear();
            given.legs[0].modules = vec![fixed("A", 18.0), fixed("B", f64::from(width))];
            solved(&given)
        };
        let (narrow, wide) = (of(width), of(width + more));
        for before in &narrow.shop.quantities {
            let after = line(&wide, &before.name);
            prop_assert!(after.count >= before.count, "{}: {} then {}", before.name, before.count, after.count);
        }
    }

    /// An opening takes board away: it never buys more of it, nor of what covers it.
    #[test]
    fn an_opening_never_buys_more_board(width in 6u32..14, high in 4u32..18, drop in 5u32..12) {
        let mut given = worked_example();
        given.fittings.clear();
        let before = solved(&given);
        given.fittings = vec![fitting("door", Look::Panel, 0, opening(f64::from(width), f64::from(drop), Some(f64::from(high))))];
        let after = solved(&given);
        for name in ["cement board", "thin stone veneer, flat", "polymer-modified", "sealer for the faces"] {
            let (before, after) = (line(&before, name), line(&after, name));
            prop_assert!(after.net < before.net && after.count <= before.count, "{name}");
        }
        let opening = f64::from(width * high) / 144.0;
        let lost = line(&before, "cement board").net - line(&after, "cement board").net;
        prop_assert!((lost - opening).abs() < 1e-9);
    }

    /// A bag that makes less is never bought in smaller number.
    #[test]
    fn a_poorer_bag_is_never_fewer(hundredths in 20u32..80, less in 1u32..19) {
        let bags = |hundredths: u32| {
            let mut given = worked_example();
            set(&mut given, Figure::MortarYield, &format!("0.{hundredths:02} ft3"));
            line(&solved(&given), "polymer-modified").count
        };
        prop_assert!(bags(hundredths - less) >= bags(hundredths));
    }
}
