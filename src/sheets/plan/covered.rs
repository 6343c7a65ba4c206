//! Ground that counters cover, on the sheet: marks about a face stand before it, never on a counter.

use super::seen::Seen;
use crate::geometry::{PaperPoint, Plan, Region};
use crate::sheets::set::Set;
use crate::sheets::view::View;

/// How far from an outline its flattened arcs may lie, model mm.
const FLAT: f64 = 1.0;

/// The outlines of all counters of a view.
pub struct Covered {
    rings: Vec<Vec<PaperPoint>>,
}

impl Covered {
    /// Of a whole run, its legs where they lie.
    pub fn of(set: &Set<'_>, view: &View<Plan>) -> Covered {
        let solved = set.solved;
        let seen =
            |index: usize| Seen { leg: &solved.legs[index], index, placement: solved.legs[index].placement, view };
        let slabs = solved.slabs.iter().filter_map(|slab| slab.legs.first().map(|leg| (*leg, &slab.region)));
        let own = (0..solved.legs.len()).map(|leg| (leg, &solved.legs[leg].counter.region));
        Covered { rings: slabs.chain(own).map(|(leg, region)| ring(&seen(leg), region)).collect() }
    }

    /// Of one leg by itself.
    pub fn one(seen: &Seen<'_>) -> Covered {
        Covered { rings: vec![ring(seen, &seen.leg.counter.region)] }
    }

    /// Whether a counter lies there. Even-odd, so that the sides' direction doesn't matter.
    pub fn holds(&self, p: PaperPoint) -> bool {
        let in_one = |ring: &Vec<PaperPoint>| {
            let mut inside = false;
            for (k, a) in ring.iter().enumerate() {
                let b = ring[(k + 1) % ring.len()];
                if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x) {
                    inside = !inside;
                }
            }
            inside
        };
        self.rings.iter().any(in_one)
    }
}

fn ring(seen: &Seen<'_>, region: &Region) -> Vec<PaperPoint> {
    region.outer.flattened(FLAT).into_iter().map(|(u, v)| seen.at_mm(u, v)).collect()
}
