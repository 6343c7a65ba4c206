//! What burns or gets hot, and the free counter beside what is set into it.

use crate::solve::{Extent, Fitting, FittingKind, Leg, Look, OpeningSort, Plane, Solved};
use crate::units::Length;

/// Whether a fitting gives off heat: it has a heat input, or looks like what cooks.
pub fn is_hot(fitting: &Fitting) -> bool {
    let looks = matches!(fitting.look, Look::Grill | Look::SideBurner);
    looks || (fitting.heat.is_some() && fitting.kind != FittingKind::Opening(OpeningSort::Vent))
}

/// Hot fittings that are set into the counter, with their legs.
pub fn cooking(solved: &Solved) -> impl Iterator<Item = (&Leg, &Fitting)> {
    solved.legs.iter().flat_map(|leg| {
        let hot = leg.fittings.iter().filter(|f| is_hot(f) && f.cutout(Plane::Counter).is_some());
        hot.map(move |fitting| (leg, fitting))
    })
}

/// Clear counter left and right of a fitting that is cut into it: to the next cutout, or to the counter's end.
pub fn beside(leg: &Leg, own: &Fitting) -> Option<(Length, Length)> {
    let here = own.cutout(Plane::Counter)?.extent;
    // Within a module the order is not that along the run: both ways begin with all of it.
    let module = leg.fittings_of(own.module);
    let first = leg.fittings.partition_point(|fitting| fitting.module < own.module);
    let (before, after) = (&leg.fittings[..first], &leg.fittings[first + module.len()..]);
    let next = |fittings: &mut dyn Iterator<Item = &Fitting>, towards: fn(&Extent, &Extent) -> Length| {
        let mut found: Option<(usize, Length)> = None;
        for fitting in fittings {
            // Fittings are listed module by module: two modules past the nearest cutout no nearer one comes.
            if found.is_some_and(|(module, _)| module.abs_diff(fitting.module) > 1) {
                break;
            }
            // The hole of a faucet takes no room from what is put down beside it.
            let cut = fitting.cutout(Plane::Counter).filter(|_| fitting.look != Look::Faucet && fitting.at != own.at);
            let Some(gap) = cut.map(|cutout| towards(&here, &cutout.extent)).filter(|gap| *gap >= Length::ZERO) else {
                continue;
            };
            if found.is_none_or(|(_, nearest)| gap < nearest) {
                found = Some((fitting.module, gap));
            }
        }
        found.map(|(_, gap)| gap)
    };
    let left = next(&mut module.iter().chain(before.iter().rev()), |here, other| here.x0 - other.x1);
    let right = next(&mut module.iter().chain(after), |here, other| other.x0 - here.x1);
    let e = &leg.counter.extent;
    Some((left.unwrap_or(here.x0 - e.x0), right.unwrap_or(e.x1 - here.x1)))
}

/// Below a hot body it is still too hot for pipe and cable: 2 in, common practice.
const BELOW: Length = Length::from_sixty_fourths(2 * 64);
/// A hot fitting whose body isn't known reaches this far under the frame's top: 10 in, common practice.
const UNKNOWN_DEPTH: Length = Length::from_sixty_fourths(10 * 64);

/// The plan of a hot fitting's zone, (u, v), and its underside: its body with the clearance it needs, or its cutout.
pub fn zone(leg: &Leg, fitting: &Fitting) -> ((Length, Length), (Length, Length), Length) {
    let around = fitting.clearance;
    let grown = |(low, high): (Length, Length)| (low - around, high + around);
    match &fitting.body {
        Some(body) => (grown(body.u), grown(body.v), body.z.0 - BELOW),
        None => {
            let front = fitting.front.unwrap_or(leg.datums.counter_front);
            let back = fitting.back.unwrap_or(leg.datums.frame_back);
            let under = fitting.bottom.unwrap_or(leg.datums.frame_top - UNKNOWN_DEPTH) - BELOW;
            (grown((fitting.left, fitting.right)), grown((front, back)), under)
        }
    }
}

/// Whether a point along, deep and high lies in a hot fitting's zone.
pub fn zone_holds(leg: &Leg, fitting: &Fitting, (u, v, z): (Length, Length, Length)) -> bool {
    let (us, vs, under) = zone(leg, fitting);
    us.0 < u && u < us.1 && vs.0 < v && v < vs.1 && z > under
}
