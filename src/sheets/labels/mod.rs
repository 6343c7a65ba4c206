//! Labels to print and stick: one for each module and each piece, with the marks of the drawings.

mod cell;
mod grid;
mod items;

use super::canvas::Canvas;
use super::set::{Kind, Set};
use super::title_block::TitleBlock;
use crate::drawing::Page;
use grid::Grid;

/// Draws its pages: a grid of equal labels with cut marks, none where the title block is.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let items = items::all(set);
    let grid = Grid::on(&set.sheet());
    let each = grid.cells.len().max(1);
    items
        .chunks(each)
        .enumerate()
        .map(|(page, items)| {
            let mut canvas = set.sheet();
            let layer = canvas.layer(Canvas::ROOT, "labels");
            grid.marks(&mut canvas, layer, items.len());
            for (area, item) in grid.cells.iter().zip(items) {
                cell::draw(&mut canvas, layer, *area, set, item);
            }
            let block = TitleBlock {
                title: "Labels".to_owned(),
                subtitle: format!("{}, to cut out and stick", set.solved.job.title),
                kind: "Labels".to_owned(),
                scale: "\u{2013}".to_owned(),
                ..set.title_block(kind, page)
            };
            set.finish(canvas, kind, page, &block)
        })
        .collect()
}
