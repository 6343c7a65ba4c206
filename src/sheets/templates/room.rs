//! Where on a page there is white enough for a block of words, found without asking the canvas for each place.

use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::sheets::frame::Area;

/// Side of a cell, mm.
const CELL: f64 = 3.0;

/// The white of an area of a page, as a lattice of cells.
pub struct Room {
    area: Area,
    columns: usize,
    rows: usize,
    taken: Vec<bool>,
    /// Cells with ink left of and above each corner of the lattice.
    sums: Vec<u32>,
}

impl Room {
    /// Looks at an area of a canvas.
    pub fn of(canvas: &Canvas, area: Area) -> Room {
        let columns = (area.width() / CELL).floor().max(0.0) as usize;
        let rows = (area.height() / CELL).floor().max(0.0) as usize;
        let cells = (0..rows).flat_map(|row| (0..columns).map(move |column| (column, row)));
        let taken = cells
            .map(|(column, row)| {
                let (x, y) = (area.left + column as f64 * CELL, area.top + row as f64 * CELL);
                !canvas.is_box_free(x, y, x + CELL, y + CELL)
            })
            .collect();
        let mut room = Room { area, columns, rows, taken, sums: Vec::new() };
        room.add_up();
        room
    }

    /// Takes a box (top left corner, width, height, mm) that something is about to be drawn in.
    pub fn take(&mut self, corner: PaperPoint, width: f64, height: f64) {
        let cell = |at: f64| (at / CELL).floor().max(0.0) as usize;
        let (left, top) = (corner.x - self.area.left, corner.y - self.area.top);
        for row in cell(top)..self.rows.min(cell(top + height) + 1) {
            for column in cell(left)..self.columns.min(cell(left + width) + 1) {
                self.taken[row * self.columns + column] = true;
            }
        }
        self.add_up();
    }

    fn add_up(&mut self) {
        let columns = self.columns;
        let at = |row: usize, column: usize| row * (columns + 1) + column;
        let mut sums = vec![0; (columns + 1) * (self.rows + 1)];
        for row in 0..self.rows {
            for column in 0..columns {
                let here = u32::from(self.taken[row * columns + column]);
                sums[at(row + 1, column + 1)] =
                    here + sums[at(row, column + 1)] + sums[at(row + 1, column)] - sums[at(row, column)];
            }
        }
        self.sums = sums;
    }

    /// The top left corner of the white box of a size (mm) for which `dislike` is least.
    pub fn find(&self, width: f64, height: f64, dislike: impl Fn(f64, f64) -> f64) -> Option<PaperPoint> {
        self.find_beside(width, height, [0.0; 4], dislike)
    }

    /// The same, clear of a box (left, top, right, bottom) that is about to be taken.
    pub fn find_beside(
        &self,
        width: f64,
        height: f64,
        taken: [f64; 4],
        dislike: impl Fn(f64, f64) -> f64,
    ) -> Option<PaperPoint> {
        let (across, down) = ((width / CELL).ceil() as usize, (height / CELL).ceil() as usize);
        let mut best: Option<(f64, PaperPoint)> = None;
        for row in 0..(self.rows + 1).saturating_sub(down) {
            for column in 0..(self.columns + 1).saturating_sub(across) {
                if self.ink(column, row, column + across, row + down) > 0 {
                    continue;
                }
                let place = PaperPoint::new(self.area.left + column as f64 * CELL, self.area.top + row as f64 * CELL);
                let meets = place.x < taken[2]
                    && place.x + width > taken[0]
                    && place.y < taken[3]
                    && place.y + height > taken[1];
                if meets {
                    continue;
                }
                let cost = dislike(place.x - self.area.left, place.y - self.area.top);
                if best.is_none_or(|(least, _)| cost < least) {
                    best = Some((cost, place));
                }
            }
        }
        best.map(|(_, place)| place)
    }

    fn ink(&self, c0: usize, r0: usize, c1: usize, r1: usize) -> u32 {
        let at = |r: usize, c: usize| self.sums[r * (self.columns + 1) + c];
        at(r1, c1) + at(r0, c0) - at(r0, c1) - at(r1, c0)
    }
}
