//! A sheet that lies over the legs of a chain, walked round as a whole.
//!
//! Everything is worked out in the coordinates of the chain's first leg, so that where the run stands in the plan
//! changes no figure. The outline is built from the edges themselves: each edge is a line at its distance from
//! the leg's finished face, and corners are where the lines meet, so that offsets are mitred by construction.

use super::Turn;
use super::bites::{Bitten, front};
use super::line::Line;
use super::nicks::{Nick, nicked};
use super::polygon::{Node, Shape, Side, Tag, ring, tidied};
use crate::geometry::cut::{Ring, outline_of};
use crate::solve::slab::Bite;
use crate::solve::{EdgeKind, Face};
use crate::units::Length;

/// A leg's share of a sheet, in the leg's own coordinates, mm.
#[derive(Clone, Debug)]
pub struct Band {
    /// The leg's finished right end, mm.
    pub right: f64,
    /// The front edge, from left to right.
    pub front: Line,
    /// How far the front edge bends out in its middle, mm; 0 is straight.
    pub rise: f64,
    /// The back edge, from left to right.
    pub back: Line,
    /// The end edges where the leg meets no other, left and right, from front to back.
    pub ends: [Line; 2],
    /// Shapes of its four corners: front left, front right, back right, back left.
    pub shapes: [Shape; 4],
    /// What its edges meet: front, right, back, left.
    pub tags: [Tag; 4],
    /// Bites out of its front edge, with what each of their edges meets: left, far, right.
    pub bites: Vec<(Bite, [Tag; 3])>,
    /// Notches out of its back and its ends.
    pub nicks: Vec<Nick>,
    /// Where it is cut across, mm along u.
    pub seams: Vec<f64>,
}

/// How two bands meet.
#[derive(Clone, Copy, Debug)]
pub struct Meeting {
    /// The turn.
    pub turn: Turn,
    /// The left one's piece runs through (of a butt joint).
    pub left_through: bool,
    /// They are cut along the corner's diagonal.
    pub mitred: bool,
    /// There is a cut at all.
    pub cut: bool,
    /// Shape of the inside corner.
    pub inner: Shape,
    /// Shape of the outside corner.
    pub outer: Shape,
}

/// A sheet over a chain.
pub struct Sheet {
    /// The bands, left to right.
    pub bands: Vec<Band>,
    /// Between them.
    pub meetings: Vec<Meeting>,
    /// The tag of a seam.
    pub seam: Tag,
}

/// Why a sheet can't be made.
#[derive(Clone, Debug, PartialEq)]
pub enum Broken {
    /// A band is too short for what meets it: its place in the chain.
    TooShort(usize),
    /// A radius or clip is greater than its edge has room for, mm.
    TooRound(f64),
    /// A bite reaches through the band, or into its end or corner: its place in the chain.
    Bitten(usize),
    /// A notch out of the back or an end reaches a corner, through the band or into a cutout: its place in the chain.
    Nicked(usize),
    /// Two edges of a corner are parallel.
    Parallel(usize),
    /// A seam leaves no piece on one side of it: its place in the chain, and mm along u.
    Seam(usize, f64),
}

/// A leg's coordinates seen from the first one's.
#[derive(Clone, Copy, Debug)]
pub struct Seen {
    at: (f64, f64),
    cos: f64,
    sin: f64,
}

impl Seen {
    /// A point of the leg in the first one's coordinates.
    pub fn out(&self, p: (f64, f64)) -> (f64, f64) {
        (self.at.0 + p.0 * self.cos - p.1 * self.sin, self.at.1 + p.0 * self.sin + p.1 * self.cos)
    }

    /// A point of the first one's coordinates in the leg's.
    pub fn back(&self, p: (f64, f64)) -> (f64, f64) {
        let (x, y) = (p.0 - self.at.0, p.1 - self.at.1);
        (x * self.cos + y * self.sin, -x * self.sin + y * self.cos)
    }

    /// A line of the leg in the first one's coordinates.
    pub fn line(&self, line: &Line) -> Line {
        let way = (line.way.0 * self.cos - line.way.1 * self.sin, line.way.0 * self.sin + line.way.1 * self.cos);
        Line { at: self.out(line.at), way }
    }
}

/// Where two legs' edges meet.
pub struct Meet {
    /// The front edges.
    pub front: (f64, f64),
    /// The back edges.
    pub back: (f64, f64),
}

impl Sheet {
    /// How each leg's coordinates lie in the first one's.
    pub fn seen(&self) -> Vec<Seen> {
        let mut all = vec![Seen { at: (0.0, 0.0), cos: 1.0, sin: 0.0 }];
        for (band, meeting) in self.bands.iter().zip(&self.meetings) {
            let from = all[all.len() - 1];
            let (cos, sin) = (meeting.turn.cos, -meeting.turn.sin);
            all.push(Seen {
                at: from.out((band.right, 0.0)),
                cos: from.cos * cos - from.sin * sin,
                sin: from.sin * cos + from.cos * sin,
            });
        }
        all
    }

    /// Where the edges of a leg and the next one meet.
    pub fn meet(&self, at: usize, seen: &[Seen]) -> Result<Meet, Broken> {
        let [(left_front, left_back), (right_front, right_back)] = [at, at + 1].map(|leg| self.lines(leg, seen));
        let meet = |a: &Line, b: &Line| a.meets(b).ok_or(Broken::Parallel(at));
        Ok(Meet { front: meet(&left_front, &right_front)?, back: meet(&left_back, &right_back)? })
    }

    /// A leg's front and back edge.
    pub fn lines(&self, leg: usize, seen: &[Seen]) -> (Line, Line) {
        (seen[leg].line(&self.bands[leg].front), seen[leg].line(&self.bands[leg].back))
    }

    /// The ends of the chain's first or last leg, front and back.
    pub fn end(&self, leg: usize, side: usize, seen: &[Seen]) -> Result<Meet, Broken> {
        let (front, back) = self.lines(leg, seen);
        let line = seen[leg].line(&self.bands[leg].ends[side]);
        let meet = |other: &Line| line.meets(other).ok_or(Broken::Parallel(leg));
        Ok(Meet { front: meet(&front)?, back: meet(&back)? })
    }

    /// The whole sheet's ring, counter-clockwise from its front left, without closed cutouts.
    pub fn whole(&self, seen: &[Seen]) -> Result<Ring<Side>, Broken> {
        let last = self.bands.len() - 1;
        let (left, right) = (self.end(0, 0, seen)?, self.end(last, 1, seen)?);
        let meets: Vec<Meet> = (0..last).map(|at| self.meet(at, seen)).collect::<Result<_, _>>()?;
        self.long_enough(&left, &right, &meets, seen)?;
        // No more than half a circle; beside another leg no more than would turn back on its front.
        let most = if last == 0 { 1.0 } else { 0.5 };
        let mut nodes: Vec<Node> = Vec::new();
        for (leg, band) in self.bands.iter().enumerate() {
            let from = leg.checked_sub(1).map_or(left.front, |at| meets[at].front);
            let to = meets.get(leg).map_or(right.front, |meet| meet.front);
            let shape = leg.checked_sub(1).map_or(band.shapes[0], |at| self.meetings[at].front());
            let corner = Node { at: from, shape, edge: band.tags[0] };
            front(band, corner, to, &seen[leg], most, &mut nodes).map_err(|bitten| match bitten {
                Bitten::Through => Broken::Bitten(leg),
                Bitten::TooRound => Broken::TooRound(band.rise),
            })?;
        }
        let (first, end) = (&self.bands[0], &self.bands[last]);
        let mut walk = |leg: usize, side: Face, from: Node, to: (f64, f64)| {
            nicked(&self.bands[leg], side, from, to, &seen[leg], &mut nodes).map_err(|_| Broken::Nicked(leg))
        };
        walk(last, Face::Right, Node { at: right.front, shape: end.shapes[1], edge: end.tags[1] }, right.back)?;
        for leg in (0..=last).rev() {
            let (at, shape) = match meets.get(leg) {
                Some(meet) => (meet.back, self.meetings[leg].back()),
                None => (right.back, end.shapes[2]),
            };
            let to = leg.checked_sub(1).map_or(left.back, |before| meets[before].back);
            walk(leg, Face::Back, Node { at, shape, edge: self.bands[leg].tags[2] }, to)?;
        }
        walk(0, Face::Left, Node { at: left.back, shape: first.shapes[3], edge: first.tags[3] }, left.front)?;
        let area: f64 = (0..nodes.len())
            .map(|at| (nodes[at].at, nodes[(at + 1) % nodes.len()].at))
            .map(|(a, b)| a.0 * b.1 - b.0 * a.1)
            .sum();
        if area <= 0.0 || !crosses_nowhere(&nodes.iter().map(|node| node.at).collect::<Vec<_>>()) {
            // Notches out of two edges may run into each other.
            let nicked = self.bands.iter().position(|band| !band.nicks.is_empty());
            return Err(nicked.map_or(Broken::TooShort(0), Broken::Nicked));
        }
        let ring = ring(&tidied(&nodes)).map_err(Broken::TooRound)?;
        // An arc may still bend into another leg's edge.
        if let Some(band) = self.bands.iter().find(|band| band.rise > 0.0)
            && !crosses_nowhere(&outline_of(&ring).flattened(FINE))
        {
            return Err(Broken::TooRound(band.rise));
        }
        Ok(ring)
    }

    /// Every edge along a leg runs the way that the leg does, between its corners and between its seams.
    fn long_enough(&self, left: &Meet, right: &Meet, meets: &[Meet], seen: &[Seen]) -> Result<(), Broken> {
        for (leg, seen) in seen.iter().enumerate() {
            let before = leg.checked_sub(1).map_or(left, |at| &meets[at]);
            let after = meets.get(leg).unwrap_or(right);
            let u = |p: (f64, f64)| seen.back(p).0;
            if u(after.front) - u(before.front) < 1.0 || u(after.back) - u(before.back) < 1.0 {
                return Err(Broken::TooShort(leg));
            }
        }
        Ok(())
    }
}

impl Meeting {
    /// Shape of the corner between the front edges.
    fn front(&self) -> Shape {
        if self.turn.is_inside() { self.inner } else { self.outer }
    }

    /// Shape of the corner between the back edges.
    fn back(&self) -> Shape {
        if self.turn.is_inside() { self.outer } else { self.inner }
    }
}

/// How far chords may lie off an arc when it is looked at for crossings, mm.
const FINE: f64 = 0.1;

/// Whether no two edges of a walked outline that aren't neighbours cross.
fn crosses_nowhere(points: &[(f64, f64)]) -> bool {
    let count = points.len();
    let point = |index: usize| points[index % count];
    let side = |a: (f64, f64), b: (f64, f64), p: (f64, f64)| (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0);
    for i in 0..count {
        for j in i + 2..count {
            if i == 0 && j + 1 == count {
                continue;
            }
            let (a, b, c, d) = (point(i), point(i + 1), point(j), point(j + 1));
            if side(a, b, c) * side(a, b, d) < -1e-9 && side(c, d, a) * side(c, d, b) < -1e-9 {
                return false;
            }
        }
    }
    true
}

/// A tag of an edge that is finished, this far past the finished face.
pub fn finished(overhang: Option<Length>) -> Tag {
    Tag { kind: EdgeKind::Finished, overhang, joint: None, bulge: 0.0 }
}
