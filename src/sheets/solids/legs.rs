//! The clad body of each leg.

use super::facet::Skin;
use super::model::{Body, Model, level, pose_of};
use crate::geometry::LegPoint;
use crate::sheets::client::patch::Patch;
use crate::solve::{BoundKind, Face, JointKind, Leg, Solved};

/// Adds the faces of a leg's body.
pub fn leg(model: &mut Model<'_>, index: usize) {
    let solved = model.solved;
    let leg = &solved.legs[index];
    model.begin(Some(index));
    let right = leg.datums.finished_right.mm();
    let (from, to) = backs(solved, index);
    let back = leg.datums.finished_back.mm();
    let plan = Patch::of(vec![[0.0, 0.0], [right, 0.0], [to, back], [from, back]]);
    let z = (floor_under(leg), leg.datums.substrate_top.mm());
    model.bodies.push(Body { name: format!("leg {}", index + 1), pose: level(leg.placement), plan, z });
    let spans = [
        (Face::Front, (0.0, right)),
        (Face::Back, (right - to, right - from)),
        (Face::Left, (0.0, leg.datums.finished_back.mm())),
        (Face::Right, (0.0, leg.datums.finished_back.mm())),
    ];
    for (face, span) in spans {
        if !has(leg, face) {
            continue;
        }
        let scene = model.scene(index, face, Some(span));
        let of = &model.scenes[scene];
        let (a, b, top) = (span.0, span.1, of.levels.0);
        let spot = |x: f64| match face {
            Face::Front => (of.x(x), 0.0),
            Face::Back => (of.x(x), back),
            Face::Left => (0.0, of.x(x)),
            Face::Right => (right, of.x(x)),
        };
        // Along the floor with all its bends and steps.
        let foot = leg.floor.line(spot(a), spot(b));
        let foot = foot.into_iter().map(|(share, z)| [a + (b - a) * share, z]);
        let patch = Patch::of(foot.chain([[b, top], [a, top]]).collect());
        let name = format!("leg {} {}", index + 1, word(face));
        model.face(name, pose_of(solved, index, face), patch, Skin::Clad(scene), 0.5);
    }
}

/// The lowest floor at a leg's corners.
fn floor_under(leg: &Leg) -> f64 {
    let (right, back) = (leg.datums.finished_right.mm(), leg.datums.finished_back.mm());
    let corners = [(0.0, 0.0), (right, 0.0), (right, back), (0.0, back)];
    corners.into_iter().map(|(u, v)| leg.floor.height(u, v)).fold(f64::INFINITY, f64::min)
}

/// A face's word.
pub const fn word(face: Face) -> &'static str {
    match face {
        Face::Front => "front",
        Face::Back => "back",
        Face::Left => "left end",
        Face::Right => "right end",
    }
}

/// Ends that meet another leg are no faces: what is built there goes on.
fn has(leg: &Leg, face: Face) -> bool {
    match face {
        Face::Front | Face::Back => true,
        Face::Left => leg.left.kind != BoundKind::Leg,
        Face::Right => leg.right.kind != BoundKind::Leg,
    }
}

/// Where the back of a leg begins and ends, along u: at a corner, where it meets the back of the other leg.
pub fn backs(solved: &Solved, index: usize) -> (f64, f64) {
    let leg = &solved.legs[index];
    let right = leg.datums.finished_right.mm();
    let [from, to] = at_corners(solved, index, |leg| leg.datums.finished_back.mm());
    let (from, to) = (from.unwrap_or(0.0), to.unwrap_or(right));
    if to > from { (from, to) } else { (0.0, right) }
}

/// Where a line behind a leg meets that behind the legs round its left and right corner, along its u; `None` where there
/// is no corner. `behind` is how far a leg's line lies from its finished face.
pub fn at_corners(solved: &Solved, index: usize, behind: impl Fn(&Leg) -> f64) -> [Option<f64>; 2] {
    let leg = &solved.legs[index];
    let mut met = [None, None];
    for joint in solved.joints.iter().filter(|joint| matches!(joint.kind, JointKind::Corner(_))) {
        let meets = |other: usize| meeting(leg, behind(leg), &solved.legs[other], behind(&solved.legs[other]));
        if joint.right == index {
            met[0] = meets(joint.left);
        }
        if joint.left == index {
            met[1] = meets(joint.right);
        }
    }
    met
}

/// Where a line behind a leg meets that behind another, along its u; `None` where they hardly turn.
fn meeting(leg: &Leg, back: f64, other: &Leg, other_back: f64) -> Option<f64> {
    let turn = other.placement.angle - leg.placement.angle;
    let (sin, cos) = turn.sin_cos();
    if sin.abs() < 0.05 {
        return None;
    }
    let at = leg.placement.to_leg(other.placement.to_plan(LegPoint::new(0.0, other_back)));
    Some(at.x + (back - at.y) / sin * cos)
}
