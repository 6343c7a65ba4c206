//! What a key plan draws, in plan millimetres, and the paper that it reaches over.

use crate::drawing::Pen;
use crate::geometry::{LegPoint, Outline, Placement, PlanPoint};
use crate::sheets::scale::Scale;
use crate::solve::{Face, Leg, Solved};

/// The face that is shown.
pub const HEAVY: Pen = Pen::new(1.0);
/// Length and width of the arrow's head, mm.
pub const HEAD: (f64, f64) = (3.2, 2.4);
/// From the face to the arrow's tip, mm.
const GAP: f64 = 1.4;
/// Length of the arrow, mm.
const ARROW: f64 = 6.0;
/// White round everything: half the heavy line and a little, mm.
const EDGE: f64 = 1.0;

/// A face that is shown.
#[derive(Clone, Debug)]
pub struct Look {
    /// Its finished ends.
    pub ends: [PlanPoint; 2],
    /// The way one looks at it, of length 1.
    way: (f64, f64),
}

/// A key plan before it has a place on a sheet.
#[derive(Clone, Debug)]
pub struct Figure {
    /// The leg that is shown.
    pub leg: usize,
    /// Counters from above, the lowest first.
    pub tops: Vec<Outline>,
    /// The shown leg, finished face to finished face.
    pub shown: Outline,
    /// The faces that are shown.
    pub looks: Vec<Look>,
}

impl Figure {
    /// Of a run whose leg `leg` is shown on `faces`.
    pub fn new(solved: &Solved, leg: usize, faces: &[Face]) -> Figure {
        let one = &solved.legs[leg];
        let d = &one.datums;
        let shown = Outline::from_corners(0.0, 0.0, d.finished_right.mm(), d.finished_back.mm());
        Figure {
            leg,
            tops: tops(solved),
            shown: placed(one.placement, &shown),
            looks: faces.iter().map(|face| Look::new(one, *face)).collect(),
        }
    }

    /// What it reaches over at a scale, from the plan's zero: left, low, right, high (up the sheet), mm of paper.
    pub fn reach(&self, scale: Scale) -> (f64, f64, f64, f64) {
        let s = scale.factor();
        let mut all = (f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY);
        let mut take = |x: f64, y: f64, by: f64| {
            all = (all.0.min(x * s - by), all.1.min(y * s - by), all.2.max(x * s + by), all.3.max(y * s + by));
        };
        for outline in self.tops.iter().chain([&self.shown]) {
            let (x0, y0, x1, y1) = outline.bounds();
            take(x0, y0, EDGE);
            take(x1, y1, EDGE);
        }
        for look in &self.looks {
            look.ends.iter().for_each(|p| take(p.x, p.y, EDGE));
            look.arrow(scale).iter().for_each(|p| take(p.x, p.y, HEAD.1 / 2.0));
        }
        all
    }
}

impl Look {
    fn new(leg: &Leg, face: Face) -> Look {
        let (u, v) = (leg.datums.finished_right.mm(), leg.datums.finished_back.mm());
        let (a, b, way) = match face {
            Face::Front => ((0.0, 0.0), (u, 0.0), (0.0, 1.0)),
            Face::Back => ((u, v), (0.0, v), (0.0, -1.0)),
            Face::Left => ((0.0, v), (0.0, 0.0), (1.0, 0.0)),
            Face::Right => ((u, 0.0), (u, v), (-1.0, 0.0)),
        };
        let place = |p: (f64, f64)| leg.placement.to_plan(LegPoint::new(p.0, p.1));
        let (sin, cos) = leg.placement.angle.sin_cos();
        Look { ends: [place(a), place(b)], way: (way.0 * cos - way.1 * sin, way.0 * sin + way.1 * cos) }
    }

    /// Tail and tip of its arrow at a scale.
    pub fn arrow(&self, scale: Scale) -> [PlanPoint; 2] {
        let middle = self.ends[0].towards(self.ends[1], 0.5);
        [GAP + ARROW, GAP].map(|off| off / scale.factor()).map(|off| middle.moved(-self.way.0 * off, -self.way.1 * off))
    }
}

/// An outline of a leg in the plan.
fn placed(placement: Placement, outline: &Outline) -> Outline {
    let place = |x: f64, y: f64| {
        let point = placement.to_plan(LegPoint::new(x, y));
        (point.x, point.y)
    };
    outline.mapped(place, false)
}

/// Outlines of all counters: one over legs that meet, one a leg for the others.
fn tops(solved: &Solved) -> Vec<Outline> {
    let slabs = solved.slabs.iter().filter_map(|slab| {
        let leg = solved.legs.get(*slab.legs.first()?)?;
        Some((leg, &slab.region.outer))
    });
    let own = solved.legs.iter().enumerate().filter(|(index, _)| !solved.slabs.iter().any(|s| s.legs.contains(index)));
    let mut all: Vec<(&Leg, &Outline)> = slabs.chain(own.map(|(_, leg)| (leg, &leg.counter.region.outer))).collect();
    all.sort_by_key(|(leg, _)| leg.datums.counter_top);
    all.into_iter().map(|(leg, outline)| placed(leg.placement, outline)).collect()
}
