//! What the parts of an elevation's drawing share: the view, what is seen in it, and where its dimension lines lie.

use super::behind;
use super::beside;
use super::chain;
use super::facing::Facing;
use super::floor::FloorLine;
use super::meeting::{Meeting, Way};
use super::part::Part;
use super::stops::Stops;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::geometry::{FrontFace, PaperPoint};
use crate::sheets::canvas::Canvas;
use crate::sheets::dimensions::{FIRST, NEXT, PAST};
use crate::sheets::frame::Area;
use crate::sheets::scale::Scale;
use crate::sheets::set::{Kind, Set};
use crate::sheets::view::View;
use crate::solve::{Bound, Face, Fitting, Leg};
use crate::units::{Length, Show};

/// Widest that a wall or pier at an end is drawn, mm.
pub const BOUND: f64 = 16.0;
/// Floor drawn past an open end, mm.
const PAST_END: f64 = 8.0;
/// Room for the words at a match line, mm.
const MATCH: f64 = 30.0;
/// From the running line under the floor to the lowest ground: room for section marks, mm.
const UNDER: f64 = 13.0;
/// Height of the datum's flag with the white round it, mm.
const FLAG: f64 = 8.0;

/// Where dimension lines lie on the sheet, mm.
#[derive(Clone, Copy, Debug, Default)]
pub struct Lines {
    /// Top of the datum's pole.
    pub pole: f64,
    /// Running line over the counter, if anything is open at the top.
    pub above: Option<f64>,
    /// Running line under the floor.
    pub below: f64,
    /// Chain of modules.
    pub chain: f64,
    /// Finished end to finished end.
    pub total: f64,
    /// The counter's own ends.
    pub counter: f64,
}

/// One stretch of a leg's face, before it has a place on a sheet.
#[derive(Clone)]
pub struct Elevation<'s> {
    /// The set.
    pub set: &'s Set<'s>,
    /// This sheet.
    pub kind: Kind,
    /// The leg.
    pub leg: &'s Leg,
    /// Its index.
    pub leg_index: usize,
    /// How it is seen.
    pub facing: Facing,
    /// What of it.
    pub part: Part,
    /// Which page of the sheet, from 0.
    pub page: usize,
    /// How lengths are shown.
    pub show: Show,
    /// The floor.
    pub floor: FloorLine,
    /// Highest drawn level: the counter's top, its upstand's, or that of a leg behind.
    pub top: Length,
    /// Where tapes are read.
    pub stops: Stops,
    /// Where it ends at other legs, at the viewer's left and right.
    pub meetings: [Option<Meeting<'s>>; 2],
    /// What bounds what is shown, at the viewer's left and right.
    bounds: [Bound; 2],
    /// The view, once placed.
    pub view: View<FrontFace>,
    /// Dimension lines, once placed.
    pub lines: Lines,
}

/// Paper round the modules, mm.
#[derive(Clone, Copy, Debug)]
pub struct Rooms {
    /// Left of them.
    pub left: f64,
    /// Right of them.
    pub right: f64,
    /// Over the highest level.
    pub up: f64,
    /// Under z = 0.
    pub down: f64,
}

impl<'s> Elevation<'s> {
    /// A part of a leg's face.
    pub fn new(set: &'s Set<'s>, kind: Kind, leg: &'s Leg, facing: Facing, part: Part, page: usize) -> Elevation<'s> {
        let leg_index = if let Kind::Front(index, _) = kind { index } else { 0 };
        let splash = set.solved.counter.splash.filter(|_| !leg.counter.splashes.is_empty());
        let top = leg.datums.counter_top + splash.map_or(Length::ZERO, |splash| splash.height);
        let behind = behind::standing(set.solved, leg_index, facing.face);
        let top = behind.iter().map(|index| set.solved.legs[*index].datums.counter_top).fold(top, Length::max);
        let stops = Stops::new(leg, &facing, &part, leg.datums.counter_top);
        let floor = FloorLine::new(leg, &facing);
        let meetings = [0, 1].map(|side| Meeting::new(set.solved, leg_index, &facing, side));
        let (near, far) = facing.bounds(leg);
        let met = |meeting: &Option<Meeting<'_>>, bound: &Bound| meeting.as_ref().map_or(bound.clone(), Meeting::bound);
        let bounds = [met(&meetings[0], near), met(&meetings[1], far)];
        let (view, lines) =
            (View::open(&mut Canvas::new(1.0, 1.0), "", Scale(10), PaperPoint::new(0.0, 0.0)), Lines::default());
        Elevation {
            set,
            kind,
            leg,
            leg_index,
            facing,
            part,
            page,
            show: set.solved.show,
            floor,
            top,
            stops,
            meetings,
            bounds,
            view,
            lines,
        }
    }

    /// The same with lengths shown another way.
    pub fn shown(self, show: Show) -> Elevation<'s> {
        Elevation { show, ..self }
    }

    /// Whether levels are written at the viewer's left: only where that end is open and the other is not.
    pub fn levels_at_left(&self) -> bool {
        let (near, far) = self.bounds();
        self.part.first && self.part.last && near.is_open() && !far.is_open()
    }

    /// What bounds what is shown, at the viewer's left and right.
    pub fn bounds(&self) -> (&Bound, &Bound) {
        (&self.bounds[0], &self.bounds[1])
    }

    /// The counter's ends at the viewer's left and right, along the edge that is shown.
    pub fn counter(&self) -> (Length, Length) {
        let own = self.facing.counter(self.leg);
        let end = |side: usize, or: Length| {
            self.meetings[side].as_ref().and_then(|meeting| meeting.counter_end(self.leg)).unwrap_or(or)
        };
        (end(0, own.0), end(1, own.1))
    }

    /// What the counters reach over at the viewer's left and right, that of a leg behind with them.
    pub fn counters(&self) -> (Length, Length) {
        behind::spans(self).into_iter().fold(self.counter(), |all, one| (all.0.min(one.0), all.1.max(one.1)))
    }

    /// Whether a leg that comes towards the viewer hides what is at this x.
    pub fn hides(&self, x: Length) -> bool {
        self.meetings.iter().flatten().any(|meeting| {
            let beyond = if meeting.out > 0.0 { x > meeting.fold } else { x < meeting.fold };
            meeting.way == Way::Towards && beyond
        })
    }

    /// Width of the block of levels, mm.
    pub fn levels_width(&self) -> f64 {
        // A height with its longest fraction.
        let tall = self.leg.datums.counter_top + Length::from_sixty_fourths(4);
        let second = self.show.second(tall);
        let width = |text: &str| lettering::width(text, BODY, Weight::Regular);
        let figures = width(&self.show.text(tall)) + second.map_or(0.0, |text| 1.0 + width(&text));
        10.0 + width("floor, high point") + 5.0 + figures + 3.0
    }

    /// Width of a length as it is printed, both readings, mm.
    fn number_width(&self, length: Length) -> f64 {
        let width = |text: &str| lettering::width(text, BODY, Weight::Regular);
        width(&self.show.text(length)) + self.show.second(length).map_or(0.0, |text| 1.0 + width(&text))
    }

    /// Paper that is needed round the modules at a scale.
    pub fn rooms(&self, scale: Scale) -> Rooms {
        let s = scale.factor();
        let (near, far) = self.bounds();
        let far_of = |meeting: &Option<Meeting<'_>>, or: Length| meeting.as_ref().map_or(or, Meeting::far);
        let zero = self.facing.datum(self.leg, self.facing.near()[0]).min(self.counters().0);
        let zero = zero.min(far_of(&self.meetings[0], zero)).min(self.part.x0);
        let end = self.facing.datum(self.leg, self.facing.far()[0]).max(self.counters().1);
        let end = end.max(far_of(&self.meetings[1], end)).max(self.part.x1);
        let bound = |width: Length| (width.mm() * s).min(BOUND);
        let levels = self.levels_width();
        let mut left = match (self.part.first, near.is_open()) {
            (false, _) => MATCH,
            (true, true) => (self.part.x0 - zero).mm() * s + PAST_END,
            (true, false) => (self.part.x0 - self.facing.x(near.at)).mm() * s + bound(near.width) + 6.0,
        };
        let mut right = match (self.part.last, far.is_open()) {
            (false, _) => 10.0,
            (true, true) => (end - self.part.x1).mm() * s + PAST_END,
            (true, false) => (self.facing.x(far.at) - self.part.x1).mm() * s + bound(far.width) + 6.0,
        };
        for (meeting, room) in self.meetings.iter().zip([&mut left, &mut right]) {
            if meeting.as_ref().is_some_and(|meeting| meeting.way == Way::On) {
                *room += beside::STUB;
            }
        }
        // The build-up at an end has its number outside.
        let [near_end, _, near_frame] = self.facing.near().map(|datum| self.facing.datum(self.leg, datum));
        let [far_end, _, far_frame] = self.facing.far().map(|datum| self.facing.datum(self.leg, datum));
        if self.part.first && near_end < near_frame && self.meetings[0].is_none() {
            left = left.max((near_frame - near_end).mm() * s + 8.0 + self.number_width(near_frame - near_end));
        }
        if self.part.last && far_end > far_frame && self.meetings[1].is_none() {
            right = right.max((far_end - far_frame).mm() * s + 8.0 + self.number_width(far_end - far_frame));
        }
        if self.levels_at_left() {
            left += levels
        } else {
            right += levels
        }
        let above = Stops::reach(&self.stops.above, self.show, scale);
        let up = if above > 0.0 { FIRST + above } else { FIRST };
        let low = self.floor.lowest(self.part.x0.mm() - 200.0, self.part.x1.mm() + 200.0).min(0.0);
        let below = Stops::reach(&self.stops.below, self.show, scale);
        let down = -low * s
            + UNDER
            + if below > 0.0 { below + 5.5 } else { 0.0 }
            + chain::under(self, scale)
            + 2.0 * NEXT
            + PAST;
        Rooms { left, right, up: up + FLAG, down }
    }

    /// Whether it fits a room of paper at a scale.
    pub fn fits(&self, scale: Scale, width: f64, height: f64) -> bool {
        let rooms = self.rooms(scale);
        let s = scale.factor();
        rooms.left + rooms.right + self.part.width().mm() * s <= width
            && rooms.up + rooms.down + self.top.mm() * s <= height
    }

    /// Places it in the middle of an area of the sheet.
    pub fn place(&mut self, canvas: &mut Canvas, scale: Scale, area: Area) {
        let rooms = self.rooms(scale);
        let s = scale.factor();
        let width = rooms.left + rooms.right + self.part.width().mm() * s;
        let height = rooms.up + rooms.down + self.top.mm() * s;
        let x0 = area.left + ((area.width() - width) / 2.0).max(0.0) + rooms.left;
        let top = area.top + ((area.height() - height) / 2.0).max(0.0);
        let origin = PaperPoint::new(x0 - self.part.x0.mm() * s, top + rooms.up + self.top.mm() * s);
        self.view = View::open(canvas, "front", scale, origin);
        let low = self.floor.lowest(self.part.x0.mm() - 200.0, self.part.x1.mm() + 200.0).min(0.0);
        let below = self.view.y_mm(low) + UNDER;
        let reach = Stops::reach(&self.stops.below, self.show, scale);
        let chain = below + if reach > 0.0 { reach + 5.5 } else { 0.0 };
        let under = chain::under(self, scale);
        self.lines = Lines {
            pole: top,
            above: (!self.stops.above.is_empty()).then(|| self.view.y(self.top) - FIRST),
            below,
            chain,
            total: chain + under + NEXT,
            counter: chain + under + 2.0 * NEXT,
        };
    }

    /// Fittings set into this face, on this page.
    pub fn fittings(&self) -> impl Iterator<Item = (usize, &'s Fitting)> {
        let part = self.part.clone();
        self.leg.on_face(self.facing.face).filter(move |(_, fitting)| part.has(fitting))
    }

    /// Paper x of the ends of what is drawn of floor and counter: to the match lines, or past the open ends.
    pub fn reach(&self) -> (f64, f64) {
        let rooms = self.rooms(self.view.scale);
        let levels = self.levels_width();
        let (left, right) = if self.levels_at_left() { (levels, 0.0) } else { (0.0, levels) };
        let a = if self.part.first { self.view.x(self.part.x0) - rooms.left + left } else { self.view.x(self.part.x0) };
        let b =
            if self.part.last { self.view.x(self.part.x1) + rooms.right - right } else { self.view.x(self.part.x1) };
        (a, b)
    }

    /// What the view takes of the sheet, with its dimension lines.
    pub fn area(&self) -> Area {
        let (left, right) = self.reach();
        let levels = self.levels_width();
        let (before, after) = if self.levels_at_left() { (levels, 0.0) } else { (0.0, levels) };
        Area { left: left - before, top: self.lines.pole - 3.0, right: right + after, bottom: self.lines.counter + 1.0 }
    }

    /// Number of another page of this sheet.
    pub fn sheet_of(&self, page: usize) -> usize {
        self.set.number(self.kind).unwrap_or(1) + page
    }

    /// Whether it is seen from behind.
    pub fn is_behind(&self) -> bool {
        self.facing.face == Face::Back
    }
}
