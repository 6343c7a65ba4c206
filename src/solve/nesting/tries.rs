//! Many tries to lay pieces on a given number of sheets, each in an order that learnt from the ones before.

use super::bin::{Bin, Rect, Score, Split, area};
use super::bound::Item;

/// Sheets begun last that a piece of many is tried on.
const WINDOW: usize = 40;

/// Where a piece came to lie: sheet, place, turned.
pub(super) type Laid = (usize, Rect, bool);

/// Tests of a piece against a sheet that a first look may make.
pub(super) const FIRST_LOOK: u64 = 20_000;
/// Tests that a long search may make.
pub(super) const LONG_SEARCH: u64 = 120_000;
/// Tries at least, however many pieces there are.
const LEAST_TRIES: u64 = 6;

/// A stream of numbers (splitmix64), the same in every run.
pub(super) struct Chance(pub u64);

impl Chance {
    pub(super) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 up to 1.
    fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1u64 << 53) as f64
    }
}

/// Lays all pieces on the sheets given, if that is found within so many tests. A try that leaves pieces over is shown to
/// `near`, which may mend it.
pub(super) fn lay_all(
    items: &[Item],
    bins: &[(i64, i64)],
    edge_to_edge: bool,
    tests: u64,
    mut near: impl FnMut(&[Option<Laid>], &[usize]) -> Option<Vec<Laid>>,
) -> Option<Vec<Laid>> {
    let mut chance = Chance(0x5EED);
    let mut weights: Vec<f64> = items.iter().map(|item| area(item.w, item.h) as f64).collect();
    let per_try = (items.len() * bins.len().max(1)) as u64;
    let tries = (tests / per_try.max(1)).max(LEAST_TRIES);
    for attempt in 0..tries {
        let order = order(items, &weights, attempt, &mut chance);
        let (score, split) = policy(attempt, &mut chance);
        let (laid, left) = one_try(items, &order, bins, edge_to_edge, score, split, attempt % 3 == 2);
        if left.is_empty() {
            return Some(laid.into_iter().flatten().collect());
        }
        match near(&laid, &left) {
            Some(mended) => return Some(mended),
            None => left.into_iter().for_each(|index| weights[index] *= 1.0 + 0.3 * chance.share()),
        }
        if attempt % 60 == 59 {
            weights = items.iter().map(|item| area(item.w, item.h) as f64).collect();
        }
    }
    None
}

/// Lays all pieces on the sheets given, then on as many more of one size as it takes; `None` when one fits none.
pub(super) fn quickly(
    items: &[Item],
    offcuts: &[(i64, i64)],
    size: (i64, i64),
    edge_to_edge: bool,
) -> Option<(usize, Vec<Laid>)> {
    let mut best: Option<(usize, Vec<Laid>)> = None;
    // Many pieces: one try, and only the sheets begun last are looked at.
    let many = items.len() > super::sheets::MANY;
    for attempt in 0..if many { 1 } else { 8 } {
        let weights: Vec<f64> = items.iter().map(|item| area(item.w, item.h) as f64).collect();
        let mut chance = Chance(attempt);
        let order = order(items, &weights, attempt, &mut chance);
        let (score, split) = policy(attempt, &mut chance);
        let found = growing(items, &order, offcuts, size, edge_to_edge, score, split)?;
        if best.as_ref().is_none_or(|best| found.0 < best.0) {
            best = Some(found);
        }
    }
    best
}

/// The order of a try: by area, by sides, then by what was learnt, shaken.
fn order(items: &[Item], weights: &[f64], attempt: u64, chance: &mut Chance) -> Vec<usize> {
    let key = |index: usize, chance: &mut Chance| {
        let item = &items[index];
        match attempt {
            0 | 1 => weights[index],
            2 | 3 => item.w.max(item.h) as f64,
            4 | 5 => item.w.min(item.h) as f64,
            6 | 7 => (item.w + item.h) as f64,
            _ => weights[index] * (0.65 + 0.7 * chance.share()),
        }
    };
    let mut keyed: Vec<(f64, usize)> = (0..items.len()).map(|index| (key(index, chance), index)).collect();
    keyed.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(&b.1)));
    keyed.into_iter().map(|(_, index)| index).collect()
}

fn policy(attempt: u64, chance: &mut Chance) -> (Score, Split) {
    let scores = [Score::ShortSide, Score::Area, Score::LongSide, Score::Low];
    let bits = chance.next();
    let splits = [
        Split::ShorterLeft,
        Split::LargerRest,
        Split::TurnAbout(bits),
        Split::LongerLeft,
        Split::Across,
        Split::Along,
        Split::TurnAbout(bits >> 7),
    ];
    if attempt < 8 {
        (scores[(attempt % 2) as usize], splits[(attempt / 2 % 2) as usize])
    } else {
        (scores[(bits % 4) as usize], splits[(bits / 4 % 7) as usize])
    }
}

/// One try on given sheets, and the pieces that found no place.
fn one_try(
    items: &[Item],
    order: &[usize],
    sizes: &[(i64, i64)],
    edge_to_edge: bool,
    score: Score,
    split: Split,
    first_fit: bool,
) -> (Vec<Option<Laid>>, Vec<usize>) {
    let mut bins: Vec<Bin> = sizes.iter().map(|&(w, h)| Bin::new(w, h, edge_to_edge)).collect();
    let mut laid: Vec<Option<Laid>> = vec![None; items.len()];
    let mut left = Vec::new();
    for &index in order {
        match best(&items[index], &bins, score, first_fit) {
            Some((bin, spot)) => {
                bins[bin].lay(&spot, split);
                laid[index] = Some((bin, spot.rect, spot.turned));
            }
            None => left.push(index),
        }
    }
    (laid, left)
}

/// One try on the offcuts and as many sheets as it takes.
fn growing(
    items: &[Item],
    order: &[usize],
    offcuts: &[(i64, i64)],
    size: (i64, i64),
    edge_to_edge: bool,
    score: Score,
    split: Split,
) -> Option<(usize, Vec<Laid>)> {
    let mut bins: Vec<Bin> = offcuts.iter().map(|&(w, h)| Bin::new(w, h, edge_to_edge)).collect();
    let mut laid: Vec<Option<Laid>> = vec![None; items.len()];
    for &index in order {
        let from = if items.len() > super::sheets::MANY { bins.len().saturating_sub(WINDOW) } else { 0 };
        let found = match best(&items[index], &bins[from..], score, true).map(|(bin, spot)| (bin + from, spot)) {
            Some(found) => found,
            None => {
                bins.push(Bin::new(size.0, size.1, edge_to_edge));
                let spot = bins.last()?.spot((items[index].w, items[index].h), items[index].turns, score)?;
                (bins.len() - 1, spot)
            }
        };
        bins[found.0].lay(&found.1, split);
        laid[index] = Some((found.0, found.1.rect, found.1.turned));
    }
    Some((bins.len() - offcuts.len(), laid.into_iter().flatten().collect()))
}

/// The best place on any sheet, or on the first that has one.
fn best(item: &Item, bins: &[Bin], score: Score, first_fit: bool) -> Option<(usize, super::bin::Spot)> {
    let spots = bins
        .iter()
        .enumerate()
        .filter_map(|(index, bin)| Some((index, bin.spot((item.w, item.h), item.turns, score)?)));
    if first_fit { spots.into_iter().next() } else { spots.min_by_key(|(index, spot)| (spot.score, *index)) }
}
