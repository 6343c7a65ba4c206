//! A support before it has its mark, and the room that it has to find.

use super::drafts::Drafts;
use crate::solve::{Along, Bar, BodyBox, Fitting, Leg, Plane, SupportRole};
use crate::units::Length;
use std::ops::RangeInclusive;

/// A tube shorter than this isn't worth cutting: half an inch, common practice.
pub(super) const SHORTEST: Length = Length::from_sixty_fourths(32);

/// What lies on a support.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Carries {
    /// Nothing that would bend it.
    Nothing,
    /// A share of a fitting of this weight, N, evenly between two places along it; `None` when nobody gave the weight.
    Fitting(Option<f64>, Length, Length),
    /// Arms, each with its force, N, at a place along it.
    Arms(Vec<(Length, Option<f64>)>),
    /// A strip of counter and substrate this wide, and a person in the middle.
    Counter(Length),
    /// An overhang: free from this place along it on, with a strip of counter this wide.
    Overhang(Length, Length),
}

/// A support before it has its mark.
#[derive(Clone, Debug)]
pub(super) struct Draft {
    pub(super) role: SupportRole,
    pub(super) module: usize,
    pub(super) fitting: Option<usize>,
    pub(super) body: BodyBox,
    pub(super) along: Along,
    pub(super) bar: Bar,
    /// Extra holes along it, from its left, front or lower end.
    pub(super) holes: Vec<Length>,
    pub(super) carries: Carries,
    /// Its span where that isn't its length: an arm is held at the middle of what it lies against.
    pub(super) span: Option<Length>,
}

impl Draft {
    /// Its length.
    pub(super) fn length(&self) -> Length {
        let (from, to) = match self.along {
            Along::U => self.body.u,
            Along::V => self.body.v,
            Along::Z => self.body.z,
        };
        to - from
    }
}

/// Whether two stretches share some length.
pub(super) fn over(a: (Length, Length), b: (Length, Length)) -> bool {
    a.0 < b.1 && b.0 < a.1
}

/// Whether two boxes share some space.
pub(super) fn met(a: &BodyBox, b: &BodyBox) -> bool {
    over(a.u, b.u) && over(a.v, b.v) && over(a.z, b.z)
}

/// A leg with the supports that it has so far.
pub(super) struct Room<'a> {
    pub(super) leg: &'a Leg,
    /// Outside of the frame's tube.
    pub(super) tube: Length,
    /// Clear space round a cutout.
    pub(super) gap: Length,
    pub(super) drafts: Drafts,
}

impl Room<'_> {
    /// What is in the way of a box: nothing, or what it is, in words.
    pub(super) fn in_the_way(&self, body: &BodyBox) -> Option<String> {
        let near = self.near(body);
        for fitting in self.fittings(near.clone()) {
            let named = || format!("{} ({})", fitting.mark, fitting.id);
            if fitting.body.as_ref().is_some_and(|own| met(own, body)) {
                return Some(named());
            }
            for cutout in &fitting.cutouts {
                let e = cutout.extent;
                let low = fitting.body.map(|own| own.z.0).or(fitting.bottom).unwrap_or(self.leg.datums.frame_bottom);
                let crossed = match cutout.plane {
                    Plane::Counter | Plane::Substrate => {
                        over((e.x0, e.x1), body.u) && over((e.y0, e.y1), body.v) && body.z.1 > low
                    }
                    Plane::FrontBoard => {
                        let layer = (Length::ZERO, self.leg.datums.frame_face + self.tube);
                        over((e.x0, e.x1), body.u) && over((e.y0, e.y1), body.z) && over(layer, body.v)
                    }
                    Plane::BackBoard => {
                        let layer = (self.leg.datums.frame_back - self.tube, self.leg.datums.finished_back);
                        over((e.x0, e.x1), body.u) && over((e.y0, e.y1), body.z) && over(layer, body.v)
                    }
                    Plane::LeftBoard => {
                        let layer = (Length::ZERO, self.leg.datums.frame_left + self.tube);
                        over((e.x0, e.x1), body.v) && over((e.y0, e.y1), body.z) && over(layer, body.u)
                    }
                    Plane::RightBoard => {
                        let layer = (self.leg.datums.frame_right - self.tube, self.leg.datums.finished_right);
                        over((e.x0, e.x1), body.v) && over((e.y0, e.y1), body.z) && over(layer, body.u)
                    }
                };
                if crossed {
                    return Some(format!("the cutout of {}", named()));
                }
            }
        }
        let tubes = self.leg.members_of(near.clone()).iter().map(|member| &member.body).any(|own| met(own, body));
        if tubes {
            return Some("a tube of the frame".to_owned());
        }
        self.drafts.of(near).any(|draft| met(&draft.body, body)).then(|| "another support".to_owned())
    }

    /// The modules that a box lies over, with one more at each side: what reaches out of its own module reaches no farther.
    pub(super) fn near(&self, body: &BodyBox) -> RangeInclusive<usize> {
        let modules = &self.leg.modules;
        let first = modules.partition_point(|module| module.right < body.u.0);
        let end = modules.partition_point(|module| module.left <= body.u.1);
        first.saturating_sub(1)..=end.max(first)
    }

    /// The fittings of some modules; fittings are listed module by module.
    pub(super) fn fittings(&self, modules: RangeInclusive<usize>) -> &[Fitting] {
        let all = &self.leg.fittings;
        let first = all.partition_point(|fitting| fitting.module < *modules.start());
        let end = all.partition_point(|fitting| fitting.module <= *modules.end());
        all.get(first..end).unwrap_or(&[])
    }

    /// Whether another support is in a box.
    pub(super) fn is_taken(&self, body: &BodyBox) -> bool {
        self.drafts.of(self.near(body)).any(|draft| met(&draft.body, body))
    }

    /// Whether a box has its room.
    pub(super) fn is_clear(&self, body: &BodyBox) -> bool {
        self.in_the_way(body).is_none()
    }

    /// Between the tubes of a module: u from left to right side, v from front to back.
    pub(super) fn inside(&self, module: usize) -> Option<((Length, Length), (Length, Length))> {
        let (own, d, t) = (self.leg.modules.get(module)?, &self.leg.datums, self.tube);
        let (u, v) = ((own.left + t, own.right - t), (d.frame_face + t, d.frame_back - t));
        (u.1 - u.0 >= SHORTEST && v.1 - v.0 >= SHORTEST).then_some((u, v))
    }

    /// Every box of tube or support of a module.
    pub(super) fn tubes(&self, module: usize) -> impl Iterator<Item = &BodyBox> {
        let own = self.leg.members_of(module..=module).iter().map(|member| &member.body);
        own.chain(self.drafts.of(module..=module).map(|draft| &draft.body))
    }
}
