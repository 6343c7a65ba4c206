//! Full-size templates: every part at 1:1, on tiles or on a roll.

mod around;
mod bars;
mod blocks;
mod card;
mod label;
mod piece;
pub mod pieces;
pub mod plan;
mod room;
mod says;
mod stock;
mod tile;
mod waste;

pub use card::page as square_card;
pub use piece::{Corner, Family, Line, LineKind, Template};
pub use plan::{Plan, Setting, Window, plan};
pub use stock::Stock;

use super::Unplaced;
use crate::drawing::Page;
use crate::solve::Solved;

/// The pages of a template spread by a plan, in the order of [`Plan::tiles`].
///
/// # Errors
/// When a page can't be lettered without an overlap.
pub fn pages(solved: &Solved, template: &Template, plan: &Plan, setting: &Setting) -> Result<Vec<Page>, Vec<Unplaced>> {
    super::checked(plan.tiles().into_iter().map(|place| tile::page(solved, template, plan, setting, place)).collect())
}
