//! Every way of cutting from edge to edge, for runs with few pieces or many alike.
//!
//! A set of pieces (how many of each size) has the smallest boxes that it can be cut from: one piece its own, more pieces
//! the boxes of two parts of the set, side by side or one over the other. A box that wastes more than all sheets together
//! may waste is left out (Wang 1983), which leaves little to look at just where it is tight.

use super::bin::{Rect, area};
use super::bound::Item;
use super::tries::Laid;

/// Pairs of boxes that a search through every way may look at.
pub(super) const PAIRS: u64 = 3_000_000;
/// Sets that may be looked at.
const SETS: usize = 1 << 19;

/// What a search through every way came to.
pub(super) enum Found {
    /// A layout.
    Laid(Vec<Laid>),
    /// There is none.
    None,
    /// There may be one; the search was broken off.
    Unknown,
}

/// A box of a set, and the part of the set that lies in it first, with both parts' boxes; a single piece has none.
#[derive(Clone, Copy)]
struct Shape {
    w: i64,
    h: i64,
    from: Option<(usize, u32, u32, bool)>,
}

/// Every set by its number: mixed radix, a digit a size of piece.
struct Sets {
    sizes: Vec<Item>,
    counts: Vec<usize>,
    radix: Vec<usize>,
    total: usize,
}

impl Sets {
    fn new(items: &[Item]) -> Option<Sets> {
        let mut sizes: Vec<Item> = Vec::new();
        let mut counts: Vec<usize> = Vec::new();
        for item in items {
            match sizes.iter().position(|size| size == item) {
                Some(index) => counts[index] += 1,
                None => {
                    sizes.push(*item);
                    counts.push(1);
                }
            }
        }
        let mut radix = Vec::new();
        let mut total = 1usize;
        for count in &counts {
            radix.push(total);
            total = total.checked_mul(count + 1).filter(|total| *total <= SETS)?;
        }
        Some(Sets { sizes, counts, radix, total })
    }

    fn digits(&self, set: usize) -> Vec<usize> {
        self.counts.iter().zip(&self.radix).map(|(count, radix)| set / radix % (count + 1)).collect()
    }

    fn area(&self, digits: &[usize]) -> i64 {
        digits.iter().zip(&self.sizes).map(|(&n, size)| n as i64 * area(size.w, size.h)).sum()
    }

    /// Every set's area, by number.
    fn areas(&self) -> Vec<i64> {
        let mut areas = vec![0; self.total];
        for set in 1..self.total {
            // The set less one piece of its last size.
            if let Some(last) = self.radix.iter().rposition(|radix| *radix <= set) {
                areas[set] = areas[set - self.radix[last]] + area(self.sizes[last].w, self.sizes[last].h);
            }
        }
        areas
    }

    /// Every part of a set, as numbers, the empty one and the whole one among them.
    fn parts(&self, digits: &[usize]) -> Vec<usize> {
        let mut all = Vec::new();
        self.parts_into(digits, &mut all);
        all
    }

    fn parts_into(&self, digits: &[usize], all: &mut Vec<usize>) {
        all.clear();
        all.push(0);
        for (&n, radix) in digits.iter().zip(&self.radix) {
            let so_far = all.len();
            for k in 1..=n {
                for index in 0..so_far {
                    all.push(all[index] + k * radix);
                }
            }
        }
    }
}

/// Whether pieces can be cut from edge to edge from so many sheets of one size, looking at so many pairs of boxes at most.
pub(super) fn edge_to_edge(items: &[Item], size: (i64, i64), sheets: usize, pairs: &mut u64) -> Found {
    let Some(sets) = Sets::new(items) else { return Found::Unknown };
    let sheet = area(size.0, size.1);
    let full: Vec<usize> = sets.counts.clone();
    // Areas are rounded down to whole square micrometres a piece: the slack makes up for it.
    let slack = 4 * items.len() as i64 + (size.0 + size.1) / 1000 * 2;
    let waste = sheet * sheets as i64 - sets.area(&full) + slack;
    if waste < 0 {
        return Found::None;
    }
    let Some(shapes) = shapes(&sets, size, sheet, waste, pairs) else { return Found::Unknown };
    let fits: Vec<bool> = shapes.iter().map(|shapes| !shapes.is_empty()).collect();
    let mut refused = vec![vec![false; sets.total]; sheets + 1];
    let mut chosen = Vec::new();
    let mut steps = 0u64;
    match parted(&sets, &fits, sheet, sets.total - 1, sheets, &mut refused, &mut chosen, &mut steps) {
        Some(true) => Found::Laid(laid(items, &sets, &shapes, &chosen)),
        Some(false) => Found::None,
        None => Found::Unknown,
    }
}

/// The smallest boxes of every set that goes on one sheet; `None` when there were too many to look at.
fn shapes(sets: &Sets, size: (i64, i64), sheet: i64, waste: i64, pairs: &mut u64) -> Option<Vec<Vec<Shape>>> {
    let mut all: Vec<Vec<Shape>> = vec![Vec::new(); sets.total];
    let areas = sets.areas();
    let fits =
        |shape: &Shape, own: i64| shape.w <= size.0 && shape.h <= size.1 && area(shape.w, shape.h) - own <= waste;
    let mut parts = Vec::new();
    for set in 1..sets.total {
        let own = areas[set];
        if own > sheet {
            continue;
        }
        let digits = sets.digits(set);
        let mut found: Vec<Shape> = Vec::new();
        if digits.iter().sum::<usize>() == 1 {
            let item = digits.iter().position(|n| *n == 1).map(|index| sets.sizes[index])?;
            found.push(Shape { w: item.w, h: item.h, from: None });
            if item.turns && item.w != item.h {
                found.push(Shape { w: item.h, h: item.w, from: None });
            }
        } else {
            sets.parts_into(&digits, &mut parts);
            for &part in &parts {
                let rest = set - part;
                if part == 0 || part < rest || rest == 0 {
                    continue;
                }
                let (first, second) = (&all[part], &all[rest]);
                if first.is_empty() || second.is_empty() {
                    continue;
                }
                *pairs = pairs.checked_sub((first.len() * second.len()) as u64 + 1)?;
                for (i, a) in first.iter().enumerate() {
                    for (j, b) in second.iter().enumerate() {
                        let from = |beside| Some((part, i as u32, j as u32, beside));
                        let beside = Shape { w: a.w + b.w, h: a.h.max(b.h), from: from(true) };
                        let over = Shape { w: a.w.max(b.w), h: a.h + b.h, from: from(false) };
                        found.extend([beside, over].into_iter().filter(|shape| fits(shape, own)));
                    }
                }
            }
        }
        found.retain(|shape| fits(shape, own));
        all[set] = smallest(found);
    }
    Some(all)
}

/// Those boxes that hold no other.
fn smallest(mut found: Vec<Shape>) -> Vec<Shape> {
    found.sort_by_key(|shape| (shape.w, shape.h));
    let mut kept: Vec<Shape> = Vec::new();
    for shape in found {
        if kept.last().is_none_or(|last| shape.h < last.h) {
            kept.push(shape);
        }
    }
    kept
}

/// Parts a set into so many that each go on a sheet; `None` when the search was broken off.
#[allow(clippy::too_many_arguments, reason = "the state of one recursion")]
fn parted(
    sets: &Sets,
    fits: &[bool],
    sheet: i64,
    set: usize,
    sheets: usize,
    refused: &mut [Vec<bool>],
    chosen: &mut Vec<usize>,
    steps: &mut u64,
) -> Option<bool> {
    if set == 0 {
        return Some(true);
    }
    if sheets == 0 || refused[sheets][set] {
        return Some(false);
    }
    let digits = sets.digits(set);
    if sets.area(&digits) > sheet * sheets as i64 + 4 * sets.total as i64 {
        return Some(false);
    }
    if sheets == 1 {
        if fits[set] {
            chosen.push(set);
        }
        return Some(fits[set]);
    }
    // The first piece left is on some sheet: look at those that hold it, fullest first.
    let first = digits.iter().position(|n| *n > 0)?;
    let mut parts: Vec<(i64, usize)> = sets
        .parts(&digits)
        .into_iter()
        .filter(|&part| part != 0 && fits[part] && sets.digits(part)[first] > 0)
        .map(|part| (sets.area(&sets.digits(part)), part))
        .collect();
    parts.sort_by_key(|&(area, part)| (std::cmp::Reverse(area), part));
    for (_, part) in parts {
        *steps += 1;
        if *steps > 400_000 {
            return None;
        }
        chosen.push(part);
        if parted(sets, fits, sheet, set - part, sheets - 1, refused, chosen, steps)? {
            return Some(true);
        }
        chosen.pop();
    }
    refused[sheets][set] = true;
    Some(false)
}

/// Places from the sets chosen, one a sheet.
fn laid(items: &[Item], sets: &Sets, shapes: &[Vec<Shape>], chosen: &[usize]) -> Vec<Laid> {
    let mut waiting: Vec<Vec<usize>> = vec![Vec::new(); sets.sizes.len()];
    for (index, item) in items.iter().enumerate().rev() {
        if let Some(size) = sets.sizes.iter().position(|size| size == item) {
            waiting[size].push(index);
        }
    }
    let mut all: Vec<Option<Laid>> = vec![None; items.len()];
    for (sheet, &set) in chosen.iter().enumerate() {
        let mut open = vec![(set, 0usize, 0i64, 0i64)];
        while let Some((set, index, x, y)) = open.pop() {
            let shape = shapes[set][index];
            match shape.from {
                Some((part, i, j, beside)) => {
                    let first = shapes[part][i as usize];
                    let (dx, dy) = if beside { (first.w, 0) } else { (0, first.h) };
                    open.push((part, i as usize, x, y));
                    open.push((set - part, j as usize, x + dx, y + dy));
                }
                None => {
                    let size = sets.digits(set).iter().position(|n| *n == 1);
                    let Some(piece) = size.and_then(|size| waiting[size].pop()) else { continue };
                    let turned = (shape.w, shape.h) != (items[piece].w, items[piece].h);
                    all[piece] = Some((sheet, Rect { x, y, w: shape.w, h: shape.h }, turned));
                }
            }
        }
    }
    all.into_iter().flatten().collect()
}
