//! The edges of a walked ring, its roundings left out of account.

use super::polygon::Side;
use crate::geometry::cut::Ring;
use crate::solve::Edge;
use crate::units::Length;

/// Points nearer to a line than this lie on it, mm.
const ON: f64 = 1e-4;

/// A corner and the edge that leaves it.
#[derive(Clone, Copy)]
struct Corner {
    at: (f64, f64),
    side: Side,
    /// It is where a rounding starts or ends.
    soft: bool,
}

/// The edges, each from the sharp corner to the next, every point through `map`, in exact lengths.
pub fn edges(ring: &Ring<Side>, map: impl Fn((f64, f64)) -> (f64, f64)) -> Vec<Edge> {
    let mut corners: Vec<Corner> = Vec::with_capacity(ring.len());
    for (index, step) in ring.iter().enumerate() {
        let after_round = ring[(index + ring.len() - 1) % ring.len()].side.corner.is_some();
        let soft = after_round || step.side.corner.is_some();
        corners.push(Corner { at: (step.at.x, step.at.y), side: step.side, soft });
        if let Some(at) = step.side.corner {
            corners.push(Corner { at, side: step.side, soft: false });
        }
    }
    // Where a rounding starts and ends is no corner, if the edge goes on to the sharp one. A seam that starts at the
    // end of a rounding leaves it standing.
    let mut index = 0;
    while corners.len() > 3 && index < corners.len() {
        let count = corners.len();
        let (before, after) = (corners[(index + count - 1) % count], corners[(index + 1) % count]);
        let here = corners[index];
        // An arc runs into its rounding off its chord.
        let bends = match (here.side.corner, before.side.corner) {
            (Some(_), None) => before.side.tag.bulge != 0.0,
            (None, _) => here.side.tag.bulge != 0.0,
            _ => false,
        };
        let straight = off(here.at, before.at, after.at) < ON || apart(here.at, before.at) < ON;
        if here.soft && (straight || bends) {
            let previous = (index + count - 1) % count;
            // What is left keeps the tag of the edge, not that of the rounding.
            if corners[previous].side.corner.is_some() {
                corners[previous].side = here.side;
            }
            corners.remove(index);
            index = index.saturating_sub(1);
        } else {
            index += 1;
        }
    }
    let exact = |p: (f64, f64)| {
        let (x, y) = map(p);
        (Length::from_mm(x), Length::from_mm(y))
    };
    let count = corners.len();
    (0..count)
        .map(|at| {
            let (a, b) = (&corners[at], &corners[(at + 1) % count]);
            let tag = a.side.tag;
            Edge { kind: tag.kind, from: exact(a.at), to: exact(b.at), overhang: tag.overhang, joint: tag.joint }
        })
        .filter(|edge| edge.from != edge.to)
        .collect()
}

fn apart(a: (f64, f64), b: (f64, f64)) -> f64 {
    (a.0 - b.0).hypot(a.1 - b.1)
}

/// How far a point lies off the line through two others, mm.
fn off(p: (f64, f64), a: (f64, f64), b: (f64, f64)) -> f64 {
    let long = apart(a, b);
    if long < ON {
        return apart(p, a);
    }
    ((b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0)).abs() / long
}
