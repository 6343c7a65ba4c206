//! How a long face is seen: from the front as the cook sees it, or from behind, where u is mirrored.

use crate::geometry::Outline;
use crate::solve::{Bound, Build, Datum, Face, Leg, Plane};
use crate::units::Length;

/// A long face and its viewer. x runs to the viewer's right from the finished end at the viewer's left.
#[derive(Clone, Copy, Debug)]
pub struct Facing {
    /// The front or the back.
    pub face: Face,
    length: Length,
}

impl Facing {
    /// The view of a face of a leg.
    pub fn new(leg: &Leg, face: Face) -> Facing {
        Facing { face, length: leg.datums.finished_right }
    }

    fn behind(&self) -> bool {
        self.face == Face::Back
    }

    /// The plane of its boards.
    pub fn plane(&self) -> Plane {
        Plane::of(self.face)
    }

    /// Viewer's x of a u.
    pub fn x(&self, u: Length) -> Length {
        if self.behind() { self.length - u } else { u }
    }

    /// Viewer's x of the left and right ends of a stretch of u.
    pub fn span(&self, u0: Length, u1: Length) -> (Length, Length) {
        let (a, b) = (self.x(u0), self.x(u1));
        (a.min(b), a.max(b))
    }

    /// An outline in (u, z) as the viewer sees it.
    pub fn outline(&self, outline: &Outline) -> Outline {
        if self.behind() { outline.mirrored(self.length.mm() / 2.0) } else { outline.clone() }
    }

    /// Slope to the viewer's right of something that rises by `per_u` to +u.
    pub fn slope(&self, per_u: f64) -> f64 {
        if self.behind() { -per_u } else { per_u }
    }

    /// Finished end, board end and frame end at the viewer's left.
    pub fn near(&self) -> [Datum; 3] {
        let left = [Datum::FinishedLeftEnd, Datum::BoardLeftEnd, Datum::FrameLeftEnd];
        let right = [Datum::FinishedRightEnd, Datum::BoardRightEnd, Datum::FrameRightEnd];
        if self.behind() { right } else { left }
    }

    /// Finished end, board end and frame end at the viewer's right.
    pub fn far(&self) -> [Datum; 3] {
        let mirrored = Facing { face: if self.behind() { Face::Front } else { Face::Back }, ..*self };
        mirrored.near()
    }

    /// Viewer's x of a datum along u.
    pub fn datum(&self, leg: &Leg, datum: Datum) -> Length {
        self.x(leg.datums.at(datum))
    }

    /// What bounds the run at the viewer's left and right.
    pub fn bounds<'l>(&self, leg: &'l Leg) -> (&'l Bound, &'l Bound) {
        if self.behind() { (&leg.right, &leg.left) } else { (&leg.left, &leg.right) }
    }

    /// Build-up of the end at the viewer's left.
    pub fn near_build<'l>(&self, leg: &'l Leg) -> &'l Build {
        if self.behind() { &leg.right_build } else { &leg.left_build }
    }

    /// The counter's ends at the viewer's left and right, as x.
    pub fn counter(&self, leg: &Leg) -> (Length, Length) {
        self.span(leg.datums.counter_left, leg.datums.counter_right)
    }

    /// `left` or `right`, of the end that running dimensions start at, as the cook names it.
    pub fn near_word(&self) -> &'static str {
        if self.behind() { "right" } else { "left" }
    }

    /// The sheet's title.
    pub fn title(&self) -> &'static str {
        title(self.face)
    }
}

/// What the sheet of a long face is called.
pub fn title(face: Face) -> &'static str {
    if face == Face::Back { "Back elevation" } else { "Front elevation" }
}
