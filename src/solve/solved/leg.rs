//! One solved leg, its bounds and its modules.

use super::{Board, Counter, Fitting, Floor, Foot, Member, Plane, Stub, Substrate};
use crate::findings::Place;
use crate::geometry::Placement;
use crate::solve::{BoundKind, Build, Datums, Face, Finish, ModuleKind, Seating, Width};
use crate::units::Length;

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
