//! Where on a page there is room for tables.

use crate::sheets::canvas::Canvas;
use crate::sheets::frame::{self, Area, MARGIN};
use crate::sheets::title_block;

/// Least width of a column of tables, mm.
const LEAST: f64 = 176.0;
/// White between columns, mm.
const GUTTER: f64 = 12.0;

/// An area that fills from the top.
pub struct Slot {
    /// The whole area.
    pub area: Area,
    /// The top of what is still free, mm.
    pub top: f64,
}

impl Slot {
    /// An empty slot.
    pub fn new(area: Area) -> Slot {
        Slot { area, top: area.top }
    }

    /// Height that is left, mm.
    pub fn room(&self) -> f64 {
        self.area.bottom - self.top
    }

    /// Nothing is in it yet.
    pub fn is_fresh(&self) -> bool {
        self.top <= self.area.top + 0.01
    }
}

/// Equal columns over a whole page, those over the title block ending above it.
pub fn columns(canvas: &Canvas) -> Vec<Slot> {
    let inside = frame::inside(canvas);
    let count = ((inside.width() + GUTTER) / (LEAST + GUTTER)).floor().max(1.0);
    let width = (inside.width() - GUTTER * (count - 1.0)) / count;
    let block = title_block::corner(canvas);
    (0..count as usize)
        .map(|index| {
            let left = inside.left + index as f64 * (width + GUTTER);
            let right = left + width;
            let bottom = if right > block.x - MARGIN { block.y - MARGIN } else { inside.bottom };
            Slot::new(Area { left, top: inside.top, right, bottom })
        })
        .collect()
}

/// The order in which slots are offered to a block that may go anywhere: from the left, but a page with many slots is
/// filled evenly, the emptiest first.
pub fn order(slots: &[Slot]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..slots.len()).collect();
    if slots.len() > 3 {
        order.sort_by(|&a, &b| slots[a].top.total_cmp(&slots[b].top));
    }
    order
}
