//! The counter sheet of a counter that turns corners: its whole outline, every corner numbered and located from two
//! datums, every edge tagged with what it meets and its length, angles, seams, pieces, diagonals, cutouts.

mod lists;
mod outline;

use super::flow::{Flow, Heads};
use super::set::{Kind, Set};
use crate::drawing::Page;
use crate::solve::Slab;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind, slab: &Slab) -> Vec<Page> {
    let view = outline::draw(set, slab);
    let heads =
        Heads { title: "Counter".to_owned(), document: "Counter sheet".to_owned(), scale: "\u{2013}".to_owned() };
    let mut flow = Flow::beside(set, kind, heads, vec![view]);
    lists::add(&mut flow, set, slab);
    flow.finish()
}
