//! A straight line.

/// A straight line through a point, mm; the direction need not have length 1.
#[derive(Clone, Copy, Debug)]
pub struct Line {
    /// A point on it.
    pub at: (f64, f64),
    /// Its direction.
    pub way: (f64, f64),
}

impl Line {
    /// Through two points.
    pub fn through(a: (f64, f64), b: (f64, f64)) -> Line {
        Line { at: a, way: (b.0 - a.0, b.1 - a.1) }
    }

    /// Where two lines meet; `None` when they are parallel.
    pub fn meets(&self, other: &Line) -> Option<(f64, f64)> {
        let cross = self.way.0 * other.way.1 - self.way.1 * other.way.0;
        let scale = self.way.0.hypot(self.way.1) * other.way.0.hypot(other.way.1);
        if cross.abs() <= 1e-9 * scale || scale == 0.0 {
            return None;
        }
        let (dx, dy) = (other.at.0 - self.at.0, other.at.1 - self.at.1);
        let share = (dx * other.way.1 - dy * other.way.0) / cross;
        Some((self.at.0 + share * self.way.0, self.at.1 + share * self.way.1))
    }

    /// Its direction with length 1.
    pub fn unit(&self) -> (f64, f64) {
        let long = self.way.0.hypot(self.way.1).max(f64::MIN_POSITIVE);
        (self.way.0 / long, self.way.1 / long)
    }

    /// How far a point lies to its left, mm.
    pub fn left_of(&self, p: (f64, f64)) -> f64 {
        let way = self.unit();
        way.0 * (p.1 - self.at.1) - way.1 * (p.0 - self.at.0)
    }
}
