//! Pieces on sheets and lengths on bars, against proven optima and an independent check of every layout.
//!
//! `tests/reference/nesting.json`: counts proven by a constraint solver (OR-Tools CP-SAT 9.15) or by a search through every
//! way of cutting; all data invented. The checks of a layout here share no code with the program: overlap, kerf, edges,
//! and whether a sheet can be taken apart by cuts from edge to edge.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use faceline::solve::nesting::{Bought, Layout, Offcut, Part, Request, Way, bars, sheets};
use faceline::units::Length;

mod program;
mod support;

use support::reference;

fn inches(value: &serde_json::Value) -> Length {
    Length::from_inches(value.as_f64().unwrap())
}

fn cases(kind: &str) -> Vec<serde_json::Value> {
    let cases: Vec<_> = reference::cases("nesting").into_iter().filter(|case| case["kind"] == kind).collect();
    assert!(cases.len() >= 3, "{} cases of kind {kind}", cases.len());
    cases
}

fn request(input: &serde_json::Value, way: Way) -> Request {
    let part = |given: &serde_json::Value| {
        let part = Part {
            size: (inches(&given["w_in"]), inches(&given["h_in"])),
            turns: given.get("rotate").is_none_or(|turns| turns.as_bool().unwrap()),
        };
        vec![part; given["qty"].as_u64().unwrap() as usize]
    };
    Request {
        parts: input["parts"].as_array().unwrap().iter().flat_map(part).collect(),
        offcuts: Vec::new(),
        bought: vec![Bought { size: (inches(&input["sheet_w_in"]), inches(&input["sheet_h_in"])) }],
        kerf: inches(&input["kerf_in"]),
        way,
        keep: Length::from_inches(6.0),
    }
}

/// A box on a sheet: x, y, right, top, nm.
type Box4 = (i64, i64, i64, i64);

/// What is wrong with a layout; empty when nothing is.
fn faults(request: &Request, layout: &Layout) -> Vec<String> {
    let mut faults = Vec::new();
    let kerf = request.kerf.nm();
    let mut seen = vec![0; request.parts.len()];
    for (number, sheet) in layout.sheets.iter().enumerate() {
        let known = match sheet.offcut {
            Some(index) => request.offcuts[index].size == sheet.size,
            None => request.bought.iter().any(|bought| bought.size == sheet.size),
        };
        if !known {
            faults.push(format!("sheet {number} has a size that there is none of"));
        }
        let mut boxes: Vec<Box4> = Vec::new();
        for placed in &sheet.placed {
            let part = request.parts[placed.part];
            seen[placed.part] += 1;
            if placed.turned && !part.turns {
                faults.push(format!("part {} is turned", placed.part));
            }
            let (w, h) = if placed.turned { (part.size.1, part.size.0) } else { part.size };
            let (x, y) = (placed.at.0.nm(), placed.at.1.nm());
            let one = (x, y, x + w.nm(), y + h.nm());
            if x < 0 || y < 0 || one.2 > sheet.size.0.nm() || one.3 > sheet.size.1.nm() {
                faults.push(format!("part {} lies off sheet {number}", placed.part));
            }
            for other in &boxes {
                let apart = one.0 >= other.2 + kerf
                    || other.0 >= one.2 + kerf
                    || one.1 >= other.3 + kerf
                    || other.1 >= one.3 + kerf;
                if !apart {
                    faults.push(format!("part {} lies too near another", placed.part));
                }
            }
            boxes.push(one);
        }
        if request.way == Way::EdgeToEdge {
            if !parts_by_cuts(&boxes, kerf) {
                faults.push(format!("sheet {number} can't be cut from edge to edge"));
            }
            if !sheet.cuts.is_empty() || boxes.len() > 1 {
                faults.extend(replay(sheet, &boxes, kerf));
            }
        }
        for (at, size) in &sheet.kept {
            let rest = (at.0.nm(), at.1.nm(), at.0.nm() + size.0.nm(), at.1.nm() + size.1.nm());
            if rest.2 > sheet.size.0.nm() || rest.3 > sheet.size.1.nm() || boxes.iter().any(|one| meets(one, &rest)) {
                faults.push(format!("what is kept of sheet {number} isn't free"));
            }
        }
    }
    faults.extend(
        seen.iter().enumerate().filter(|(_, n)| **n != 1).map(|(part, n)| format!("part {part} is cut {n} times")),
    );
    faults
}

fn meets(a: &Box4, b: &Box4) -> bool {
    a.0 < b.2 && b.0 < a.2 && a.1 < b.3 && b.1 < a.3
}

/// Whether boxes can be parted by cuts from edge to edge, one after the other.
fn parts_by_cuts(boxes: &[Box4], kerf: i64) -> bool {
    if boxes.len() <= 1 {
        return true;
    }
    let cut = |low: fn(&Box4) -> i64, high: fn(&Box4) -> i64| {
        boxes.iter().map(high).find_map(|at| {
            let (below, above): (Vec<Box4>, Vec<Box4>) = boxes.iter().partition(|one| high(one) <= at);
            (!above.is_empty() && above.iter().all(|one| low(one) >= at + kerf)).then_some((below, above))
        })
    };
    let found = cut(|one| one.0, |one| one.2).or_else(|| cut(|one| one.1, |one| one.3));
    found.is_some_and(|(below, above)| parts_by_cuts(&below, kerf) && parts_by_cuts(&above, kerf))
}

/// Makes a sheet's cuts in their order, each of the one piece of it that it lies in from edge to edge; in the end each
/// part has to lie alone, its own size but for what a cut takes.
fn replay(sheet: &faceline::solve::nesting::Sheet, boxes: &[Box4], kerf: i64) -> Vec<String> {
    let mut faults = Vec::new();
    let mut pieces: Vec<Box4> = vec![(0, 0, sheet.size.0.nm(), sheet.size.1.nm())];
    for (from, to) in &sheet.cuts {
        let (x0, y0, x1, y1) = (from.0.nm(), from.1.nm(), to.0.nm(), to.1.nm());
        let upright = x0 == x1;
        let of = pieces.iter().position(|piece| {
            if upright {
                piece.0 < x0 && x0 < piece.2 + kerf && piece.1 == y0 && piece.3 == y1
            } else {
                piece.1 < y0 && y0 < piece.3 + kerf && piece.0 == x0 && piece.2 == x1
            }
        });
        let Some(of) = of else {
            faults.push(format!("a cut from {from:?} to {to:?} goes from edge to edge of nothing"));
            continue;
        };
        let piece = pieces.swap_remove(of);
        // A cut's line is in the middle of its kerf, to the nearest nanometre.
        let (one, other) = if upright {
            ((piece.0, piece.1, x0 - kerf / 2, piece.3), (x0 - kerf / 2 + kerf, piece.1, piece.2, piece.3))
        } else {
            ((piece.0, piece.1, piece.2, y0 - kerf / 2), (piece.0, y0 - kerf / 2 + kerf, piece.2, piece.3))
        };
        pieces.extend([one, other]);
    }
    for one in boxes {
        let near = |a: i64, b: i64| (a - b).abs() <= 2;
        let alone = pieces
            .iter()
            .any(|piece| near(piece.0, one.0) && near(piece.1, one.1) && near(piece.2, one.2) && near(piece.3, one.3));
        if !alone {
            faults.push(format!("the cuts don't free the part at {one:?}"));
        }
    }
    faults
}

#[test]
fn as_few_sheets_as_proven_by_a_constraint_solver_however_they_are_cut() {
    for case in cases("2d") {
        let input = &case["input"];
        for (way, key) in [(Way::Any, "best_known_sheets"), (Way::EdgeToEdge, "best_known_guillotine_sheets")] {
            let request = request(input, way);
            let layout = sheets(&request).unwrap();
            assert_eq!(faults(&request, &layout), Vec::<String>::new(), "{} {way:?}", case["id"]);
            let best = case["expected"][key].as_u64().unwrap() as usize;
            let least = case["expected"]["proven_lower_bound_sheets"].as_u64().unwrap() as usize;
            let found = layout.sheets.len();
            assert!(found <= best && found >= least, "{} {way:?}: {found} sheets, {best} known", case["id"]);
        }
    }
}

#[test]
fn as_few_bars_as_proven_by_a_constraint_solver() {
    for case in cases("1d") {
        let input = &case["input"];
        let (stock, kerf, trim) =
            (inches(&input["stock_in"]), inches(&input["kerf_in"]), inches(&input["end_trim_in"]));
        let of = |cut: &serde_json::Value| vec![inches(&cut["len_in"]); cut["qty"].as_u64().unwrap() as usize];
        let lengths: Vec<Length> = input["cuts"].as_array().unwrap().iter().flat_map(of).collect();
        let cut = bars(&[stock], kerf, trim, &lengths).unwrap();
        assert_eq!(cut.len() as u64, case["expected"]["best_known_bars"].as_u64().unwrap(), "{}", case["id"]);
        let mut seen = vec![0; lengths.len()];
        for bar in &cut {
            bar.cuts.iter().for_each(|&index| seen[index] += 1);
            let own: i64 = bar.cuts.iter().map(|&index| lengths[index].nm()).sum();
            let used = own + kerf.nm() * (bar.cuts.len() as i64 - 1) + trim.nm();
            assert!(used <= stock.nm(), "{}: a bar of {} is cut to {used}", case["id"], stock.nm());
        }
        assert!(seen.iter().all(|n| *n == 1), "{}: {seen:?}", case["id"]);
    }
}

/// Numbers that are the same in every run (a linear congruence, constants of Knuth's MMIX).
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        self.0 >> 33
    }
    fn between(&mut self, least: i64, most: i64) -> i64 {
        least + self.next() as i64 % (most - least + 1)
    }
}

/// Sheets cut up from edge to edge by chance, each piece then made a little smaller: the fewest sheets are at most as many
/// as were cut up, and by area no fewer where little was taken off.
fn cut_up(numbers: &mut Numbers, count: usize) -> Request {
    let kerf = 2;
    let (w, h) = if numbers.next().is_multiple_of(2) { (36 * 16, 60 * 16) } else { (48 * 16, 96 * 16) };
    let mut parts = Vec::new();
    for _ in 0..count {
        let mut open = vec![(w + kerf, h + kerf)];
        let wanted = numbers.between(4, 6) as usize;
        while open.len() < wanted {
            let largest = (0..open.len()).max_by_key(|&index| open[index].0 * open[index].1).unwrap();
            let (a, b) = open.swap_remove(largest);
            let share = numbers.between(30, 70);
            if numbers.between(1, a + b) <= a {
                open.extend([(a * share / 100, b), (a - a * share / 100, b)]);
            } else {
                open.extend([(a, b * share / 100), (a, b - b * share / 100)]);
            }
        }
        for (a, b) in open {
            let off = |side: i64, numbers: &mut Numbers| side - kerf - side * numbers.between(0, 8) / 100;
            let sixteenths = |n: i64| Length::from_sixty_fourths(n * 4);
            let size = (sixteenths(off(a, numbers)), sixteenths(off(b, numbers)));
            parts.push(Part { size, turns: true });
        }
    }
    let sixteenths = |n: i64| Length::from_sixty_fourths(n * 4);
    Request {
        parts,
        offcuts: Vec::new(),
        bought: vec![Bought { size: (sixteenths(w), sixteenths(h)) }],
        kerf: sixteenths(kerf),
        way: Way::EdgeToEdge,
        keep: Length::from_inches(6.0),
    }
}

#[test]
fn two_sheets_cut_up_by_chance_are_put_together_again() {
    let mut numbers = Numbers(11);
    for case in 0..40 {
        let request = cut_up(&mut numbers, 2);
        let layout = sheets(&request).unwrap();
        assert_eq!(faults(&request, &layout), Vec::<String>::new(), "case {case}");
        assert!(layout.sheets.len() <= 2, "case {case}: {} sheets", layout.sheets.len());
    }
}

#[test]
fn what_the_builder_has_is_used_before_anything_is_bought() {
    let inch = |n: f64| Length::from_inches(n);
    let part = |w: f64, h: f64| Part { size: (inch(w), inch(h)), turns: true };
    let request = Request {
        parts: vec![part(20.0, 30.0), part(35.0, 29.0), part(35.0, 30.0)],
        offcuts: vec![Offcut { size: (inch(21.0), inch(31.0)) }],
        bought: vec![Bought { size: (inch(36.0), inch(60.0)) }],
        kerf: inch(0.125),
        way: Way::EdgeToEdge,
        keep: inch(6.0),
    };
    let layout = sheets(&request).unwrap();
    assert_eq!(faults(&request, &layout), Vec::<String>::new());
    let from: Vec<Option<usize>> = layout.sheets.iter().map(|sheet| sheet.offcut).collect();
    assert_eq!(from, [Some(0), None]);
}

#[test]
fn a_piece_that_no_sheet_holds_is_named() {
    let mut request = cut_up(&mut Numbers(3), 1);
    request.parts[1].size.0 = Length::from_inches(200.0);
    assert_eq!(sheets(&request), Err(vec![1]));
    assert_eq!(
        bars(&[Length::from_inches(96.0)], Length::ZERO, Length::ZERO, &[Length::from_inches(97.0)]),
        Err(vec![0])
    );
}

#[test]
fn a_spoiled_layout_is_refused_by_the_check() {
    let request = cut_up(&mut Numbers(5), 2);
    let good = sheets(&request).unwrap();
    assert_eq!(faults(&request, &good), Vec::<String>::new());
    let mut near = good.clone();
    let shift = near.sheets[0].placed[1].at.0 + Length::from_inches(0.0625);
    near.sheets[0].placed[1].at.0 = shift;
    assert!(!faults(&request, &near).is_empty(), "a piece moved by half a kerf passes");
    let mut lost = good.clone();
    lost.sheets[0].placed.pop();
    assert!(!faults(&request, &lost).is_empty(), "a piece that is missing passes");
    let mut uncut = good;
    uncut.sheets[0].cuts.pop();
    assert!(!faults(&request, &uncut).is_empty(), "a cut that is missing passes");
}

/// The same layouts through a checker written elsewhere, in another language.
#[test]
fn layouts_pass_a_checker_of_another_hand() {
    let Some(python) = program::python() else { return };
    let folder = tempfile::tempdir().unwrap();
    for case in cases("2d") {
        let request = request(&case["input"], Way::EdgeToEdge);
        let layout = sheets(&request).unwrap();
        let names: Vec<String> = case["input"]["parts"]
            .as_array()
            .unwrap()
            .iter()
            .flat_map(|part| {
                (0..part["qty"].as_u64().unwrap()).map(move |n| format!("{}#{}", part["id"].as_str().unwrap(), n + 1))
            })
            .collect();
        let mut rows = Vec::new();
        for (number, sheet) in layout.sheets.iter().enumerate() {
            for placed in &sheet.placed {
                let (w, h) = request.parts[placed.part].size;
                let (w, h) = if placed.turned { (h, w) } else { (w, h) };
                let at = [placed.at.0, placed.at.1, w, h].map(|length| length.inches());
                rows.push(serde_json::json!([names[placed.part], number + 1, at[0], at[1], at[2], at[3]]));
            }
        }
        let path = folder.path().join("layout.json");
        std::fs::write(
            &path,
            serde_json::to_string(&serde_json::json!({ "input": case["input"], "layout": rows })).unwrap(),
        )
        .unwrap();
        let checked = std::process::Command::new(&python)
            .args(["tests/outside/nesting_check.py".as_ref(), path.as_os_str()])
            .output()
            .unwrap();
        assert!(checked.status.success(), "{}: {}", case["id"], String::from_utf8_lossy(&checked.stdout));
    }
}
