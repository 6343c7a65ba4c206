//! An outline as it is walked: corners with a shape, edges with what they meet.

use super::line::Line;
use super::round::{Bend, rounding};
use crate::geometry::Vertex;
use crate::geometry::cut::{Ring, Step};
use crate::solve::EdgeKind;
use crate::units::Length;

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
}

impl Shape {
    /// Its radius or clip, mm.
    pub fn size(self) -> f64 {
        match self {
            Shape::Sharp => 0.0,
            Shape::Round(size) | Shape::Clip(size) => size,
        }
    }
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

/// What is known of an edge of a ring.
#[derive(Clone, Copy, Debug)]
pub struct Side {
    /// What it meets.
    pub tag: Tag,
    /// It rounds the corner that lies here, mm.
    pub corner: Option<(f64, f64)>,
}

/// Lengths shorter than this are rounding, mm.
const NOTHING: f64 = 1e-6;

/// Without corners that lie where the next one does.
pub fn tidied(nodes: &[Node]) -> Vec<Node> {
    let count = nodes.len();
    let near = |a: &Node, b: &Node| (a.at.0 - b.at.0).hypot(a.at.1 - b.at.1) < NOTHING;
    (0..count).filter(|&at| !near(&nodes[at], &nodes[(at + 1) % count])).map(|at| nodes[at]).collect()
}

/// A corner once it has its shape: where the edge before it ends, where its own begins, and what lies between.
struct Shaped {
    arrives: (f64, f64),
    leaves: (f64, f64),
    /// Bulge of what lies between; `None` for a sharp corner.
    between: Option<f64>,
    size: f64,
}

/// The ring through the corners, each in its shape. A clipped corner is an edge of its own, a rounded one is not.
/// A corner between two arcs stays sharp.
///
/// Errors: a corner whose shape takes more off an edge than there is, or at which an arc turns back on its neighbour, as
/// its radius or clip, mm.
pub fn ring(nodes: &[Node]) -> Result<Ring<Side>, f64> {
    let count = nodes.len();
    let bend = |index: usize| Bend::between(nodes[index].at, nodes[(index + 1) % count].at, nodes[index].edge.bulge);
    let shaped: Vec<Shaped> = (0..count)
        .map(|index| {
            let (here, before) = (&nodes[index], (index + count - 1) % count);
            shaped(here, &bend(before), &bend(index))
        })
        .collect();
    let bent = (0..count).find(|&index| bend((index + count - 1) % count).is_cusp(&bend(index)));
    if let Some(index) = bent {
        return Err(shaped[index].size);
    }
    let mut ring = Vec::with_capacity(count * 2);
    for (index, here) in nodes.iter().enumerate() {
        let (own, next) = (&shaped[index], &shaped[(index + 1) % count]);
        let Some(bulge) = bend(index).held(own.leaves, next.arrives, NOTHING) else {
            return Err(own.size.max(next.size));
        };
        if let Some(between) = own.between {
            let before = nodes[(index + count - 1) % count].edge;
            let corner = (!matches!(here.shape, Shape::Clip(_))).then_some(here.at);
            let tag = if corner.is_some() { here.edge } else { clipped(&before, &here.edge) };
            let at = Vertex { x: own.arrives.0, y: own.arrives.1, bulge: between };
            ring.push(Step { at, side: Side { tag: Tag { bulge: between, ..tag }, corner } });
        }
        let at = Vertex { x: own.leaves.0, y: own.leaves.1, bulge };
        ring.push(Step { at, side: Side { tag: Tag { bulge, ..here.edge }, corner: None } });
    }
    Ok(ring)
}

/// What a clipped corner's edge meets: it is seen where one of its neighbours is.
fn clipped(before: &Tag, after: &Tag) -> Tag {
    let seen = before.kind == EdgeKind::Finished || after.kind == EdgeKind::Finished;
    if seen { super::sheet::finished(None) } else { *before }
}

fn shaped(node: &Node, before: &Bend, after: &Bend) -> Shaped {
    let sharp = Shaped { arrives: node.at, leaves: node.at, between: None, size: 0.0 };
    let off = |way: (f64, f64), by: f64| (node.at.0 + way.0 * by, node.at.1 + way.1 * by);
    match node.shape {
        Shape::Round(radius) if radius > NOTHING => match rounding(node.at, before, after, radius) {
            Some((arrives, leaves, bulge)) => Shaped { arrives, leaves, between: Some(bulge), size: radius },
            None => sharp,
        },
        Shape::Clip(by) if by > NOTHING && before.is_straight() && after.is_straight() => {
            let (back, ahead) = (Line::through(node.at, before.from).unit(), Line::through(node.at, after.to).unit());
            Shaped { arrives: off(back, by), leaves: off(ahead, by), between: Some(0.0), size: by }
        }
        _ => sharp,
    }
}

#[cfg(test)]
mod tests {
    use super::{Node, Shape, Tag, ring};
    use crate::geometry::cut::outline_of;
    use crate::solve::EdgeKind;

    fn node(x: f64, y: f64, shape: Shape, bulge: f64) -> Node {
        let edge = Tag { kind: EdgeKind::Finished, overhang: None, joint: None, bulge };
        Node { at: (x, y), shape, edge }
    }

    #[test]
    fn a_radius_that_is_greater_than_its_edge_is_refused() {
        let square = |shape| {
            [
                node(0.0, 0.0, shape, 0.0),
                node(10.0, 0.0, shape, 0.0),
                node(10.0, 10.0, shape, 0.0),
                node(0.0, 10.0, shape, 0.0),
            ]
        };
        assert!(ring(&square(Shape::Round(5.0))).is_ok());
        assert_eq!(ring(&square(Shape::Round(5.1))).unwrap_err(), 5.1);
        assert!((outline_of(&ring(&square(Shape::Clip(2.0))).unwrap()).area() - 92.0).abs() < 1e-9);
    }

    #[test]
    fn a_corner_beside_an_arc_is_rounded_into_it() {
        // Half a circle of radius 50 over a box: the rounding touches the box's side and the arc inside.
        let shape = |round| {
            [
                node(0.0, 0.0, round, 0.3),
                node(100.0, 0.0, round, 0.0),
                node(100.0, 60.0, Shape::Sharp, 0.0),
                node(0.0, 60.0, Shape::Sharp, 0.0),
            ]
        };
        let sharp = outline_of(&ring(&shape(Shape::Sharp)).unwrap());
        let round = outline_of(&ring(&shape(Shape::Round(4.0))).unwrap());
        let lost = sharp.area() - round.area();
        assert!(lost > 0.0 && lost < 2.0 * 4.0 * 4.0, "{lost}");
        // Smooth: at both ends of each rounding the two edges have one direction.
        for k in 0..round.vertices.len() {
            let (a, b) = (round.vertices[k], round.vertices[(k + 1) % round.vertices.len()]);
            let c = round.vertices[(k + 2) % round.vertices.len()];
            let way = |a: crate::geometry::Vertex, b: crate::geometry::Vertex, turn: f64| {
                (b.y - a.y).atan2(b.x - a.x) + turn * 2.0 * a.bulge.atan()
            };
            let turn = (way(b, c, -1.0) - way(a, b, 1.0)).rem_euclid(std::f64::consts::TAU);
            let turn = turn.min(std::f64::consts::TAU - turn);
            assert!(turn < 1e-9 || b.y > 59.0, "{b:?} {turn}");
        }
    }
}
