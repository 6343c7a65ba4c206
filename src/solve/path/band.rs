//! A leg's share of a sheet, and how two of them meet, from the job.

use super::Turn;
use super::line::Line;
use super::nicks::Nick;
use super::polygon::{Shape, Tag};
use super::sheet::{Band, Meeting, finished};
use super::whole::{Job, Layer};
use crate::parameters::given::{CornerSeam, CornerShape, FrontEdge, JointKind, Through};
use crate::solve::slab::Bite;
use crate::solve::{CounterNotch, EdgeKind, Extent, Face, Plane};
use crate::units::Length;

impl Job<'_> {
    /// Whether a leg's front edge is an arc.
    pub(super) fn bends(&self, leg: usize) -> bool {
        matches!(self.given.legs[leg].own.front, FrontEdge::Arc(_))
    }

    /// Whether a leg's end (0 left, 1 right) turns a corner.
    fn meets(&self, leg: usize, side: usize) -> bool {
        self.given.joints.iter().any(|joint| {
            let at = if side == 0 { joint.right } else { joint.left };
            at == leg && matches!(joint.kind, JointKind::Corner(_))
        })
    }

    /// A leg's share.
    pub(super) fn band(&self, leg: usize, layer: Layer) -> Band {
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
            .chain(self.front_notches(leg, y0, mouth))
            .collect();
        let nicks = self.nicks(leg, [l, r, b].map(|free| if free { mouth } else { 0.0 }));
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
            nicks,
            seams: seams.map(|(_, u)| u.mm()).collect(),
        }
    }

    /// Notches out of the front edge at `edge` that no fitting makes.
    fn front_notches(&self, leg: usize, edge: f64, mouth: f64) -> impl Iterator<Item = (Bite, [Tag; 3])> {
        let own = self.notches[leg].iter().filter(|notch| notch.edge == Face::Front);
        own.filter(move |notch| notch.extent.y1.mm() > edge).map(move |notch| {
            let (x0, x1, y) = (notch.extent.x0.mm(), notch.extent.x1.mm(), notch.extent.y1.mm());
            (Bite { x0, x1, y, mouth, inner: notch.radius.mm() }, [finished(None); 3])
        })
    }

    /// Notches out of the other edges. `mouths` are the radii of their outside corners: left, right, back.
    fn nicks(&self, leg: usize, mouths: [f64; 3]) -> Vec<Nick> {
        let nick = |notch: &CounterNotch| {
            let Extent { x0, y0, x1, y1 } = notch.extent;
            let (low, high, reach, mouth) = match notch.edge {
                Face::Front => return None,
                Face::Left => (y0, y1, x1, mouths[0]),
                Face::Right => (y0, y1, x0, mouths[1]),
                Face::Back => (x0, x1, y0, mouths[2]),
            };
            Some(Nick {
                edge: notch.edge,
                low: low.mm(),
                high: high.mm(),
                reach: reach.mm(),
                mouth,
                inner: notch.radius.mm(),
                tag: finished(None),
            })
        };
        self.notches[leg].iter().filter_map(nick).collect()
    }

    /// How the sheets of two legs meet at a corner.
    pub(super) fn meeting(&self, joint: usize, layer: Layer) -> Option<Meeting> {
        let joint = &self.given.joints[joint];
        let JointKind::Corner(corner) = &joint.kind else { return None };
        let counter = layer == Layer::Counter;
        let free = |leg: usize| self.levels[leg].bounds[2].is_open();
        let inside = corner.turn > 0.0;
        let outer = match corner.outer {
            _ if !counter => Shape::Sharp,
            CornerShape::Common if inside && !(free(joint.left) && free(joint.right)) => Shape::Sharp,
            CornerShape::Common if !inside && self.bends(joint.left) && self.bends(joint.right) => Shape::Sharp,
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
            inner: match corner.inner {
                _ if !counter => Shape::Sharp,
                CornerShape::Common => Shape::Round(corner.radius.mm()),
                CornerShape::Round(radius) => Shape::Round(radius.mm()),
                CornerShape::Clipped(by) => Shape::Clip(by.mm()),
            },
            outer,
        })
    }
}
