//! The supports sheet, for whoever makes and fits the frame: each leg's frame from above with everything that is added to
//! it, marked and dimensioned; where each piece goes, what to cut, where to drill, and how each bends under its load.

mod bars;
mod check;
mod notes;
mod parts;
mod plan;
mod plan_words;
mod tables;
mod values;

pub(super) use tables::marks;

use super::flow::{Flow, Heads};
use super::set::{Kind, Set};
use crate::drawing::Page;
use crate::solve::Solved;

/// Whether a run has anything for it to show.
pub fn is_wanted(solved: &Solved) -> bool {
    let supports = &solved.shop.supports;
    !supports.members.is_empty() || !supports.unheld.is_empty()
}

/// A page with a view, what is left on it, and its scale.
type View = (super::canvas::Canvas, Vec<super::frame::Area>, String);

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let legs: Vec<usize> = (0..set.solved.legs.len()).filter(|leg| parts::has(set.solved, *leg)).collect();
    let mut views: Vec<View> =
        legs.iter().flat_map(|&leg| parts::split(set, leg)).map(|part| plan::page(set, &part)).collect();
    // Over the title block of the last plan, where the bars have room there.
    let beside = views
        .last_mut()
        .is_some_and(|(canvas, areas, _)| areas.iter_mut().rev().any(|area| bars::beside(canvas, set, area)));
    let heads = Heads {
        title: "Supports".to_owned(),
        document: "Fabrication drawing".to_owned(),
        scale: "\u{2013}".to_owned(),
    };
    let mut flow = Flow::beside(set, kind, heads, views);
    flow.notes("Before welding and drilling", &notes::list(set));
    tables::places(&mut flow, set);
    if !beside {
        bars::add(&mut flow, set);
    }
    tables::cuts(&mut flow, set);
    check::add(&mut flow, set);
    tables::backing(&mut flow, set);
    tables::frame(&mut flow, set);
    flow.finish()
}
