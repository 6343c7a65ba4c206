//! Rectangles on sheets.

use super::bin::Rect;
use super::bound::{Item, least};
use super::cuts::apart;
use super::exact::{Found, PAIRS, edge_to_edge};
use super::mend::Mender;
use super::request::{Layout, Placement, Request, Sheet, Way};
use super::tries::{FIRST_LOOK, LONG_SEARCH, Laid, lay_all, quickly};
use crate::units::Length;

/// With more pieces than these only the quick tries are made: a search would take long and win little.
pub(super) const MANY: usize = 150;

/// Lays parts on sheets: offcuts first, then as few bought sheets as are found, all of one size, the one that buys the
/// least area.
///
/// Errors: the parts, by index, that fit no sheet.
pub fn sheets(request: &Request) -> Result<Layout, Vec<usize>> {
    let kerf = request.kerf.nm();
    let larger = |size: (Length, Length)| (size.0.nm() + kerf, size.1.nm() + kerf);
    let items: Vec<Item> = request
        .parts
        .iter()
        .map(|part| {
            let (w, h) = larger(part.size);
            Item { w, h, turns: part.turns }
        })
        .collect();
    let offcuts: Vec<(i64, i64)> = request.offcuts.iter().map(|offcut| larger(offcut.size)).collect();
    let fits =
        |item: &Item, &(w, h): &(i64, i64)| (item.w <= w && item.h <= h) || (item.turns && item.h <= w && item.w <= h);
    let mut best: Option<(i128, Layout)> = None;
    let bought: Vec<(i64, i64)> = request.bought.iter().map(|bought| larger(bought.size)).collect();
    let too_big: Vec<usize> = (0..items.len())
        .filter(|&index| !bought.iter().chain(&offcuts).any(|size| fits(&items[index], size)))
        .collect();
    if !too_big.is_empty() {
        return Err(too_big);
    }
    for (index, &size) in bought.iter().enumerate() {
        let Some((laid, count, proven)) = fewest(&items, &offcuts, size, request.way) else { continue };
        let one = request.bought[index].size;
        let cost = i128::from(one.0.nm()) * i128::from(one.1.nm()) * count as i128;
        if best.as_ref().is_none_or(|(least, _)| cost < *least) {
            let sizes: Vec<(i64, i64)> = offcuts.iter().copied().chain(std::iter::repeat_n(size, count)).collect();
            best = Some((cost, layout(request, &sizes, &laid, proven)));
        }
    }
    match best {
        Some((_, layout)) => Ok(layout),
        // Parts that only offcuts hold, or that no single size holds all of.
        None => Err((0..items.len()).filter(|&i| !bought.iter().any(|size| fits(&items[i], size))).collect()),
    }
}

/// As few sheets of one size as are found beside the offcuts, and whether there can't be fewer.
fn fewest(items: &[Item], offcuts: &[(i64, i64)], size: (i64, i64), way: Way) -> Option<(Vec<Laid>, usize, bool)> {
    if items.is_empty() {
        return Some((Vec::new(), 0, true));
    }
    let straight = way == Way::EdgeToEdge;
    let (mut count, mut laid) = quickly(items, offcuts, size, true)?;
    if !straight && let Some(free) = quickly(items, offcuts, size, false).filter(|free| free.0 < count) {
        (count, laid) = free;
    }
    let least = if offcuts.is_empty() { least(items, size) } else { usize::from(!offcuts_hold(items, offcuts)) };
    let mut proven = count <= least;
    if items.len() > MANY {
        return Some((laid, count, proven));
    }
    while count > least {
        let sizes: Vec<(i64, i64)> = offcuts.iter().copied().chain(std::iter::repeat_n(size, count - 1)).collect();
        let mut found = lay_all(items, &sizes, true, FIRST_LOOK, |_, _| None);
        if found.is_none() && !straight {
            found = lay_all(items, &sizes, false, FIRST_LOOK, |_, _| None);
        }
        let mut none = false;
        if found.is_none() && offcuts.is_empty() {
            match edge_to_edge(items, size, count - 1, &mut PAIRS.clone()) {
                Found::Laid(laid) => found = Some(laid),
                Found::None => none = true,
                Found::Unknown => {}
            }
        }
        if found.is_none() && !none {
            let mut mender = Mender::new(items, size, if offcuts.is_empty() { count - 1 } else { 0 }, PAIRS);
            found = lay_all(items, &sizes, true, LONG_SEARCH, |laid, left| mender.mend(laid, left));
        }
        if found.is_none() && !straight {
            found = lay_all(items, &sizes, false, LONG_SEARCH, |_, _| None);
        }
        proven = none && straight;
        match found {
            Some(better) => (count, laid) = (count - 1, better),
            None => break,
        }
        proven = count <= least;
    }
    Some((laid, count, proven))
}

/// Whether the offcuts' area would do.
fn offcuts_hold(items: &[Item], offcuts: &[(i64, i64)]) -> bool {
    let of = |w: i64, h: i64| i128::from(w) * i128::from(h);
    items.iter().map(|item| of(item.w, item.h)).sum::<i128>() <= offcuts.iter().map(|&(w, h)| of(w, h)).sum()
}

/// The layout in true sizes, with its cuts and what is left.
fn layout(request: &Request, sizes: &[(i64, i64)], laid: &[Laid], proven: bool) -> Layout {
    let kerf = request.kerf.nm();
    let nm = Length::from_nm;
    let mut sheets = Vec::new();
    for (index, &(w, h)) in sizes.iter().enumerate() {
        let own: Vec<(usize, &Laid)> = laid.iter().enumerate().filter(|(_, laid)| laid.0 == index).collect();
        if own.is_empty() {
            continue;
        }
        let placed = own
            .iter()
            .map(|&(part, &(_, rect, turned))| Placement { part, at: (nm(rect.x), nm(rect.y)), turned })
            .collect();
        let rects: Vec<Rect> = own.iter().map(|(_, laid)| laid.1).collect();
        let apart = apart(Rect { x: 0, y: 0, w, h }, &rects).unwrap_or_default();
        let cut = |&(within, at, across): &(Rect, i64, bool)| {
            // Along the middle of the kerf that is taken, between the true edges of what is cut.
            let middle = nm(at - kerf / 2 - kerf % 2);
            let (x1, y1) = (within.x + within.w - kerf, within.y + within.h - kerf);
            if across { ((nm(within.x), middle), (nm(x1), middle)) } else { ((middle, nm(within.y)), (middle, nm(y1))) }
        };
        // A cut at the far edge parts nothing but the kerf that was added.
        let real = |&&(within, at, across): &&(Rect, i64, bool)| {
            let end = if across { within.y + within.h } else { within.x + within.w };
            at < end && end - at > 0 && at - kerf < end - kerf
        };
        let keep = request.keep.nm();
        let kept = apart
            .rests
            .iter()
            .map(|rest| Rect { w: rest.w - kerf, h: rest.h - kerf, ..*rest })
            .filter(|rest| keep > 0 && rest.w >= keep && rest.h >= keep)
            .map(|rest| ((nm(rest.x), nm(rest.y)), (nm(rest.w), nm(rest.h))))
            .collect();
        let offcut = (index < request.offcuts.len()).then_some(index);
        sheets.push(Sheet {
            size: (nm(w - kerf), nm(h - kerf)),
            offcut,
            placed,
            cuts: apart.cuts.iter().filter(real).map(cut).collect(),
            kept,
        });
    }
    Layout { sheets, proven }
}
