//! The brackets under one side of a counter, and what they want to hold it.

use crate::solve::{Along, Leg, Plane, Solved, Support, SupportRole};
use crate::units::Length;

/// A side of a leg's counter.
pub(super) struct Side<'s> {
    leg: &'s Leg,
    /// Its name.
    pub(super) word: &'static str,
    /// How far the counter reaches past the frame there.
    pub(super) past: Length,
    /// Nothing stands there.
    pub(super) open: bool,
    /// Which way its brackets run.
    along: Along,
    /// At the lesser end of that axis: front, left.
    low: bool,
}

/// What brackets want.
pub(super) enum Want {
    /// There are none.
    Any,
    /// Two lie this far apart.
    Nearer(Length),
    /// The counter goes on this far past the last one.
    AtEnd(Length),
    /// It hangs this far past the end of this one.
    Longer(String, Length),
    /// These bend too far.
    Stronger(Vec<String>),
}

/// Front, back, left and right.
pub(super) fn sides(leg: &Leg) -> [Side<'_>; 4] {
    let (d, e) = (&leg.datums, &leg.counter.extent);
    let side = |word, past, open, along, low| Side { leg, word, past, open, along, low };
    [
        side("front", d.frame_face - e.y0, true, Along::V, true),
        side("back", e.y1 - d.frame_back, leg.back.is_open(), Along::V, false),
        side("left", d.frame_left - e.x0, leg.left.is_open(), Along::U, true),
        side("right", e.x1 - d.frame_right, leg.right.is_open(), Along::U, false),
    ]
}

impl Side<'_> {
    /// What its brackets want; `None` where they hold it: no two of them farther `apart`, none of the counter more than `free`
    /// past the last one or past their ends, and each strong and stiff enough.
    pub(super) fn wants(&self, solved: &Solved, leg: usize, apart: Length, free: Length) -> Option<Want> {
        let d = &self.leg.datums;
        let past = |one: &&Support| match (self.along, self.low) {
            (Along::V, true) => one.body.v.0 < d.frame_face,
            (Along::V, false) => one.body.v.1 > d.frame_back,
            (_, true) => one.body.u.0 < d.frame_left,
            (_, false) => one.body.u.1 > d.frame_right,
        };
        let brackets =
            solved.shop.supports.members.iter().filter(|one| {
                one.leg == leg && one.role == SupportRole::Bracket && one.along == self.along && past(one)
            });
        let mut own: Vec<&Support> = brackets.collect();
        if own.is_empty() {
            return Some(Want::Any);
        }
        own.sort_by_key(|one| self.across(one));
        for (from, to) in self.stretches() {
            let within = |one: &&&Support| {
                let place = self.across(one);
                from <= place && place <= to
            };
            let places: Vec<Length> = own.iter().filter(within).map(|one| self.across(one)).collect();
            let (Some(first), Some(last)) = (places.first(), places.last()) else {
                // A short stretch between cutouts hangs on no bracket; a long one wants its own.
                if to - from > free {
                    return Some(Want::AtEnd(to - from));
                }
                continue;
            };
            if let Some(pair) = places.windows(2).find(|pair| pair[1] - pair[0] > apart) {
                return Some(Want::Nearer(pair[1] - pair[0]));
            }
            let ends = (*first - from).max(to - *last);
            if ends > free {
                return Some(Want::AtEnd(ends));
            }
        }
        let short = own.iter().find(|one| self.beyond(one) > free);
        if let Some(short) = short {
            return Some(Want::Longer(short.mark.clone(), self.beyond(short)));
        }
        let holds = |one: &Support| one.check.as_ref().is_some_and(|check| check.is_strong() && check.is_stiff());
        let weak: Vec<String> = own.iter().filter(|one| !holds(one)).map(|one| one.mark.clone()).collect();
        (!weak.is_empty()).then_some(Want::Stronger(weak))
    }

    /// Where a bracket lies along the side.
    fn across(&self, one: &Support) -> Length {
        let (a, b) = if self.along == Along::V { one.body.u } else { one.body.v };
        (a + b).half()
    }

    /// From a bracket's end to the counter's edge.
    fn beyond(&self, one: &Support) -> Length {
        let e = &self.leg.counter.extent;
        match (self.along, self.low) {
            (Along::V, true) => one.body.v.0 - e.y0,
            (Along::V, false) => e.y1 - one.body.v.1,
            (_, true) => one.body.u.0 - e.x0,
            (_, false) => e.x1 - one.body.u.1,
        }
    }

    /// Where along the side there is counter at its edge: all of it but what is cut out of that edge. An end that something
    /// stands against counts from the frame.
    fn stretches(&self) -> Vec<(Length, Length)> {
        let (d, e) = (&self.leg.datums, &self.leg.counter.extent);
        if self.along != Along::V {
            return vec![(e.y0, if self.leg.back.is_open() { e.y1 } else { d.frame_back })];
        }
        // In a corner the frame goes on behind the other leg's face.
        let ends = if self.low {
            (d.frame_left.max(Length::ZERO), d.frame_right.min(d.finished_right))
        } else {
            (d.frame_left, d.frame_right)
        };
        let from = if self.leg.left.is_open() { e.x0 } else { ends.0 };
        let to = if self.leg.right.is_open() { e.x1 } else { ends.1 };
        let edge = |y0: Length, y1: Length| if self.low { y0 <= e.y0 } else { y1 >= e.y1 };
        let cutouts = self.leg.fittings.iter().filter_map(|fitting| fitting.cutout(Plane::Counter));
        let mut cut: Vec<(Length, Length)> = cutouts
            .filter(|cutout| edge(cutout.extent.y0, cutout.extent.y1))
            .map(|cutout| (cutout.extent.x0, cutout.extent.x1))
            .collect();
        cut.sort();
        let mut stretches = Vec::new();
        let mut low = from;
        for (x0, x1) in cut {
            if x0 > low {
                stretches.push((low, x0));
            }
            low = low.max(x1);
        }
        if to > low {
            stretches.push((low, to));
        }
        stretches
    }
}
