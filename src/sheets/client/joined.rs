//! What is built of a run whose legs meet, seen square on one face: the leg itself, those that stand before or behind it,
//! and those that turn a corner towards the viewer or away. Nothing is left out but what lies behind the viewer.

use super::brush::Brush;
use super::scene::{self, INCH, Scene};
use super::{seats, worktop};
use crate::geometry::{FrontFace, LegPoint};
use crate::sheets::canvas::Canvas;
use crate::sheets::solids::{self, Model, Picture, Projection, pose_of};
use crate::sheets::view::View;
use crate::solve::{Face, JointKind, Leg, Solved};

/// What is built, seen from before a face.
pub struct Joined<'s> {
    model: Model<'s>,
    view: Projection,
    leg: usize,
    /// Legs that come forward round an inside corner at the viewer's left and right.
    forward: [bool; 2],
}

/// Long faces of a leg that a client sees: the front unless the leg stands behind another, and a back that is open and has
/// something in it or people before it.
pub fn faces(solved: &Solved, leg: usize) -> Vec<Face> {
    let of = &solved.legs[leg];
    let used = of.on_face(Face::Back).next().is_some() || of.seating.is_some();
    let front = of.behind.is_none().then_some(Face::Front);
    front.into_iter().chain((used && of.back.is_open()).then_some(Face::Back)).collect()
}

impl<'s> Joined<'s> {
    /// Gathers what is seen, and tells the scene how far it reaches and what stands beside.
    pub fn new(solved: &'s Solved, leg: usize, face: Face, scene: &mut Scene<'s>) -> Joined<'s> {
        let pose = pose_of(solved, leg, face);
        let view = Projection::square_on(&pose);
        let met = |other: usize| {
            let joint =
                solved.joints.iter().any(|j| (j.left, j.right) == (leg, other) || (j.left, j.right) == (other, leg));
            joint || solved.legs[leg].behind == Some(other) || solved.legs[other].behind == Some(leg)
        };
        // Depths of a leg's plan, from the face towards the viewer.
        let depths = |other: usize| corners(&solved.legs[other]).map(|at| pose.ahead([at[0], at[1], 0.0]));
        let most = |other: usize| depths(other).into_iter().fold(f64::NEG_INFINITY, f64::max);
        let (shown, before): (Vec<usize>, Vec<usize>) =
            (0..solved.legs.len()).partition(|&other| other == leg || met(other) || most(other) <= 1.0);
        let mut model = solids::run(solved, &shown, &view, true);
        // The viewer stands half way to what is left out.
        let near =
            before.iter().flat_map(|&other| depths(other)).filter(|ahead| *ahead > 1.0).fold(f64::INFINITY, f64::min);
        if near.is_finite() {
            let own = depths(leg).into_iter().fold(0.0, f64::max);
            solids::cut(&mut model, &pose.out((near / 2.0).max(own + 4.0 * INCH)));
        }
        let bounds = model.bounds(|place| view.spot(place), |_| true);
        scene.reach = (bounds.x0.min(scene.reach.0), bounds.x1.max(scene.reach.1));
        scene.high = bounds.y1;
        let mut forward = [false; 2];
        for joint in &solved.joints {
            let JointKind::Corner(corner) = joint.kind else { continue };
            // At the leg's right end stands the right leg, and the other way round; seen from behind they change sides.
            let (other, right) = if joint.left == leg {
                (joint.right, true)
            } else if joint.right == leg {
                (joint.left, false)
            } else {
                continue;
            };
            let side = usize::from(right != scene::flips(face));
            let inside = (corner.turn > 0.0) != (face == Face::Back);
            forward[side] = inside;
            let of = &solved.legs[other];
            if inside && face == Face::Front {
                let far = if right { of.datums.finished_right.mm() } else { 0.0 };
                let plan = of.placement.to_plan(LegPoint::new(far, of.back.at_counter.mm()));
                let at = view.spot([plan.x, plan.y, 0.0])[0];
                let way = if right { 1.0 } else { -1.0 };
                scene.bounds[side] = scene::beside(&of.back, at, way, of.datums.counter_top.mm());
            }
        }
        Joined { model, view, leg, forward }
    }

    /// Sets the size of its textures.
    pub fn sized(&mut self, size: f64) {
        self.model.scenes.iter_mut().for_each(|scene| scene.size = size);
    }

    /// Paints it.
    pub fn paint(&self, canvas: &mut Canvas, view: &View<FrontFace>) {
        let picture = Picture {
            layer: view.layer,
            origin: view.origin,
            factor: view.scale.factor(),
            square: Some(self.leg),
            corners: self.forward,
        };
        solids::paint(canvas, &self.model, &self.view, &picture);
    }

    /// What stands on the counter and before it.
    pub fn stands(&self, brush: &mut Brush<'_>, scene: &Scene<'_>) {
        if scene.face == Face::Front {
            worktop::still_life(brush, scene);
        } else if let Some(seating) = scene.leg.seating {
            seats::draw(brush, scene, seating);
        }
    }
}

/// The corners of a leg with its counter, in plan.
fn corners(leg: &Leg) -> [[f64; 2]; 4] {
    let d = &leg.datums;
    let (u0, u1) = (d.counter_left.mm().min(0.0), d.counter_right.mm().max(d.finished_right.mm()));
    let (v0, v1) = (d.counter_front.mm().min(0.0), d.counter_back.mm().max(d.finished_back.mm()));
    [[u0, v0], [u1, v0], [u1, v1], [u0, v1]].map(|[u, v]| {
        let at = leg.placement.to_plan(LegPoint::new(u, v));
        [at.x, at.y]
    })
}
