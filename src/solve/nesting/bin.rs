//! One sheet while it is being filled: what is free of it, and where the next piece would lie best.

/// A rectangle, nm, made larger by a kerf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Rect {
    pub x: i64,
    pub y: i64,
    pub w: i64,
    pub h: i64,
}

impl Rect {
    fn holds(&self, other: &Rect) -> bool {
        self.x <= other.x
            && self.y <= other.y
            && self.x + self.w >= other.x + other.w
            && self.y + self.h >= other.y + other.h
    }

    fn meets(&self, other: &Rect) -> bool {
        self.x < other.x + other.w
            && other.x < self.x + self.w
            && self.y < other.y + other.h
            && other.y < self.y + self.h
    }
}

/// Which free place is best: the less, the better.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Score {
    /// Least left on the shorter side.
    ShortSide,
    /// Least left on the longer side.
    LongSide,
    /// Least area left.
    Area,
    /// Lowest, then leftmost.
    Low,
}

/// How a free rectangle is parted when every cut goes from edge to edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Split {
    /// Along the axis with less left over.
    ShorterLeft,
    /// Along the axis with more left over.
    LongerLeft,
    /// So that the larger of the two rests is as large as can be.
    LargerRest,
    /// Cut across first.
    Across,
    /// Cut along first.
    Along,
    /// Turn about with the piece's number.
    TurnAbout(u64),
}

/// A sheet being filled.
#[derive(Clone, Debug)]
pub(super) struct Bin {
    free: Vec<Rect>,
    edge_to_edge: bool,
}

/// Where a piece would lie.
#[derive(Clone, Copy, Debug)]
pub(super) struct Spot {
    pub rect: Rect,
    pub turned: bool,
    pub score: (i64, i64),
    free: usize,
}

impl Bin {
    pub(super) fn new(w: i64, h: i64, edge_to_edge: bool) -> Bin {
        Bin { free: vec![Rect { x: 0, y: 0, w, h }], edge_to_edge }
    }

    /// The best place for a piece, if it has any.
    pub(super) fn spot(&self, (w, h): (i64, i64), turns: bool, score: Score) -> Option<Spot> {
        let mut best: Option<Spot> = None;
        for (index, free) in self.free.iter().enumerate() {
            for turned in [false, true] {
                if turned && (!turns || w == h) {
                    continue;
                }
                let (w, h) = if turned { (h, w) } else { (w, h) };
                if w > free.w || h > free.h {
                    continue;
                }
                let (over, up) = (free.w - w, free.h - h);
                let value = match score {
                    Score::ShortSide => (over.min(up), over.max(up)),
                    Score::LongSide => (over.max(up), over.min(up)),
                    Score::Area => (area(free.w, free.h) - area(w, h), over.min(up)),
                    Score::Low => (free.y + h, free.x),
                };
                if best.as_ref().is_none_or(|best| value < best.score) {
                    best = Some(Spot { rect: Rect { x: free.x, y: free.y, w, h }, turned, score: value, free: index });
                }
            }
        }
        best
    }

    /// Lays a piece where it was found to lie best.
    pub(super) fn lay(&mut self, spot: &Spot, split: Split) {
        if self.edge_to_edge {
            let free = self.free.swap_remove(spot.free);
            let (a, b) = parted(&free, spot.rect.w, spot.rect.h, split);
            self.free.extend([a, b].into_iter().filter(|rect| rect.w > 0 && rect.h > 0));
        } else {
            self.take(&spot.rect);
        }
    }

    /// Every free rectangle becomes the largest ones beside what was taken.
    fn take(&mut self, taken: &Rect) {
        let mut next: Vec<Rect> = Vec::with_capacity(self.free.len() + 4);
        let mut fresh: Vec<Rect> = Vec::new();
        for free in &self.free {
            if !free.meets(taken) {
                next.push(*free);
                continue;
            }
            let right = free.x + free.w - (taken.x + taken.w);
            let top = free.y + free.h - (taken.y + taken.h);
            let pieces = [
                Rect { w: taken.x - free.x, ..*free },
                Rect { h: taken.y - free.y, ..*free },
                Rect { x: taken.x + taken.w, w: right, ..*free },
                Rect { y: taken.y + taken.h, h: top, ..*free },
            ];
            fresh.extend(pieces.into_iter().filter(|rect| rect.w > 0 && rect.h > 0));
        }
        // A piece of a free rectangle may lie within another; one that was whole before can lie in none.
        for (index, rect) in fresh.iter().enumerate() {
            let within = next.iter().any(|other| other.holds(rect))
                || fresh
                    .iter()
                    .enumerate()
                    .any(|(j, other)| j != index && other.holds(rect) && (other != rect || j < index));
            if !within {
                next.push(*rect);
            }
        }
        self.free = next;
    }
}

/// Area in square micrometres, so that whole sheets don't overflow.
pub(super) fn area(w: i64, h: i64) -> i64 {
    (w / 1000).saturating_mul(h / 1000)
}

/// What is left of a free rectangle beside a piece in its corner, cut from edge to edge.
fn parted(free: &Rect, w: i64, h: i64, split: Split) -> (Rect, Rect) {
    let (over, up) = (free.w - w, free.h - h);
    let across = match split {
        Split::ShorterLeft => over > up,
        Split::LongerLeft => over <= up,
        Split::LargerRest => area(over, free.h).max(area(w, up)) < area(over, h).max(area(free.w, up)),
        Split::Across => true,
        Split::Along => false,
        Split::TurnAbout(bits) => (bits >> ((w / 1_000_000 + 3 * (h / 1_000_000) + free.x / 1_000_000) & 63)) & 1 == 1,
    };
    if across {
        // The cut above the piece goes the whole width.
        (Rect { x: free.x, y: free.y + h, w: free.w, h: up }, Rect { x: free.x + w, y: free.y, w: over, h })
    } else {
        (Rect { x: free.x + w, y: free.y, w: over, h: free.h }, Rect { x: free.x, y: free.y + h, w, h: up })
    }
}
