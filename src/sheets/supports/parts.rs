//! A long leg on several pages: stretches of whole modules, each at a scale that can be read.

use crate::sheets::frame;
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::solve::{Leg, Solved, Support, SupportRole};
use crate::units::Length;

/// Largest scale of the plan.
const LARGEST: Scale = Scale(8);
/// A stretch is cut shorter rather than drawn smaller than this.
const SMALLEST: Scale = Scale(20);
/// Paper beside the view that dimensions in depth take, mm.
pub const BESIDE: f64 = 46.0;
/// Paper before the view at its left, mm.
pub const BEFORE: f64 = 20.0;
/// Paper that the number of one stop takes along a running dimension, mm.
const STOP: f64 = 4.0;

/// A stretch of a leg.
#[derive(Clone, Copy, Debug)]
pub struct Part<'s> {
    /// The leg, by index.
    pub index: usize,
    /// The leg.
    pub leg: &'s Leg,
    /// First and last module.
    pub modules: (usize, usize),
    /// From here along the face.
    pub from: Length,
    /// To here.
    pub to: Length,
    /// Its number, and how many there are.
    pub number: (usize, usize),
    /// Its scale.
    pub scale: Scale,
}

/// Whether a leg has supports to show.
pub fn has(solved: &Solved, leg: usize) -> bool {
    let own = solved.shop.supports.members.iter().any(|support| support.leg == leg);
    own || solved.shop.supports.unheld.iter().any(|((at, _), _)| *at == leg)
}

/// The supports that a plan of a leg shows: what is added, and what of the frame carries a cutout's rim.
pub fn shown(solved: &Solved, leg: usize) -> Vec<&Support> {
    let top = |support: &&Support| support.role != SupportRole::Backing;
    solved.shop.supports.all().filter(|support| support.leg == leg).filter(top).collect()
}

impl Part<'_> {
    /// Whether a support lies in it.
    pub fn holds(&self, support: &Support) -> bool {
        support.module >= self.modules.0 && support.module <= self.modules.1
    }
}

/// The stretches of a leg.
pub fn split<'s>(set: &Set<'s>, index: usize) -> Vec<Part<'s>> {
    let solved = set.solved;
    let leg = &solved.legs[index];
    let canvas = set.sheet();
    let room = (frame::inside(&canvas).width() - BEFORE - BESIDE).max(40.0);
    let count = leg.modules.len();
    let mut parts: Vec<Part<'s>> = Vec::new();
    let mut first = 0;
    while first < count {
        let mut last = count - 1;
        let (from, to, scale) = loop {
            let (from, to) = reach(leg, first, last);
            let deep = (leg.counter.extent.height()).mm();
            let scale = Scale::fitting(((to - from).mm(), deep), (room, page_depth(set)), LARGEST);
            let stops = shown(solved, index).iter().filter(|one| one.module >= first && one.module <= last).count();
            let crowded = stops as f64 * STOP > (to - from).mm() * scale.factor();
            if last == first || (scale <= SMALLEST && !crowded) {
                break (from, to, scale);
            }
            last -= 1;
        };
        parts.push(Part { index, leg, modules: (first, last), from, to, number: (0, 0), scale });
        first = last + 1;
    }
    let all = parts.len();
    // One scale, so that stretches can be laid side by side.
    let scale = parts.iter().map(|part| part.scale).max().unwrap_or(SMALLEST);
    for (number, part) in parts.iter_mut().enumerate() {
        (part.number, part.scale) = ((number + 1, all), scale);
    }
    parts
}

/// Paper that a view's depth may take, mm.
fn page_depth(set: &Set<'_>) -> f64 {
    (set.sheet().height - 150.0).max(35.0)
}

/// What a stretch of modules shows of u: with the counter's ends at the leg's own.
fn reach(leg: &Leg, first: usize, last: usize) -> (Length, Length) {
    let e = &leg.counter.extent;
    let from = if first == 0 { leg.modules[first].left.min(e.x0).min(Length::ZERO) } else { leg.modules[first].left };
    let end = last + 1 == leg.modules.len();
    let to =
        if end { leg.modules[last].right.max(e.x1).max(leg.datums.finished_right) } else { leg.modules[last].right };
    (from, to)
}
