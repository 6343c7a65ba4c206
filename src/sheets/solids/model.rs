//! The run as flat faces in space, gathered from the solved legs.

use super::facet::{Facet, Skin};
use super::space::{Place, Pose, plus};
use crate::geometry::{LegPoint, Placement};
use crate::sheets::client::patch::{Patch, Rect, Ring, Spot, area};
use crate::sheets::client::scene::Scene;
use crate::solve::{Face, Solved};

/// Neighbouring sides that turn by less than this are one bent face, degrees.
const SMOOTH: f64 = 24.0;

/// Faces with what is needed to paint them.
pub struct Model<'s> {
    /// The run.
    pub solved: &'s Solved,
    /// Faces of legs, for painting.
    pub scenes: Vec<Scene<'s>>,
    /// All flat faces.
    pub facets: Vec<Facet>,
    /// Bodies of legs and counters.
    pub bodies: Vec<Body>,
    solids: usize,
    leg: Option<usize>,
}

/// An upright body, for where a plane cuts it.
pub struct Body {
    /// What it is.
    pub name: String,
    /// The level frame of its plan.
    pub pose: Pose,
    /// Its plan.
    pub plan: Patch,
    /// Its bottom and top.
    pub z: (f64, f64),
}

/// Where things are cut out of and set into.
#[derive(Clone, Copy, Debug)]
pub struct Depth {
    /// From the frame's plane, along its normal.
    pub from: f64,
    /// To.
    pub to: f64,
}

impl<'s> Model<'s> {
    /// Nothing yet.
    pub fn new(solved: &'s Solved) -> Model<'s> {
        Model { solved, scenes: Vec::new(), facets: Vec::new(), bodies: Vec::new(), solids: 0, leg: None }
    }

    /// Begins another thing, of a leg or not: what is added from now on belongs to it.
    pub fn begin(&mut self, leg: Option<usize>) {
        self.solids += 1;
        self.leg = leg;
    }

    /// Adds a face of the thing begun last, with its drawn outlines.
    pub fn add(&mut self, name: String, pose: Pose, patch: Patch, skin: Skin, lines: Vec<[Spot; 2]>, pen: f64) {
        let bends = Vec::new();
        if !patch.is_empty() {
            self.facets.push(Facet { name, solid: self.solids, leg: self.leg, pose, patch, skin, lines, bends, pen });
        }
    }

    /// Adds a face with all its outline.
    pub fn face(&mut self, name: String, pose: Pose, patch: Patch, skin: Skin, pen: f64) {
        let lines = outlines(&patch);
        self.add(name, pose, patch, skin, lines, pen);
    }

    /// A patch pulled out along its frame's normal: the face on it, and a side for each of its edges. The sides of holes
    /// look into them.
    pub fn pulled(
        &mut self,
        name: &str,
        pose: Pose,
        patch: Patch,
        depth: Depth,
        (skin, side): (Skin, impl Fn(f64) -> Skin),
        pen: f64,
    ) {
        let normal = pose.normal();
        for (r, ring) in patch.rings.iter().enumerate() {
            let count = ring.len();
            // Sides look outwards from a ring that runs counter-clockwise.
            let outer = r == 0 || inside_none(&patch, r);
            let ring: Ring =
                if (area(ring) > 0.0) == outer { ring.clone() } else { ring.iter().rev().copied().collect() };
            for k in 0..count {
                let (before, a, b, after) =
                    (ring[(k + count - 1) % count], ring[k], ring[(k + 1) % count], ring[(k + 2) % count]);
                let length = (b[0] - a[0]).hypot(b[1] - a[1]);
                if length < 0.01 {
                    continue;
                }
                let across = plus(pose.across.map(|c| c * (b[0] - a[0]) / length), pose.up, (b[1] - a[1]) / length);
                let own = Pose { at: plus(pose.place(a), normal, depth.from), across, up: normal };
                let high = depth.to - depth.from;
                let (p, q, s, t) = ([0.0, 0.0], [length, 0.0], [length, high], [0.0, high]);
                let (mut lines, mut bends) = (vec![[p, q], [t, s]], Vec::new());
                for (line, turn) in [([p, t], turn(before, a, b)), ([q, s], turn(a, b, after))] {
                    if turn > SMOOTH { lines.push(line) } else { bends.push(line) }
                }
                let quad = Rect::new(0.0, 0.0, length, high).patch();
                self.add(format!("{name} side"), own, quad, side(high), lines, pen);
                if let Some(facet) = self.facets.last_mut() {
                    facet.bends = bends;
                }
            }
        }
        self.face(name.to_owned(), pose.out(depth.to), patch, skin, pen);
    }

    /// The scene of a leg's face, made when first asked for. `span` is where its finish begins and ends.
    pub fn scene(&mut self, leg: usize, face: Face, span: Option<(f64, f64)>) -> usize {
        let solved = self.solved;
        let known = self.scenes.iter().position(|scene| {
            scene.face == face && solved.legs.get(leg).is_some_and(|leg| std::ptr::eq(scene.leg, leg))
        });
        known.unwrap_or_else(|| {
            let mut scene = Scene::new(solved, &solved.legs[leg], face);
            scene.span = span.unwrap_or(scene.span);
            self.scenes.push(scene);
            self.scenes.len() - 1
        })
    }

    /// The box of all faces that `counts` holds for, on the picture.
    pub fn bounds(&self, spot: impl Fn(Place) -> Spot, counts: impl Fn(&Facet) -> bool) -> Rect {
        let empty = Rect { x0: f64::INFINITY, y0: f64::INFINITY, x1: f64::NEG_INFINITY, y1: f64::NEG_INFINITY };
        let counted = self.facets.iter().filter(|facet| counts(facet));
        let spots = counted.flat_map(|f| f.patch.rings.iter().flatten().map(|at| spot(f.pose.place(*at))));
        spots.fold(empty, |b, [x, y]| Rect { x0: b.x0.min(x), y0: b.y0.min(y), x1: b.x1.max(x), y1: b.y1.max(y) })
    }
}

/// Whether a ring of a patch lies in none of the others: an outside, not a hole.
fn inside_none(patch: &Patch, ring: usize) -> bool {
    let Some(spot) = patch.rings[ring].first() else { return true };
    let others = patch.rings.iter().enumerate().filter(|(k, _)| *k != ring);
    others.filter(|(_, other)| Patch::of((*other).clone()).holds(*spot)).count() % 2 == 0
}

/// How much a line turns at `b`, degrees.
fn turn(a: Spot, b: Spot, c: Spot) -> f64 {
    let (p, q) = ([b[0] - a[0], b[1] - a[1]], [c[0] - b[0], c[1] - b[1]]);
    (p[0] * q[1] - p[1] * q[0]).atan2(p[0] * q[0] + p[1] * q[1]).to_degrees().abs()
}

/// The edges of a patch, smooth ones too.
pub fn outlines(patch: &Patch) -> Vec<[Spot; 2]> {
    let rings = patch.rings.iter();
    rings.flat_map(|ring| (0..ring.len()).map(|k| [ring[k], ring[(k + 1) % ring.len()]])).collect()
}

/// The direction of a leg's u and v in the plan.
pub fn ways(placement: Placement) -> (Place, Place) {
    let (sin, cos) = placement.angle.sin_cos();
    ([cos, sin, 0.0], [-sin, cos, 0.0])
}

/// A place given in a leg's coordinates.
pub fn place(placement: Placement, u: f64, v: f64, z: f64) -> Place {
    let plan = placement.to_plan(LegPoint::new(u, v));
    [plan.x, plan.y, z]
}

/// A level frame in a leg's (u, v), looking up.
pub fn level(placement: Placement) -> Pose {
    let (across, up) = ways(placement);
    Pose { at: place(placement, 0.0, 0.0, 0.0), across, up }
}

/// The frame of a face of a leg, as its viewer sees it: x to the right from the finished end, y up.
pub fn pose_of(solved: &Solved, leg: usize, face: Face) -> Pose {
    let leg = &solved.legs[leg];
    let (u, v) = ways(leg.placement);
    let (right, back) = (leg.datums.finished_right.mm(), leg.datums.finished_back.mm());
    let turned = |way: Place| way.map(|c| -c);
    let (at, across) = match face {
        Face::Front => ((0.0, 0.0), u),
        Face::Back => ((right, back), turned(u)),
        Face::Left => ((0.0, back), turned(v)),
        Face::Right => ((right, 0.0), v),
    };
    Pose { at: place(leg.placement, at.0, at.1, 0.0), across, up: [0.0, 0.0, 1.0] }
}
