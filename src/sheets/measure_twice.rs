//! The measure_twice sheet.

use super::set::{Kind, Set};
use super::title_block::TitleBlock;
use crate::drawing::Page;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let canvas = set.sheet();
    let block = TitleBlock { title: "measure_twice".to_owned(), ..set.title_block(kind, 0) };
    vec![set.finish(canvas, kind, 0, &block)]
}
