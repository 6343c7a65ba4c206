//! Arms under heavy fittings: two, front to back, with what they lie against.

use super::draft::{Carries, Draft, Room, SHORTEST, over};
use crate::solve::{
    Along, BodyBox, Face, Fitting, FittingKind, Look, Member, OpeningSort, Role, SupportRole, SupportWork,
};
use crate::units::Length;

/// Standard gravity, m/s2.
const GRAVITY: f64 = 9.806_65;
/// How far an arm is moved inwards at a time while it looks for room.
const STEP: Length = Length::from_sixty_fourths(32);

/// Whether a fitting is one that arms carry.
pub(super) fn is_heavy(fitting: &Fitting, work: &SupportWork) -> bool {
    let carried = match fitting.kind {
        FittingKind::Notch | FittingKind::Well => true,
        FittingKind::Opening(sort) => sort == OpeningSort::Fitting && !fitting.to_floor,
    };
    carried && fitting.mass.map_or(fitting.look == Look::Grill, |mass| mass >= work.heavy)
}

/// The box that arms lie under; of a notch without a body, its cutout.
fn carried(fitting: &Fitting) -> Option<BodyBox> {
    let of_notch = || {
        let (bottom, back) = (fitting.bottom?, fitting.back?);
        let notch = fitting.kind == FittingKind::Notch;
        let body = BodyBox { u: (fitting.left, fitting.right), v: (Length::ZERO, back), z: (bottom, bottom) };
        notch.then_some(body)
    };
    fitting.body.or_else(of_notch)
}

/// Puts the arms of one fitting, or says why they find no room.
pub(super) fn arms(room: &mut Room, index: usize, work: &SupportWork) -> Result<(), String> {
    let Some(fitting) = room.leg.fittings.get(index) else { return Ok(()) };
    if matches!(fitting.face, Face::Left | Face::Right) {
        return Err("it is set into an end".to_owned());
    }
    let module = fitting.module;
    let Some(body) = carried(fitting) else { return Err("its body isn't given".to_owned()) };
    let Some((inside_u, inside_v)) = room.inside(module) else { return Err("its module has no tubes".to_owned()) };
    let (wide, tall) = (work.arm.section.width, work.arm.section.height);
    let z = (body.z.0 - tall, body.z.0);
    if z.0 < room.leg.datums.frame_bottom {
        return Err("its body ends too close over the frame's bottom".to_owned());
    }
    let whole = fitting.mass.map(|mass| (mass + work.food) * GRAVITY);
    let half = whole.map(|force| force / 2.0);
    let sides = (body.u.0.max(inside_u.0), body.u.1.min(inside_u.1));
    let farthest = (sides.1 - sides.0).half() - wide;
    if farthest < Length::ZERO {
        return Err("it is too narrow for two arms".to_owned());
    }
    let mut placed = Vec::new();
    for left in [true, false] {
        let mut why = String::new();
        let mut moved = Length::ZERO;
        let found = loop {
            let u = if left {
                (sides.0 + moved, sides.0 + moved + wide)
            } else {
                (sides.1 - moved - wide, sides.1 - moved)
            };
            let arm = BodyBox { u, v: inside_v, z };
            match room.in_the_way(&arm) {
                None => break Some(arm),
                Some(what) => why = what,
            }
            moved += STEP;
            if moved > farthest {
                break None;
            }
        };
        let Some(arm) = found else { return Err(format!("{why} is in the way")) };
        placed.push(arm);
    }
    let span = Some(inside_v.1 - inside_v.0 + room.tube);
    for arm in &placed {
        let (from, to) = (body.v.0.max(arm.v.0) - arm.v.0, body.v.1.min(arm.v.1) - arm.v.0);
        room.drafts.push(Draft {
            role: SupportRole::Arm,
            module,
            fitting: Some(index),
            body: *arm,
            along: Along::V,
            bar: work.arm.clone(),
            holes: Vec::new(),
            carries: Carries::Fitting(half, from, to.max(from)),
            span,
        });
    }
    let d = room.leg.datums;
    let layers = [(d.frame_face, d.frame_face + room.tube), (d.frame_back - room.tube, d.frame_back)];
    // Each arm's share at its two ends, by where the fitting's weight lies.
    let centre = (body.v.0.max(inside_v.0) + body.v.1.min(inside_v.1)).half() - inside_v.0;
    let back = centre.mm() / (inside_v.1 - inside_v.0).mm().max(1.0);
    let ends = [half.map(|force| force * (1.0 - back)), half.map(|force| force * back)];
    for (layer, force) in layers.into_iter().zip(ends) {
        for arm in &placed {
            lie_against(room, module, index, arm, layer, force, work)?;
        }
    }
    Ok(())
}

/// Whether a box runs across an arm's end, high and low enough to hold it.
pub(super) fn holds(body: &BodyBox, arm: &BodyBox, layer: (Length, Length)) -> bool {
    let shared = body.z.1.min(arm.z.1) - body.z.0.max(arm.z.0);
    over(body.v, layer) && body.u.0 <= arm.u.0 && body.u.1 >= arm.u.1 && shared * 3 >= arm.z.1 - arm.z.0
}

/// Finds what an arm's end lies against, or puts a rail for it between uprights.
fn lie_against(
    room: &mut Room,
    module: usize,
    fitting: usize,
    arm: &BodyBox,
    layer: (Length, Length),
    force: Option<f64>,
    work: &SupportWork,
) -> Result<(), String> {
    let middle = (arm.u.0 + arm.u.1).half();
    if let Some(rail) =
        room.drafts.of_mut(module).find(|draft| draft.role == SupportRole::ArmRail && holds(&draft.body, arm, layer))
    {
        if let Carries::Arms(arms) = &mut rail.carries {
            arms.push((middle - rail.body.u.0, force));
        }
        return Ok(());
    }
    if room.tubes(module).any(|body| holds(body, arm, layer)) {
        return Ok(());
    }
    let Some((inside, _)) = room.inside(module) else { return Ok(()) };
    // What breaks a rail here: uprights, other rails, and openings with their gap.
    let deep = work.arm.section.width.min(room.tube);
    let front = layer.0 == room.leg.datums.frame_face;
    let v = if front { (layer.1 - deep, layer.1) } else { (layer.0, layer.0 + deep) };
    let (mut from, mut to) = inside;
    let mut broken = false;
    let slice = BodyBox { u: inside, v, z: arm.z };
    let breaks: Vec<(Length, Length)> = room
        .tubes(module)
        .filter(|body| over(body.v, slice.v) && over(body.z, slice.z) && over(body.u, slice.u))
        .map(|body| body.u)
        .collect();
    for (x0, x1) in breaks {
        if x1 <= middle {
            from = from.max(x1);
        } else if x0 >= middle {
            to = to.min(x0);
        } else {
            broken = true;
        }
    }
    let body = BodyBox { u: (from, to), v, z: arm.z };
    let cut = room.in_the_way(&body);
    if broken || from > arm.u.0 || to < arm.u.1 || to - from < SHORTEST || cut.is_some() {
        let end = if front { "front" } else { "back" };
        let what = cut.unwrap_or_else(|| "a tube of the frame".to_owned());
        return Err(format!("its arms find nothing to lie against at the {end}: {what} is in the way"));
    }
    room.drafts.push(Draft {
        role: SupportRole::ArmRail,
        module,
        fitting: Some(fitting),
        body,
        along: Along::U,
        bar: work.arm.clone(),
        holes: Vec::new(),
        carries: Carries::Arms(vec![(middle - from, force)]),
        span: None,
    });
    Ok(())
}

/// Puts a post under the front end of every arm of a fitting, where there is room for it. Answers whether there was.
pub(super) fn front_posts(room: &mut Room, fitting: usize, work: &SupportWork) -> bool {
    let d = room.leg.datums;
    let t = room.tube;
    let own = room.leg.fittings[fitting].module;
    let arms: Vec<Draft> = room
        .drafts
        .of(own..=own)
        .filter(|draft| draft.role == SupportRole::Arm && draft.fitting == Some(fitting))
        .cloned()
        .collect();
    let mut posts = Vec::new();
    for arm in &arms {
        let layer = (d.frame_face, d.frame_face + t);
        let rail = room.tubes(arm.module).find(|body| holds(body, &arm.body, layer)).copied();
        let Some(rail) = rail else { return false };
        let middle = (arm.body.u.0 + arm.body.u.1).half();
        let half = work.arm.section.width.half();
        let u = (middle - half, middle - half + work.arm.section.width);
        let under = |member: &&Member| {
            member.role == Role::Rail
                && over(member.body.u, u)
                && over(member.body.v, layer)
                && member.body.z.0 == d.frame_bottom
        };
        let foot = room.leg.members_of(arm.module..=arm.module).iter().find(under).map(|member| member.body.z.1);
        let deep = work.arm.section.width.min(t);
        let body = BodyBox { u, v: (layer.1 - deep, layer.1), z: (foot.unwrap_or(d.frame_bottom), rail.z.0) };
        if body.z.1 - body.z.0 < SHORTEST || !room.is_clear(&body) {
            return false;
        }
        posts.push(Draft {
            role: SupportRole::FrontPost,
            module: arm.module,
            fitting: Some(fitting),
            body,
            along: Along::Z,
            bar: work.arm.clone(),
            holes: Vec::new(),
            carries: Carries::Nothing,
            span: None,
        });
    }
    room.drafts.extend(posts);
    true
}
