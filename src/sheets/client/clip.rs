//! Painting only inside a patch: what lies wholly inside is kept as it is, what crosses the edge is cut.
//!
//! Most stones, strips and lines of a texture lie wholly inside or outside, which their boxes tell without a cut.

use std::borrow::Cow;

use super::patch::{Patch, Rect, Ring, Spot, inside_shares};

/// What touches an edge by less than this isn't cut by it, mm.
const TOUCH: f64 = 1e-3;

/// A patch that painting keeps inside of.
#[derive(Clone, Debug)]
pub struct Clip {
    patch: Patch,
    bounds: Rect,
    /// The edges of the patch by upright columns of its box, so that a small thing asks only those near it.
    columns: Vec<Vec<[Spot; 2]>>,
}

/// How a box lies to a patch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Lies {
    Inside,
    Outside,
    Across,
}

impl Clip {
    /// Inside this patch.
    pub fn new(patch: Patch) -> Clip {
        let bounds = patch.bounds();
        let edges =
            || patch.rings.iter().flat_map(|ring| (0..ring.len()).map(|k| [ring[k], ring[(k + 1) % ring.len()]]));
        let count = (edges().count() / 4).clamp(1, 2000);
        let mut clip = Clip { columns: vec![Vec::new(); count], bounds, patch: Patch::default() };
        for edge in edges() {
            let (from, to) = clip.columns_of(edge[0][0].min(edge[1][0]), edge[0][0].max(edge[1][0]));
            clip.columns[from..=to].iter_mut().for_each(|column| column.push(edge));
        }
        Clip { patch, ..clip }
    }

    /// The columns that a stretch of x touches.
    fn columns_of(&self, from: f64, to: f64) -> (usize, usize) {
        let last = self.columns.len() - 1;
        let wide = self.bounds.width().max(1e-9) / self.columns.len() as f64;
        let column = |x: f64| (((x - self.bounds.x0) / wide).floor().max(0.0) as usize).min(last);
        (column(from - TOUCH), column(to + TOUCH))
    }

    /// Whether it holds a point.
    pub fn holds(&self, spot: Spot) -> bool {
        if !self.bounds.holds(spot) {
            return false;
        }
        // Edges over the spot: an odd number when it is inside.
        let [x, y] = spot;
        let column = &self.columns[self.columns_of(x, x).0];
        let over =
            |[a, b]: &&[Spot; 2]| (a[0] > x) != (b[0] > x) && y < a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1]);
        column.iter().filter(over).count() % 2 == 1
    }

    /// Whether a patch lies wholly inside.
    pub fn holds_whole(&self, patch: &Patch) -> bool {
        self.lies(&patch.bounds()) == Lies::Inside
    }

    fn lies(&self, b: &Rect) -> Lies {
        let at = |low: f64, high: f64, from: f64, to: f64| high - TOUCH > from && low + TOUCH < to;
        if !at(self.bounds.x0, self.bounds.x1, b.x0, b.x1) || !at(self.bounds.y0, self.bounds.y1, b.y0, b.y1) {
            return Lies::Outside;
        }
        let (from, to) = self.columns_of(b.x0, b.x1);
        let crossed = self.columns[from..=to].iter().flatten().any(|[p, q]| {
            at(p[0].min(q[0]), p[0].max(q[0]), b.x0, b.x1) && at(p[1].min(q[1]), p[1].max(q[1]), b.y0, b.y1)
        });
        match crossed {
            true => Lies::Across,
            false if self.holds([b.middle(), (b.y0 + b.y1) / 2.0]) => Lies::Inside,
            false => Lies::Outside,
        }
    }

    /// What of a patch lies inside, if anything.
    pub fn cut<'p>(&self, patch: &'p Patch) -> Option<Cow<'p, Patch>> {
        match self.lies(&patch.bounds()) {
            Lies::Inside => Some(Cow::Borrowed(patch)),
            Lies::Outside => None,
            Lies::Across => {
                let cut = patch.within(&self.patch);
                (!cut.is_empty()).then_some(Cow::Owned(cut))
            }
        }
    }

    /// What of a line lies inside, or along the edge.
    pub fn line(&self, line: &[Spot]) -> Vec<Ring> {
        match self.lies(&Patch::of(line.to_vec()).bounds()) {
            Lies::Inside => return vec![line.to_vec()],
            Lies::Outside => return Vec::new(),
            Lies::Across => {}
        }
        let mut pieces: Vec<Ring> = Vec::new();
        for pair in line.windows(2) {
            for (from, to) in inside_shares(&self.patch, pair[0], pair[1]) {
                let at =
                    |t: f64| [pair[0][0] + (pair[1][0] - pair[0][0]) * t, pair[0][1] + (pair[1][1] - pair[0][1]) * t];
                let (a, b) = (at(from), at(to));
                match pieces.last_mut() {
                    Some(last) if last.last().is_some_and(|p| (p[0] - a[0]).hypot(p[1] - a[1]) < 1e-6) => last.push(b),
                    _ => pieces.push(vec![a, b]),
                }
            }
        }
        pieces
    }
}

#[cfg(test)]
mod tests {
    use super::Clip;
    use crate::sheets::client::patch::Rect;

    #[test]
    fn a_line_is_cut_at_a_hole_and_an_outline_along_the_edge_is_kept() {
        let ring = Rect::new(0.0, 0.0, 30.0, 30.0).patch().less(&Rect::new(10.0, 10.0, 20.0, 20.0).patch());
        let clip = Clip::new(ring);
        let pieces = clip.line(&[[-5.0, 15.0], [40.0, 15.0]]);
        let ends: Vec<(f64, f64)> = pieces.iter().map(|p| (p[0][0].round(), p[p.len() - 1][0].round())).collect();
        assert_eq!(ends, [(0.0, 10.0), (20.0, 30.0)]);
        assert_eq!(clip.line(&[[0.0, 0.0], [30.0, 0.0], [30.0, 35.0]]).len(), 1);
    }

    #[test]
    fn what_lies_inside_is_kept_as_it_is_and_what_lies_in_the_hole_is_not() {
        let ring = Rect::new(0.0, 0.0, 30.0, 30.0).patch().less(&Rect::new(10.0, 10.0, 20.0, 20.0).patch());
        let clip = Clip::new(ring);
        let inside = Rect::new(1.0, 1.0, 9.0, 9.0).patch();
        assert_eq!(clip.cut(&inside).as_deref(), Some(&inside));
        assert!(clip.cut(&Rect::new(12.0, 12.0, 18.0, 18.0).patch()).is_none());
        let across = clip.cut(&Rect::new(5.0, 12.0, 15.0, 18.0).patch()).map(|cut| cut.bounds().width());
        assert!(across.is_some_and(|width| (width - 5.0).abs() < 1e-3));
    }
}
