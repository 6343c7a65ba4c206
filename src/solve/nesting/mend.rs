//! Mends a layout that left one piece over: two of its sheets are taken apart and cut anew, every way, with that piece.

use super::bound::Item;
use super::exact::{Found, edge_to_edge};
use super::tries::Laid;

/// Pieces that two sheets may hold for every way to be looked at.
const MOST: usize = 17;

/// Layouts to be mended, and how much may still be looked at.
pub(super) struct Mender<'a> {
    pub items: &'a [Item],
    pub size: (i64, i64),
    pub sheets: usize,
    /// Pairs of boxes that may still be looked at.
    pub pairs: u64,
    /// What was looked at in vain: the pieces of two sheets.
    seen: std::collections::BTreeSet<Vec<usize>>,
}

impl<'a> Mender<'a> {
    pub(super) fn new(items: &'a [Item], size: (i64, i64), sheets: usize, pairs: u64) -> Mender<'a> {
        Mender { items, size, sheets, pairs, seen: std::collections::BTreeSet::new() }
    }

    /// The layout with the piece that was left over, if two of its sheets hold it as well.
    pub(super) fn mend(&mut self, laid: &[Option<Laid>], left: &[usize]) -> Option<Vec<Laid>> {
        if left.is_empty() || left.len() > 2 {
            return None;
        }
        for first in 0..self.sheets {
            for second in first + 1..self.sheets {
                if self.pairs == 0 {
                    return None;
                }
                let on = |laid: &Option<Laid>| laid.is_some_and(|(sheet, ..)| sheet == first || sheet == second);
                let mut own: Vec<usize> = (0..laid.len()).filter(|&index| on(&laid[index])).collect();
                own.extend(left);
                own.sort_unstable();
                if own.len() > MOST || !self.seen.insert(own.clone()) {
                    continue;
                }
                let items: Vec<Item> = own.iter().map(|&index| self.items[index]).collect();
                let mut pairs = self.pairs.min(super::exact::PAIRS / 4);
                let before = pairs;
                let found = edge_to_edge(&items, self.size, 2, &mut pairs);
                self.pairs -= (before - pairs).min(self.pairs);
                if let Found::Laid(anew) = found {
                    let mut all: Vec<Option<Laid>> = laid.to_vec();
                    for (&index, (sheet, rect, turned)) in own.iter().zip(anew) {
                        all[index] = Some((if sheet == 0 { first } else { second }, rect, turned));
                    }
                    return all.into_iter().collect();
                }
            }
        }
        None
    }
}
