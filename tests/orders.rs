//! Orders and labels: each thing of the run is ordered once, with its left and right and its cutouts, and every label bears
//! a mark that the drawings bear. Figures of the worked example are worked out by hand beside each check.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::BTreeMap;

use faceline::drawing::{Group, Item, Page};
use faceline::parameters::given::*;
use faceline::solve::{Order, OrderLine, Solved, Supplier, solve};
use faceline::{rules, sheets};

mod program;
mod support;
use support::*;

fn run(given: &Given) -> Solved {
    solve(given).unwrap_or_else(|problems| panic!("{problems:?}"))
}

fn order(solved: &Solved, supplier: Supplier) -> &Order {
    solved.shop.orders.iter().find(|order| order.supplier == supplier).expect("an order")
}

fn line<'o>(order: &'o Order, mark: &str) -> &'o OrderLine {
    order.lines.iter().find(|line| line.mark == mark).unwrap_or_else(|| panic!("no line {mark}"))
}

/// As a builder types it.
fn plain(words: &str) -> String {
    words.replace('\u{2009}', " ").replace('\u{2044}', "/").replace('\u{2033}', " in").replace('\u{d7}', "x")
}

fn minds(line: &OrderLine) -> Vec<String> {
    line.mind.iter().map(|words| plain(words)).collect()
}

/// The worked example: modules A 18 in and B 42 in, clad at both ends; the notch 33 3/8 in wide, centred in B, down to
/// 36 - 9 = 27 in over the floor; frames 28 in deep, from the shortest foot, 2 in, to 36 - 1 1/2 - 3/4 = 33 3/4 in: 31 3/4 in
/// high; openings in the frame are 1/8 in larger on each closed side.
#[test]
fn the_frame_maker_is_told_left_right_and_every_opening() {
    let solved = run(&worked_example());
    let order = order(&solved, Supplier::FrameMaker);
    let modules: Vec<&str> =
        order.lines.iter().map(|line| line.mark.as_str()).filter(|mark| ["A", "B"].contains(mark)).collect();
    assert_eq!(modules, ["A", "B"]);
    let (a, b) = (line(order, "A"), line(order, "B"));
    assert_eq!(plain(&a.what), "module, 18 in wide, 28 in deep, 31 3/4 in high; steel tube 1 1/2 in");
    assert_eq!(minds(a)[0], "left: an end, takes board; right: against B");
    assert_eq!(minds(b)[0], "left: against A; right: an end, takes board");
    // Wide: 33 3/8 + 2 x 1/8. High: 33 3/4 - 27 + 1/8, open at the top. Left edge: (42 - 33 5/8) / 2. Bottom: 27 - 1/8 - 2.
    let notch =
        "B1: front, 33 5/8 in x 6 7/8 in, open at the top, left edge 4 3/16 in from its left, bottom 24 7/8 in up";
    assert!(minds(b).contains(&notch.to_owned()), "{:?}", minds(b));
}

#[test]
fn every_module_and_every_fitting_is_ordered_once() {
    for job in program::jobs() {
        let solved = program::solved(&job);
        let frames = order(&solved, Supplier::FrameMaker);
        for leg in &solved.legs {
            for module in &leg.modules {
                let lines = frames.lines.iter().filter(|line| line.mark == module.id).count();
                assert_eq!(lines, 1, "{}: module {}", job.display(), module.id);
            }
        }
        let mut ordered: BTreeMap<(usize, usize), u64> = BTreeMap::new();
        for line in &order(&solved, Supplier::Fittings).lines {
            assert_eq!(line.count, line.fittings.len() as u64, "{}: {}", job.display(), line.mark);
            assert_eq!(line.mark.split(", ").count(), line.fittings.len(), "{}", line.mark);
            line.fittings.iter().for_each(|at| *ordered.entry(*at).or_default() += 1);
        }
        for fitting in solved.legs.iter().flat_map(|leg| &leg.fittings) {
            let passes = matches!(fitting.kind, faceline::solve::FittingKind::Opening(OpeningSort::PassThrough));
            let times = ordered.get(&fitting.at).copied().unwrap_or(0);
            assert_eq!(times, u64::from(!passes), "{}: {}", job.display(), fitting.mark);
        }
        // The counter is ordered piece by piece.
        let pieces: usize = solved.legs.iter().map(|leg| leg.counter.pieces.len()).sum();
        let counter = order(&solved, Supplier::Counter);
        let weighed = counter.lines.iter().filter(|line| line.mark.contains("Piece")).count();
        assert_eq!(weighed, pieces, "{}", job.display());
    }
}

#[test]
fn a_door_is_ordered_by_its_hinge_and_a_refrigerator_without_one_is_asked_for() {
    let door = |pull_right| {
        let mut given = worked_example();
        given.fittings.push(fitting("door", Look::Door { pull_right }, 0, opening(12.0, 8.0, Some(20.0))));
        let solved = run(&given);
        minds(line(order(&solved, Supplier::Fittings), "A1"))
    };
    // The hand pulls at the side away from the hinge.
    assert!(door(true).contains(&"hinged on the left, pull at the right".to_owned()));
    assert!(door(false).contains(&"hinged on the right, pull at the left".to_owned()));
    let fridge = |hinge_right| {
        let mut given = terrace();
        given.fittings.iter_mut().for_each(|fitting| fitting.needs.hinge_right = hinge_right);
        let solved = run(&given);
        line(order(&solved, Supplier::Fittings), "D1").clone()
    };
    assert_eq!(fridge(None).missing, ["hinge side"]);
    assert!(fridge(Some(true)).missing.is_empty());
    assert!(minds(&fridge(Some(true))).contains(&"hinged on the right, pull at the left".to_owned()));
}

#[test]
fn what_was_measured_goes_before_what_a_sheet_says() {
    let solved = program::solved(std::path::Path::new("samples/terrace.ron"));
    // The sample's doors: published 30 in wide, measured 30 1/16 in.
    let said = minds(line(order(&solved, Supplier::Fittings), "B2"));
    assert!(said[0].starts_with("cutout 30 1/16 in wide, measured (its sheet says 30 in)"), "{said:?}");
    assert!(said.contains(&"not yet measured: height, drop".to_owned()), "{said:?}");
    assert!(minds(line(order(&solved, Supplier::Fittings), "B1")).contains(&"for propane".to_owned()));
    // Alike vents are one line.
    assert_eq!(line(order(&solved, Supplier::Fittings), "A2, C2").count, 2);
}

#[test]
fn a_piece_of_counter_is_ordered_with_its_edges_left_and_right() {
    let solved = program::solved(std::path::Path::new("samples/terrace.ron"));
    let said = minds(line(order(&solved, Supplier::Counter), "Piece 1"));
    // Open at the left, a pier at the right, a wall with an upstand behind.
    assert_eq!(
        said[0],
        "edges: front finished, overhang 1 1/4 in; left finished, overhang 1 in; right at a wall; back at a wall with upstand"
    );
    // B begins 1 3/4 + 20 in from the finished left end and is 39 in wide.
    let grill = "B1 grill: 31 1/4 in x 22 1/4 in, open at the front, centreline 41 1/4 in from the finished left end";
    assert!(said.contains(&grill.to_owned()), "{said:?}");
}

#[test]
fn every_side_has_its_own_overhang_and_a_seam_is_told_where_legs_meet() {
    let solved = program::solved(std::path::Path::new("samples/bar.ron"));
    // Seats along the bar's back: 320 mm; in front the cook's leg has 25 mm, the bar 40 mm.
    let edges = |mark: &str| minds(line(order(&solved, Supplier::Counter), mark))[0].clone();
    assert_eq!(
        edges("Piece 2, bar"),
        "edges: front finished, overhang 40 mm; left finished, overhang 25 mm; right finished, overhang 25 mm; \
         back finished, overhang 320 mm"
    );
    assert!(edges("Piece 1, cook").contains("front finished, overhang 25 mm"));
    let solved = program::solved(std::path::Path::new("samples/corner.ron"));
    let edges = |mark: &str| minds(line(order(&solved, Supplier::Counter), mark))[0].clone();
    // The leg that runs through: free at the left, walls at the right and behind; the other leg butts on its front, whose
    // corner with it is rounded by 1 in.
    let through = edges("Piece 1, north");
    let order_of =
        ["front ", "; left 1 in finished, overhang", "; front 29 3/8 in seam", "; right ", "; back ", "; left "];
    let mut rest = through.split_once("front: ").expect("a walk").1;
    for part in order_of {
        let at = rest.find(part).unwrap_or_else(|| panic!("{part} in {through}"));
        rest = &rest[at + part.len()..];
    }
    assert!(
        through.contains("at a wall; back 136 7/8 in at a wall; left 29 3/8 in finished, overhang 1 in"),
        "{through}"
    );
    assert_eq!(
        edges("Piece 2, east"),
        "edges: front finished, overhang 1 1/4 in; left seam, against another piece; right finished, overhang 1 in; \
         back at a wall"
    );
}

/// Bars of the base trim are laid out with the tubes, and bought from somebody else.
#[test]
fn the_base_trim_is_ordered_once_and_from_the_trim_supplier() {
    let solved = program::solved(std::path::Path::new("samples/terrace.ron"));
    let trim = &solved.trim.as_ref().expect("a trim").name;
    let to: Vec<Supplier> = solved
        .shop
        .orders
        .iter()
        .flat_map(|order| order.lines.iter().map(|line| (order.supplier, line)))
        .filter(|(_, line)| line.what.starts_with(trim.as_str()))
        .map(|(supplier, _)| supplier)
        .collect();
    assert_eq!(to, [Supplier::Trim]);
}

/// As many bars and sheets are ordered as the cutting lays out, offcuts that are there already left out.
#[test]
fn every_stock_sheet_and_bar_that_is_cut_is_ordered() {
    for job in program::jobs() {
        let solved = program::solved(&job);
        let cutting = &solved.shop.cutting;
        let ordered = |suppliers: &[Supplier], words: &str| -> u64 {
            let orders = solved.shop.orders.iter().filter(|order| suppliers.contains(&order.supplier));
            orders
                .flat_map(|order| &order.lines)
                .filter(|line| line.mind.iter().any(|m| m.contains(words)))
                .map(|l| l.count)
                .sum()
        };
        let sheets = cutting.sheets.iter().filter(|sheet| sheet.offcut.is_none()).count() as u64;
        assert_eq!(ordered(&[Supplier::Boards], "laid out on"), sheets, "{}", job.display());
        let bars = cutting.bars.len() as u64;
        assert_eq!(ordered(&[Supplier::Metal, Supplier::Trim], "laid out on"), bars, "{}", job.display());
    }
}

#[test]
fn totals_add_up_and_own_to_what_is_unknown() {
    let line = |count, mass| OrderLine { count, mass, ..OrderLine::default() };
    let order = Order { lines: vec![line(2, Some(10.0)), line(3, None), line(1, Some(0.5))], ..Order::default() };
    assert_eq!(order.count(), 6);
    assert_eq!(order.mass(), (20.5, 3));
}

/// A text of a page: where, how high, what.
struct Said {
    x: f64,
    y: f64,
    height: f64,
    words: String,
}

fn said(page: &Page) -> Vec<Said> {
    fn walk(group: &Group, found: &mut Vec<Said>) {
        for item in &group.items {
            match item {
                Item::Group(inner) => walk(inner, found),
                Item::Text(text) => {
                    let words = text.runs.iter().map(|run| run.text.as_str()).collect();
                    found.push(Said { x: text.at.x, y: text.at.y, height: text.height, words });
                }
                Item::Path(_) => {}
            }
        }
    }
    let mut found = Vec::new();
    walk(&page.root, &mut found);
    found
}

/// Every mark that a label has to bear, once each.
fn wanted(solved: &Solved) -> Vec<String> {
    let shop = &solved.shop;
    let mut marks: Vec<String> = Vec::new();
    for leg in &solved.legs {
        marks.extend(leg.modules.iter().map(|module| module.id.clone()));
        marks.extend(leg.counter.pieces.iter().map(|piece| piece.name.clone()));
        marks.extend(leg.counter.splashes.iter().map(|(name, ..)| name.clone()));
        if shop.pieces.is_empty() {
            marks.extend(leg.boards.iter().map(|board| board.name.clone()));
            let leg_words = if solved.legs.len() > 1 { format!(" {}", leg.id) } else { String::new() };
            marks.push(format!("substrate{leg_words}"));
        }
    }
    marks.extend(shop.pieces.iter().map(|piece| piece.mark.clone()));
    marks.extend(shop.supports.members.iter().map(|support| support.mark.clone()));
    marks.extend(shop.trim.pieces.iter().map(|piece| piece.mark.clone()));
    marks
}

#[test]
fn labels_bear_the_marks_of_the_drawings() {
    for job in program::jobs() {
        let solved = program::solved(&job);
        let findings = rules::check(&solved);
        let pages = sheets::draw(&solved, &findings, |_| true).expect("sheets");
        let labels: Vec<Vec<Said>> = pages.iter().filter(|page| page.name.contains("-labels")).map(said).collect();
        let mut counts: BTreeMap<String, i64> = BTreeMap::new();
        wanted(&solved).into_iter().for_each(|mark| *counts.entry(mark).or_default() += 1);
        for label in labels.iter().flatten() {
            if let Some(count) = counts.get_mut(&label.words)
                && label.height >= 3.5
            {
                *count -= 1;
            }
        }
        let off: Vec<_> = counts.iter().filter(|(_, count)| **count != 0).collect();
        assert!(off.is_empty(), "{}: labels too few or too many: {off:?}", job.display());
        // Where a label says the sheet, that sheet bears the mark.
        let mut led = 0;
        for texts in &labels {
            for sheet in texts.iter().filter(|text| text.words.starts_with("sheet")) {
                let over = |text: &&Said| {
                    counts.contains_key(&text.words) && text.height >= 3.5 && text.y < sheet.y && text.x < sheet.x
                };
                // The nearest mark up and to the left is the label's own.
                let own = texts.iter().filter(over).min_by(|a, b| {
                    let off = |text: &Said| (sheet.y - text.y).hypot(sheet.x - text.x);
                    off(a).total_cmp(&off(b))
                });
                let own = own.expect("a mark over it");
                let numbers: Vec<usize> = sheet.words.split(' ').filter_map(|word| word.parse().ok()).collect();
                let (first, last) = (numbers[0], numbers[numbers.len() - 1]);
                let bears = (first..=last).any(|number| {
                    said(&pages[number - 1]).iter().any(|text| {
                        text.words == own.words
                            || text
                                .words
                                .to_lowercase()
                                .split([',', ' '])
                                .collect::<Vec<_>>()
                                .join(" ")
                                .contains(&own.words.to_lowercase())
                    })
                });
                assert!(bears, "{}: {} is not on sheets {first} to {last}", job.display(), own.words);
                led += 1;
            }
        }
        assert!(led >= solved.legs.iter().map(|leg| leg.modules.len()).sum::<usize>(), "{}: {led}", job.display());
    }
}
