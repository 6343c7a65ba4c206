//! Roundings between two edges, of which one may be an arc.

use super::line::Line;
use std::f64::consts::{PI, TAU};

/// Edges that leave less than this between them turn back on one another, radians: 20 degrees.
const CUSP: f64 = PI / 9.0;

/// A straight edge or an arc, from a corner to the next one.
#[derive(Clone, Copy, Debug)]
pub struct Bend {
    /// Where it starts, mm.
    pub from: (f64, f64),
    /// Where it ends, mm.
    pub to: (f64, f64),
    /// Its circle: centre and radius, mm; `None` for a straight edge.
    circle: Option<((f64, f64), f64)>,
    /// It turns counter-clockwise.
    left: bool,
}

impl Bend {
    /// The edge between two corners with a bulge.
    pub fn between(from: (f64, f64), to: (f64, f64), bulge: f64) -> Bend {
        let circle = (bulge != 0.0).then(|| {
            let off = (1.0 - bulge * bulge) / (4.0 * bulge);
            let (dx, dy) = (to.0 - from.0, to.1 - from.1);
            let centre = ((from.0 + to.0) / 2.0 - dy * off, (from.1 + to.1) / 2.0 + dx * off);
            (centre, (from.0 - centre.0).hypot(from.1 - centre.1))
        });
        Bend { from, to, circle, left: bulge > 0.0 }
    }

    /// Whether it is no arc.
    pub fn is_straight(&self) -> bool {
        self.circle.is_none()
    }

    /// Whether the next edge turns back on it, where one of them is an arc.
    pub fn is_cusp(&self, next: &Bend) -> bool {
        if self.is_straight() && next.is_straight() {
            return false;
        }
        let (a, b) = (self.way(self.to), next.way(next.from));
        a.0 * b.0 + a.1 * b.1 < -CUSP.cos()
    }

    /// Its direction in a point on it.
    fn way(&self, at: (f64, f64)) -> (f64, f64) {
        match self.circle {
            None => Line::through(self.from, self.to).unit(),
            Some((centre, radius)) => {
                let out = ((at.0 - centre.0) / radius, (at.1 - centre.1) / radius);
                if self.left { (-out.1, out.0) } else { (out.1, -out.0) }
            }
        }
    }

    /// The bulge of what is left of it between two of its points; `None` where the second comes before the first by more
    /// than `slack` mm.
    pub fn held(&self, from: (f64, f64), to: (f64, f64), slack: f64) -> Option<f64> {
        let Some((centre, radius)) = self.circle else {
            let way = self.way(from);
            return ((to.0 - from.0) * way.0 + (to.1 - from.1) * way.1 > -slack).then_some(0.0);
        };
        let angle = |p: (f64, f64)| (p.1 - centre.1).atan2(p.0 - centre.0);
        let turn = |a: f64, b: f64| if self.left { (b - a).rem_euclid(TAU) } else { (a - b).rem_euclid(TAU) };
        let whole = turn(angle(self.from), angle(self.to));
        let (start, end) = (turn(angle(self.from), angle(from)), turn(angle(self.from), angle(to)));
        // A start a hair before the corner comes out as a whole turn.
        let near = |sweep: f64| if sweep > TAU - slack / radius { 0.0 } else { sweep };
        let (start, end) = (near(start), near(end));
        if start > whole + slack / radius || end > whole + slack / radius || end < start - slack / radius {
            return None;
        }
        let bulge = ((end - start).max(0.0) / 4.0).tan();
        Some(if self.left { bulge } else { -bulge })
    }

    /// Where a circle of `radius` that touches it on the left (on the right where `inward` is -1) has its centre: a line or
    /// a circle.
    fn beside(&self, radius: f64, inward: f64) -> Option<Beside> {
        match self.circle {
            None => {
                let way = Line::through(self.from, self.to).unit();
                let by = radius * inward;
                Some(Beside::Line(Line { at: (self.from.0 - way.1 * by, self.from.1 + way.0 * by), way }))
            }
            Some((centre, own)) => {
                let off = if self.left { own - radius * inward } else { own + radius * inward };
                (off > 0.0).then_some(Beside::Circle(centre, off))
            }
        }
    }

    /// Where a circle round `centre` touches it.
    fn touched(&self, centre: (f64, f64)) -> (f64, f64) {
        match self.circle {
            None => {
                let way = self.way(self.from);
                let along = (centre.0 - self.from.0) * way.0 + (centre.1 - self.from.1) * way.1;
                (self.from.0 + way.0 * along, self.from.1 + way.1 * along)
            }
            Some((own, radius)) => {
                let (dx, dy) = (centre.0 - own.0, centre.1 - own.1);
                let long = dx.hypot(dy).max(f64::MIN_POSITIVE);
                (own.0 + dx / long * radius, own.1 + dy / long * radius)
            }
        }
    }
}

/// Where the centre of a rounding lies as one edge sees it.
enum Beside {
    Line(Line),
    Circle((f64, f64), f64),
}

/// A point, mm.
type Spot = (f64, f64);

/// A rounding of the corner `at` between two edges: where it leaves the first, where it reaches the second, and its
/// bulge. `None` where there is no corner to round, both edges are arcs, or no circle of that radius touches both.
pub fn rounding(at: Spot, before: &Bend, after: &Bend, radius: f64) -> Option<(Spot, Spot, f64)> {
    let (a, b) = (before.way(at), after.way(at));
    let (cross, dot) = (a.0 * b.1 - a.1 * b.0, a.0 * b.0 + a.1 * b.1);
    if cross.abs() < 1e-9 {
        return None;
    }
    let inward = cross.signum();
    let centre = match (before.beside(radius, inward)?, after.beside(radius, inward)?) {
        (Beside::Line(one), Beside::Line(other)) => one.meets(&other)?,
        (Beside::Line(line), Beside::Circle(centre, off)) | (Beside::Circle(centre, off), Beside::Line(line)) => {
            let way = line.unit();
            let along = (centre.0 - line.at.0) * way.0 + (centre.1 - line.at.1) * way.1;
            let foot = (line.at.0 + way.0 * along, line.at.1 + way.1 * along);
            let apart = line.left_of(centre);
            let half = (off * off - apart * apart).max(0.0).sqrt();
            if off < apart.abs() {
                return None;
            }
            let far = |p: &(f64, f64)| (p.0 - at.0).hypot(p.1 - at.1);
            [half, -half]
                .map(|by| (foot.0 + way.0 * by, foot.1 + way.1 * by))
                .into_iter()
                .min_by(|a, b| far(a).total_cmp(&far(b)))?
        }
        _ => return None,
    };
    let (arrives, leaves) = (before.touched(centre), after.touched(centre));
    let (a, b) = (before.way(arrives), after.way(leaves));
    let turn = if before.is_straight() && after.is_straight() {
        dot.clamp(-1.0, 1.0).acos()
    } else {
        (a.0 * b.0 + a.1 * b.1).clamp(-1.0, 1.0).acos()
    };
    Some((arrives, leaves, (turn / 4.0).tan() * inward))
}
