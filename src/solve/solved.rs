//! The solved run: everything that is drawn, listed and checked, in plain lengths.
//!
//! Leg coordinates throughout: u from the finished left end to the right, v from the finished face away
//! from the cook, z up from the highest floor point under the feet.

use super::{
    Around, BoundKind, Build, CounterMaterial, CounterNeeds, Datums, DefaultUsed, Face, Finish, FrameMaterial, Job,
    JointKind, LimitSet, Look, Measure, ModuleKind, Needs, OpeningSort, Paper, Seating, Service, Splash, Survey,
    Tolerances, Trim, Width, services::Services,
};
use crate::findings::{Place, Subject};
use crate::geometry::{Outline, Placement, PlanPoint, Region};
use crate::units::{Length, Show};

/// A whole run.
#[derive(Clone, Debug)]
pub struct Solved {
    /// The facts of the title block.
    pub job: Job,
    /// How lengths are shown.
    pub show: Show,
    /// The paper asked for.
    pub paper: Paper,
    /// What may be off.
    pub tolerances: Tolerances,
    /// The legs.
    pub legs: Vec<Leg>,
    /// Where legs meet.
    pub joints: Vec<Joint>,
    /// The counters that turn corners, one for each row of legs that does.
    pub slabs: Vec<Slab>,
    /// Walls, posts, steps and doors as surveyed.
    pub survey: Survey,
    /// Facts of the counter that are the same on all legs.
    pub counter: CounterFacts,
    /// Facts of the frame.
    pub frame: FrameFacts,
    /// The substrate's name and thickness.
    pub substrate: SheetFacts,
    /// Base trim.
    pub trim: Option<Trim>,
    /// What lies underfoot, by name.
    pub paving: String,
    /// What is round the run.
    pub around: Around,
    /// Fuel gas, sized, where the job says what feeds the run.
    pub services: Option<Services>,
    /// Limits of rules that the job sets itself.
    pub limits: Vec<LimitSet>,
    /// Named values that the job did not give.
    pub defaults: Vec<DefaultUsed>,
}

/// Where two legs meet.
#[derive(Clone, Debug)]
pub struct Joint {
    /// The leg whose right end it is.
    pub left: usize,
    /// The leg whose left end it is.
    pub right: usize,
    /// How.
    pub kind: JointKind,
    /// The line where the two finished faces meet, in plan.
    pub at: PlanPoint,
    /// Where written.
    pub place: Option<Place>,
}

/// A counter over several legs.
#[derive(Clone, Debug)]
pub struct Slab {
    /// Its legs, left to right.
    pub legs: Vec<usize>,
    /// Its whole outline with notches, and wells as holes, in the (u, v) of its first leg, mm.
    pub region: Region,
    /// Its outside edges in the (u, v) of its first leg, tagged, counter-clockwise, radii left out of account.
    pub edges: Vec<Edge>,
    /// The whole substrate under it, likewise.
    pub substrate: Region,
    /// Its pieces, left to right: the leg whose counter lists the piece, its index there, and every leg it lies on.
    pub pieces: Vec<(usize, usize, Vec<usize>)>,
}

impl Solved {
    /// Whether a leg is a straight one by itself: it meets no other, none stands behind it, and its counter is a box.
    pub fn stands_alone(&self, leg: usize) -> bool {
        let met = self.joints.iter().any(|joint| joint.left == leg || joint.right == leg);
        let behind = self
            .legs
            .iter()
            .enumerate()
            .any(|(other, one)| (one.behind == Some(leg)) || (other == leg && one.behind.is_some()));
        !met && !behind && !self.slabs.iter().any(|slab| slab.legs.contains(&leg))
    }
}

/// A sheet material.
#[derive(Clone, Debug)]
pub struct SheetFacts {
    /// Its name.
    pub name: String,
    /// Its thickness.
    pub thickness: Length,
    /// Whether it burns, where that is known.
    pub combustible: Option<bool>,
    /// Where written.
    pub place: Option<Place>,
}

/// The bare frame.
#[derive(Clone, Copy, Debug)]
pub struct FrameFacts {
    /// Outside of the tube.
    pub tube: Length,
    /// Wall of the tube.
    pub wall: Length,
    /// Clear space between a board's opening and the frame, each side.
    pub rough_gap: Length,
    /// Shortest setting of a foot.
    pub foot_shortest: Length,
    /// Longest setting of a foot.
    pub foot_longest: Length,
    /// What one foot carries, kg.
    pub foot_rating: f64,
    /// What it is made of.
    pub material: FrameMaterial,
}

/// The counter's material and edge.
#[derive(Clone, Debug)]
pub struct CounterFacts {
    /// Family.
    pub material: CounterMaterial,
    /// As the job names it.
    pub name: String,
    /// Thickness.
    pub thickness: Length,
    /// Mass per volume, kg/m3.
    pub density: f64,
    /// Joint to walls.
    pub wall_joint: Length,
    /// Joint between pieces.
    pub seam_joint: Length,
    /// Radius of free corners in plan.
    pub corner_radius: Length,
    /// Radius of the arris.
    pub arris: Length,
    /// Drip groove, width and depth; zero for none.
    pub drip: Length,
    /// Upstand.
    pub splash: Option<Splash>,
    /// Tolerance on the outline.
    pub tolerance: Length,
    /// Slab, support, lifting.
    pub needs: CounterNeeds,
    /// Where written.
    pub place: Option<Place>,
}

/// One solved leg.
#[derive(Clone, Debug)]
pub struct Leg {
    /// Its id.
    pub id: String,
    /// Where it lies in the plan.
    pub placement: Placement,
    /// Where every datum lies.
    pub datums: Datums,
    /// What bounds it on the left, on the right and behind.
    pub left: Bound,
    /// On the right.
    pub right: Bound,
    /// Behind.
    pub back: Bound,
    /// Board and finish of each face.
    pub front_build: Build,
    /// Of the left end.
    pub left_build: Build,
    /// Of the right end.
    pub right_build: Build,
    /// Of the back.
    pub back_build: Build,
    /// Room that the site gives, and how much of it is not used (negative: too long).
    pub room: Option<Room>,
    /// The modules, left to right.
    pub modules: Vec<Module>,
    /// The leg that it stands behind.
    pub behind: Option<usize>,
    /// Seating along its back.
    pub seating: Option<Seating>,
    /// Everything set into the leg, in order of marks.
    pub fittings: Vec<Fitting>,
    /// Boards fixed to the frame.
    pub boards: Vec<Board>,
    /// Tubes of the frame.
    pub members: Vec<Member>,
    /// The counter.
    pub counter: Counter,
    /// The substrate.
    pub substrate: Substrate,
    /// The floor under it.
    pub floor: Floor,
    /// The adjustable feet.
    pub feet: Vec<Foot>,
    /// Pipes and cables that come up in it.
    pub stubs: Vec<Stub>,
    /// Where written.
    pub place: Option<Place>,
}

/// How the site's room was used.
#[derive(Clone, Copy, Debug)]
pub struct Room {
    /// Between the bounds, at the tightest level.
    pub given: Length,
    /// Needed by the modules, build-ups and gaps.
    pub needed: Length,
}

/// Something that bounds a leg.
#[derive(Clone, Debug)]
pub struct Bound {
    /// Kind.
    pub kind: BoundKind,
    /// Name.
    pub name: String,
    /// Its face at the floor, on u (ends) or v (back).
    pub at: Length,
    /// Its face at counter height; differs when it is out of plumb.
    pub at_counter: Length,
    /// Height over z = 0.
    pub height: Length,
    /// Width as seen, or thickness.
    pub width: Length,
    /// Whether it burns, skin or studs; `None` when the job doesn't say.
    pub combustible: Option<bool>,
    /// Where written.
    pub place: Option<Place>,
}

impl Bound {
    /// Whether there is anything.
    pub fn is_open(&self) -> bool {
        self.kind == BoundKind::Open
    }
}

/// One module.
#[derive(Clone, Debug)]
pub struct Module {
    /// Its id, as `B`.
    pub id: String,
    /// What the client calls it; may be empty.
    pub name: String,
    /// Kind.
    pub kind: ModuleKind,
    /// Left edge on u.
    pub left: Length,
    /// Right edge on u.
    pub right: Length,
    /// How its width was asked for.
    pub asked: Width,
    /// What the solver chose and why, in a sentence.
    pub why: String,
    /// Where written.
    pub place: Option<Place>,
}

impl Module {
    /// Its width.
    pub fn width(&self) -> Length {
        self.right - self.left
    }

    /// Its centreline on u.
    pub fn centre(&self) -> Length {
        (self.left + self.right).half()
    }
}

/// A box of exact lengths in some plane: x0 <= x1, y0 <= y1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Extent {
    /// Least first coordinate.
    pub x0: Length,
    /// Least second coordinate.
    pub y0: Length,
    /// Greatest first coordinate.
    pub x1: Length,
    /// Greatest second coordinate.
    pub y1: Length,
}

impl Extent {
    /// First side.
    pub fn width(&self) -> Length {
        self.x1 - self.x0
    }
    /// Second side.
    pub fn height(&self) -> Length {
        self.y1 - self.y0
    }
    /// Middle of the first coordinate.
    pub fn centre_x(&self) -> Length {
        (self.x0 + self.x1).half()
    }
    /// Middle of the second coordinate.
    pub fn centre_y(&self) -> Length {
        (self.y0 + self.y1).half()
    }
    /// As an outline, mm.
    pub fn outline(&self) -> Outline {
        Outline::from_corners(self.x0.mm(), self.y0.mm(), self.x1.mm(), self.y1.mm())
    }
    /// What of it lies within another box; they have to meet.
    pub fn held_to(&self, other: &Extent) -> Extent {
        Extent {
            x0: self.x0.max(other.x0),
            y0: self.y0.max(other.y0),
            x1: self.x1.min(other.x1),
            y1: self.y1.min(other.y1),
        }
    }
    /// Whether the insides share anything.
    pub fn meets(&self, other: &Extent) -> bool {
        self.x0 < other.x1 && other.x0 < self.x1 && self.y0 < other.y1 && other.y0 < self.y1
    }
}

/// The plane that a cutout lies in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Plane {
    /// The counter, (u, v).
    Counter,
    /// The substrate, (u, v).
    Substrate,
    /// The front board, (u, z).
    FrontBoard,
    /// The back board, (u, z); u still runs as the cook sees it.
    BackBoard,
    /// The left end board, (v, z).
    LeftBoard,
    /// The right end board, (v, z).
    RightBoard,
}

impl Plane {
    /// The word of the `data-plane` attribute.
    pub const fn word(self) -> &'static str {
        match self {
            Plane::Counter => "counter",
            Plane::Substrate => "substrate",
            Plane::FrontBoard => "front-board",
            Plane::BackBoard => "back-board",
            Plane::LeftBoard => "left-board",
            Plane::RightBoard => "right-board",
        }
    }

    /// The board plane of a face.
    pub const fn of(face: Face) -> Plane {
        match face {
            Face::Front => Plane::FrontBoard,
            Face::Back => Plane::BackBoard,
            Face::Left => Plane::LeftBoard,
            Face::Right => Plane::RightBoard,
        }
    }
}

/// One hole in one sheet.
#[derive(Clone, Debug)]
pub struct Cutout {
    /// The plane that it is cut in.
    pub plane: Plane,
    /// Its box in that plane. A notch's front is the sheet's front edge; a notch's top in a front board is
    /// the frame top; an opening to the floor ends at the board's bottom edge.
    pub extent: Extent,
    /// Its outline in that plane, arcs and all, mm. For a notch it is closed across its open side.
    pub outline: Outline,
    /// Its corner radius (back corners for a notch); zero when sharp.
    pub radius: Length,
    /// It is open at the sheet's edge: the front for a counter notch, the top for its front board, the bottom for a
    /// bay that reaches the floor.
    pub open: bool,
    /// It is round.
    pub round: bool,
}

/// Which kind of fitting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FittingKind {
    /// Hung through the front.
    Notch,
    /// Set in the counter.
    Well,
    /// Set in a board.
    Opening(OpeningSort),
}

/// A fitting with everything located.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// Where it stands in the run: its leg, and its place in that leg's list.
    pub at: (usize, usize),
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Its mark, as `B1`; unique in the run.
    pub mark: String,
    /// Kind.
    pub kind: FittingKind,
    /// Look.
    pub look: Look,
    /// Its module, by index.
    pub module: usize,
    /// The face it is set into or counts from.
    pub face: Face,
    /// Its cutouts: a notch has three (counter, substrate, front board).
    pub cutouts: Vec<Cutout>,
    /// Left edge along its face in leg coordinates (u; v for an end face).
    pub left: Length,
    /// Right edge.
    pub right: Length,
    /// Bottom of a notch or of an opening, on z (`None` for wells).
    pub bottom: Option<Length>,
    /// Top of an opening, on z (`None` for wells and notches).
    pub top: Option<Length>,
    /// It reaches the floor.
    pub to_floor: bool,
    /// Back edge of a notch, front and back edges of a well, on v.
    pub back: Option<Length>,
    /// Front edge of a well, on v.
    pub front: Option<Length>,
    /// Lap of the flange: left, right, far (back or top), near (front or bottom).
    pub flange: FlangeLap,
    /// Its body in (u, v, z), where known.
    pub body: Option<BodyBox>,
    /// Clear space it needs.
    pub clearance: Length,
    /// Mass, kg.
    pub mass: Option<f64>,
    /// Heat input, W.
    pub heat: Option<f64>,
    /// What its manual asks for.
    pub needs: Needs,
    /// Every dimension of its sheet by name, as `width`, `depth`, `drop`, for the measure-twice sheet.
    pub measures: Vec<(&'static str, Measure)>,
    /// How it was given: datum that the depth or setback was given from, in words.
    pub given_from: String,
    /// Where written.
    pub place: Option<Place>,
}

impl Fitting {
    /// Its centreline along its face.
    pub fn centre(&self) -> Length {
        (self.left + self.right).half()
    }
    /// Width of the cutout.
    pub fn width(&self) -> Length {
        self.right - self.left
    }
    /// As what a finding is about.
    pub fn subject(&self) -> Subject {
        Subject::Fitting(self.at.0, self.at.1)
    }
    /// Its cutout in a plane, if it has one there.
    pub fn cutout(&self, plane: Plane) -> Option<&Cutout> {
        self.cutouts.iter().find(|cutout| cutout.plane == plane)
    }
}

/// Laps of a flange. Left and right go with [`Fitting::left`] and [`Fitting::right`]: the smaller coordinate
/// is left, whichever way the viewer of the face sees it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct FlangeLap {
    /// Left.
    pub left: Length,
    /// Right.
    pub right: Length,
    /// Back (counter) or top (board).
    pub far: Length,
    /// Front (counter) or bottom (board).
    pub near: Length,
}

/// A box in leg coordinates.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct BodyBox {
    /// Along u.
    pub u: (Length, Length),
    /// Along v.
    pub v: (Length, Length),
    /// Along z.
    pub z: (Length, Length),
}

/// A board fixed to the frame, with its openings.
#[derive(Clone, Debug)]
pub struct Board {
    /// Its mark, as `front A`.
    pub name: String,
    /// The face it covers.
    pub face: Face,
    /// Its plane.
    pub plane: Plane,
    /// Its box in that plane.
    pub extent: Extent,
    /// Its outline with openings open to its edge cut away, and the closed ones as holes, mm.
    pub region: Region,
    /// The fittings whose cutouts touch it, by index.
    pub fittings: Vec<usize>,
    /// The module it lies on, by index, where it is one.
    pub module: Option<usize>,
    /// How far its left and right edges are cut off square, radians; positive leaves the outside face longer. Zero but
    /// at corners that aren't square.
    pub bevels: [f64; 2],
}

/// What a tube of the frame does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// Upright at a module's corner.
    Post,
    /// Level, at a module's top or bottom.
    Rail,
    /// Added behind an edge so that a fitting has something to screw to.
    Backing,
}

/// A tube of the frame.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Member {
    /// What it does.
    pub role: Role,
    /// Its module, by index.
    pub module: usize,
    /// Its box.
    pub body: BodyBox,
}

/// Why an edge of the counter ends where it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeKind {
    /// Seen and finished.
    Finished,
    /// Against a wall or pier, with a joint.
    Wall,
    /// Against a wall with an upstand.
    Splash,
    /// A cut edge that a flange covers.
    Covered,
    /// A cut edge over an undermounted bowl, seen and finished.
    Reveal,
    /// Against another piece.
    Seam,
}

/// One tagged edge of the counter.
#[derive(Clone, Debug)]
pub struct Edge {
    /// Kind.
    pub kind: EdgeKind,
    /// Start, (u, v).
    pub from: (Length, Length),
    /// End, (u, v).
    pub to: (Length, Length),
    /// Overhang past the finished face, where the edge is finished.
    pub overhang: Option<Length>,
    /// Joint, where it meets something.
    pub joint: Option<Length>,
}

/// One piece of the counter.
#[derive(Clone, Debug)]
pub struct Piece {
    /// Its name, as `Piece 1`.
    pub name: String,
    /// Its box, (u, v).
    pub extent: Extent,
    /// Its outline with notches, and wells as holes, (u, v) mm.
    pub region: Region,
    /// Mass, kg.
    pub mass: f64,
    /// Its diagonal over the box.
    pub diagonal: Length,
    /// Its outside edges, tagged, walking counter-clockwise (v up) from the front left.
    pub edges: Vec<Edge>,
}

/// The counter of a leg.
#[derive(Clone, Debug)]
pub struct Counter {
    /// Its box, (u, v).
    pub extent: Extent,
    /// The whole outline with notches, and wells as holes, as if in one piece, (u, v) mm.
    pub region: Region,
    /// Its pieces, left to right.
    pub pieces: Vec<Piece>,
    /// Seams, as u.
    pub seams: Vec<Length>,
    /// Upstand pieces: (name, left u, right u, mass kg).
    pub splashes: Vec<(String, Length, Length, f64)>,
}

/// The substrate of a leg.
#[derive(Clone, Debug)]
pub struct Substrate {
    /// Its box, (u, v).
    pub extent: Extent,
    /// Its outline with notches and holes, (u, v) mm.
    pub region: Region,
    /// Joints, as u, over supports; empty when it is one piece.
    pub joints: Vec<Length>,
    /// Supports under it that screws may go into, as u of their centrelines and their span in v.
    pub screw_lines: Vec<(Length, Length, Length)>,
}

/// The floor under a leg.
#[derive(Clone, Debug)]
pub struct Floor {
    /// Height at (u, v) = (0, 0), relative to z = 0.
    pub at_origin: f64,
    /// Rise per unit of u (negative: falls to the right).
    pub per_u: f64,
    /// Rise per unit of v (positive: falls towards the cook).
    pub per_v: f64,
    /// Measured spots, (u, v, z) mm with z = 0 as the solver set it; empty for a plane. Between spots the surface is
    /// the best plane through them; a foot within 2 in of a spot stands at that spot's own height.
    pub spots: Vec<(f64, f64, f64)>,
}

impl Floor {
    /// Height of the floor's plane at (u, v), mm over z = 0.
    pub fn height(&self, u: f64, v: f64) -> f64 {
        self.at_origin + self.per_u * u + self.per_v * v
    }
}

/// One adjustable foot.
#[derive(Clone, Copy, Debug)]
pub struct Foot {
    /// Its module, by index.
    pub module: usize,
    /// Centre on u.
    pub u: Length,
    /// Centre on v.
    pub v: Length,
    /// Floor under it, over z = 0 (never positive).
    pub ground: Length,
    /// From the floor to the frame's underside.
    pub height: Length,
}

/// A service that comes up.
#[derive(Clone, Debug)]
pub struct Stub {
    /// What it carries.
    pub service: Service,
    /// Where on u.
    pub u: Length,
    /// Where on v.
    pub v: Length,
    /// Over the floor, where given.
    pub z: Option<Length>,
    /// Where written.
    pub place: Option<Place>,
}

impl Leg {
    /// Board and finish of a face.
    pub fn build(&self, face: Face) -> &Build {
        match face {
            Face::Front => &self.front_build,
            Face::Left => &self.left_build,
            Face::Right => &self.right_build,
            Face::Back => &self.back_build,
        }
    }

    /// The finish of a face, if it has one.
    pub fn finish(&self, face: Face) -> Option<&Finish> {
        self.build(face).finish.as_ref()
    }

    /// The tubes of some modules; tubes are listed module by module.
    pub fn members_of(&self, modules: std::ops::RangeInclusive<usize>) -> &[Member] {
        let first = self.members.partition_point(|member| member.module < *modules.start());
        let end = self.members.partition_point(|member| member.module <= *modules.end());
        self.members.get(first..end).unwrap_or(&[])
    }

    /// The fittings of one module; fittings are listed module by module.
    pub fn fittings_of(&self, module: usize) -> &[Fitting] {
        let first = self.fittings.partition_point(|fitting| fitting.module < module);
        let end = self.fittings.partition_point(|fitting| fitting.module <= module);
        self.fittings.get(first..end).unwrap_or(&[])
    }

    /// Whether an end of it (0 left, 1 right) meets another leg at a corner or a step, lower there than the other.
    pub fn meets_leg(&self, side: usize) -> bool {
        (if side == 0 { &self.left } else { &self.right }).kind == BoundKind::Leg
    }

    /// Fittings set into a face, by index.
    pub fn on_face(&self, face: Face) -> impl Iterator<Item = (usize, &Fitting)> {
        self.fittings.iter().enumerate().filter(move |(_, f)| f.face == face && f.cutout(Plane::of(face)).is_some())
    }
}
