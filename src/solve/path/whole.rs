//! The counter and the substrate over a chain of legs: one outline, and its pieces.

use super::polygon::{Line, Node, Shape, Tag};
use super::sheet::{Band, Broken, Meeting, Part, Seen, Sheet, finished};
use super::{Chain, Turn};
use crate::findings::{Place, Problem};
use crate::geometry::{LegPoint, Outline, Region};
use crate::parameters::given::{self, CornerSeam, CornerShape, FrontEdge, Given, JointKind, Through};
use crate::solve::levels::Levels;
use crate::solve::slab::Bite;
use crate::solve::{Edge, EdgeKind, Extent, Fitting, FittingKind, Plane};
use crate::units::{Length, Show};

/// The nodes that a walk round a sheet passed, and the outline that it made.
type Walked = (Vec<Node>, Outline);

/// A sheet over a chain, solved.
#[derive(Clone, Debug)]
pub struct Over {
    /// The whole outline with its holes, in the first leg's (u, v), mm.
    pub region: Region,
    /// Its edges, in the first leg's (u, v), counter-clockwise, radii left out of account.
    pub edges: Vec<Edge>,
    /// Its pieces, left to right.
    pub pieces: Vec<Piece>,
    /// Each leg's share between its corners, in the leg's own (u, v).
    pub shares: Vec<Region>,
}

/// A piece of such a sheet.
#[derive(Clone, Debug)]
pub struct Piece {
    /// The leg whose coordinates it is given in: the first one that it lies on.
    pub leg: usize,
    /// All legs that it lies on.
    pub legs: Vec<usize>,
    /// Its outline and holes in that leg's (u, v), mm.
    pub region: Region,
    /// Its edges in that leg's (u, v).
    pub edges: Vec<Edge>,
}

/// Which sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// The counter.
    Counter,
    /// The substrate.
    Substrate,
}

/// What a sheet is worked out from.
pub struct Job<'a> {
    /// The prepared job.
    pub given: &'a Given,
    /// The datums and bounds of each leg.
    pub levels: &'a [&'a Levels],
    /// The fittings of each leg.
    pub fittings: &'a [Vec<Fitting>],
    /// How lengths are told.
    pub show: Show,
}

/// The counter or the substrate over a chain.
///
/// Errors: a leg too short for its corners, a radius with no room, a seam through a cutout, a cutout that leaves the
/// sheet.
pub fn over(job: &Job, chain: &Chain, layer: Layer) -> Result<Over, Vec<Problem>> {
    let mut problems = job.seams(chain, layer);
    let bands: Vec<Band> = chain.legs.iter().map(|&leg| job.band(leg, layer)).collect();
    let meetings: Vec<Meeting> = chain.joints.iter().filter_map(|&joint| job.meeting(joint, layer)).collect();
    let seam = Tag { kind: EdgeKind::Seam, overhang: None, joint: Some(job.given.counter.seam_joint), bulge: 0.0 };
    let sheet = Sheet { bands, meetings, seam };
    let seen = sheet.seen();
    let mut walk = |part: &Part| -> Option<(Vec<Node>, Outline)> {
        let walked = sheet.walk(part).and_then(|nodes| Ok((Sheet::outline(&nodes)?, nodes)));
        match walked {
            Ok((outline, nodes)) => Some((nodes, outline)),
            Err(broken) => {
                let problem = job.told(broken, chain, layer);
                if !problems.contains(&problem) {
                    problems.push(problem);
                }
                None
            }
        }
    };
    let whole = walk(&sheet.whole());
    let parts: Vec<(Part, Option<Walked>)> = sheet.parts().into_iter().map(|part| (part, walk(&part))).collect();
    let shares: Vec<Option<Walked>> = (0..chain.legs.len()).map(|leg| walk(&sheet.share(leg))).collect();
    if !problems.is_empty() {
        return Err(problems);
    }
    let holes = job.holes(chain, layer, &seen);
    let mut placed = vec![false; holes.len()];
    let mut pieces = Vec::new();
    for (part, walked) in parts {
        let Some((nodes, outer)) = walked else { continue };
        let mut own = Vec::new();
        for (hole, placed) in holes.iter().zip(&mut placed) {
            if !*placed && holds(&outer, &hole.1) {
                *placed = true;
                own.push(hole.1.clone());
            }
        }
        let from = &seen[part.first];
        pieces.push(Piece {
            leg: chain.legs[part.first],
            legs: chain.legs[part.first..=part.last].to_vec(),
            region: region_in(from, &outer, &own),
            edges: edges(&nodes, |p| from.back(p)),
        });
    }
    for ((fitting, _), placed) in holes.iter().zip(&placed) {
        if !placed {
            let what = if layer == Layer::Counter { "counter" } else { "substrate" };
            problems.push(Problem {
                message: format!("the cutout of {} lies across an edge or a seam of the {what}", fitting.id),
                instead: "move it, or move the seam clear of it".to_owned(),
                place: fitting.place.clone(),
            });
        }
    }
    let Some((nodes, outer)) = whole else { return Err(problems) };
    if !problems.is_empty() {
        return Err(problems);
    }
    let all: Vec<Outline> = holes.iter().map(|(_, hole)| hole.clone()).collect();
    let shares = shares
        .into_iter()
        .enumerate()
        .filter_map(|(at, walked)| {
            let (_, outer) = walked?;
            let own: Vec<Outline> = all.iter().filter(|hole| holds(&outer, hole)).cloned().collect();
            Some(region_in(&seen[at], &outer, &own))
        })
        .collect();
    let region = Region { outer, holes: all };
    let apart = pieces.iter().map(|piece| piece.region.area()).sum::<f64>() - region.area();
    if apart.abs() > SUMS {
        let what = if layer == Layer::Counter { "counter" } else { "substrate" };
        return Err(vec![Problem::new(
            format!("the pieces of the {what} do not add up to its outline: {:.0} mm\u{b2} apart", apart.abs()),
            "move the seams clear of corners, cutouts and one another",
        )]);
    }
    Ok(Over { region, edges: edges(&nodes, |p| p), pieces, shares })
}

/// Most that pieces may differ from the whole, mm2: a corner's fillet next to a seam. More is a piece lost or doubled,
/// which must not be cut from.
const SUMS: f64 = 30.0;

/// A region given in the first leg's coordinates, in another's.
fn region_in(from: &Seen, outer: &Outline, holes: &[Outline]) -> Region {
    let turned = |outline: &Outline| outline.mapped(|x, y| from.back((x, y)), false);
    Region { outer: turned(outer), holes: holes.iter().map(turned).collect() }
}

/// Whether a hole lies in an outline altogether.
fn holds(outer: &Outline, hole: &Outline) -> bool {
    // A tenth of a millimetre of chord is far finer than what may lie between a hole and an edge.
    hole.flattened(0.1).iter().all(|&(x, y)| outer.contains(LegPoint::new(x, y)))
}

/// The edges of walked nodes, in exact lengths.
fn edges(nodes: &[Node], map: impl Fn((f64, f64)) -> (f64, f64)) -> Vec<Edge> {
    let exact = |p: (f64, f64)| {
        let (x, y) = map(p);
        (Length::from_mm(x), Length::from_mm(y))
    };
    let count = nodes.len();
    (0..count)
        .map(|at| {
            let (a, b) = (&nodes[at], &nodes[(at + 1) % count]);
            Edge {
                kind: a.edge.kind,
                from: exact(a.at),
                to: exact(b.at),
                overhang: a.edge.overhang,
                joint: a.edge.joint,
            }
        })
        .collect()
}

impl Job<'_> {
    fn leg(&self, leg: usize) -> (&given::Leg, &Levels) {
        (&self.given.legs[leg], self.levels[leg])
    }

    /// What is wrong with the seams across the legs of a chain.
    fn seams(&self, chain: &Chain, layer: Layer) -> Vec<Problem> {
        let mut problems = Vec::new();
        if layer == Layer::Substrate {
            return problems;
        }
        let place = self.given.counter.place.as_ref();
        let mut say = |message: String, instead: &str, place: Option<&Place>| {
            problems.push(Problem { message, instead: instead.to_owned(), place: place.cloned() });
        };
        for &leg in &chain.legs {
            let (given, levels) = self.leg(leg);
            let d = &levels.datums;
            for &(_, u) in self.given.counter.seams.iter().filter(|(on, _)| *on == leg) {
                let text = self.show.plain(u);
                if u <= d.counter_left || u >= d.counter_right {
                    say(
                        format!("a seam at {text} lies off the counter of leg {}", given.id),
                        "place it on the leg",
                        place,
                    );
                }
                let through = self.fittings[leg].iter().find(|fitting| {
                    fitting.cutout(Plane::Counter).is_some_and(|cut| cut.extent.x0 < u && u < cut.extent.x1)
                });
                if let Some(fitting) = through {
                    let message =
                        format!("the seam at {text} on leg {} runs through the cutout of {}", given.id, fitting.id);
                    say(message, "on a leg that turns a corner, keep seams clear of cutouts", place);
                }
            }
            let arc = matches!(given.own.front, FrontEdge::Arc(_));
            if arc && self.given.counter.seams.iter().any(|(on, _)| *on == leg) {
                let message = format!("leg {} has an arc for its front edge, and a seam across it", given.id);
                say(message, "make the arc of one piece: leave the seam out", given.place.as_ref());
            }
            if arc && self.fittings[leg].iter().any(|fitting| fitting.kind == FittingKind::Notch) {
                let message = format!("leg {} has an arc for its front edge, and a notch in it", given.id);
                say(message, "make the front edge straight, or give the grill a well", given.place.as_ref());
            }
        }
        for &index in &chain.joints {
            let joint = &self.given.joints[index];
            let JointKind::Corner(corner) = &joint.kind else { continue };
            let shaped =
                if corner.turn > 0.0 { corner.radius > Length::ZERO } else { corner.outer != CornerShape::Common };
            if shaped && self.bent(joint) {
                let message = "a corner of the counter is shaped beside a front edge that is an arc".to_owned();
                say(message, "leave the corner sharp, or make the front edge straight", joint.place.as_ref());
            }
        }
        problems
    }

    /// Whether a front edge that meets a corner is an arc.
    fn bent(&self, joint: &given::Joint) -> bool {
        [joint.left, joint.right].iter().any(|&leg| matches!(self.given.legs[leg].own.front, FrontEdge::Arc(_)))
    }

    /// A leg's share.
    fn band(&self, leg: usize, layer: Layer) -> Band {
        let (given, levels) = self.leg(leg);
        let d = &levels.datums;
        let counter = &self.given.counter;
        let [left, right, back] = &levels.bounds;
        let extent = match layer {
            Layer::Counter => {
                Extent { x0: d.counter_left, y0: d.counter_front, x1: d.counter_right, y1: d.counter_back }
            }
            Layer::Substrate => crate::solve::substrate::extent(self.given.substrate.edge, d, &levels.bounds),
        };
        let (x0, y0, x1, y1) = (extent.x0.mm(), extent.y0.mm(), extent.x1.mm(), extent.y1.mm());
        let is_counter = layer == Layer::Counter;
        let over = given.own.overhang_front.unwrap_or(counter.overhang_front).mm();
        let (front, rise) = match given.own.front {
            FrontEdge::Sloped(a, b) if is_counter => {
                let from = if self.meets(leg, 0) { 0.0 } else { x0 };
                let to = if self.meets(leg, 1) { d.finished_right.mm() } else { x1 };
                (Line::through((from, -a.mm()), (to, -b.mm())), 0.0)
            }
            FrontEdge::Arc(rise) if is_counter => (Line { at: (x0, -over), way: (1.0, 0.0) }, rise.mm()),
            _ => (Line { at: (x0, y0), way: (1.0, 0.0) }, 0.0),
        };
        let skew = if is_counter { given.own.skew.map(Length::mm) } else { [0.0; 2] };
        let ends = [Line::through((x0, y0), (x0 - skew[0], y1)), Line::through((x1, y0), (x1 + skew[1], y1))];
        let shape = |at: usize, free: bool| match given.own.corners[at] {
            _ if !is_counter => Shape::Sharp,
            CornerShape::Common if free => Shape::Round(counter.corner_radius.mm()),
            CornerShape::Common => Shape::Sharp,
            CornerShape::Round(radius) => Shape::Round(radius.mm()),
            CornerShape::Clipped(by) => Shape::Clip(by.mm()),
        };
        let (l, r, b) = (left.is_open(), right.is_open(), back.is_open());
        let wall = Tag { kind: EdgeKind::Wall, overhang: None, joint: Some(counter.wall_joint), bulge: 0.0 };
        let behind = match (b, counter.splash) {
            (true, _) => finished(Some(d.counter_back - d.finished_back)),
            (false, Some(_)) => Tag { kind: EdgeKind::Splash, ..wall },
            (false, None) => wall,
        };
        let straight = matches!(given.own.front, FrontEdge::Straight);
        let tags = [
            finished(straight.then_some(-d.counter_front)),
            if r { finished(Some(d.counter_right - d.finished_right)) } else { wall },
            behind,
            if l { finished(Some(-d.counter_left)) } else { wall },
        ];
        let mouth = if is_counter { counter.corner_radius.mm() } else { 0.0 };
        let plane = if is_counter { Plane::Counter } else { Plane::Substrate };
        let bites = self.fittings[leg]
            .iter()
            .filter_map(|fitting| Some((fitting, fitting.cutout(plane).filter(|cut| cut.open)?)))
            .map(|(fitting, cut)| {
                let edge = |lap: Length| Tag {
                    kind: if lap > Length::ZERO { EdgeKind::Covered } else { EdgeKind::Finished },
                    ..finished(None)
                };
                let bite = Bite {
                    x0: cut.extent.x0.mm(),
                    x1: cut.extent.x1.mm(),
                    y: cut.extent.y1.mm(),
                    mouth,
                    inner: cut.radius.mm(),
                };
                (bite, [edge(fitting.flange.left), edge(fitting.flange.far), edge(fitting.flange.right)])
            })
            .collect();
        let seams = self.given.counter.seams.iter().filter(|(on, _)| is_counter && *on == leg);
        Band {
            right: d.finished_right.mm(),
            front,
            rise,
            back: Line { at: (x0, y1), way: (1.0, 0.0) },
            ends,
            shapes: [shape(0, l), shape(1, r), shape(2, r && b), shape(3, l && b)],
            tags,
            bites,
            seams: seams.map(|(_, u)| u.mm()).collect(),
        }
    }

    /// Whether a leg's end (0 left, 1 right) turns a corner.
    fn meets(&self, leg: usize, side: usize) -> bool {
        self.given.joints.iter().any(|joint| {
            let at = if side == 0 { joint.right } else { joint.left };
            at == leg && matches!(joint.kind, JointKind::Corner(_))
        })
    }

    /// How the sheets of two legs meet at a corner.
    fn meeting(&self, joint: usize, layer: Layer) -> Option<Meeting> {
        let joint = &self.given.joints[joint];
        let JointKind::Corner(corner) = &joint.kind else { return None };
        let counter = layer == Layer::Counter;
        let free = |leg: usize| self.levels[leg].bounds[2].is_open();
        let inside = corner.turn > 0.0;
        let outer = match corner.outer {
            _ if !counter => Shape::Sharp,
            CornerShape::Common if inside && !(free(joint.left) && free(joint.right)) => Shape::Sharp,
            CornerShape::Common if !inside && self.bent(joint) => Shape::Sharp,
            CornerShape::Common => Shape::Round(self.given.counter.corner_radius.mm()),
            CornerShape::Round(radius) => Shape::Round(radius.mm()),
            CornerShape::Clipped(by) => Shape::Clip(by.mm()),
        };
        Some(Meeting {
            turn: Turn::of(corner.turn),
            left_through: corner.through != Through::Right,
            // Where neither frame runs through, each sheet ends over its own frame.
            mitred: corner.through == Through::Neither || (counter && corner.seam == CornerSeam::Mitre),
            cut: !counter || corner.seam != CornerSeam::None,
            radius: if counter { corner.radius.mm() } else { 0.0 },
            outer,
        })
    }

    /// Closed cutouts of a chain in the first leg's coordinates, with their fittings.
    fn holes(&self, chain: &Chain, layer: Layer, seen: &[Seen]) -> Vec<(&Fitting, Outline)> {
        let plane = if layer == Layer::Counter { Plane::Counter } else { Plane::Substrate };
        let legs = chain.legs.iter().zip(seen);
        legs.flat_map(|(&leg, seen)| {
            let cuts = self.fittings[leg].iter().filter_map(move |fitting| Some((fitting, fitting.cutout(plane)?)));
            cuts.filter(|(_, cut)| !cut.open)
                .map(move |(fitting, cut)| (fitting, cut.outline.mapped(|x, y| seen.out((x, y)), false)))
        })
        .collect()
    }

    fn told(&self, broken: Broken, chain: &Chain, layer: Layer) -> Problem {
        let what = if layer == Layer::Counter { "counter" } else { "substrate" };
        let leg = |at: usize| &self.given.legs[chain.legs[at.min(chain.legs.len() - 1)]];
        let problem = |at: usize, message: String, instead: &str| Problem {
            message,
            instead: instead.to_owned(),
            place: leg(at).place.clone(),
        };
        match broken {
            Broken::TooShort(at) => problem(
                at,
                format!("leg {} is too short for its corners: nothing of its {what} would be left", leg(at).id),
                "make the leg longer than the depth of the leg that it meets, or let the other leg run through",
            ),
            Broken::TooRound(size) => {
                let size = self.show.plain(Length::from_mm(size));
                problem(
                    0,
                    format!("a corner of the {what} is shaped by {size}, more than its edges have room for"),
                    "make the radius or the clip smaller",
                )
            }
            Broken::Bitten(at) => problem(
                at,
                format!("a notch on leg {} runs into the end or the back of the {what}, or into a corner", leg(at).id),
                "move it away from the corner, or make it less deep",
            ),
            Broken::Parallel(at) => problem(
                at,
                format!("the edges of the {what} of leg {} never meet those of the next one", leg(at).id),
                "check the angle of the corner and the slope of the front edges",
            ),
        }
    }
}
