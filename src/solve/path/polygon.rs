//! An outline as it is walked: corners with a shape, edges with what they meet.

use crate::geometry::{Outline, Vertex};
use crate::solve::EdgeKind;
use crate::units::Length;

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
}

/// What an edge meets.
#[derive(Clone, Copy, Debug)]
pub struct Tag {
    /// Kind.
    pub kind: EdgeKind,
    /// Overhang past the finished face.
    pub overhang: Option<Length>,
    /// Joint to what it meets.
    pub joint: Option<Length>,
    /// The edge is an arc with this bulge; 0 is straight.
    pub bulge: f64,
}

/// Shape of a corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Sharp.
    Sharp,
    /// Rounded, mm.
    Round(f64),
    /// Clipped by this much on both edges, mm.
    Clip(f64),
    /// Half of a shape that a mitre cuts in two.
    Half(Half),
}

/// A piece's half of a corner that a mitre cuts in two.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Half {
    /// Radius, or what is clipped off both edges, mm.
    pub size: f64,
    /// It is rounded, not clipped.
    pub round: bool,
    /// The direction in which the other piece's edge leaves the corner, of length 1.
    pub other: (f64, f64),
    /// The piece's own edge arrives at the corner; else it leaves it.
    pub arrives: bool,
}

/// A corner of a walked outline, and the edge that leaves it.
#[derive(Clone, Copy, Debug)]
pub struct Node {
    /// Where, mm.
    pub at: (f64, f64),
    /// Its shape.
    pub shape: Shape,
    /// The edge to the next one.
    pub edge: Tag,
}

/// Lengths shorter than this are rounding, mm.
const NOTHING: f64 = 1e-6;

/// Without corners that lie where the next one does.
pub fn tidied(nodes: &[Node]) -> Vec<Node> {
    let count = nodes.len();
    let near = |a: &Node, b: &Node| (a.at.0 - b.at.0).hypot(a.at.1 - b.at.1) < NOTHING;
    (0..count).filter(|&at| !near(&nodes[at], &nodes[(at + 1) % count])).map(|at| nodes[at]).collect()
}

/// The outline through the corners, each in its shape.
///
/// Errors: a corner whose shape takes more off an edge than there is, as its radius or clip, mm.
pub fn outline(nodes: &[Node]) -> Result<Outline, f64> {
    let count = nodes.len();
    let mut vertices: Vec<Vertex> = Vec::with_capacity(count * 2);
    // What the shapes take off the start and the end of each edge.
    let mut taken = vec![(0.0_f64, 0.0_f64, 0.0_f64); count];
    for (index, here) in nodes.iter().enumerate() {
        let before = &nodes[(index + count - 1) % count];
        let (inwards, outwards) =
            (Line::through(here.at, before.at).unit(), Line::through(here.at, nodes[(index + 1) % count].at).unit());
        let mut put = |x: f64, y: f64, bulge: f64| vertices.push(Vertex { x, y, bulge });
        let off = |way: (f64, f64), by: f64| (here.at.0 + way.0 * by, here.at.1 + way.1 * by);
        let mut take = |back: f64, ahead: f64, size: f64| {
            let last = (index + count - 1) % count;
            taken[last].1 += back;
            taken[index].0 += ahead;
            taken[last].2 = taken[last].2.max(size);
            taken[index].2 = taken[index].2.max(size);
        };
        let bulge = here.edge.bulge;
        match here.shape {
            Shape::Round(radius) if radius > NOTHING && bulge == 0.0 && before.edge.bulge == 0.0 => {
                let between = (inwards.0 * outwards.0 + inwards.1 * outwards.1).clamp(-1.0, 1.0).acos();
                let cross = inwards.0 * outwards.1 - inwards.1 * outwards.0;
                if cross.abs() < 1e-9 {
                    put(here.at.0, here.at.1, bulge);
                    continue;
                }
                let trim = radius / (between / 2.0).tan();
                take(trim, trim, radius);
                let turn = ((std::f64::consts::PI - between) / 4.0).tan();
                let (a, b) = (off(inwards, trim), off(outwards, trim));
                put(a.0, a.1, if cross < 0.0 { turn } else { -turn });
                put(b.0, b.1, bulge);
            }
            Shape::Clip(by) if by > NOTHING => {
                take(by, by, by);
                let (a, b) = (off(inwards, by), off(outwards, by));
                put(a.0, a.1, 0.0);
                put(b.0, b.1, bulge);
            }
            Shape::Half(half) if half.size > NOTHING => {
                let (own, seam) = if half.arrives { (inwards, outwards) } else { (outwards, inwards) };
                let (touch, middle, turn) = half_shape(&half, own, seam);
                let (t, m) = (off(own, touch), (here.at.0 + middle.0, here.at.1 + middle.1));
                if half.arrives {
                    take(touch, 0.0, half.size);
                    put(t.0, t.1, turn);
                    put(m.0, m.1, bulge);
                } else {
                    take(0.0, touch, half.size);
                    put(m.0, m.1, turn);
                    put(t.0, t.1, bulge);
                }
            }
            _ => put(here.at.0, here.at.1, bulge),
        }
    }
    for (index, (start, end, size)) in taken.iter().enumerate() {
        let (a, b) = (nodes[index].at, nodes[(index + 1) % count].at);
        if start + end > (a.0 - b.0).hypot(a.1 - b.1) + NOTHING {
            return Err(*size);
        }
    }
    Ok(Outline { vertices })
}

/// A half shape: how far along `own` it starts, where it meets the seam (from the corner), and the bulge of the arc
/// between. All directions leave the corner and have length 1.
fn half_shape(half: &Half, own: (f64, f64), seam: (f64, f64)) -> (f64, (f64, f64), f64) {
    let Half { size, other, .. } = *half;
    if !half.round {
        let clip = Line::through((own.0 * size, own.1 * size), (other.0 * size, other.1 * size));
        let meets = Line { at: (0.0, 0.0), way: seam }.meets(&clip).unwrap_or((0.0, 0.0));
        return (size, meets, 0.0);
    }
    let between = (own.0 * other.0 + own.1 * other.1).clamp(-1.0, 1.0).acos();
    let touch = size / (between / 2.0).tan();
    let middle = (own.0 + other.0, own.1 + other.1);
    let long = middle.0.hypot(middle.1).max(f64::MIN_POSITIVE);
    let away = size / (between / 2.0).sin();
    let centre = (middle.0 / long * away, middle.1 / long * away);
    // At an outside corner the seam meets the arc; at an inside one, its line carried on past the corner does.
    let convex = centre.0 * seam.0 + centre.1 * seam.1 > 0.0;
    let on = if convex { seam } else { (-seam.0, -seam.1) };
    let along = centre.0 * on.0 + centre.1 * on.1;
    let apart = (centre.0 * centre.0 + centre.1 * centre.1 - along * along).max(0.0);
    let share = along - (size * size - apart).max(0.0).sqrt();
    let meets = (on.0 * share, on.1 * share);
    let (from, to) = ((own.0 * touch - centre.0, own.1 * touch - centre.1), (meets.0 - centre.0, meets.1 - centre.1));
    let angle = ((from.0 * to.0 + from.1 * to.1) / (size * size)).clamp(-1.0, 1.0).acos();
    let turn = (angle / 4.0).tan();
    (touch, meets, if convex { turn } else { -turn })
}

#[cfg(test)]
mod tests {
    use super::{Half, Node, Shape, Tag, outline};
    use crate::solve::EdgeKind;
    use std::f64::consts::PI;

    fn node(x: f64, y: f64, shape: Shape) -> Node {
        let edge = Tag { kind: EdgeKind::Finished, overhang: None, joint: None, bulge: 0.0 };
        Node { at: (x, y), shape, edge }
    }

    #[test]
    fn two_mitred_halves_are_the_rounded_corner() {
        // An L of two legs 10 deep, inside corner at (20, 10), outside corner at (30, 0).
        let radius = 4.0;
        let half = |other, arrives| Shape::Half(Half { size: radius, round: true, other, arrives });
        let low = [
            node(0.0, 0.0, Shape::Sharp),
            node(30.0, 0.0, Shape::Sharp),
            node(20.0, 10.0, half((0.0, 1.0), false)),
            node(0.0, 10.0, Shape::Sharp),
        ];
        let high = [
            node(30.0, 0.0, Shape::Sharp),
            node(30.0, 40.0, Shape::Sharp),
            node(20.0, 40.0, Shape::Sharp),
            node(20.0, 10.0, half((-1.0, 0.0), true)),
        ];
        let (low, high) = (outline(&low).unwrap(), outline(&high).unwrap());
        let whole = 300.0 + 300.0 + (4.0 - PI) * radius * radius / 4.0;
        assert!((low.area() + high.area() - whole).abs() < 1e-9, "{} {}", low.area(), high.area());
    }

    #[test]
    fn a_radius_that_is_greater_than_its_edge_is_refused() {
        let square =
            |shape| [node(0.0, 0.0, shape), node(10.0, 0.0, shape), node(10.0, 10.0, shape), node(0.0, 10.0, shape)];
        assert!(outline(&square(Shape::Round(5.0))).is_ok());
        assert_eq!(outline(&square(Shape::Round(5.1))), Err(5.1));
        assert!((outline(&square(Shape::Clip(2.0))).unwrap().area() - 92.0).abs() < 1e-9);
    }
}
