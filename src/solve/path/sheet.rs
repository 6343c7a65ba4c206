//! A sheet that lies over the legs of a chain: its outline as a whole, and each piece between two cuts.
//!
//! Everything is worked out in the coordinates of the chain's first leg, so that where the run stands in the plan
//! changes no figure. The outline is built from the edges themselves: each edge is a line at its distance from
//! the leg's finished face, and corners are where the lines meet, so that offsets are mitred by construction.

use super::Turn;
use super::polygon::{Half, Line, Node, Shape, Tag, outline, tidied};
use crate::geometry::Outline;
use crate::solve::EdgeKind;
use crate::solve::slab::Bite;
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
    /// Radius of the inside corner, mm.
    pub radius: f64,
    /// Shape of the outside corner.
    pub outer: Shape,
}

/// Where a piece ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Cut {
    /// At the end of the chain.
    End,
    /// At a seam across its leg, mm along u.
    Across(f64),
    /// At the corner.
    Corner,
}

/// A piece: from a cut on one leg (by its place in the chain) to a cut on the same or a later one.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// Its leftmost leg.
    pub first: usize,
    /// Its left end.
    pub left: Cut,
    /// Its rightmost leg.
    pub last: usize,
    /// Its right end.
    pub right: Cut,
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

/// Why a part can't be walked.
#[derive(Clone, Debug, PartialEq)]
pub enum Broken {
    /// A band is too short for what meets it: its place in the chain.
    TooShort(usize),
    /// A radius or clip is greater than its edge has room for, mm.
    TooRound(f64),
    /// A bite reaches through the band, or into its end or corner: its place in the chain.
    Bitten(usize),
    /// Two edges of a corner are parallel.
    Parallel(usize),
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

    fn line(&self, line: &Line) -> Line {
        let way = (line.way.0 * self.cos - line.way.1 * self.sin, line.way.0 * self.sin + line.way.1 * self.cos);
        Line { at: self.out(line.at), way }
    }
}

/// The corner line of a chain and what is needed to walk round it.
struct CornerPoints {
    front: (f64, f64),
    back: (f64, f64),
    /// Ends of a butt seam, or of the mitre: on the front side and on the back side.
    seam: ((f64, f64), (f64, f64)),
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

    /// The parts that the cuts leave, left to right.
    pub fn parts(&self) -> Vec<Part> {
        let mut parts = Vec::new();
        let mut start = (0, Cut::End);
        for (at, band) in self.bands.iter().enumerate() {
            let mut seams = band.seams.clone();
            seams.sort_by(f64::total_cmp);
            for u in seams {
                parts.push(Part { first: start.0, left: start.1, last: at, right: Cut::Across(u) });
                start = (at, Cut::Across(u));
            }
            if self.meetings.get(at).is_some_and(|meeting| meeting.cut) {
                parts.push(Part { first: start.0, left: start.1, last: at, right: Cut::Corner });
                start = (at + 1, Cut::Corner);
            }
        }
        parts.push(Part { first: start.0, left: start.1, last: self.bands.len() - 1, right: Cut::End });
        parts
    }

    /// The whole, as if in one piece.
    pub fn whole(&self) -> Part {
        Part { first: 0, left: Cut::End, last: self.bands.len() - 1, right: Cut::End }
    }

    /// The share of one leg, between its corners.
    pub fn share(&self, leg: usize) -> Part {
        let left = if leg == 0 { Cut::End } else { Cut::Corner };
        let right = if leg + 1 == self.bands.len() { Cut::End } else { Cut::Corner };
        Part { first: leg, left, last: leg, right }
    }

    /// Walks a part counter-clockwise from its front left. Corners without rounding or clip are as they are cut.
    pub fn walk(&self, part: &Part) -> Result<Vec<Node>, Broken> {
        let seen = self.seen();
        let mut front: Vec<(Node, usize)> = Vec::new();
        let mut back: Vec<Node> = Vec::new();
        let left = self.end(part.first, part.left, 0, &seen)?;
        let right = self.end(part.last, part.right, 1, &seen)?;
        // Front edges from left to right.
        let (first, _) = left[0];
        front.push((Node { at: first.at, shape: first.shape, edge: self.bands[part.first].tags[0] }, part.first));
        for at in part.first..part.last {
            let meeting = &self.meetings[at];
            let points = self.corner(at, &seen)?;
            let (near, far) = (self.bands[at + 1].tags[0], self.bands[at].tags[2]);
            let (a, b) = if meeting.turn.is_inside() {
                (Shape::Round(meeting.radius), meeting.outer)
            } else {
                (meeting.outer, Shape::Round(meeting.radius))
            };
            front.push((Node { at: points.front, shape: a, edge: near }, at + 1));
            back.push(Node { at: points.back, shape: b, edge: far });
        }
        let mut nodes: Vec<Node> = Vec::new();
        let turn_back = right[0].0;
        for (index, &(node, leg)) in front.iter().enumerate() {
            let to = front.get(index + 1).map_or(turn_back.at, |(next, _)| next.at);
            self.front_edge(node, to, leg, &seen[leg], &mut nodes)?;
        }
        // Round the right end, along the backs to the left, round the left end.
        for (node, edge) in &right {
            nodes.push(Node { edge: edge.unwrap_or(self.bands[part.last].tags[2]), ..*node });
        }
        nodes.extend(back.iter().rev());
        for index in (1..left.len()).rev() {
            let edge = left[index - 1].1.unwrap_or(self.seam);
            nodes.push(Node { edge, ..left[index].0 });
        }
        self.check(part, &nodes, &seen)?;
        Ok(tidied(&nodes))
    }

    /// The outline of walked nodes.
    pub fn outline(nodes: &[Node]) -> Result<Outline, Broken> {
        outline(nodes).map_err(Broken::TooRound)
    }

    /// Where the edges of two legs meet, and where the cut between them runs.
    fn corner(&self, at: usize, seen: &[Seen]) -> Result<CornerPoints, Broken> {
        let meeting = &self.meetings[at];
        let lines = |leg: usize| (seen[leg].line(&self.bands[leg].front), seen[leg].line(&self.bands[leg].back));
        let ((left_front, left_back), (right_front, right_back)) = (lines(at), lines(at + 1));
        let meet = |a: &Line, b: &Line| a.meets(b).ok_or(Broken::Parallel(at));
        let (front, back) = (meet(&left_front, &right_front)?, meet(&left_back, &right_back)?);
        if meeting.mitred {
            return Ok(CornerPoints { front, back, seam: (front, back) });
        }
        // The through leg's inner edge, moved so far that the rounding stays whole in its piece.
        let inside = meeting.turn.is_inside();
        let inner = |leg: (Line, Line)| if inside { leg.0 } else { leg.1 };
        let (through, butting) = if meeting.left_through {
            ((left_front, left_back), (right_front, right_back))
        } else {
            ((right_front, right_back), (left_front, left_back))
        };
        let corner = if inside { front } else { back };
        let away = {
            let unit = inner(butting).unit();
            if meeting.left_through { unit } else { (-unit.0, -unit.1) }
        };
        let trim = meeting.radius * (meeting.turn.angle.abs() / 2.0).tan();
        let start = (corner.0 + away.0 * trim, corner.1 + away.1 * trim);
        let seam = Line { at: start, way: inner(through).way };
        let ends = (meet(&seam, &butting.0)?, meet(&seam, &butting.1)?);
        Ok(CornerPoints { front, back, seam: ends })
    }

    /// The corners of a part's end from front to back, each with the edge that leaves it towards the back (`None`
    /// after the last). `side` is 0 for a left end, 1 for a right one.
    fn end(&self, leg: usize, cut: Cut, side: usize, seen: &[Seen]) -> Result<Vec<(Node, Option<Tag>)>, Broken> {
        let band = &self.bands[leg];
        let (front, back) = (seen[leg].line(&band.front), seen[leg].line(&band.back));
        let node = |at, shape| Node { at, shape, edge: self.seam };
        match cut {
            Cut::End | Cut::Across(_) => {
                let (line, shapes, tag) = match cut {
                    Cut::Across(u) => (Line { at: (u, 0.0), way: (0.0, 1.0) }, [Shape::Sharp; 2], self.seam),
                    _ if side == 0 => (band.ends[0], [band.shapes[0], band.shapes[3]], band.tags[3]),
                    _ => (band.ends[1], [band.shapes[1], band.shapes[2]], band.tags[1]),
                };
                let line = seen[leg].line(&line);
                let a = line.meets(&front).ok_or(Broken::Parallel(leg))?;
                let b = line.meets(&back).ok_or(Broken::Parallel(leg))?;
                Ok(vec![(node(a, shapes[0]), Some(tag)), (node(b, shapes[1]), None)])
            }
            Cut::Corner => {
                let joint = if side == 1 { leg } else { leg - 1 };
                let meeting = &self.meetings[joint];
                let points = self.corner(joint, seen)?;
                let other = if side == 1 { leg + 1 } else { leg - 1 };
                let inside = meeting.turn.is_inside();
                let (tags, seam) = (&self.bands[other].tags, self.seam);
                if meeting.mitred {
                    // Counter-clockwise, the front edge arrives at a right end and leaves a left one; the back edge
                    // the other way round.
                    let half = |front: bool, shape: Shape| {
                        let edge = if front { self.bands[other].front } else { self.bands[other].back };
                        let unit = seen[other].line(&edge).unit();
                        let other = if side == 1 { unit } else { (-unit.0, -unit.1) };
                        let arrives = front == (side == 1);
                        match shape {
                            Shape::Round(size) => Shape::Half(Half { size, round: true, other, arrives }),
                            Shape::Clip(size) => Shape::Half(Half { size, round: false, other, arrives }),
                            sharp => sharp,
                        }
                    };
                    let inner = Shape::Round(meeting.radius);
                    let (a, b) = if inside { (inner, meeting.outer) } else { (meeting.outer, inner) };
                    let ends = [node(points.front, half(true, a)), node(points.back, half(false, b))];
                    return Ok(vec![(ends[0], Some(seam)), (ends[1], None)]);
                }
                let through = meeting.left_through == (side == 1);
                let (s1, s2) = points.seam;
                if !through {
                    return Ok(vec![(node(s1, Shape::Sharp), Some(seam)), (node(s2, Shape::Sharp), None)]);
                }
                let round = Shape::Round(meeting.radius);
                let has_ear = meeting.radius > 0.0;
                let mut all = Vec::new();
                if inside {
                    if has_ear {
                        all.push((node(points.front, round), Some(tags[0])));
                    }
                    all.push((node(s1, Shape::Sharp), Some(seam)));
                    all.push((node(s2, Shape::Sharp), Some(tags[2])));
                    all.push((node(points.back, meeting.outer), None));
                } else {
                    all.push((node(points.front, meeting.outer), Some(tags[0])));
                    all.push((node(s1, Shape::Sharp), Some(seam)));
                    all.push((node(s2, Shape::Sharp), has_ear.then_some(tags[2])));
                    if has_ear {
                        all.push((node(points.back, round), None));
                    }
                }
                Ok(all)
            }
        }
    }

    /// A front edge from a corner to the next one, with its bites.
    fn front_edge(
        &self,
        from: Node,
        to: (f64, f64),
        leg: usize,
        seen: &Seen,
        nodes: &mut Vec<Node>,
    ) -> Result<(), Broken> {
        let band = &self.bands[leg];
        let (a, b) = (seen.back(from.at), seen.back(to));
        let mut bites: Vec<&(Bite, [Tag; 3])> =
            band.bites.iter().filter(|(bite, _)| bite.x1 > a.0 + 1e-6 && bite.x0 < b.0 - 1e-6).collect();
        bites.sort_by(|a, b| a.0.x0.total_cmp(&b.0.x0));
        let chord = (b.0 - a.0).hypot(b.1 - a.1);
        let bulge = if band.rise > 0.0 && chord > 0.0 { 2.0 * band.rise / chord } else { 0.0 };
        if band.rise > 0.0 && !bites.is_empty() {
            return Err(Broken::Bitten(leg));
        }
        // More than half a circle is no edge of a counter.
        if bulge > 1.0 {
            return Err(Broken::TooRound(band.rise));
        }
        nodes.push(Node { edge: Tag { bulge, ..from.edge }, ..from });
        let mut free = a.0;
        let edge_y = |x: f64| a.1 + (b.1 - a.1) * (x - a.0) / (b.0 - a.0);
        for (bite, [left, far, right]) in bites {
            let (x0, x1) = (bite.x0.max(free), bite.x1);
            if x1 <= x0 + 1e-6 {
                continue;
            }
            let back = seen_depth(band, x0).min(seen_depth(band, x1));
            if x0 <= a.0 + 1e-6 || x1 >= b.0 - 1e-6 || bite.y >= back - 1e-6 {
                return Err(Broken::Bitten(leg));
            }
            let mut put = |x: f64, y: f64, radius: f64, edge: Tag| {
                let shape = if radius > 0.0 { Shape::Round(radius) } else { Shape::Sharp };
                nodes.push(Node { at: seen.out((x, y)), shape, edge });
            };
            put(x0, edge_y(x0), bite.mouth, *left);
            put(x0, bite.y, bite.inner, *far);
            put(x1, bite.y, bite.inner, *right);
            put(x1, edge_y(x1), bite.mouth, from.edge);
            free = x1;
        }
        Ok(())
    }

    /// Every edge along a leg runs the way that the leg does.
    fn check(&self, part: &Part, nodes: &[Node], seen: &[Seen]) -> Result<(), Broken> {
        let mut area = 0.0;
        for (at, a) in nodes.iter().enumerate() {
            let b = &nodes[(at + 1) % nodes.len()];
            area += a.at.0 * b.at.1 - b.at.0 * a.at.1;
        }
        for leg in part.first..=part.last {
            let left = if leg == part.first {
                self.end(leg, part.left, 0, seen)?
            } else {
                self.end(leg, Cut::Corner, 0, seen)?
            };
            let right = if leg == part.last {
                self.end(leg, part.right, 1, seen)?
            } else {
                self.end(leg, Cut::Corner, 1, seen)?
            };
            let u = |node: &Node| seen[leg].back(node.at).0;
            let ends = |all: &[(Node, Option<Tag>)]| (u(&all[0].0), u(&all[all.len() - 1].0));
            let ((lf, lb), (rf, rb)) = (ends(&left), ends(&right));
            if rf - lf < 1.0 || rb - lb < 1.0 {
                return Err(Broken::TooShort(leg));
            }
        }
        if area <= 0.0 || !crosses_nowhere(nodes) { Err(Broken::TooShort(part.first)) } else { Ok(()) }
    }
}

/// v of a band's back edge at u = x.
fn seen_depth(band: &Band, x: f64) -> f64 {
    let (at, way) = (band.back.at, band.back.way);
    if way.0.abs() < 1e-12 { at.1 } else { at.1 + way.1 * (x - at.0) / way.0 }
}

/// Whether no two edges of a walked outline that aren't neighbours cross.
fn crosses_nowhere(nodes: &[Node]) -> bool {
    let count = nodes.len();
    let point = |index: usize| nodes[index % count].at;
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
