//! The stretch of a leg that one page shows: all of it, or some modules between match lines.

use std::ops::Range;

use super::facing::Facing;
use crate::solve::{Face, Fitting, Leg};
use crate::units::Length;

/// More modules than this don't go on one page.
const MOST_MODULES: usize = 9;

/// A stretch of a leg as the viewer sees it.
#[derive(Clone, Debug)]
pub struct Part {
    /// The modules, by index.
    pub modules: Range<usize>,
    /// Viewer's x where the modules begin.
    pub x0: Length,
    /// Viewer's x where they end.
    pub x1: Length,
    /// The leg's end at the viewer's left is on it.
    pub first: bool,
    /// The leg's end at the viewer's right is on it.
    pub last: bool,
}

impl Part {
    /// Width of the modules.
    pub fn width(&self) -> Length {
        self.x1 - self.x0
    }

    /// Whether a fitting's module is on it.
    pub fn has(&self, fitting: &Fitting) -> bool {
        self.modules.contains(&fitting.module)
    }

    /// Its modules in words: `module A`, `modules A to D`.
    pub fn words(&self, leg: &Leg, facing: &Facing) -> String {
        let mut ids = [self.modules.start, self.modules.end.saturating_sub(1)].map(|index| leg.modules.get(index));
        if facing.face == Face::Back {
            ids.reverse();
        }
        match ids {
            [Some(a), Some(b)] if a.id == b.id => format!("module {}", a.id),
            [Some(a), Some(b)] => format!("modules {} to {}", a.id, b.id),
            _ => String::new(),
        }
    }
}

/// The leg in as few parts as have at most so many modules and, where a module allows it, no more than `widest`;
/// parts of about one width.
pub fn parts(leg: &Leg, facing: &Facing, widest: Length) -> Vec<Part> {
    let whole = leg.datums.frame_right - leg.datums.frame_left;
    let count = leg.modules.len();
    let by_width = (whole.mm() / widest.mm().max(1.0)).ceil().max(1.0) as usize;
    let mut pages = by_width.max(count.div_ceil(MOST_MODULES)).clamp(1, count.max(1));
    loop {
        let found = split(leg, pages);
        let fits =
            |range: &Range<usize>| range.len() <= 1 || (range.len() <= MOST_MODULES && stretch(leg, range) <= widest);
        if pages >= count || found.iter().all(fits) {
            return seen(leg, facing, found);
        }
        pages += 1;
    }
}

fn stretch(leg: &Leg, range: &Range<usize>) -> Length {
    let ends = (leg.modules.get(range.start), leg.modules.get(range.end.saturating_sub(1)));
    if let (Some(a), Some(b)) = ends { b.right - a.left } else { Length::ZERO }
}

/// Cuts the modules into so many parts, each ending at the module edge nearest to its share of the length.
fn split(leg: &Leg, pages: usize) -> Vec<Range<usize>> {
    let count = leg.modules.len();
    let (start, end) = (leg.datums.frame_left.mm(), leg.datums.frame_right.mm());
    let mut cuts = vec![0];
    for page in 1..pages {
        let wanted = start + (end - start) * page as f64 / pages as f64;
        let after = cuts.last().copied().unwrap_or(0) + 1;
        let before = count - (pages - page);
        let edges = after..=before.max(after);
        let off = |index: &usize| leg.modules.get(*index).map_or(f64::MAX, |m| (m.left.mm() - wanted).abs());
        cuts.push(edges.min_by(|a, b| off(a).total_cmp(&off(b))).unwrap_or(after));
    }
    cuts.push(count);
    cuts.windows(2).map(|pair| pair[0]..pair[1]).collect()
}

fn seen(leg: &Leg, facing: &Facing, mut ranges: Vec<Range<usize>>) -> Vec<Part> {
    if facing.face == Face::Back {
        ranges.reverse();
    }
    let pages = ranges.len();
    let part = |(index, range): (usize, Range<usize>)| {
        let ends = (leg.modules.get(range.start), leg.modules.get(range.end.saturating_sub(1)));
        let (u0, u1) = if let (Some(a), Some(b)) = ends { (a.left, b.right) } else { Default::default() };
        let (x0, x1) = facing.span(u0, u1);
        Part { modules: range, x0, x1, first: index == 0, last: index + 1 == pages }
    };
    ranges.into_iter().enumerate().map(part).collect()
}
