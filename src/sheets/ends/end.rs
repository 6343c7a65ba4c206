//! One end of a leg as it is seen square on, and where its depths fall.

use crate::geometry::{EndFace, Outline};
use crate::sheets::view::View;
use crate::solve::{Bound, Build, Cutout, Datum, Face, Fitting, Foot, Leg, Member, Plane, Solved};
use crate::units::Length;

/// A view of an end.
pub type EndView = View<EndFace>;

/// An end standing this near to what bounds it is covered by it: a foot, common practice.
const COVERED: Length = Length::from_sixty_fourths(12 * 64);

/// One end. Its x runs to the viewer's right: away from the cook on the right end, towards him on the left one.
#[derive(Clone, Copy)]
pub struct End<'s> {
    /// The solved run.
    pub solved: &'s Solved,
    /// The leg.
    pub leg: &'s Leg,
    /// Left or right.
    pub face: Face,
}

impl<'s> End<'s> {
    /// An end of a leg.
    pub fn new(solved: &'s Solved, leg: &'s Leg, face: Face) -> End<'s> {
        End { solved, leg, face }
    }

    /// Whether it is the left one.
    pub fn is_left(&self) -> bool {
        self.face == Face::Left
    }

    /// A depth on x.
    pub fn x(&self, v: Length) -> Length {
        if self.is_left() { -v } else { v }
    }

    /// Way of the cook on the sheet: 1 to the right, -1 to the left.
    pub fn front_side(&self) -> f64 {
        if self.is_left() { 1.0 } else { -1.0 }
    }

    /// An outline over (v, z) as it is seen.
    pub fn outline(&self, outline: &Outline) -> Outline {
        if self.is_left() { outline.mirrored(0.0) } else { outline.clone() }
    }

    /// Board and finish of this end.
    pub fn build(&self) -> &'s Build {
        self.leg.build(self.face)
    }

    /// What stands there.
    pub fn bound(&self) -> &'s Bound {
        if self.is_left() { &self.leg.left } else { &self.leg.right }
    }

    /// From the outermost layer of the run to the face of what stands there.
    pub fn gap(&self) -> Length {
        let d = &self.leg.datums;
        if self.is_left() { -self.bound().at } else { self.bound().at - d.finished_right }
    }

    /// Whether what stands there hides it.
    pub fn is_covered(&self) -> bool {
        !self.bound().is_open() && self.gap() < COVERED
    }

    /// Where it stands on u.
    pub fn u(&self) -> Length {
        if self.is_left() { Length::ZERO } else { self.leg.datums.finished_right }
    }

    /// Height of the floor under it, mm over z = 0.
    pub fn floor(&self, v: Length) -> f64 {
        self.leg.floor.height(self.u().mm(), v.mm())
    }

    /// Openings in its board, by index.
    pub fn openings(&self) -> Vec<(usize, &'s Fitting, &'s Cutout)> {
        let plane = Plane::of(self.face);
        self.leg
            .on_face(self.face)
            .filter_map(|(index, fitting)| Some((index, fitting, fitting.cutout(plane)?)))
            .collect()
    }

    /// Tubes in the layer behind its board.
    pub fn members(&self) -> impl Iterator<Item = &'s Member> {
        let (face, d) = (self.face, self.leg.datums);
        self.leg
            .members
            .iter()
            .filter(move |m| if face == Face::Left { m.body.u.0 == d.frame_left } else { m.body.u.1 == d.frame_right })
    }

    /// The feet nearest to it.
    pub fn feet(&self) -> Vec<&'s Foot> {
        let far = |foot: &Foot| (foot.u - self.u()).abs();
        let nearest = self.leg.feet.iter().map(far).min();
        self.leg.feet.iter().filter(|foot| Some(far(foot)) == nearest).collect()
    }

    /// Depth datums from the finished face to the back that differ: words and place on v.
    pub fn depths(&self) -> Vec<(Datum, Length)> {
        let d = &self.leg.datums;
        let mut all = vec![(Datum::FinishedFace, Length::ZERO)];
        for datum in [Datum::FrameFace, Datum::FrameBack, self.outer_back()] {
            if d.at(datum) > all.last().map_or(Length::ZERO, |(_, at)| *at) {
                all.push((datum, d.at(datum)));
            }
        }
        all
    }

    /// The outermost face behind: the finish, the board, or the bare frame.
    pub fn outer_back(&self) -> Datum {
        let build = &self.leg.back_build;
        match () {
            _ if build.finish.is_some() => Datum::FinishedBack,
            _ if build.board > Length::ZERO => Datum::BoardBack,
            _ => Datum::FrameBack,
        }
    }

    /// What a heading calls it.
    pub fn title(&self) -> &'static str {
        if self.is_left() { "Left end" } else { "Right end" }
    }
}
