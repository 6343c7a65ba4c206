//! The grid of labels on a page, and its cut marks.

use crate::drawing::Pen;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::frame::{self, Area};
use crate::sheets::title_block;

/// Least width of a label, mm.
const WIDTH: f64 = 84.0;
/// Least height of a label, mm.
const HEIGHT: f64 = 44.0;
/// Half a cut mark, mm.
const MARK: f64 = 2.0;

/// A grid of equal labels.
pub struct Grid {
    /// The labels, row by row.
    pub cells: Vec<Area>,
}

impl Grid {
    /// On an empty page: as many as its inside takes, those that would meet the title block left out.
    pub fn on(canvas: &Canvas) -> Grid {
        let (inside, corner) = (frame::inside(canvas), title_block::corner(canvas));
        let columns = (inside.width() / WIDTH).floor().max(1.0);
        let rows = (inside.height() / HEIGHT).floor().max(1.0);
        let (width, height) = (inside.width() / columns, inside.height() / rows);
        let mut cells = Vec::new();
        for row in 0..rows as usize {
            for column in 0..columns as usize {
                let (left, top) = (inside.left + column as f64 * width, inside.top + row as f64 * height);
                let area = Area { left, top, right: left + width, bottom: top + height };
                let meets = area.right > corner.x - MARK && area.bottom > corner.y - MARK;
                if !meets {
                    cells.push(area);
                }
            }
        }
        Grid { cells }
    }

    /// A small cross at each corner of each of the first so many labels.
    pub fn marks(&self, canvas: &mut Canvas, at: Layer, count: usize) {
        let mut drawn: Vec<(i64, i64)> = Vec::new();
        for cell in self.cells.iter().take(count) {
            for (x, y) in
                [(cell.left, cell.top), (cell.right, cell.top), (cell.left, cell.bottom), (cell.right, cell.bottom)]
            {
                let key = ((x * 100.0).round() as i64, (y * 100.0).round() as i64);
                if drawn.contains(&key) {
                    continue;
                }
                drawn.push(key);
                let p = PaperPoint::new;
                canvas.line(at, p(x - MARK, y), p(x + MARK, y), Pen::FINE);
                canvas.line(at, p(x, y - MARK), p(x, y + MARK), Pen::FINE);
            }
        }
    }
}
