//! Flat areas of the picture, and what is cut out of what. Model millimetres, y up.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;

/// A point: x to the viewer's right, y up, mm.
pub type Spot = [f64; 2];
/// Points in order; closed when it bounds a patch.
pub type Ring = Vec<Spot>;

/// A flat area of rings, filled by the even-odd rule.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Patch {
    /// Its rings.
    pub rings: Vec<Ring>,
}

/// A level box, mm.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Rect {
    /// Left.
    pub x0: f64,
    /// Bottom.
    pub y0: f64,
    /// Right.
    pub x1: f64,
    /// Top.
    pub y1: f64,
}

impl Rect {
    /// Between two corners, in any order.
    pub fn new(x0: f64, y0: f64, x1: f64, y1: f64) -> Rect {
        Rect { x0: x0.min(x1), y0: y0.min(y1), x1: x0.max(x1), y1: y0.max(y1) }
    }
    /// Width.
    pub fn width(&self) -> f64 {
        self.x1 - self.x0
    }
    /// Height.
    pub fn height(&self) -> f64 {
        self.y1 - self.y0
    }
    /// Middle from left to right.
    pub fn middle(&self) -> f64 {
        (self.x0 + self.x1) / 2.0
    }
    /// Smaller by this much on all sides; never inside out.
    pub fn inset(&self, by: f64) -> Rect {
        let by = by.min(self.width() / 2.0).min(self.height() / 2.0);
        Rect { x0: self.x0 + by, y0: self.y0 + by, x1: self.x1 - by, y1: self.y1 - by }
    }
    /// Whether two boxes come nearer than this.
    pub fn is_near(&self, other: &Rect, distance: f64) -> bool {
        self.x0 - distance < other.x1
            && other.x0 - distance < self.x1
            && self.y0 - distance < other.y1
            && other.y0 - distance < self.y1
    }
    /// Whether it holds a point.
    pub fn holds(&self, spot: Spot) -> bool {
        spot[0] >= self.x0 && spot[0] <= self.x1 && spot[1] >= self.y0 && spot[1] <= self.y1
    }
    /// What it shares with another box, if anything.
    pub fn shared(&self, other: &Rect) -> Option<Rect> {
        let both = Rect {
            x0: self.x0.max(other.x0),
            y0: self.y0.max(other.y0),
            x1: self.x1.min(other.x1),
            y1: self.y1.min(other.y1),
        };
        (both.x0 < both.x1 && both.y0 < both.y1).then_some(both)
    }
    /// As a patch.
    pub fn patch(&self) -> Patch {
        Patch::of(vec![[self.x0, self.y0], [self.x1, self.y0], [self.x1, self.y1], [self.x0, self.y1]])
    }
    /// As a patch with round corners.
    pub fn rounded(&self, radius: f64) -> Patch {
        let r = radius.min(self.width() / 2.0).min(self.height() / 2.0);
        let mut ring = Ring::new();
        for (x, y, from) in [
            (self.x1 - r, self.y0 + r, -90.0),
            (self.x1 - r, self.y1 - r, 0.0),
            (self.x0 + r, self.y1 - r, 90.0),
            (self.x0 + r, self.y0 + r, 180.0),
        ] {
            ring.extend(arc([x, y], r, from, from + 90.0, 4));
        }
        Patch::of(ring)
    }
}

impl Patch {
    /// One ring.
    pub fn of(ring: Ring) -> Patch {
        Patch { rings: vec![ring] }
    }

    /// Whether there is nothing of it.
    pub fn is_empty(&self) -> bool {
        self.rings.iter().all(|ring| ring.len() < 3)
    }

    /// Everything that is in any of them, overlapping or not.
    pub fn union<'p>(patches: impl IntoIterator<Item = &'p Patch>) -> Patch {
        let rings: Vec<Ring> = patches
            .into_iter()
            .flat_map(|patch| patch.rings.iter())
            .map(|ring| if area(ring) < 0.0 { ring.iter().rev().copied().collect() } else { ring.clone() })
            .collect();
        let none: Vec<Ring> = Vec::new();
        flat(rings.overlay(&none, OverlayRule::Subject, FillRule::NonZero))
    }

    /// Everything that is in any of them, each with its holes.
    pub fn union_of(patches: &[Patch]) -> Patch {
        // Outsides run counter-clockwise and holes the other way, so that windings add up.
        let rings: Vec<Ring> = patches
            .iter()
            .flat_map(|patch| match patch.rings.as_slice() {
                [ring] if area(ring) < 0.0 => vec![ring.iter().rev().copied().collect()],
                [ring] => vec![ring.clone()],
                _ => patch.within(&patch.bounds().inset(-1.0).patch()).rings,
            })
            .collect();
        let none: Vec<Ring> = Vec::new();
        flat(rings.overlay(&none, OverlayRule::Subject, FillRule::NonZero))
    }

    /// What is left without another.
    pub fn less(&self, other: &Patch) -> Patch {
        self.overlaid(other, OverlayRule::Difference)
    }

    /// What lies inside another.
    pub fn within(&self, other: &Patch) -> Patch {
        self.overlaid(other, OverlayRule::Intersect)
    }

    fn overlaid(&self, other: &Patch, rule: OverlayRule) -> Patch {
        flat(self.rings.overlay(&other.rings, rule, FillRule::EvenOdd))
    }

    /// Moved.
    pub fn moved(&self, dx: f64, dy: f64) -> Patch {
        self.mapped(|[x, y]| [x + dx, y + dy])
    }

    /// Every point through `map`.
    pub fn mapped(&self, map: impl Fn(Spot) -> Spot) -> Patch {
        Patch { rings: self.rings.iter().map(|ring| ring.iter().map(|&spot| map(spot)).collect()).collect() }
    }

    /// All that it passes over when it is moved in a straight line.
    pub fn swept(&self, dx: f64, dy: f64) -> Patch {
        let mut parts = vec![self.clone(), self.moved(dx, dy)];
        for ring in &self.rings {
            for (k, a) in ring.iter().enumerate() {
                let b = ring[(k + 1) % ring.len()];
                parts.push(Patch::of(vec![*a, b, [b[0] + dx, b[1] + dy], [a[0] + dx, a[1] + dy]]));
            }
        }
        Patch::union(&parts)
    }

    /// The shadow that it throws on what lies `depth` behind it, without itself: light from the upper left at 45 degrees.
    pub fn shadow(&self, depth: f64) -> Patch {
        self.swept(depth, -depth).less(self)
    }

    /// The box round it.
    pub fn bounds(&self) -> Rect {
        let empty = Rect { x0: f64::INFINITY, y0: f64::INFINITY, x1: f64::NEG_INFINITY, y1: f64::NEG_INFINITY };
        self.rings.iter().flatten().fold(empty, |b, [x, y]| Rect {
            x0: b.x0.min(*x),
            y0: b.y0.min(*y),
            x1: b.x1.max(*x),
            y1: b.y1.max(*y),
        })
    }

    /// Whether it holds a point.
    pub fn holds(&self, [x, y]: Spot) -> bool {
        let mut inside = false;
        for ring in &self.rings {
            for (k, a) in ring.iter().enumerate() {
                let b = ring[(k + 1) % ring.len()];
                if (a[1] > y) != (b[1] > y) && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]) {
                    inside = !inside;
                }
            }
        }
        inside
    }

    /// Its stretches on a level line, left to right.
    pub fn spans(&self, y: f64) -> Vec<(f64, f64)> {
        let mut crossings: Vec<f64> = Vec::new();
        for ring in &self.rings {
            for (k, a) in ring.iter().enumerate() {
                let b = ring[(k + 1) % ring.len()];
                if (a[1] > y) != (b[1] > y) {
                    crossings.push(a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0]));
                }
            }
        }
        crossings.sort_by(f64::total_cmp);
        crossings.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect()
    }
}

/// The stretches of a straight line, as shares of it from 0 to 1, that lie in a patch or along its edge.
pub fn inside_shares(patch: &Patch, a: Spot, b: Spot) -> Vec<(f64, f64)> {
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let length = dx.hypot(dy);
    if length < 1e-9 {
        return Vec::new();
    }
    let mut shares = vec![0.0, 1.0];
    for ring in &patch.rings {
        for (k, p) in ring.iter().enumerate() {
            let q = ring[(k + 1) % ring.len()];
            let side = |s: &Spot| dx * (s[1] - a[1]) - dy * (s[0] - a[0]);
            let (sp, sq) = (side(p), side(&q));
            let along = |s: &Spot| ((s[0] - a[0]) * dx + (s[1] - a[1]) * dy) / (length * length);
            if sp.abs() < 1e-6 * length && sq.abs() < 1e-6 * length {
                shares.extend([along(p), along(&q)]);
            } else if (sp > 0.0) != (sq > 0.0) {
                let t = sp / (sp - sq);
                shares.push(along(p) + (along(&q) - along(p)) * t);
            }
        }
    }
    shares.retain(|share| (0.0..=1.0).contains(share));
    shares.sort_by(f64::total_cmp);
    // A hair to either side, so that a line along the edge counts as inside.
    let (nx, ny) = (-dy / length * 0.02, dx / length * 0.02);
    let mut kept: Vec<(f64, f64)> = Vec::new();
    for pair in shares.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        if (to - from) * length < 1e-6 {
            continue;
        }
        let t = (from + to) / 2.0;
        let (x, y) = (a[0] + dx * t, a[1] + dy * t);
        if patch.holds([x + nx, y + ny]) || patch.holds([x - nx, y - ny]) {
            match kept.last_mut() {
                Some(last) if (from - last.1) * length < 1e-6 => last.1 = to,
                _ => kept.push((from, to)),
            }
        }
    }
    kept
}

fn flat(shapes: Vec<Vec<Ring>>) -> Patch {
    Patch { rings: shapes.into_iter().flatten().collect() }
}

/// Signed area of a ring, positive counter-clockwise.
pub fn area(ring: &[Spot]) -> f64 {
    let next = |k: usize| ring[(k + 1) % ring.len()];
    ring.iter().enumerate().map(|(k, a)| a[0] * next(k)[1] - next(k)[0] * a[1]).sum::<f64>() / 2.0
}

/// Points on an arc about a centre, degrees counter-clockwise from the right.
pub fn arc(centre: Spot, radius: f64, from: f64, to: f64, pieces: usize) -> Ring {
    (0..=pieces)
        .map(|k| {
            let angle = (from + (to - from) * k as f64 / pieces as f64).to_radians();
            [centre[0] + radius * angle.cos(), centre[1] + radius * angle.sin()]
        })
        .collect()
}

/// A disc.
pub fn disc(centre: Spot, radius: f64, corners: usize) -> Patch {
    let mut ring = arc(centre, radius, 0.0, 360.0, corners);
    ring.pop();
    Patch::of(ring)
}

/// A smooth line through points (Catmull-Rom), `pieces` between two of them.
pub fn smooth(points: &[Spot], closed: bool, pieces: usize) -> Ring {
    let count = points.len();
    if count < 3 {
        return points.to_vec();
    }
    let at = |index: isize| {
        let last = count as isize - 1;
        let index = if closed { index.rem_euclid(count as isize) } else { index.clamp(0, last) };
        points[index as usize]
    };
    let mut ring = Ring::new();
    for k in 0..if closed { count } else { count - 1 } {
        let [p0, p1, p2, p3] = [-1, 0, 1, 2].map(|by| at(k as isize + by));
        for piece in 0..pieces {
            let t = piece as f64 / pieces as f64;
            let (t2, t3) = (t * t, t * t * t);
            let along = |c: usize| {
                let (m1, m2) = (0.5 * (p2[c] - p0[c]), 0.5 * (p3[c] - p1[c]));
                (2.0 * t3 - 3.0 * t2 + 1.0) * p1[c]
                    + (t3 - 2.0 * t2 + t) * m1
                    + (3.0 * t2 - 2.0 * t3) * p2[c]
                    + (t3 - t2) * m2
            };
            ring.push([along(0), along(1)]);
        }
    }
    if !closed {
        ring.push(points[count - 1]);
    }
    ring
}

#[cfg(test)]
mod tests {
    use super::{Patch, Rect, area};

    fn size(patch: &Patch) -> f64 {
        patch.rings.iter().map(|ring| area(ring)).sum()
    }

    #[test]
    fn a_hole_is_cut_and_a_shadow_falls_to_the_lower_right() {
        let wall = Rect::new(0.0, 0.0, 100.0, 50.0).patch();
        let hole = Rect::new(20.0, 20.0, 40.0, 40.0).patch();
        assert!((size(&wall.less(&hole)) - 4600.0).abs() < 1e-3);
        let shadow = hole.shadow(5.0);
        assert!((size(&shadow) - (2.0 * 20.0 * 5.0)).abs() < 1e-3);
        assert!(shadow.holds([42.0, 20.0]) && !shadow.holds([18.0, 30.0]) && !shadow.holds([30.0, 42.0]));
    }

    #[test]
    fn stretches_skip_holes() {
        let ring = Rect::new(0.0, 0.0, 30.0, 30.0).patch().less(&Rect::new(10.0, 10.0, 20.0, 20.0).patch());
        assert_eq!(ring.spans(15.0).len(), 2);
        assert_eq!(ring.spans(5.0).len(), 1);
    }
}
