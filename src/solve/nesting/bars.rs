//! Lengths on bars.

use crate::units::Length;
use std::collections::BTreeSet;

/// Steps that the search for fewer bars may take.
const STEPS: u64 = 100_000;

/// With more lengths than these no search is made: the longest first, each where it leaves least, wastes little then.
const MANY: usize = 300;

/// What is cut from one bar.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BarCuts {
    /// The bar's length.
    pub stock: Length,
    /// The lengths cut from it, by their index in the request, longest first.
    pub cuts: Vec<usize>,
    /// What is left of it, after the last kerf.
    pub left: Length,
}

/// Cuts lengths from as few bars as are found, all of one stock length, the one that buys the least; neighbouring cuts
/// lie a kerf apart, and each bar loses its end trim once.
///
/// Errors: the lengths, by index, that no bar is long enough for.
pub fn bars(stock: &[Length], kerf: Length, end_trim: Length, lengths: &[Length]) -> Result<Vec<BarCuts>, Vec<usize>> {
    let room = |stock: Length| stock.nm() - end_trim.nm() + kerf.nm();
    let longest = stock.iter().map(|stock| room(*stock)).max().unwrap_or(0);
    let larger: Vec<i64> = lengths.iter().map(|length| length.nm() + kerf.nm()).collect();
    let too_long: Vec<usize> = (0..larger.len()).filter(|&index| larger[index] > longest).collect();
    if !too_long.is_empty() {
        return Err(too_long);
    }
    let mut best: Option<(i64, Vec<BarCuts>)> = None;
    for &one in stock {
        if larger.iter().any(|length| *length > room(one)) {
            continue;
        }
        let cut = on(room(one), &larger);
        let cost = one.nm().saturating_mul(cut.len() as i64);
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            let bar = |cuts: Vec<usize>| {
                let used: i64 = cuts.iter().map(|&index| larger[index]).sum();
                // The kerf after the last length is lost where anything is left to be parted off.
                let left = Length::from_nm((room(one) - kerf.nm() - used).max(0));
                BarCuts { stock: one, cuts, left }
            };
            best = Some((cost, cut.into_iter().map(bar).collect()));
        }
    }
    Ok(best.map(|(_, bars)| bars).unwrap_or_default())
}

/// Bars as lists of indices, on bars of one room.
fn on(room: i64, lengths: &[i64]) -> Vec<Vec<usize>> {
    let mut order: Vec<usize> = (0..lengths.len()).collect();
    order.sort_by_key(|&index| (std::cmp::Reverse(lengths[index]), index));
    let mut best = best_fit(room, lengths, &order);
    let whole: i128 = lengths.iter().map(|length| i128::from(*length)).sum();
    let by_length = usize::try_from((whole + i128::from(room) - 1) / i128::from(room.max(1))).unwrap_or(0);
    let least = by_length.max(lengths.iter().filter(|length| **length * 2 > room).count());
    while best.len() > least && lengths.len() <= MANY {
        match on_so_many(room, lengths, &order, best.len() - 1) {
            Some(better) => best = better,
            None => break,
        }
    }
    best
}

/// The longest first, each on the bar that it leaves least of.
fn best_fit(room: i64, lengths: &[i64], order: &[usize]) -> Vec<Vec<usize>> {
    let mut bars: Vec<Vec<usize>> = Vec::new();
    // What each bar has left, least first, the earlier bar first of equals.
    let mut open: BTreeSet<(i64, usize)> = BTreeSet::new();
    for &index in order {
        let found = open.range((lengths[index], 0)..).next().copied();
        let (left, bar) = found.unwrap_or((room, bars.len()));
        if found.is_some() {
            open.remove(&(left, bar));
            bars[bar].push(index);
        } else {
            bars.push(vec![index]);
        }
        open.insert((left - lengths[index], bar));
    }
    bars
}

/// Lengths of one size that are still to be cut.
struct Kind {
    length: i64,
    waiting: Vec<usize>,
}

/// A search for a cutting with so many bars: bar by bar, each begins with the longest length left and is filled every way
/// that wastes no more than all bars together may.
fn on_so_many(room: i64, lengths: &[i64], order: &[usize], bars: usize) -> Option<Vec<Vec<usize>>> {
    let mut kinds: Vec<Kind> = Vec::new();
    for &index in order {
        match kinds.last_mut().filter(|kind| kind.length == lengths[index]) {
            Some(kind) => kind.waiting.push(index),
            None => kinds.push(Kind { length: lengths[index], waiting: vec![index] }),
        }
    }
    let whole: i64 = lengths.iter().sum();
    let mut counts: Vec<usize> = kinds.iter().map(|kind| kind.waiting.len()).collect();
    let mut search = Search { room, kinds: &kinds, steps: 0, chosen: Vec::new() };
    let spare = room.checked_mul(bars as i64)? - whole;
    if spare < 0 || !search.fill(&mut counts, bars, spare)? {
        return None;
    }
    let chosen = std::mem::take(&mut search.chosen);
    let mut waiting: Vec<Vec<usize>> = kinds.into_iter().map(|kind| kind.waiting).collect();
    let bar = |cuts: Vec<usize>| cuts.into_iter().filter_map(|kind| waiting[kind].pop()).collect();
    Some(chosen.into_iter().map(bar).collect())
}

struct Search<'a> {
    room: i64,
    kinds: &'a [Kind],
    steps: u64,
    chosen: Vec<Vec<usize>>,
}

impl Search<'_> {
    /// Fills the bars that are left; `None` when the search was broken off.
    fn fill(&mut self, counts: &mut [usize], bars: usize, spare: i64) -> Option<bool> {
        let Some(first) = counts.iter().position(|count| *count > 0) else { return Some(true) };
        if bars == 0 {
            return Some(false);
        }
        counts[first] -= 1;
        let mut cuts = vec![first];
        let left = self.room - self.kinds[first].length;
        let done = self.complete(counts, first, &mut cuts, left, bars, spare);
        counts[first] += 1;
        done
    }

    /// Goes on with one bar from a kind of length on.
    fn complete(
        &mut self,
        counts: &mut [usize],
        from: usize,
        cuts: &mut Vec<usize>,
        left: i64,
        bars: usize,
        spare: i64,
    ) -> Option<bool> {
        self.steps += 1;
        if self.steps > STEPS {
            return None;
        }
        for kind in from..counts.len() {
            let length = self.kinds[kind].length;
            if counts[kind] == 0 || length > left {
                continue;
            }
            counts[kind] -= 1;
            cuts.push(kind);
            let done = self.complete(counts, kind, cuts, left - length, bars, spare);
            cuts.pop();
            counts[kind] += 1;
            if done? {
                return Some(true);
            }
        }
        // Nothing longer goes on: a bar that could still take a length is never better than one that does.
        let takes_more = (from..counts.len()).any(|kind| counts[kind] > 0 && self.kinds[kind].length <= left);
        if left > spare || takes_more {
            return Some(false);
        }
        self.chosen.push(cuts.clone());
        if self.fill(counts, bars - 1, spare - left)? {
            return Some(true);
        }
        self.chosen.pop();
        Some(false)
    }
}
