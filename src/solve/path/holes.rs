//! Closed cutouts of a sheet over a chain.

use super::Chain;
use super::line::Line;
use super::polygon::{Side, Tag};
use super::sheet::{Seen, finished};
use super::whole::{Job, Layer};
use crate::findings::Problem;
use crate::geometry::Outline;
use crate::geometry::cut::{Ring, Step};
use crate::solve::{EdgeKind, Fitting, FlangeLap, Look, Plane};

/// A hole, with whose it is.
pub struct Hole<'a> {
    /// The fitting.
    pub fitting: &'a Fitting,
    /// Its ring, clockwise, in the first leg's coordinates.
    pub ring: Ring<Side>,
}

impl Hole<'_> {
    /// That it doesn't lie in its sheet.
    pub fn lost(&self, layer: Layer) -> Problem {
        Problem {
            message: format!("the cutout of {} lies across an edge of the {}", self.fitting.id, layer.word()),
            instead: "move it, or make it smaller".to_owned(),
            place: self.fitting.place.clone(),
        }
    }
}

impl Job<'_> {
    /// The holes of a chain.
    pub(super) fn holes(&self, chain: &Chain, layer: Layer, seen: &[Seen]) -> Vec<Hole<'_>> {
        let plane = if layer == Layer::Counter { Plane::Counter } else { Plane::Substrate };
        let mut holes = Vec::new();
        for (&leg, seen) in chain.legs.iter().zip(seen) {
            for fitting in &self.fittings[leg] {
                let Some(cut) = fitting.cutout(plane).filter(|cut| !cut.open) else { continue };
                let placed = cut.outline.mapped(|x, y| seen.out((x, y)), false);
                let clockwise = if placed.area() > 0.0 { placed.reversed() } else { placed };
                holes.push(Hole { fitting, ring: ring(&clockwise, edge(fitting)) });
            }
        }
        holes
    }
}

/// What the edge of a hole is.
fn edge(fitting: &Fitting) -> Tag {
    let kind = match (fitting.flange == FlangeLap::default(), fitting.look) {
        (false, _) => EdgeKind::Covered,
        (true, Look::Sink) => EdgeKind::Reveal,
        (true, _) => EdgeKind::Finished,
    };
    Tag { kind, ..finished(None) }
}

/// A hole's outline with what its edges are; roundings of less than a third of a circle know their corner.
fn ring(outline: &Outline, tag: Tag) -> Ring<Side> {
    let count = outline.vertices.len();
    let vertex = |k: usize| outline.vertices[k % count];
    (0..count)
        .map(|k| {
            let (before, a, b) = (vertex(k + count - 1), vertex(k), vertex(k + 1));
            let round = a.bulge != 0.0 && a.bulge.abs() < 0.58 && before.bulge == 0.0 && b.bulge == 0.0;
            let corner = round.then(|| {
                let next = vertex(k + 2);
                let one = Line::through((before.x, before.y), (a.x, a.y));
                one.meets(&Line::through((b.x, b.y), (next.x, next.y)))
            });
            Step { at: a, side: Side { tag: Tag { bulge: a.bulge, ..tag }, corner: corner.flatten() } }
        })
        .collect()
}
