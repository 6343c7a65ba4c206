//! The floor under a leg: a plane, the facets between measured spots, and its steps.

use crate::geometry::{LegPoint, Placement};

/// The floor under a leg. Heights are mm over z = 0, which is the highest ground under any foot of the run.
#[derive(Clone, Debug, Default)]
pub struct Floor {
    /// Height of the plane at (u, v) = (0, 0).
    pub at_origin: f64,
    /// Rise per unit of u (negative: falls to the right).
    pub per_u: f64,
    /// Rise per unit of v (positive: falls towards the cook).
    pub per_v: f64,
    /// Measured spots, (u, v, z) mm; empty for a floor given by its fall. The plane is the best one through them.
    pub spots: Vec<(f64, f64, f64)>,
    /// Triangles between the spots, where the floor is to go through all of them; empty where the plane alone counts.
    /// The steps are taken out of their heights.
    pub facets: Vec<[(f64, f64, f64); 3]>,
    /// Steps, the ground behind each lower than the plane or the facets say.
    pub steps: Vec<FloorDrop>,
}

/// A step in the floor as a leg sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FloorDrop {
    /// Where its edge starts, (u, v) mm.
    pub from: (f64, f64),
    /// Where it ends.
    pub to: (f64, f64),
    /// How far the floor drops on the right of the way from start to end, mm; the ground there lies within the step's
    /// own length.
    pub drop: f64,
}

impl FloorDrop {
    /// How far a place lies below the ground before the step, mm: the drop, or nothing.
    pub fn under(&self, u: f64, v: f64) -> f64 {
        let (dx, dy) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        let (x, y) = (u - self.from.0, v - self.from.1);
        let along = x * dx + y * dy;
        let beside = along >= 0.0 && along <= dx * dx + dy * dy;
        if beside && x * dy - y * dx > 0.0 { self.drop } else { 0.0 }
    }
}

impl Floor {
    /// Height of the plane at (u, v), mm, steps left out of account.
    pub fn plane(&self, u: f64, v: f64) -> f64 {
        self.at_origin + self.per_u * u + self.per_v * v
    }

    /// Height of the floor at (u, v), mm over z = 0: the facet there, or the plane; past the outermost spots the floor
    /// goes on from the nearest of its edges with the plane's slope. Less what the steps take off.
    pub fn height(&self, u: f64, v: f64) -> f64 {
        self.smooth(u, v) - self.stepped(u, v)
    }

    /// The same without the steps.
    pub fn smooth(&self, u: f64, v: f64) -> f64 {
        let Some((z, at)) = nearest(&self.facets, (u, v)) else { return self.plane(u, v) };
        z + self.plane(u, v) - self.plane(at.0, at.1)
    }

    /// How much the steps take off at (u, v), mm.
    pub fn stepped(&self, u: f64, v: f64) -> f64 {
        self.steps.iter().map(|step| step.under(u, v)).sum()
    }

    /// Height under something that stands at (u, v): the nearest spot's own where one lies within `reach` mm, the
    /// floor's elsewhere.
    pub fn ground(&self, u: f64, v: f64, reach: f64) -> f64 {
        let near = self.spots.iter().map(|spot| ((spot.0 - u).hypot(spot.1 - v), spot.2));
        let near = near.filter(|(distance, _)| *distance <= reach).min_by(|a, b| a.0.total_cmp(&b.0));
        near.map_or_else(|| self.height(u, v), |(_, z)| z)
    }

    /// The floor's line from one (u, v) to another: shares of the way (0 to 1) with heights, every bend and both sides of
    /// every step among them.
    pub fn line(&self, from: (f64, f64), to: (f64, f64)) -> Vec<(f64, f64)> {
        let mut shares = vec![0.0, 1.0];
        for facet in &self.facets {
            for k in 0..3 {
                let (a, b) = (facet[k], facet[(k + 1) % 3]);
                shares.extend(crossing(from, to, (a.0, a.1), (b.0, b.1)));
            }
        }
        shares.extend(self.bends_outside(from, to));
        let stepping: Vec<f64> = self.steps.iter().filter_map(|step| crossing(from, to, step.from, step.to)).collect();
        shares.extend(&stepping);
        shares.sort_by(f64::total_cmp);
        shares.dedup_by(|a, b| (*a - *b).abs() < 1e-7);
        let place = |share: f64| (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
        let mut line = Vec::new();
        for share in shares {
            let (u, v) = place(share);
            if stepping.iter().any(|step| (step - share).abs() < 1e-7) {
                // A step has two heights: just before its edge and just after.
                for side in [share - 1e-6, share + 1e-6] {
                    let (a, b) = place(side);
                    line.push((share, self.smooth(u, v) - self.stepped(a, b)));
                }
            } else {
                line.push((share, self.height(u, v)));
            }
        }
        line
    }

    /// Shares of a way where the floor bends outside the facets: there it goes on from the nearest point of their rim, which
    /// passes from an edge to a corner on the square over the edge's end.
    fn bends_outside(&self, from: (f64, f64), to: (f64, f64)) -> Vec<f64> {
        const FAR: f64 = 1e6;
        let at = |share: f64| {
            let (u, v) = (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share);
            self.smooth(u, v)
        };
        let mut shares = Vec::new();
        for facet in &self.facets {
            for k in 0..3 {
                let (a, b) = (facet[k], facet[(k + 1) % 3]);
                let long = (b.0 - a.0).hypot(b.1 - a.1).max(1e-9);
                let square = (-(b.1 - a.1) / long * FAR, (b.0 - a.0) / long * FAR);
                for end in [a, b] {
                    let ends = ((end.0 - square.0, end.1 - square.1), (end.0 + square.0, end.1 + square.1));
                    shares.extend(crossing(from, to, ends.0, ends.1));
                }
            }
        }
        // Most of these squares are over facets, or over other edges, where nothing bends.
        const STEP: f64 = 1e-4;
        shares.retain(|&share| (at(share - STEP) + at(share + STEP) - 2.0 * at(share)).abs() > 1e-6);
        shares
    }

    /// The same floor, given over one leg, as another leg sees it.
    pub fn seen_from(&self, first: &Placement, leg: &Placement) -> Floor {
        let turned = |(u, v): (f64, f64)| {
            let point = leg.to_leg(first.to_plan(LegPoint::new(u, v)));
            (point.x, point.y)
        };
        let spot = |&(u, v, z): &(f64, f64, f64)| {
            let (u, v) = turned((u, v));
            (u, v, z)
        };
        let zero = first.to_leg(leg.origin);
        let (sin, cos) = (leg.angle - first.angle).sin_cos();
        Floor {
            at_origin: self.plane(zero.x, zero.y),
            per_u: self.per_u * cos + self.per_v * sin,
            per_v: -self.per_u * sin + self.per_v * cos,
            spots: self.spots.iter().map(spot).collect(),
            facets: self.facets.iter().map(|facet| [spot(&facet[0]), spot(&facet[1]), spot(&facet[2])]).collect(),
            steps: self
                .steps
                .iter()
                .map(|step| FloorDrop { from: turned(step.from), to: turned(step.to), drop: step.drop })
                .collect(),
        }
    }

    /// The same floor, this much lower, mm.
    pub fn lowered(mut self, by: f64) -> Floor {
        self.at_origin -= by;
        self.spots.iter_mut().for_each(|spot| spot.2 -= by);
        self.facets.iter_mut().flatten().for_each(|corner| corner.2 -= by);
        self
    }
}

/// Height of the facets at the place of theirs that is nearest to a point, and that place; `None` without facets.
fn nearest(facets: &[[(f64, f64, f64); 3]], at: (f64, f64)) -> Option<(f64, (f64, f64))> {
    let mut best: Option<(f64, f64, (f64, f64))> = None;
    for facet in facets {
        let [a, b, c] = *facet;
        let twice = (b.0 - a.0) * (c.1 - a.1) - (c.0 - a.0) * (b.1 - a.1);
        if twice.abs() > 1e-9 {
            let wb = ((at.0 - a.0) * (c.1 - a.1) - (c.0 - a.0) * (at.1 - a.1)) / twice;
            let wc = ((b.0 - a.0) * (at.1 - a.1) - (at.0 - a.0) * (b.1 - a.1)) / twice;
            let wa = 1.0 - wb - wc;
            if wa >= -1e-9 && wb >= -1e-9 && wc >= -1e-9 {
                return Some((wa * a.2 + wb * b.2 + wc * c.2, at));
            }
        }
        for (p, q) in [(a, b), (b, c), (c, a)] {
            let (dx, dy) = (q.0 - p.0, q.1 - p.1);
            let long = (dx * dx + dy * dy).max(1e-12);
            let share = (((at.0 - p.0) * dx + (at.1 - p.1) * dy) / long).clamp(0.0, 1.0);
            let on = (p.0 + share * dx, p.1 + share * dy);
            let off = (at.0 - on.0).hypot(at.1 - on.1);
            if best.is_none_or(|(least, _, _)| off < least) {
                best = Some((off, p.2 + share * (q.2 - p.2), on));
            }
        }
    }
    best.map(|(_, z, on)| (z, on))
}

/// Where on the way from one point to another (0 to 1) it crosses an edge.
fn crossing(from: (f64, f64), to: (f64, f64), a: (f64, f64), b: (f64, f64)) -> Option<f64> {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let (ex, ey) = (b.0 - a.0, b.1 - a.1);
    let cross = dx * ey - dy * ex;
    if cross.abs() < 1e-9 {
        return None;
    }
    let (x, y) = (a.0 - from.0, a.1 - from.1);
    let (share, along) = ((x * ey - y * ex) / cross, (x * dy - y * dx) / cross);
    (share > 0.0 && share < 1.0 && (0.0..=1.0).contains(&along)).then_some(share)
}

#[cfg(test)]
mod tests {
    use super::{Floor, FloorDrop};

    /// Two facets over a square of 10, ridged along its diagonal from (0, 0) to (10, 10).
    fn ridged() -> Floor {
        let (a, b, c, d) = ((0.0, 0.0, 4.0), (10.0, 0.0, 0.0), (10.0, 10.0, 4.0), (0.0, 10.0, 0.0));
        Floor { facets: vec![[a, b, c], [a, c, d]], ..Floor::default() }
    }

    /// Past the facets' corner the floor is level with it; the line's straight parts are the floor's own.
    #[test]
    fn the_line_bends_outside_the_facets_where_the_floor_does() {
        let floor = Floor { facets: vec![[(0.0, 0.0, 0.0), (10.0, 0.0, 5.0), (0.0, 10.0, 0.0)]], ..Floor::default() };
        let line = floor.line((-5.0, -1.0), (20.0, -1.0));
        for share in (0..=1000).map(|k| f64::from(k) / 1000.0) {
            let next = line.iter().position(|point| point.0 >= share).unwrap().max(1);
            let (a, b) = (line[next - 1], line[next]);
            let straight = a.1 + (b.1 - a.1) * (share - a.0) / (b.0 - a.0);
            let own = floor.height(-5.0 + 25.0 * share, -1.0);
            assert!((straight - own).abs() < 1e-9, "{share}: {straight} for {own}");
        }
        assert!(line.len() > 3, "{line:?}");
    }

    #[test]
    fn facets_go_through_their_spots_and_bend_between_them() {
        let floor = ridged();
        assert_eq!(floor.height(0.0, 0.0), 4.0);
        assert_eq!(floor.height(5.0, 5.0), 4.0);
        assert_eq!(floor.height(10.0, 5.0), 2.0);
        assert_eq!(floor.height(12.0, 5.0), 2.0, "past the spots it goes on from the nearest edge");
        assert_eq!(floor.line((0.0, 5.0), (10.0, 5.0)), vec![(0.0, 2.0), (0.5, 4.0), (1.0, 2.0)]);
    }

    #[test]
    fn a_step_drops_what_lies_right_of_it_and_has_two_heights() {
        // From (5, 0) towards (5, 10) the right is at greater u.
        let step = FloorDrop { from: (5.0, -1.0), to: (5.0, 10.0), drop: 3.0 };
        let floor = Floor { steps: vec![step], ..Floor::default() };
        assert_eq!(floor.height(4.9, 2.0), 0.0);
        assert_eq!(floor.height(5.1, 2.0), -3.0);
        assert_eq!(floor.height(5.1, 12.0), 0.0, "a step is no longer than it was surveyed");
        assert_eq!(floor.line((0.0, 2.0), (10.0, 2.0)), vec![(0.0, 0.0), (0.5, 0.0), (0.5, -3.0), (1.0, -3.0)]);
    }
}
