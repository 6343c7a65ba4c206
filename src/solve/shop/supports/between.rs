//! Members front to back under substrate joints, and where tubes are too far apart for what lies on them.

use super::draft::{Carries, Draft, Room, over};
use crate::solve::{Along, BodyBox, Plane, SupportRole, SupportWork};
use crate::units::Length;

/// How far a member is moved aside at a time while it looks for room, and how often.
const STEP: Length = Length::from_sixty_fourths(32);
const STEPS: i64 = 8;

/// Puts what is missing under a leg's substrate.
pub(super) fn between(room: &mut Room, work: &SupportWork) {
    for joint in room.leg.substrate.joints.clone() {
        under_joint(room, joint, work);
    }
    for module in 0..room.leg.modules.len() {
        bays(room, module, work);
    }
}

/// Tubes at the frame's top that run front to back, as their stretch of u, those that stand at a module's sides included.
fn lines(room: &Room, module: usize) -> Vec<(Length, Length)> {
    let top = room.leg.datums.frame_top;
    let along = room.tubes(module).filter(|body| body.z.1 == top && body.v.1 - body.v.0 > body.u.1 - body.u.0);
    let mut lines: Vec<(Length, Length)> = along.map(|body| body.u).collect();
    lines.sort();
    lines
}

fn put(room: &mut Room, module: usize, centre: Length, v: (Length, Length), strip: Length, work: &SupportWork) -> bool {
    let (half, top) = (work.rail.section.width.half(), room.leg.datums.frame_top);
    let z = (top - work.rail.section.height, top);
    let moves = (0..=STEPS).flat_map(|k| [STEP * k, Length::ZERO - STEP * k]);
    let boxes = moves.map(|by| BodyBox { u: (centre + by - half, centre + by - half + work.rail.section.width), v, z });
    let Some(body) = boxes.into_iter().find(|body| room.is_clear(body)) else { return false };
    room.drafts.push(Draft {
        role: SupportRole::Intermediate,
        module,
        fitting: None,
        body,
        along: Along::V,
        bar: work.rail.clone(),
        holes: Vec::new(),
        carries: Carries::Counter(strip),
        span: None,
    });
    true
}

/// A joint lies on a tube: on the posts where modules meet, or on a member of its own.
fn under_joint(room: &mut Room, joint: Length, work: &SupportWork) {
    let d = room.leg.datums;
    let holds = |body: &BodyBox| {
        body.z.1 == d.frame_top && body.u.0 <= joint && body.u.1 >= joint && body.v.1 - body.v.0 > body.u.1 - body.u.0
    };
    let near = room.leg.modules.iter().position(|module| module.left <= joint && joint <= module.right);
    let Some(module) = near else { return };
    let both = [module.saturating_sub(1), module, module + 1];
    if both.into_iter().any(|module| room.tubes(module).any(holds)) {
        return;
    }
    let Some((inside, deep)) = room.inside(module) else { return };
    let half = work.rail.section.width.half();
    if joint - half >= inside.0 && joint + half <= inside.1 {
        put(room, module, joint, deep, work.apart, work);
    }
}

/// Between two tubes a bay that is wider and deeper than the sheet may span gets members, evenly.
fn bays(room: &mut Room, module: usize, work: &SupportWork) {
    let Some((_, deep)) = room.inside(module) else { return };
    let lines = lines(room, module);
    let (e, t) = (room.gap, room.tube);
    for pair in lines.windows(2) {
        let (from, to) = (pair[0].1, pair[1].0);
        if to - from <= work.apart {
            continue;
        }
        let mut v = deep;
        let mut closed = false;
        for fitting in room.leg.fittings_of(module) {
            let Some(cutout) = fitting.cutout(Plane::Substrate) else { continue };
            let extent = cutout.extent;
            if !over((extent.x0, extent.x1), (from, to)) {
                continue;
            }
            if cutout.open {
                let behind = extent.y1 + e;
                v.0 = v.0.max(if behind + t <= deep.1 { behind + t } else { deep.1 });
            } else {
                closed |= extent.width() * 2 > to - from;
            }
        }
        if closed || v.1 - v.0 <= work.apart {
            continue;
        }
        let bays = (to - from).nm() / work.apart.nm() + i64::from((to - from).nm() % work.apart.nm() != 0);
        let strip = Length::from_nm((to - from).nm() / bays);
        for bay in 1..bays {
            put(room, module, from + Length::from_nm((to - from).nm() * bay / bays), v, strip, work);
        }
    }
}
