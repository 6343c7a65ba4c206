//! Details, tables and notes set into what the main view leaves free, and on to further pages when it is full.

use super::canvas::Canvas;
use super::frame::{self, Area};
use super::notes;
use super::scale::Scale;
use super::title_block;
use crate::geometry::PaperPoint;

/// White between two blocks of a row, mm.
const ACROSS: f64 = 9.0;
/// White between two rows of blocks, mm.
const DOWN: f64 = 7.0;

/// Draws a block with its top left corner at a place.
pub type Draw<'a> = Box<dyn Fn(&mut Canvas, PaperPoint) + 'a>;

/// Something of a known size that can be drawn anywhere.
pub struct Block<'a> {
    /// Its width, mm.
    pub width: f64,
    /// Its height, mm.
    pub height: f64,
    /// It belongs in the column over the title block, where there is one.
    pub right: bool,
    /// Its scale, for the title block.
    pub scale: Option<Scale>,
    /// Draws it with its top left corner at a place.
    pub draw: Draw<'a>,
}

/// Notes as a block, with so much white under them, mm.
pub fn noted<'a>(list: Vec<(String, String)>, width: f64, under: f64) -> Block<'a> {
    Block {
        width,
        height: notes::list_height(&list, width) + under,
        right: true,
        scale: None,
        draw: Box::new(move |canvas, at| {
            let layer = canvas.layer(Canvas::ROOT, "notes");
            notes::list(canvas, layer, at.moved(0.0, 3.0), &list, width);
        }),
    }
}

/// A page with room left on it.
pub struct Sheet {
    /// The page.
    pub canvas: Canvas,
    /// Scales of what is on it, the main view's first.
    pub scales: Vec<Scale>,
    shelves: Vec<Shelf>,
}

/// An area that is filled in rows, each from the left.
#[derive(Clone)]
struct Shelf {
    area: Area,
    x: f64,
    y: f64,
    row: f64,
    right: bool,
}

impl Shelf {
    /// Where a block of this size goes, if it still does.
    fn take(&mut self, width: f64, height: f64) -> Option<PaperPoint> {
        let fresh = self.x <= self.area.left;
        if self.x + width <= self.area.right + 0.1 && self.y + height <= self.area.bottom + 0.1 {
            let at = PaperPoint::new(self.x, self.y);
            self.x += width + ACROSS;
            self.row = self.row.max(height);
            return Some(at);
        }
        if fresh {
            return None;
        }
        let next = self.y + self.row + DOWN;
        if self.area.left + width > self.area.right + 0.1 || next + height > self.area.bottom + 0.1 {
            return None;
        }
        (self.x, self.y, self.row) = (self.area.left, next, 0.0);
        self.take(width, height)
    }
}

/// What is free on a sheet below `top` and over a box of `over` mm that stands on the title block.
fn shelves(canvas: &Canvas, top: f64, over: f64) -> Vec<Shelf> {
    let (inside, corner) = (frame::inside(canvas), title_block::corner(canvas));
    let floor = corner.y - over - 6.0;
    let shelf = |left: f64, top: f64, right: f64, bottom: f64, column: bool| Shelf {
        area: Area { left, top, right, bottom },
        x: left,
        y: top,
        row: 0.0,
        right: column,
    };
    let column = corner.x - 6.0;
    // A page without a main view takes blocks of its whole width.
    let empty = top <= inside.top;
    if column - inside.left >= 120.0 && !empty {
        vec![
            shelf(inside.left, top, column, inside.bottom, false),
            shelf(corner.x + 8.0, top, inside.right, floor, true),
        ]
    } else {
        vec![
            shelf(inside.left, top, inside.right, floor, false),
            shelf(inside.left, top.max(floor + 6.0), column, inside.bottom, false),
        ]
    }
}

impl Sheet {
    /// A page whose main view ends at `top`, with a box of `over` mm standing on its title block.
    pub fn new(canvas: Canvas, top: f64, over: f64) -> Sheet {
        let shelves = shelves(&canvas, top, over);
        Sheet { canvas, scales: Vec::new(), shelves }
    }

    /// A page with these areas left on it, best first; those with `true` take what belongs over the title block.
    pub fn with_areas(canvas: Canvas, areas: impl IntoIterator<Item = (Area, bool)>) -> Sheet {
        let shelf = |(area, right): (Area, bool)| Shelf { x: area.left, y: area.top, row: 0.0, area, right };
        Sheet { canvas, scales: Vec::new(), shelves: areas.into_iter().map(shelf).collect() }
    }

    /// An empty page.
    pub fn fresh(canvas: Canvas) -> Sheet {
        let top = frame::inside(&canvas).top;
        Sheet::new(canvas, top, 0.0)
    }

    /// Draws a block where it fits, and says whether it did. `force` draws it at the top of an empty page all the same.
    fn place(&mut self, block: &Block<'_>, force: bool) -> bool {
        let at = match (take(&mut self.shelves, block), self.shelves.first_mut()) {
            (Some(at), _) => at,
            (None, Some(shelf)) if force => {
                shelf.y = shelf.area.bottom;
                PaperPoint::new(shelf.area.left, shelf.area.top)
            }
            _ => return false,
        };
        (block.draw)(&mut self.canvas, at);
        if let Some(scale) = block.scale
            && !self.scales.contains(&scale)
        {
            self.scales.push(scale);
        }
        true
    }

    /// Its scales as the title block says them.
    pub fn scale_words(&self) -> String {
        let words: Vec<String> = self.scales.iter().map(|scale| scale.words()).collect();
        if words.is_empty() { "none".to_owned() } else { words.join(", ") }
    }
}

/// Where a block goes on a page, if it still does: its own column first.
fn take(shelves: &mut [Shelf], block: &Block<'_>) -> Option<PaperPoint> {
    let mut order: Vec<usize> = (0..shelves.len()).collect();
    order.sort_by_key(|&k| shelves[k].right != block.right);
    order.into_iter().find_map(|k| shelves[k].take(block.width, block.height))
}

/// How many pages the sheets and all blocks would take; `blank` is an empty one.
pub fn pages(sheets: &[Sheet], blocks: &[Block<'_>], blank: &Canvas) -> usize {
    let fresh = || shelves(blank, frame::inside(blank).top, 0.0);
    let mut pages: Vec<Vec<Shelf>> = sheets.iter().map(|sheet| sheet.shelves.clone()).collect();
    for block in blocks {
        if pages.iter_mut().any(|page| take(page, block).is_some()) {
            continue;
        }
        let mut next = fresh();
        take(&mut next, block);
        pages.push(next);
    }
    pages.len()
}

/// Places all blocks on the sheets in order, and on as many more as they need; `blank` makes an empty one.
pub fn fill(sheets: &mut Vec<Sheet>, blocks: &[Block<'_>], blank: impl Fn() -> Canvas) {
    for block in blocks {
        if sheets.iter_mut().any(|sheet| sheet.place(block, false)) {
            continue;
        }
        let mut next = Sheet::fresh(blank());
        next.place(block, true);
        sheets.push(next);
    }
}

/// Greatest height of a block on an empty page, mm.
pub fn page_height(canvas: &Canvas) -> f64 {
    title_block::corner(canvas).y - 6.0 - frame::inside(canvas).top
}

#[cfg(test)]
mod tests {
    use super::{Block, Sheet, fill, pages};
    use crate::sheets::canvas::Canvas;

    fn block<'a>(width: f64, height: f64) -> Block<'a> {
        Block { width, height, right: false, scale: None, draw: Box::new(|_, _| {}) }
    }

    #[test]
    fn what_does_not_fit_goes_on_and_is_counted_alike() {
        let blank = || Canvas::new(420.0, 297.0);
        let blocks: Vec<Block> = (0..9).map(|_| block(150.0, 70.0)).collect();
        let mut sheets = vec![Sheet::new(blank(), 150.0, 0.0)];
        let counted = pages(&sheets, &blocks, &blank());
        fill(&mut sheets, &blocks, blank);
        assert_eq!(sheets.len(), counted);
        assert!(counted > 1);
    }

    #[test]
    fn a_block_larger_than_any_page_takes_one_of_its_own() {
        let blank = || Canvas::new(297.0, 210.0);
        let mut sheets = vec![Sheet::new(blank(), 100.0, 0.0)];
        fill(&mut sheets, &[block(900.0, 900.0), block(20.0, 20.0)], blank);
        assert_eq!(sheets.len(), 2);
    }
}
