//! The detail's circle: what is cut to it, and where a name stands in a part of it.

use crate::drawing::Text;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::corners;

/// The circle on the paper.
#[derive(Clone, Copy)]
pub struct Ring {
    /// Its middle.
    pub centre: PaperPoint,
    /// Its radius, mm.
    pub radius: f64,
}

impl Ring {
    /// A level box cut to the circle.
    pub fn cut(&self, a: PaperPoint, b: PaperPoint) -> Vec<PaperPoint> {
        let (x0, x1, y0, y1) = (a.x.min(b.x), a.x.max(b.x), a.y.min(b.y), a.y.max(b.y));
        let mut points: Vec<PaperPoint> = (0..240)
            .map(|k| {
                let angle = std::f64::consts::TAU * f64::from(k) / 240.0;
                self.centre.moved(self.radius * angle.cos(), self.radius * angle.sin())
            })
            .collect();
        for (upright, bound, keeps_less) in [(true, x0, false), (true, x1, true), (false, y0, false), (false, y1, true)]
        {
            let value = |p: &PaperPoint| if upright { p.x } else { p.y };
            let inside = |p: &PaperPoint| if keeps_less { value(p) <= bound } else { value(p) >= bound };
            let mut kept = Vec::new();
            for (k, p) in points.iter().enumerate() {
                let q = &points[(k + 1) % points.len()];
                if inside(p) {
                    kept.push(*p);
                }
                if inside(p) != inside(q) {
                    kept.push(p.towards(*q, (bound - value(p)) / (value(q) - value(p))));
                }
            }
            points = kept;
        }
        points
    }

    /// The part of a line inside the circle.
    pub fn chord(&self, a: PaperPoint, b: PaperPoint) -> Option<(PaperPoint, PaperPoint)> {
        let length = a.distance(b);
        if length < 1e-9 {
            return None;
        }
        let (dx, dy) = ((b.x - a.x) / length, (b.y - a.y) / length);
        let middle = (self.centre.x - a.x) * dx + (self.centre.y - a.y) * dy;
        let off = a.moved(dx * middle, dy * middle).distance(self.centre);
        let half = (self.radius * self.radius - off * off).max(0.0).sqrt();
        let (from, to) = ((middle - half).max(0.0), (middle + half).min(length));
        (from < to).then(|| (a.moved(dx * from, dy * from), a.moved(dx * to, dy * to)))
    }

    /// Paper y of the circle's lower half at x.
    pub fn lower(&self, x: f64) -> f64 {
        let off = (x - self.centre.x).clamp(-self.radius, self.radius);
        self.centre.y + (self.radius * self.radius - off * off).sqrt()
    }

    /// Paper x of the circle's right half at y.
    pub fn right(&self, y: f64) -> f64 {
        let off = (y - self.centre.y).clamp(-self.radius, self.radius);
        self.centre.x + (self.radius * self.radius - off * off).sqrt()
    }
}

/// Whether a point lies in a ring.
pub fn contains(ring: &[PaperPoint], p: PaperPoint) -> bool {
    let mut inside = false;
    for (k, a) in ring.iter().enumerate() {
        let b = ring[(k + 1) % ring.len()];
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y) {
            inside = !inside;
        }
    }
    inside
}

/// A name in the middle of a part, level or else upright, with the ring that the hatch leaves free; `None` where the
/// part is too narrow for it.
pub fn place_in(polygon: &[PaperPoint], name: &str, uprights: &[f64]) -> Option<(Text, Vec<PaperPoint>)> {
    let count = polygon.len() as f64;
    let (x0, x1) = polygon.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), p| (a.min(p.x), b.max(p.x)));
    let (y0, y1) = polygon.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), p| (a.min(p.y), b.max(p.y)));
    if count < 3.0 || (x1 - x0).min(y1 - y0) < 5.9 {
        return None;
    }
    let wide = lettering::width(name, BODY, Weight::Regular) / 2.0 + 1.2;
    for turned in [false, true] {
        // Half a line of lettering, what hangs under it, and white.
        let (dx, dy) = if turned { (2.45, wide) } else { (wide, 2.45) };
        for share in [0.5, 0.4, 0.32, 0.6, 0.25] {
            for across in (0..20).map(|k| 0.5 + 0.02 * f64::from(k) * if k % 2 == 0 { 1.0 } else { -1.0 }) {
                let middle = if turned || y1 - y0 > x1 - x0 {
                    PaperPoint::new((x0 + x1) / 2.0, y0 + (y1 - y0) * share)
                } else {
                    PaperPoint::new(x0 + (x1 - x0) * across, (y0 + y1) / 2.0)
                };
                let (a, b) = (middle.moved(-dx, -dy), middle.moved(dx, dy));
                let margin = [a.moved(-0.5, -0.5), b.moved(0.5, 0.5)];
                let crossed = uprights.iter().any(|x| *x > a.x - 0.3 && *x < b.x + 0.3 && x0 < x - 0.5 && x1 > x + 0.5);
                if !crossed && corners(margin[0], margin[1]).iter().all(|p| contains(polygon, *p)) {
                    let style = if turned { Style::body().upright().middle() } else { Style::body().middle() };
                    let place = if turned { middle.moved(1.25, 0.0) } else { middle.moved(0.0, 1.25) };
                    return Some((lettering::set(place, name, &style), corners(a, b).to_vec()));
                }
            }
        }
    }
    None
}
