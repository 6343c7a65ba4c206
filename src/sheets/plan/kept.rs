//! Lettering that leaders must not run through.

use crate::geometry::PaperPoint;

/// Boxes of paper that carry lettering: left, top, right, bottom, mm.
#[derive(Default)]
pub struct Kept {
    boxes: Vec<[f64; 4]>,
}

impl Kept {
    /// Keeps a box.
    pub fn keep(&mut self, left: f64, top: f64, right: f64, bottom: f64) {
        self.boxes.push([left, top, right, bottom]);
    }

    /// Keeps the square round a ring.
    pub fn ring(&mut self, centre: PaperPoint, radius: f64) {
        self.keep(centre.x - radius, centre.y - radius, centre.x + radius, centre.y + radius);
    }

    /// Whether a straight line would run through any box.
    pub fn crossed(&self, a: PaperPoint, b: PaperPoint) -> bool {
        let count = (a.distance(b) / 0.5).ceil().max(1.0) as usize;
        let inside = |p: PaperPoint| self.boxes.iter().any(|[l, t, r, e]| p.x > *l && p.x < *r && p.y > *t && p.y < *e);
        (0..=count).any(|k| inside(a.towards(b, k as f64 / count as f64)))
    }
}
