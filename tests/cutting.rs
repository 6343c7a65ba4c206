//! What is cut from what, in the samples: every piece once, none over another, all on the sheets and bars that are bought.
//! The search itself is held by `tests/reference_nesting.rs`.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use faceline::solve::{MaterialGroup, Solved};
use faceline::units::Length;

mod program;

fn samples() -> Vec<(&'static str, Solved)> {
    ["terrace", "island", "courtyard", "corner", "bar"]
        .map(|name| (name, program::solved(format!("samples/{name}.ron").as_ref())))
        .into()
}

/// A piece's box on its stock sheet: left, low, right, high.
fn boxes(solved: &Solved, sheet: usize) -> Vec<(usize, [Length; 4])> {
    let sheet = &solved.shop.cutting.sheets[sheet];
    let one = |placed: &faceline::solve::Placed| {
        let (wide, high) = solved.shop.pieces[placed.piece].blank;
        let (w, h) = if placed.turned { (high, wide) } else { (wide, high) };
        (placed.piece, [placed.at.0, placed.at.1, placed.at.0 + w, placed.at.1 + h])
    };
    sheet.placed.iter().map(one).collect()
}

#[test]
fn every_piece_of_a_sample_is_cut_once_from_a_sheet_that_holds_it() {
    for (name, solved) in samples() {
        let cutting = &solved.shop.cutting;
        let mut seen = vec![0; solved.shop.pieces.len()];
        for index in 0..cutting.sheets.len() {
            let sheet = &cutting.sheets[index];
            let kerf = cutting.materials[sheet.material].kerf;
            let own = boxes(&solved, index);
            for (k, (piece, a)) in own.iter().enumerate() {
                seen[*piece] += 1;
                assert_eq!(solved.shop.pieces[*piece].material, sheet.material, "{name}");
                assert!(a[0] >= Length::ZERO && a[1] >= Length::ZERO, "{name}");
                assert!(a[2] <= sheet.size.1 && a[3] <= sheet.size.0, "{name}: piece {piece} lies off its sheet");
                for (_, b) in &own[k + 1..] {
                    let apart =
                        a[0] >= b[2] + kerf || b[0] >= a[2] + kerf || a[1] >= b[3] + kerf || b[1] >= a[3] + kerf;
                    assert!(apart, "{name}: pieces nearer than a kerf on sheet {index}");
                }
            }
        }
        assert!(!seen.is_empty() && seen.iter().all(|n| *n == 1), "{name}: {seen:?}");
    }
}

#[test]
fn as_many_sheets_are_bought_as_are_cut() {
    for (name, solved) in samples() {
        let bought = solved.shop.cutting.sheets.iter().filter(|sheet| sheet.offcut.is_none()).count() as u64;
        let lines = solved.shop.quantities.iter().filter(|line| line.group == MaterialGroup::Board);
        assert_eq!(lines.map(|line| line.count).sum::<u64>(), bought, "{name}");
    }
}

#[test]
fn every_tube_support_and_trim_piece_is_cut_once_from_a_bar() {
    for (name, solved) in samples() {
        let shop = &solved.shop;
        let mut wanted: Vec<(String, Length)> = Vec::new();
        for tube in &shop.supports.tubes {
            wanted.extend(vec![(tube.mark.clone(), tube.length); tube.count]);
        }
        wanted.extend(shop.supports.members.iter().map(|one| (one.mark.clone(), one.length)));
        wanted.extend(shop.trim.pieces.iter().map(|piece| (piece.mark.clone(), piece.length())));
        let mut cut: Vec<(String, Length)> = shop.cutting.bars.iter().flat_map(|bar| bar.cuts.clone()).collect();
        wanted.sort();
        cut.sort();
        assert!(!cut.is_empty(), "{name}");
        assert_eq!(cut, wanted, "{name}");
        for bar in &shop.cutting.bars {
            let own = bar.cuts.iter().fold(Length::ZERO, |sum, (_, length)| sum + *length);
            let kerfs = bar.kerf * (bar.cuts.len() as i64 - 1).max(0);
            assert!(bar.end_trim + own + kerfs <= bar.length, "{name}: more is cut from {} than it has", bar.name);
        }
    }
}

#[test]
fn supports_of_the_frames_own_tube_are_cut_from_its_bars() {
    let mut met = 0;
    for job in program::jobs() {
        let solved = program::solved(&job);
        let shop = &solved.shop;
        let bar_of = |mark: &str| {
            shop.cutting.bars.iter().find(|bar| bar.cuts.iter().any(|(cut, _)| cut == mark)).map(|bar| &bar.name)
        };
        let Some(tube) = shop.supports.tubes.first().and_then(|tube| bar_of(&tube.mark)) else { continue };
        for support in &shop.supports.members {
            let same = bar_of(&support.mark) == Some(tube);
            assert_eq!(
                same, support.of_frame_tube,
                "{job:?}: {} of {} {}",
                support.mark, support.alloy, support.section
            );
            assert!(!same || tube.ends_with(&support.section), "{tube}, and {}", support.section);
            met += usize::from(same);
        }
    }
    assert!(met > 0, "no sample has such a support");
}
