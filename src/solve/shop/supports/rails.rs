//! Rails at the frame's top round counter cutouts: before and behind a well, beside a notch. What lies behind a notch and
//! beside a well is the frame's own.

use super::draft::{Carries, Draft, Room, SHORTEST};
use crate::solve::{Along, BodyBox, FittingKind, SupportRole, SupportWork};
use crate::units::Length;

/// A strip narrower than this between a cutout and the frame's own tube needs no tube of its own: two inches, common practice.
const NARROW: Length = Length::from_sixty_fourths(2 * 64);

/// Puts the rails of every cutout of a leg.
pub(super) fn rails(room: &mut Room, work: &SupportWork) {
    for index in 0..room.leg.fittings.len() {
        match room.leg.fittings[index].kind {
            FittingKind::Well => well(room, index, work),
            FittingKind::Notch => notch(room, index, work),
            FittingKind::Opening(_) => {}
        }
    }
}

fn put(room: &mut Room, index: usize, body: BodyBox, along: Along, carries: Length, work: &SupportWork) {
    let long = if along == Along::U { body.u.1 - body.u.0 } else { body.v.1 - body.v.0 };
    if long < SHORTEST * 4 || !room.is_clear(&body) {
        return;
    }
    room.drafts.push(Draft {
        role: SupportRole::CutoutRail,
        module: room.leg.fittings[index].module,
        fitting: Some(index),
        body,
        along,
        bar: work.rail.clone(),
        holes: Vec::new(),
        carries: Carries::Counter(carries),
        span: None,
    });
}

fn well(room: &mut Room, index: usize, work: &SupportWork) {
    let fitting = &room.leg.fittings[index];
    let (Some(front), Some(back)) = (fitting.front, fitting.back) else { return };
    let Some((inside, deep)) = room.inside(fitting.module) else { return };
    let (e, t, wide) = (room.gap, room.tube, work.rail.section.width);
    let top = room.leg.datums.frame_top;
    let z = (top - work.rail.section.height, top);
    // Between the tubes beside it; where there is no room for one, from the module's own side.
    let u = (
        if fitting.left - e - t >= inside.0 { fitting.left - e } else { inside.0 },
        if fitting.right + e + t <= inside.1 { fitting.right + e } else { inside.1 },
    );
    // An undermounted bowl reaches farther than its cutout.
    let bowl = fitting.body.map(|body| body.v).unwrap_or((front, back));
    let near = front.min(bowl.0) - e;
    let far = back.max(bowl.1) + e;
    let rails = [
        ((near - wide, near), near - wide >= deep.0, (near - deep.0).half()),
        ((far, far + wide), far + wide <= deep.1, (deep.1 - far).half()),
    ];
    for (v, fits, strip) in rails {
        if fits {
            put(room, index, BodyBox { u, v, z }, Along::U, strip.max(wide), work);
        }
    }
}

fn notch(room: &mut Room, index: usize, work: &SupportWork) {
    let fitting = &room.leg.fittings[index];
    let Some(back) = fitting.back else { return };
    let Some((inside, deep)) = room.inside(fitting.module) else { return };
    let (e, t, wide) = (room.gap, room.tube, work.rail.section.width);
    let top = room.leg.datums.frame_top;
    let z = (top - work.rail.section.height, top);
    // As far as the rail behind the notch, which the frame has where there is room for it.
    let far = if back + e + t <= deep.1 { back + e } else { deep.1 };
    let (left, right) = (fitting.left - e, fitting.right + e);
    for (u, strip) in [((left - wide, left), left - inside.0), ((right, right + wide), inside.1 - right)] {
        if strip >= wide + NARROW {
            put(room, index, BodyBox { u, v: (deep.0, far), z }, Along::V, strip.half(), work);
        }
    }
}
