//! How many sheets there must be at least.

use super::bin::area;

/// A piece made larger by a kerf, nm.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Item {
    pub w: i64,
    pub h: i64,
    pub turns: bool,
}

/// The least number of sheets of one size: by area, and by pieces of which no two go on one sheet together.
pub(super) fn least(items: &[Item], sheet: (i64, i64)) -> usize {
    let whole: i128 = items.iter().map(|item| i128::from(item.w) * i128::from(item.h)).sum();
    let one = i128::from(sheet.0) * i128::from(sheet.1);
    let by_area = usize::try_from((whole + one - 1) / one.max(1)).unwrap_or(usize::MAX);
    by_area.max(apart(items, sheet))
}

/// Pieces, largest first, each of which can't lie with any of the others so chosen.
fn apart(items: &[Item], sheet: (i64, i64)) -> usize {
    let mut order: Vec<&Item> = items.iter().collect();
    order.sort_by_key(|item| std::cmp::Reverse((item.w.min(item.h), area(item.w, item.h))));
    let mut chosen: Vec<&Item> = Vec::new();
    // A piece that goes with no larger one goes with no smaller one's rest either; a few hundred settle it.
    for item in order.into_iter().take(400) {
        if chosen.iter().all(|other| !together(item, other, sheet)) {
            chosen.push(item);
        }
    }
    chosen.len()
}

/// Whether two pieces go on one sheet: beside one another or one over the other.
fn together(a: &Item, b: &Item, (w, h): (i64, i64)) -> bool {
    let ways = |item: &Item| {
        let turned = item.turns.then_some((item.h, item.w));
        [Some((item.w, item.h)), turned].into_iter().flatten().filter(|&(x, y)| x <= w && y <= h).collect::<Vec<_>>()
    };
    let of_b = ways(b);
    ways(a).iter().any(|p| of_b.iter().any(|q| p.0 + q.0 <= w || p.1 + q.1 <= h))
}
