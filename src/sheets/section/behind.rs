//! The leg that stands behind the one that is cut: cut too, at the same place across.

use super::slice::{Skin, Slice, Span, Turn, feet, skin, stretches_of, tubes};
use super::supports::{self, Shown};
use crate::geometry::LegPoint;
use crate::solve::{Extent, Face, Leg, Solved};
use crate::units::Length;

/// A higher leg behind, where a section cuts it. Depths are w of the leg before it.
pub struct Behind<'s> {
    /// The leg.
    pub leg: &'s Leg,
    /// Its skins, towards the cook and away.
    pub skins: [Skin<'s>; 2],
    /// Its counter.
    pub counter: Vec<Span>,
    /// Its substrate.
    pub substrate: Vec<Span>,
    /// Tubes that are cut across.
    pub tubes: Vec<Extent>,
    /// What is added to its frame and cut, and the brackets under its overhang.
    pub supports: Vec<Shown<'s>>,
    /// Feet seen: (w, floor, frame's underside).
    pub feet: Vec<(Length, Length, Length)>,
    /// Its counter's near and far edge.
    pub edges: Span,
}

impl<'s> Behind<'s> {
    /// What stands behind a leg at one place across; `None` where nothing does.
    pub fn new(solved: &'s Solved, front: usize, u: Length) -> Option<Behind<'s>> {
        let own = solved.legs.get(front)?;
        let legs = solved.legs.iter().filter(|leg| leg.behind == Some(front));
        legs.filter_map(|leg| Behind::of(solved, own, leg, u)).next()
    }

    fn of(solved: &'s Solved, own: &Leg, leg: &'s Leg, u: Length) -> Option<Behind<'s>> {
        let plan = own.placement.to_plan(LegPoint::new(u.mm(), 0.0));
        let there = Length::from_mm(leg.placement.to_leg(plan).x);
        let d = &leg.datums;
        if there < d.counter_left || there > d.counter_right {
            return None;
        }
        let off = own.placement.to_leg(leg.placement.to_plan(LegPoint::new(0.0, 0.0))).y;
        let turn = Turn { back: false, finished_back: d.finished_back, off: Length::from_mm(off) };
        let module = leg.modules.iter().position(|module| module.left <= there && there <= module.right);
        let spans = |region, extent: &Extent| stretches_of(region, there, &turn, &[extent.y0, extent.y1]);
        Some(Behind {
            leg,
            skins: [Face::Front, Face::Back].map(|face| skin(leg, face, there, &turn, face == Face::Front, solved)),
            counter: spans(&leg.counter.region, &leg.counter.extent),
            substrate: spans(&leg.substrate.region, &leg.substrate.extent),
            tubes: tubes(leg, there, &turn),
            supports: supports::behind(solved, leg, there, &turn),
            feet: module.map_or_else(Vec::new, |module| feet(leg, module, there, &turn)),
            edges: turn.span(leg.counter.extent.y0, leg.counter.extent.y1),
        })
    }

    /// Its frame's middle on w.
    pub fn middle(&self) -> Length {
        (self.skins[0].at[2] + self.skins[1].at[2]).half()
    }

    /// Height of its counter over that of the leg before it.
    pub fn over(&self, slice: &Slice) -> Length {
        self.leg.datums.counter_top - slice.leg.datums.counter_top
    }
}
