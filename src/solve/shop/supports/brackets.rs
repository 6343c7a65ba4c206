//! Brackets under an overhang that the counter can't carry itself: flat bars let into the substrate, lying on the
//! frame's rails and screwed down to them.

use super::draft::{Carries, Draft, Room, over};
use crate::solve::{Along, Bar, BodyBox, Extent, Fitting, Plane, SupportRole, SupportWork};
use crate::units::Length;

/// Between brackets where the job doesn't say: 24 in. Shops: 30 to 36 in at most.
pub(super) const APART: Length = Length::from_sixty_fourths(24 * 64);
/// From the counter's edge to a bracket's end, so that nobody sees or knocks it: two inches.
pub(super) const SETBACK: Length = Length::from_sixty_fourths(2 * 64);
/// How far a bracket is moved aside at a time, and how often, to miss a cutout.
const STEP: Length = Length::from_sixty_fourths(64);
const STEPS: i64 = 9;

/// Puts the brackets of a leg; `apart` is what the job says.
pub(super) fn brackets(room: &mut Room, apart: Option<Length>, work: &SupportWork) {
    let apart = apart.unwrap_or(APART);
    if room.leg.back.is_open() && room.leg.counter.extent.y1 - room.leg.datums.frame_back > work.overhang {
        side(room, true, apart, work);
    }
    if room.leg.datums.frame_face - room.leg.counter.extent.y0 > work.overhang {
        side(room, false, apart, work);
    }
    for left in [true, false] {
        end(room, left, apart, work);
    }
}

/// How far the counter reaches at a place along the leg, to the back or to the front.
fn reach(room: &Room, u: (Length, Length), back: bool) -> Option<Length> {
    let strips = room.leg.counter.region.strip(u.0.mm(), u.1.mm());
    let ys = strips.iter().flat_map(|strip| strip.outer.vertices.iter().map(|vertex| vertex.y));
    // The farthest that the whole width of the bracket is under.
    let found = if back { ys.reduce(f64::max) } else { ys.reduce(f64::min) };
    found.map(Length::from_mm)
}

/// Brackets that run front to back.
fn side(room: &mut Room, back: bool, apart: Length, work: &SupportWork) {
    let (d, t) = (room.leg.datums, room.tube);
    let Bar { section, .. } = work.bracket;
    let half = section.width.half();
    let (mut from, mut to) = (d.frame_left + t.max(half), d.frame_right - t.max(half));
    if !back {
        // In a corner the frame goes on behind the other leg's face.
        (from, to) = (from.max(half), to.min(d.finished_right - half));
    }
    if to <= from {
        return;
    }
    let bays = ((to - from).nm() / apart.nm() + i64::from((to - from).nm() % apart.nm() != 0)).max(1);
    let z = (d.frame_top, d.frame_top + section.height);
    for bay in 0..=bays {
        let centre = from + Length::from_nm((to - from).nm() * bay / bays);
        let moves = (0..=STEPS).flat_map(|k| [STEP * k, Length::ZERO - STEP * k]);
        let mut best: Option<Draft> = None;
        for by in moves {
            let middle = centre + by;
            if middle < from || middle > to {
                continue;
            }
            let u = (middle - half, middle - half + section.width);
            let Some(edge) = reach(room, u, back) else { continue };
            let Some(draft) = bracket(room, u, edge, back, z, apart, work) else { continue };
            // The one with the longest hold; a move has to gain by it.
            let holds = |one: &Draft| one.length();
            if best.as_ref().is_none_or(|best| holds(&draft) > holds(best) + t) {
                best = Some(draft);
            }
        }
        room.drafts.extend(best);
    }
}

/// One bracket at a place, from the farthest rail that it can lie on to the edge.
fn bracket(
    room: &Room,
    u: (Length, Length),
    edge: Length,
    back: bool,
    z: (Length, Length),
    apart: Length,
    work: &SupportWork,
) -> Option<Draft> {
    let (d, t, e) = (room.leg.datums, room.tube, room.gap);
    let tip = if back { edge - SETBACK } else { edge + SETBACK };
    let mut v = if back { (d.frame_face, tip) } else { (tip, d.frame_back) };
    // Cutouts shorten it to what lies behind them.
    let over_it = BodyBox { u, v, z };
    for fitting in room.fittings(room.near(&over_it)) {
        for extent in taken(fitting, z) {
            if !over((extent.x0 - e, extent.x1 + e), u) {
                continue;
            }
            if back && extent.y1 + e > v.0 {
                v.0 = extent.y1 + e;
            }
            if !back && extent.y0 - e < v.1 {
                v.1 = extent.y0 - e;
            }
        }
    }
    // What it lies on: tubes at the frame's top across it, the outermost two.
    let module = room.leg.modules.partition_point(|module| module.right < u.0);
    room.leg.modules.get(module).filter(|module| module.left <= u.1)?;
    let middle = (u.0 + u.1).half();
    let near = [module.saturating_sub(1), module, module + 1];
    let mut under: Vec<(Length, Length)> = near
        .into_iter()
        .flat_map(|module| room.tubes(module))
        .filter(|body| body.z.1 == d.frame_top && body.u.0 <= middle && middle <= body.u.1 && over(body.v, v))
        .map(|body| body.v)
        .filter(|v| v.1 - v.0 <= t * 2)
        .collect();
    under.sort();
    under.dedup();
    let (first, last) = (*under.first()?, *under.last()?);
    let (first, last) = ((first.0 + first.1).half(), (last.0 + last.1).half());
    let (pivot, held) = if back { (last, first) } else { (first, last) };
    let (free, hold) = ((tip - pivot).abs(), (pivot - held).abs());
    if hold < t * 2 || (tip - pivot) < Length::ZERO && back || (pivot - tip) < Length::ZERO && !back {
        return None;
    }
    let body = BodyBox { u, v, z };
    let blocked = room.is_taken(&body);
    let start = v.0;
    let mut holes = vec![first - start, last - start];
    holes.dedup();
    (!blocked).then(|| Draft {
        role: SupportRole::Bracket,
        module,
        fitting: None,
        body,
        along: Along::V,
        bar: work.bracket.clone(),
        holes,
        carries: Carries::Overhang(free, apart),
        span: Some(hold),
    })
}

/// What a fitting takes of the layer under the counter: its cutouts there, and its body.
fn taken(fitting: &Fitting, z: (Length, Length)) -> Vec<Extent> {
    let cutouts = fitting.cutouts.iter().filter(|cutout| matches!(cutout.plane, Plane::Counter | Plane::Substrate));
    let body = fitting.body.filter(|body| over(body.z, z));
    let body = body.map(|body| Extent { x0: body.u.0, y0: body.v.0, x1: body.u.1, y1: body.v.1 });
    cutouts.map(|cutout| cutout.extent).chain(body).collect()
}

/// Brackets past a free end, on the last module's two sides.
fn end(room: &mut Room, left: bool, apart: Length, work: &SupportWork) {
    let (d, t, e) = (room.leg.datums, room.tube, room.gap);
    let (bound, extent) = (if left { &room.leg.left } else { &room.leg.right }, room.leg.counter.extent);
    let past = if left { d.frame_left - extent.x0 } else { extent.x1 - d.frame_right };
    if !bound.is_open() || past <= work.overhang || room.leg.modules.is_empty() {
        return;
    }
    let module = if left { 0 } else { room.leg.modules.len() - 1 };
    let own = &room.leg.modules[module];
    let section = work.bracket.section;
    let half = section.width.half();
    let (from, to) = (d.frame_face + t.max(half), d.frame_back - t.max(half));
    if to <= from || room.inside(module).is_none() {
        return;
    }
    let u = if left { (extent.x0 + SETBACK, own.right) } else { (own.left, extent.x1 - SETBACK) };
    let sides = [(own.left + t.half()), (own.right - t.half())];
    let (pivot, held) = if left { (sides[0], sides[1]) } else { (sides[1], sides[0]) };
    let tip = if left { u.0 } else { u.1 };
    let bays = ((to - from).nm() / apart.nm() + i64::from((to - from).nm() % apart.nm() != 0)).max(1);
    for bay in 0..=bays {
        let middle = from + Length::from_nm((to - from).nm() * bay / bays);
        let v = (middle - half, middle - half + section.width);
        let body = BodyBox { u, v, z: (d.frame_top, d.frame_top + section.height) };
        let cut = room
            .fittings(room.near(&body))
            .iter()
            .flat_map(|fitting| taken(fitting, body.z))
            .any(|taken| over((taken.x0 - e, taken.x1 + e), u) && over((taken.y0 - e, taken.y1 + e), v));
        if cut || room.is_taken(&body) {
            continue;
        }
        room.drafts.push(Draft {
            role: SupportRole::Bracket,
            module,
            fitting: None,
            body,
            along: Along::U,
            bar: work.bracket.clone(),
            holes: vec![sides[0] - u.0, sides[1] - u.0],
            carries: Carries::Overhang((tip - pivot).abs(), apart.min(to - from)),
            span: Some((pivot - held).abs()),
        });
    }
}
