//! Back and end edges with the notches out of them.

use super::line::Line;
use super::polygon::{Node, Shape, Tag};
use super::sheet::{Band, Seen};
use crate::solve::Face;

/// Lengths shorter than this are rounding, mm.
const NOTHING: f64 = 1e-6;

/// A notch out of a straight edge, in the leg's own coordinates, mm.
#[derive(Clone, Copy, Debug)]
pub struct Nick {
    /// The edge that it is cut out of.
    pub edge: Face,
    /// Its lesser side along the edge.
    pub low: f64,
    /// Its greater side.
    pub high: f64,
    /// How far in it reaches: a v (back), or a u (ends).
    pub reach: f64,
    /// Radius of the two corners at the edge.
    pub mouth: f64,
    /// Radius of the two corners inside.
    pub inner: f64,
    /// What its edges meet.
    pub tag: Tag,
}

/// A notch reaches past the ends of its edge, through the band, or into another notch.
pub struct Nicked;

/// Adds the corners of a back or end edge from `corner` to short of the next corner `to`, with its notches.
pub fn nicked(
    band: &Band,
    side: Face,
    corner: Node,
    to: (f64, f64),
    seen: &Seen,
    nodes: &mut Vec<Node>,
) -> Result<(), Nicked> {
    let (a, b) = (seen.back(corner.at), seen.back(to));
    let back = side == Face::Back;
    // Along the edge and across it.
    let split = |p: (f64, f64)| if back { p } else { (p.1, p.0) };
    let join = |along: f64, off: f64| seen.out(if back { (along, off) } else { (off, along) });
    let ((from, at_from), (end, at_end)) = (split(a), split(b));
    let off = |along: f64| at_from + (at_end - at_from) * (along - from) / (end - from);
    let mut nicks: Vec<&Nick> = band.nicks.iter().filter(|nick| nick.edge == side).collect();
    let onwards = end > from;
    nicks.sort_by(|p, q| if onwards { p.low.total_cmp(&q.low) } else { q.low.total_cmp(&p.low) });
    nodes.push(corner);
    let mut free = from;
    for nick in nicks {
        let (near, far) = if onwards { (nick.low, nick.high) } else { (nick.high, nick.low) };
        // A sheet whose edge is held back further than the notch reaches isn't cut.
        let inwards = if side == Face::Left { 1.0 } else { -1.0 };
        let deep = ((nick.reach - off(near)) * inwards).min((nick.reach - off(far)) * inwards);
        if deep <= NOTHING {
            continue;
        }
        let past = |along: f64, limit: f64| (along - limit) * (end - from).signum() <= NOTHING;
        if past(near, free) || !past(far, end - (end - from).signum() * 2.0 * NOTHING) || !clear(band, nick) {
            return Err(Nicked);
        }
        let put = |along: f64, off: f64, radius: f64, edge: Tag| Node {
            at: join(along, off),
            shape: if radius > 0.0 { Shape::Round(radius) } else { Shape::Sharp },
            edge,
        };
        nodes.push(put(near, off(near), nick.mouth, nick.tag));
        nodes.push(put(near, nick.reach, nick.inner, nick.tag));
        nodes.push(put(far, nick.reach, nick.inner, nick.tag));
        nodes.push(put(far, off(far), nick.mouth, corner.edge));
        free = far;
    }
    Ok(())
}

/// Whether a notch leaves something between it and the front edge, the notches in that, and the far edge.
fn clear(band: &Band, nick: &Nick) -> bool {
    let front = |u: f64| depth(&band.front, u) - band.rise.min(0.0);
    let back = |u: f64| depth(&band.back, u);
    match nick.edge {
        Face::Front => true,
        Face::Back => {
            let shallow = |u: f64| nick.reach > front(u) + NOTHING;
            let meets = |low: f64, high: f64| low < nick.high + NOTHING && high > nick.low - NOTHING;
            shallow(nick.low)
                && shallow(nick.high)
                && band.bites.iter().all(|(bite, _)| !meets(bite.x0, bite.x1) || bite.y < nick.reach - NOTHING)
        }
        Face::Left | Face::Right => {
            let into = |x0: f64, x1: f64| {
                if nick.edge == Face::Left { x0 <= nick.reach + NOTHING } else { x1 >= nick.reach - NOTHING }
            };
            let ends = nick.low > front(nick.reach) && nick.high < back(nick.reach);
            ends && band.bites.iter().all(|(bite, _)| !into(bite.x0, bite.x1) || bite.y < nick.low - NOTHING)
        }
    }
}

/// v of a line at u = x.
fn depth(line: &Line, x: f64) -> f64 {
    if line.way.0.abs() < 1e-12 { line.at.1 } else { line.at.1 + line.way.1 * (x - line.at.0) / line.way.0 }
}
