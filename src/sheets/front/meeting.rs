//! Where the shown face ends at another leg: the fold between the two faces, and what the other leg hides or shows.

use super::facing::Facing;
use crate::solve::path::Turn;
use crate::solve::{Bound, BoundKind, Face, JointKind, Leg, Solved};
use crate::units::Length;

/// Widest that a leg that is cut is drawn, as a multiple of its depth: at a blunt angle the cut runs on and on.
const WIDEST: f64 = 1.5;

/// Which way the other leg goes from the fold, as the viewer sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Towards the viewer: it is cut, and what of this leg lies beyond the fold is hidden behind it.
    Towards,
    /// Away from the viewer, round the corner.
    Away,
    /// On in the same line, higher or lower.
    On,
}

/// A face's end at another leg.
#[derive(Clone, Debug)]
pub struct Meeting<'s> {
    /// The other leg.
    pub other: &'s Leg,
    /// Its index.
    pub index: usize,
    /// Which way it goes.
    pub way: Way,
    /// Viewer's x of the fold: where the two faces meet.
    pub fold: Length,
    /// Angle between the faces, degrees, on the cook's side; 180 at a step.
    pub angle: f64,
    /// Way out of this leg: -1 at the viewer's left, 1 at the right.
    pub out: f64,
    facing: Facing,
    turn: Option<Turn>,
    /// Depth of the face that is shown, in this leg and in the other.
    depths: (Length, Length),
    /// The end is the right one of this leg.
    right: bool,
    length: Length,
}

impl<'s> Meeting<'s> {
    /// Of the viewer's left (0) or right (1) end of a leg's face.
    pub fn new(solved: &'s Solved, leg_index: usize, facing: &Facing, side: usize) -> Option<Meeting<'s>> {
        let leg = solved.legs.get(leg_index)?;
        let behind = facing.face == Face::Back;
        let right = (side == 1) != behind;
        let joint = solved.joints.iter().find(|j| if right { j.left == leg_index } else { j.right == leg_index })?;
        let index = if right { joint.right } else { joint.left };
        let other = solved.legs.get(index)?;
        let turn = match &joint.kind {
            JointKind::Corner(corner) => Some(Turn::of(corner.turn)),
            JointKind::Step => None,
        };
        let depths = if behind { (leg.datums.finished_back, other.datums.finished_back) } else { Default::default() };
        let inside = turn.is_some_and(|turn| turn.is_inside());
        let way = match turn {
            None => Way::On,
            Some(_) if inside != behind => Way::Towards,
            Some(_) => Way::Away,
        };
        let angle = turn.map_or(180.0, |turn| {
            let turned = turn.angle.to_degrees();
            if inside { 180.0 - turned } else { 180.0 + turned }
        });
        let mut meeting = Meeting {
            other,
            index,
            way,
            fold: Length::ZERO,
            angle,
            out: if side == 0 { -1.0 } else { 1.0 },
            facing: *facing,
            turn,
            depths,
            right,
            length: leg.datums.finished_right,
        };
        meeting.fold = meeting.x(depths.1);
        Some(meeting)
    }

    /// Viewer's x at which an upright plane of the other leg, at its depth `v`, crosses the face that is shown.
    pub fn x(&self, v: Length) -> Length {
        let beyond = self.turn.map_or(Length::ZERO, |turn| turn.beyond(self.depths.0, v));
        self.facing.x(if self.right { self.length + beyond } else { -beyond })
    }

    /// Viewer's x at which the counter's edge over the shown face ends at a corner, on the back of a leg; its front edge
    /// ends where the leg's datums say.
    pub fn counter_end(&self, leg: &Leg) -> Option<Length> {
        let turn = self.turn.filter(|_| self.facing.face == Face::Back)?;
        let beyond = turn.beyond(leg.datums.counter_back, self.other.datums.counter_back);
        Some(self.facing.x(if self.right { self.length + beyond } else { -beyond }))
    }

    /// The same as [`Meeting::x`], no farther from the fold than it is drawn.
    pub fn drawn_x(&self, v: Length) -> Length {
        let widest = self.other.datums.finished_back.scaled(WIDEST);
        let off = (self.x(v) - self.fold).max(-widest).min(widest);
        self.fold + off
    }

    /// Viewer's x of a length along the other leg from where the two meet, at a step.
    pub fn along(&self, u: Length) -> Length {
        let from = if self.right { u } else { self.other.datums.finished_right - u };
        self.fold + if self.out > 0.0 { from } else { -from }
    }

    /// Farthest from the fold that the other leg is drawn.
    pub fn far(&self) -> Length {
        let d = &self.other.datums;
        match self.way {
            Way::Towards if self.facing.face == Face::Front => self.drawn_x(d.counter_back.max(d.finished_back)),
            Way::Towards => self.drawn_x(d.counter_front),
            Way::Away | Way::On => self.fold,
        }
    }

    /// What bounds the shown face there, in this leg's u: the wall behind a leg that is cut; else nothing.
    pub fn bound(&self) -> Bound {
        let back = &self.other.back;
        let open = Bound { kind: BoundKind::Open, ..back.clone() };
        if self.way != Way::Towards
            || self.facing.face == Face::Back
            || matches!(back.kind, BoundKind::Open | BoundKind::Leg)
        {
            return open;
        }
        let u = |v: Length| self.facing.x(self.drawn_x(v));
        Bound { at: u(back.at), at_counter: u(back.at_counter), ..back.clone() }
    }

    /// What the fold says: `fold: meets leg east at 88.6°`.
    pub fn words(&self) -> String {
        let id = &self.other.id;
        if self.way == Way::On {
            return format!("step: leg {id} goes on");
        }
        let angle = crate::sheets::view::number((self.angle * 10.0).round() / 10.0, 1);
        format!("fold: meets leg {id} at {angle}\u{b0}")
    }
}
