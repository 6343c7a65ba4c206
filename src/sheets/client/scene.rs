//! One face of a leg as its viewer sees it: every opening, front and height at its true place, in millimetres.
//!
//! x runs to the viewer's right from 0 at the finished end on the viewer's left; y is z, up from the highest floor
//! point. Seen from behind, the leg's right end is on the left. At an end face x runs over the depth.

use super::patch::{Patch, Rect};
use crate::solve::{
    Bound, BoundKind, CounterMaterial, Face, Finish, Fitting, FittingKind, FlangeLap, Foot, Leg, Look, Plane, Solved,
};

/// An inch, mm.
pub const INCH: f64 = 25.4;

/// A leg's face, gathered for drawing.
pub struct Scene<'s> {
    /// The leg.
    pub leg: &'s Leg,
    /// The run.
    pub solved: &'s Solved,
    /// The face that is seen.
    pub face: Face,
    /// The finished end on the viewer's right.
    pub right: f64,
    /// Where the finish begins and ends: the finished ends, but at a corner the back's own.
    pub span: (f64, f64),
    /// The ends of all that is built and seen: of the counter, and of legs that stand beside.
    pub reach: (f64, f64),
    /// The top of legs that stand beside or behind.
    pub high: f64,
    /// The counter's ends.
    pub counter: (f64, f64),
    /// Underside and top of the counter.
    pub levels: (f64, f64),
    /// Lower edge of the boards.
    pub board_bottom: f64,
    /// Top of the base trim.
    pub trim: Option<f64>,
    /// Height of the upstand over the counter, and the stretches it has.
    pub splash: (f64, Vec<(f64, f64)>),
    /// Fittings in the face.
    pub fronts: Vec<Front<'s>>,
    /// What stands at the viewer's left and right.
    pub bounds: [Option<Side<'s>>; 2],
    /// The wall behind and its top, when there is one on the far side.
    pub wall: Option<(&'s Bound, f64)>,
    /// 1 where textures have their true size; more at small scales, where that would be too fine to see.
    pub size: f64,
}

/// A fitting set into the face, or hung through it.
pub struct Front<'s> {
    /// The fitting.
    pub fitting: &'s Fitting,
    /// Its place in the solved list.
    pub index: usize,
    /// The cutout in the board.
    pub hole: Rect,
    /// What is seen of it: cutout and flange, or body where no flange covers the gap.
    pub outside: Rect,
    /// It hangs in a notch.
    pub hung: bool,
}

/// Something that stands at an end.
pub struct Side<'s> {
    /// What.
    pub bound: &'s Bound,
    /// Its face at the floor and how far it moves per millimetre up.
    face: (f64, f64),
    /// The way from its face to its far side: -1 on the viewer's left.
    outward: f64,
    /// Its width, mm.
    pub width: f64,
    /// Its top, mm.
    pub top: f64,
}

impl Side<'_> {
    /// Its face at a height.
    pub fn at(&self, y: f64) -> f64 {
        self.face.0 + self.face.1 * y
    }
    /// Its far side at a height.
    pub fn far(&self, y: f64) -> f64 {
        self.at(y) + self.outward * self.width
    }
    /// Its left and right at a height.
    pub fn ends(&self, y: f64) -> (f64, f64) {
        let (a, b) = (self.at(y), self.far(y));
        (a.min(b), a.max(b))
    }
}

impl<'s> Scene<'s> {
    /// Gathers a face.
    pub fn new(solved: &'s Solved, leg: &'s Leg, face: Face) -> Scene<'s> {
        let d = &leg.datums;
        let long = matches!(face, Face::Front | Face::Back);
        let far = if long { d.finished_right } else { d.finished_back }.mm();
        let flip = flips(face);
        let x = |u: f64| if flip { far - u } else { u };
        let pair = |a: f64, b: f64| if flip { (x(b), x(a)) } else { (a, b) };
        let boards = leg.boards.iter().filter(|board| board.face == face);
        let bottom = boards.map(|board| board.extent.y0.mm()).fold(f64::INFINITY, f64::min);
        let (first, second) = if flip { (&leg.right, &leg.left) } else { (&leg.left, &leg.right) };
        let splashes = if long { leg.counter.splashes.as_slice() } else { &[] };
        let splashes = splashes.iter().map(|(_, a, b, _)| pair(a.mm(), b.mm())).collect();
        let fronts = leg.fittings.iter().enumerate();
        let fronts = fronts.filter(|(_, f)| f.face == face).filter_map(|(index, f)| front(leg, f, index, &pair));
        let top = d.counter_top.mm();
        let counter_side = |bound, outward| if long { side(bound, outward, top, &x) } else { None };
        let counter = if long { (d.counter_left, d.counter_right) } else { (d.counter_front, d.counter_back) };
        let counter = pair(counter.0.mm(), counter.1.mm());
        Scene {
            leg,
            solved,
            face,
            right: far,
            span: (0.0, far),
            reach: (counter.0.min(0.0), counter.1.max(far)),
            high: 0.0,
            counter,
            levels: (d.substrate_top.mm(), top),
            board_bottom: if bottom.is_finite() { bottom } else { d.frame_bottom.mm() },
            trim: solved.trim.as_ref().map(|trim| trim.top.mm()),
            splash: (solved.counter.splash.map_or(0.0, |s| s.height.mm()), splashes),
            fronts: fronts.collect(),
            bounds: [counter_side(first, -1.0), counter_side(second, 1.0)],
            wall: (face == Face::Front && leg.back.kind == BoundKind::Wall).then(|| {
                (&leg.back, if leg.back.height.mm() > 0.0 { leg.back.height.mm() } else { top + 24.0 * INCH })
            }),
            size: 1.0,
        }
    }

    /// Where a length along the leg lies for the viewer.
    pub fn x(&self, u: f64) -> f64 {
        if flips(self.face) { self.right - u } else { u }
    }

    /// Where a foot stands for the viewer.
    pub fn foot(&self, foot: &Foot) -> f64 {
        self.x(if matches!(self.face, Face::Front | Face::Back) { foot.u.mm() } else { foot.v.mm() })
    }

    /// Level of the floor in front of the face.
    pub fn floor(&self, x: f64) -> f64 {
        let (x, d) = (self.x(x), &self.leg.datums);
        match self.face {
            Face::Front => self.leg.floor.height(x, 0.0),
            Face::Back => self.leg.floor.height(x, d.finished_back.mm()),
            Face::Left => self.leg.floor.height(0.0, x),
            Face::Right => self.leg.floor.height(d.finished_right.mm(), x),
        }
    }

    /// How much the floor rises to the viewer's right, per length.
    pub fn rise(&self) -> f64 {
        self.floor(1.0) - self.floor(0.0)
    }

    /// The finish of the face.
    pub fn finish(&self) -> Option<&'s Finish> {
        self.leg.finish(self.face)
    }

    /// Where the finish is seen: from the trim (or the boards' lower edge) up to the counter.
    pub fn face_rect(&self) -> Rect {
        Rect::new(self.span.0, self.trim.unwrap_or(self.board_bottom), self.span.1, self.levels.0)
    }

    /// Cutouts and flanges as boxes that nothing of the finish is seen in; a flange is let lap a little over it.
    pub fn covered(&self) -> Vec<Rect> {
        let lapped = |front: &Front<'_>| {
            let (o, h) = (front.outside, front.hole);
            let lap = 0.2 * INCH;
            Rect {
                x0: (o.x0 + lap).min(h.x0),
                y0: if front.fitting.to_floor {
                    self.floor(h.x0).min(self.floor(h.x1)) - INCH
                } else {
                    (o.y0 + lap).min(h.y0)
                },
                x1: (o.x1 - lap).max(h.x1),
                y1: (o.y1 - lap).max(h.y1),
            }
        };
        self.fronts.iter().map(lapped).collect()
    }

    /// The finish that is seen.
    pub fn face_patch(&self) -> Patch {
        let covered: Vec<Patch> = self.covered().iter().map(Rect::patch).collect();
        let face = self.face_rect().patch();
        if covered.is_empty() { face } else { face.less(&Patch::union(&covered)) }
    }

    /// Stretches of the counter's edge between notches.
    pub fn counter_stretches(&self) -> Vec<(f64, f64)> {
        let mut notches: Vec<(f64, f64)> =
            self.fronts.iter().filter(|f| f.hung).map(|f| (f.hole.x0, f.hole.x1)).collect();
        notches.sort_by(|a, b| a.0.total_cmp(&b.0));
        let (mut from, mut stretches) = (self.counter.0, Vec::new());
        for (a, b) in notches {
            if a > from + 1.0 {
                stretches.push((from, a));
            }
            from = from.max(b);
        }
        if self.counter.1 > from + 1.0 {
            stretches.push((from, self.counter.1));
        }
        stretches
    }

    /// Fittings let into the counter from above, with their place along it, flange and all.
    pub fn wells(&self) -> Vec<(&'s Fitting, Rect)> {
        let top = self.levels.1;
        let wells = self.leg.fittings.iter().filter(|f| f.kind == FittingKind::Well);
        wells
            .map(|f| {
                let (a, b) = (self.x((f.left - f.flange.left).mm()), self.x((f.right + f.flange.right).mm()));
                (f, Rect::new(a, top, b, top))
            })
            .collect()
    }

    /// Notches of the other face: their hoods are seen over the counter.
    pub fn hoods_behind(&self) -> Vec<(&'s Fitting, Rect)> {
        let notches = self.leg.fittings.iter().filter(|f| f.kind == FittingKind::Notch && f.face != self.face);
        notches
            .filter(|f| matches!(f.face, Face::Front | Face::Back))
            .map(|f| {
                let (a, b) = (self.x((f.left - f.flange.left).mm()), self.x((f.right + f.flange.right).mm()));
                (f, Rect::new(a, self.levels.1, b, self.levels.1))
            })
            .collect()
    }

    /// How much deeper than usual the counter's shadow on the face is: with its overhang, up to four times.
    pub fn under(&self) -> f64 {
        let d = &self.leg.datums;
        let over = match self.face {
            Face::Front => -d.counter_front,
            Face::Back => d.counter_back - d.finished_back,
            Face::Left => -d.counter_left,
            Face::Right => d.counter_right - d.finished_right,
        };
        (over.mm() / (1.6 * INCH)).clamp(1.0, 4.0)
    }

    /// The counter's material.
    pub fn material(&self) -> CounterMaterial {
        self.solved.counter.material
    }

    /// Height of the hood of a grill or burner over the counter: a drawing convention, held to its width.
    pub fn hood_height(look: Look, width: f64) -> f64 {
        match look {
            Look::Grill => (0.43 * width).clamp(7.0 * INCH, 15.0 * INCH),
            _ => 2.0 * INCH,
        }
    }

    /// Top of everything that has to be on the picture. What stands at an end may be higher; it is broken off where
    /// the sheet ends.
    pub fn top(&self) -> f64 {
        let mut top = self.levels.1 + self.splash.0.max(10.0 * INCH);
        for fitting in &self.leg.fittings {
            if fitting.look == Look::Grill && fitting.cutout(Plane::Counter).is_some() {
                top = top.max(self.levels.1 + Scene::hood_height(fitting.look, fitting.width().mm()));
            }
        }
        // What is much higher than a person is broken off in any case, so it needs no more room than one.
        let shown = |top: f64| if top > 78.0 * INCH { 68.0 * INCH } else { top };
        let bounds = self.bounds.iter().flatten().map(|side| shown(side.top + CAP));
        let wall = self.wall.map(|(_, top)| shown(top + COPING));
        bounds.chain(wall).fold(top.max(self.high), f64::max)
    }
}

/// Height of the cap of a pier or post.
pub const CAP: f64 = 3.2 * INCH;
/// Height of a wall's coping.
pub const COPING: f64 = 2.0 * INCH;

/// Whether the viewer of a face sees the leg's right (or back) on the left.
pub fn flips(face: Face) -> bool {
    matches!(face, Face::Back | Face::Left)
}

/// What bounds an end, as it is drawn; legs are drawn as themselves.
pub fn side<'s>(bound: &'s Bound, outward: f64, counter_top: f64, x: &impl Fn(f64) -> f64) -> Option<Side<'s>> {
    if matches!(bound.kind, BoundKind::Open | BoundKind::Leg) {
        return None;
    }
    let (at, above) = (x(bound.at.mm()), x(bound.at_counter.mm()));
    let given = |length: f64, otherwise: f64| if length > 0.0 { length } else { otherwise };
    let (width, top) = match bound.kind {
        BoundKind::Post => (4.0 * INCH, 84.0 * INCH),
        BoundKind::Wall => (6.0 * INCH, 84.0 * INCH),
        _ => (16.0 * INCH, counter_top + 24.0 * INCH),
    };
    let (width, top) = (given(bound.width.mm(), width), given(bound.height.mm(), top));
    Some(Side { bound, face: (at, (above - at) / counter_top.max(1.0)), outward, width, top })
}

/// A wall behind another leg, that comes forward at an end: where its face is seen, and the way to its far side.
pub fn beside<'s>(bound: &'s Bound, at: f64, outward: f64, counter_top: f64) -> Option<Side<'s>> {
    let side = side(bound, outward, counter_top, &|u| u)?;
    Some(Side { face: (at, 0.0), ..side })
}

fn front<'s>(
    leg: &'s Leg,
    fitting: &'s Fitting,
    index: usize,
    pair: &impl Fn(f64, f64) -> (f64, f64),
) -> Option<Front<'s>> {
    let cutout = fitting.cutout(Plane::of(fitting.face))?;
    let (a, b) = pair(cutout.extent.x0.mm(), cutout.extent.x1.mm());
    let mut hole = Rect::new(a, cutout.extent.y0.mm(), b, cutout.extent.y1.mm());
    let hung = fitting.kind == FittingKind::Notch;
    if hung {
        hole.y1 = leg.datums.counter_top.mm();
    }
    let FlangeLap { left, right, far, near } = fitting.flange;
    let (left, right) = (left.mm(), right.mm());
    let (left, right) = if flips(fitting.face) { (right, left) } else { (left, right) };
    let mut outside = Rect { x0: hole.x0 - left, y0: hole.y0 - near.mm(), x1: hole.x1 + right, y1: hole.y1 + far.mm() };
    if hung {
        outside.y1 = hole.y1 + 0.5 * INCH;
    }
    let long = matches!(fitting.face, Face::Front | Face::Back);
    if let (Some(body), false, true) = (fitting.body, hung, long) {
        // Where no flange covers the gap, the body itself is seen in its opening.
        let (b0, b1) = pair(body.u.0.mm(), body.u.1.mm());
        if left <= 0.0 && b0 > hole.x0 && b0 < hole.middle() {
            outside.x0 = b0;
        }
        if right <= 0.0 && b1 < hole.x1 && b1 > hole.middle() {
            outside.x1 = b1;
        }
        if far.mm() <= 0.0 && body.z.1.mm() < hole.y1 && body.z.1.mm() > (hole.y0 + hole.y1) / 2.0 {
            outside.y1 = body.z.1.mm();
        }
    }
    Some(Front { fitting, index, hole, outside, hung })
}
