//! The cuts that part a sheet's pieces, each from edge to edge, and what is left of it.

use super::bin::Rect;

/// A sheet taken apart.
#[derive(Default)]
pub(super) struct Apart {
    /// The box that each cut parts, the cut's place, and whether it runs across (parts along y).
    pub cuts: Vec<(Rect, i64, bool)>,
    /// Boxes without a piece.
    pub rests: Vec<Rect>,
}

/// Takes a sheet apart by cuts from edge to edge; `None` when its pieces can't be parted so.
pub(super) fn apart(whole: Rect, pieces: &[Rect]) -> Option<Apart> {
    let mut apart = Apart::default();
    part(whole, pieces.to_vec(), &mut apart)?;
    Some(apart)
}

fn part(within: Rect, pieces: Vec<Rect>, apart: &mut Apart) -> Option<()> {
    match pieces.as_slice() {
        [] => {
            if within.w > 0 && within.h > 0 {
                apart.rests.push(within);
            }
            return Some(());
        }
        [piece] if *piece == within => return Some(()),
        _ => {}
    }
    let mut best: Option<(i64, i64, bool)> = None;
    for across in [false, true] {
        let low = |rect: &Rect| if across { rect.y } else { rect.x };
        let high = |rect: &Rect| if across { rect.y + rect.h } else { rect.x + rect.w };
        let (start, end) = (low(&within), high(&within));
        let mut places: Vec<i64> = pieces.iter().flat_map(|rect| [low(rect), high(rect)]).collect();
        places.sort_unstable();
        places.dedup();
        for at in places.into_iter().filter(|at| *at > start && *at < end) {
            if pieces.iter().any(|rect| low(rect) < at && high(rect) > at) {
                continue;
            }
            // A cut that frees the widest rest comes first, so that what is left stays whole; else the first that parts.
            let (before, after) =
                (pieces.iter().any(|rect| high(rect) <= at), pieces.iter().any(|rect| low(rect) >= at));
            let rest = if !before {
                at - start
            } else if !after {
                end - at
            } else {
                0
            };
            let side = if across { within.w } else { within.h };
            let value = super::bin::area(rest, side);
            if best.is_none_or(|(most, ..)| value > most) {
                best = Some((value, at, across));
            }
        }
    }
    let (_, at, across) = best?;
    apart.cuts.push((within, at, across));
    let (one, other) = if across {
        let h = at - within.y;
        (Rect { h, ..within }, Rect { y: at, h: within.h - h, ..within })
    } else {
        let w = at - within.x;
        (Rect { w, ..within }, Rect { x: at, w: within.w - w, ..within })
    };
    let (low, high): (Vec<Rect>, Vec<Rect>) =
        pieces.into_iter().partition(|rect| if across { rect.y < at } else { rect.x < at });
    part(one, low, apart)?;
    part(other, high, apart)
}
