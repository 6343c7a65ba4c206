//! A front edge with the bites out of it.

use super::line::Line;
use super::polygon::{Node, Shape, Tag};
use super::sheet::{Band, Seen};
use crate::solve::slab::Bite;

/// Why a front edge can't be had.
pub enum Bitten {
    /// A bite reaches through the band, or into its end.
    Through,
    /// It would bend through more than half a circle.
    TooRound,
}

/// Lengths shorter than this are rounding, mm.
const NOTHING: f64 = 1e-6;

/// A leg's front edge over u: straight, or an arc that bends towards the cook.
struct Edge {
    a: (f64, f64),
    b: (f64, f64),
    bulge: f64,
}

impl Edge {
    /// Its v at u = x.
    fn y(&self, x: f64) -> f64 {
        let (a, b) = (self.a, self.b);
        if self.bulge == 0.0 {
            return a.1 + (b.1 - a.1) * (x - a.0) / (b.0 - a.0);
        }
        let (centre, radius) = self.circle();
        centre.1 - (radius * radius - (x - centre.0) * (x - centre.0)).max(0.0).sqrt()
    }

    fn circle(&self) -> ((f64, f64), f64) {
        let (a, b, bulge) = (self.a, self.b, self.bulge);
        let off = (1.0 - bulge * bulge) / (4.0 * bulge);
        let centre = ((a.0 + b.0) / 2.0 - (b.1 - a.1) * off, (a.1 + b.1) / 2.0 + (b.0 - a.0) * off);
        (centre, (a.0 - centre.0).hypot(a.1 - centre.1))
    }

    /// Bulge of its stretch between two points on it.
    fn bulge(&self, from: (f64, f64), to: (f64, f64)) -> f64 {
        if self.bulge == 0.0 {
            return 0.0;
        }
        let (centre, _) = self.circle();
        let angle = |p: (f64, f64)| (p.1 - centre.1).atan2(p.0 - centre.0);
        ((angle(to) - angle(from)).rem_euclid(std::f64::consts::TAU) / 4.0).tan()
    }
}

/// Adds the corners of a leg's front edge from `corner` to short of the next corner `to`, with its bites. An arc may have a
/// bulge of `most`.
pub fn front(
    band: &Band,
    corner: Node,
    to: (f64, f64),
    seen: &Seen,
    most: f64,
    nodes: &mut Vec<Node>,
) -> Result<(), Bitten> {
    let (a, b) = (seen.back(corner.at), seen.back(to));
    let chord = (b.0 - a.0).hypot(b.1 - a.1);
    let bulge = if band.rise > 0.0 && chord > 0.0 { 2.0 * band.rise / chord } else { 0.0 };
    if bulge > most {
        return Err(Bitten::TooRound);
    }
    let edge = Edge { a, b, bulge };
    let mut bites: Vec<&(Bite, [Tag; 3])> = band.bites.iter().collect();
    bites.sort_by(|a, b| a.0.x0.total_cmp(&b.0.x0));
    let (mut starts, mut free, mut own) = (a, a.0, Vec::new());
    let mut first = corner;
    for (bite, [left, far, right]) in bites {
        if bite.x1 <= a.0 + NOTHING || bite.x0 >= b.0 - NOTHING {
            // It lies in a corner, on the other leg's counter, or past the end.
            return Err(Bitten::Through);
        }
        let (x0, x1) = (bite.x0.max(free), bite.x1);
        if x1 <= x0 + NOTHING {
            continue;
        }
        let back = depth(&band.back, x0).min(depth(&band.back, x1));
        if x0 <= a.0 + NOTHING || x1 >= b.0 - NOTHING || bite.y >= back - NOTHING {
            return Err(Bitten::Through);
        }
        let (y0, y1) = (edge.y(x0), edge.y(x1));
        first.edge.bulge = edge.bulge(starts, (x0, y0));
        own.push(first);
        let put = |x: f64, y: f64, radius: f64, edge: Tag| Node {
            at: seen.out((x, y)),
            shape: if radius > 0.0 { Shape::Round(radius) } else { Shape::Sharp },
            edge,
        };
        own.push(put(x0, y0, bite.mouth, *left));
        own.push(put(x0, bite.y, bite.inner, *far));
        own.push(put(x1, bite.y, bite.inner, *right));
        first = put(x1, y1, bite.mouth, corner.edge);
        (starts, free) = ((x1, y1), x1);
    }
    first.edge.bulge = edge.bulge(starts, b);
    own.push(first);
    nodes.append(&mut own);
    Ok(())
}

/// v of a line at u = x.
fn depth(line: &Line, x: f64) -> f64 {
    if line.way.0.abs() < 1e-12 { line.at.1 } else { line.at.1 + line.way.1 * (x - line.at.0) / line.way.0 }
}
