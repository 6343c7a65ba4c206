//! One solved leg, its bounds and its modules.

use super::{Board, Counter, CounterNotch, Fitting, Floor, Foot, Member, Plane, Stub, Substrate};
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
    /// What its room lies between, left and right, where it is taken from the survey.
    pub surveyed: Option<[String; 2]>,
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
    /// Notches in its outline that no fitting makes.
    pub notches: Vec<CounterNotch>,
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

    /// The feet nearest to a face, by index.
    pub fn row_at(&self, face: Face) -> impl Iterator<Item = (usize, &Foot)> {
        let across = move |foot: &Foot| match face {
            Face::Front => foot.v,
            Face::Back => -foot.v,
            Face::Left => foot.u,
            Face::Right => -foot.u,
        };
        let nearest = self.feet.iter().map(across).min();
        self.feet.iter().enumerate().filter(move |(_, foot)| Some(across(foot)) == nearest)
    }

    /// The floor's line along a face between two places on it (u; v for an end), (place, height) mm, under the feet that
    /// are nearest to the face: between them it takes what they stand higher or lower than the floor's surface, past the
    /// outermost it goes on with the surface.
    pub fn floor_along(&self, face: Face, from: Length, to: Length) -> Vec<(f64, f64)> {
        let end = matches!(face, Face::Left | Face::Right);
        let place = |foot: &Foot| if end { (foot.v.mm(), foot.u.mm()) } else { (foot.u.mm(), foot.v.mm()) };
        let row: Vec<&Foot> = self.row_at(face).map(|(_, foot)| foot).collect();
        let d = &self.datums;
        let beside = row.first().map_or(
            match face {
                Face::Front => d.frame_face.mm(),
                Face::Back => d.frame_back.mm(),
                Face::Left => d.frame_left.mm(),
                Face::Right => d.frame_right.mm(),
            },
            |foot| place(foot).1,
        );
        let at = |along: f64| if end { (beside, along) } else { (along, beside) };
        let mut off: Vec<(f64, f64)> = row
            .iter()
            .map(|foot| {
                let along = place(foot).0;
                let (u, v) = at(along);
                (along, foot.ground.mm() - self.floor.height(u, v))
            })
            .collect();
        off.sort_by(|a, b| a.0.total_cmp(&b.0));
        off.dedup_by(|a, b| (a.0 - b.0).abs() < 1e-3);
        let (a, b) = (from.mm(), to.max(from).mm());
        let mut line: Vec<(f64, f64)> =
            self.floor.line(at(a), at(b)).into_iter().map(|(share, z)| (a + (b - a) * share, z)).collect();
        if off.iter().any(|(_, by)| by.abs() > 1e-6) {
            for &(along, _) in off.iter().filter(|(along, _)| *along > a && *along < b) {
                let (u, v) = at(along);
                line.insert(line.partition_point(|point| point.0 < along), (along, self.floor.height(u, v)));
            }
        }
        line.into_iter().map(|(along, z)| (along, z + between(&off, along))).collect()
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

/// A value read from a line of points in rising order, held at its ends; zero without points.
fn between(points: &[(f64, f64)], at: f64) -> f64 {
    let after = points.partition_point(|point| point.0 <= at);
    match (after.checked_sub(1).and_then(|before| points.get(before)), points.get(after)) {
        (Some(a), Some(b)) => a.1 + (b.1 - a.1) * (at - a.0) / (b.0 - a.0),
        (Some(only), None) | (None, Some(only)) => only.1,
        (None, None) => 0.0,
    }
}
