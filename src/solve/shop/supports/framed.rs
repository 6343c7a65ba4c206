//! The frame's own tubes that back an edge or carry a cutout's rim, and every tube by its length.

use super::draft::{Carries, Draft, Room, over};
use crate::solve::{Along, Bar, BodyBox, Fitting, Leg, Plane, Role, SupportRole, TubeCut};
use crate::units::Length;
use std::ops::RangeInclusive;

/// The backing of some modules: tubes that are in `Leg::members`, of the frame's own section and metal.
pub(super) fn framed(room: &Room, modules: RangeInclusive<usize>, frame: &Bar) -> Vec<Draft> {
    let leg = room.leg;
    let backing = leg.members_of(modules).iter().filter(|member| member.role == Role::Backing);
    backing
        .map(|member| {
            let body = member.body;
            let along = along(&body);
            let (fitting, top) =
                (served(leg, member.module, &body, room.tube + room.gap), at_top(leg, &body, room.tube));
            let role = if top { SupportRole::CutoutRail } else { SupportRole::Backing };
            let strip = fitting.and_then(|index| leg.fittings.get(index)).and_then(|fitting| {
                let inside = room.inside(member.module)?;
                let (back, left, right) = (fitting.back?, fitting.left, fitting.right);
                Some(match along {
                    Along::U => (inside.1.1 - back).half(),
                    _ if body.u.1 <= left => (left - inside.0.0).half(),
                    _ => (inside.0.1 - right).half(),
                })
            });
            let carries = match (top, strip) {
                (true, Some(strip)) => Carries::Counter(strip.max(room.tube)),
                _ => arms_on(room, member.module, &body),
            };
            Draft {
                role,
                module: member.module,
                fitting,
                body,
                along,
                bar: frame.clone(),
                holes: Vec::new(),
                carries,
                span: None,
            }
        })
        .collect()
}

/// The arms whose ends lie against a level tube of a face, with their forces.
fn arms_on(room: &Room, module: usize, body: &BodyBox) -> Carries {
    let on = room.drafts.of(module..=module).filter(|draft| draft.role == SupportRole::Arm);
    let mut arms = Vec::new();
    for arm in on {
        let Carries::Fitting(force, from, to) = &arm.carries else { continue };
        let back = (*from + *to).half().mm() / arm.length().mm().max(1.0);
        for (layer, share) in [(body.v.1 == arm.body.v.0, 1.0 - back), (body.v.0 == arm.body.v.1, back)] {
            if layer && super::arms::holds(body, &arm.body, body.v) && along(body) == Along::U {
                let middle = (arm.body.u.0 + arm.body.u.1).half();
                arms.push((middle - body.u.0, force.map(|force| force * share)));
            }
        }
    }
    if arms.is_empty() || posted(room, module) { Carries::Nothing } else { Carries::Arms(arms) }
}

/// Whether posts stand under the arms' front ends.
fn posted(room: &Room, module: usize) -> bool {
    room.drafts.of(module..=module).any(|draft| draft.role == SupportRole::FrontPost)
}

/// Which way a tube runs.
fn along(body: &BodyBox) -> Along {
    let (u, v, z) = (body.u.1 - body.u.0, body.v.1 - body.v.0, body.z.1 - body.z.0);
    if u >= v && u >= z {
        Along::U
    } else if v >= z {
        Along::V
    } else {
        Along::Z
    }
}

/// Whether a tube lies at the frame's top, within it and not in a face.
fn at_top(leg: &Leg, body: &BodyBox, tube: Length) -> bool {
    let d = &leg.datums;
    body.z.1 == d.frame_top && body.v.0 >= d.frame_face + tube && body.v.1 <= d.frame_back - tube
        || body.z.1 == d.frame_top && along(body) == Along::V
}

/// The fitting of a module whose cutout a tube lies beside.
fn served(leg: &Leg, module: usize, body: &BodyBox, reach: Length) -> Option<usize> {
    let near = |fitting: &Fitting| {
        fitting.cutouts.iter().any(|cutout| {
            let e = cutout.extent;
            let (x, y) = ((e.x0 - reach, e.x1 + reach), (e.y0 - reach, e.y1 + reach));
            match cutout.plane {
                Plane::Counter | Plane::Substrate => {
                    over(x, body.u) && over(y, body.v) && body.z.1 == leg.datums.frame_top
                }
                Plane::FrontBoard => over(x, body.u) && over(y, body.z) && body.v.0 == leg.datums.frame_face,
                Plane::BackBoard => over(x, body.u) && over(y, body.z) && body.v.1 == leg.datums.frame_back,
                Plane::LeftBoard => over(x, body.v) && over(y, body.z) && body.u.0 == leg.datums.frame_left,
                Plane::RightBoard => over(x, body.v) && over(y, body.z) && body.u.1 == leg.datums.frame_right,
            }
        })
    };
    // Fittings are listed module by module.
    let first = leg.fittings.partition_point(|fitting| fitting.module < module);
    leg.fittings_of(module).iter().position(near).map(|at| first + at)
}

/// Every tube of a leg by module, what it does and length, with marks from `next` on.
pub(super) fn tubes(leg: usize, from: &Leg, next: &mut usize) -> Vec<TubeCut> {
    let mut cuts: Vec<TubeCut> = Vec::new();
    for member in &from.members {
        let body = &member.body;
        let length = (body.u.1 - body.u.0).max(body.v.1 - body.v.0).max(body.z.1 - body.z.0);
        let same = |cut: &&mut TubeCut| cut.module == member.module && cut.role == member.role && cut.length == length;
        // Members are listed module by module.
        let mut own = cuts.iter_mut().rev().take_while(|cut| cut.module == member.module);
        match own.find(same) {
            Some(cut) => cut.count += 1,
            None => {
                *next += 1;
                let mark = format!("F{next}");
                cuts.push(TubeCut { mark, leg, module: member.module, role: member.role, length, count: 1 });
            }
        }
    }
    cuts
}
