//! Openings that let gas out and air in.

pub(super) mod cylinder_bay_apart_from_heat;
pub(super) mod cylinder_bay_is_vented;
pub(super) mod gas_space_is_vented;
pub(super) mod vent_is_left_open;
pub(super) mod vent_lets_enough_through;

use crate::solve::{Face, Fitting, FittingKind, Fuel, Leg, OpeningSort, Plane, Solved, services};
use crate::units::Length;

/// Of a louvre's face, so much is taken as open where its maker doesn't say: from memory, 0.4 to 0.6.
const OPEN_SHARE: f64 = 0.4;

/// The vents of a leg.
fn vents(leg: &Leg) -> impl Iterator<Item = &Fitting> {
    let is_vent = |fitting: &Fitting| fitting.kind == FittingKind::Opening(OpeningSort::Vent);
    leg.fittings.iter().filter(move |fitting| is_vent(fitting))
}

/// Area of a vent's face, m2.
fn face_area(fitting: &Fitting) -> f64 {
    fitting.cutout(Plane::of(fitting.face)).map_or(0.0, |cutout| cutout.outline.area().abs() / 1e6)
}

/// Area that lets air through, m2: as its maker says, or what may be taken for it.
fn free_area(fitting: &Fitting) -> f64 {
    fitting.needs.free_area.unwrap_or_else(|| face_area(fitting) * OPEN_SHARE)
}

/// Which gases may gather in a leg: rising (natural) and sinking (propane). Both where that isn't known.
fn gases(solved: &Solved, leg: &Leg) -> (bool, bool) {
    let run = solved.services.as_ref().and_then(|services| services.fuel);
    let of = |fitting: &Fitting| match fitting.needs.fuel.or(run) {
        Some(Fuel::Natural) => (true, false),
        Some(Fuel::Propane) => (false, true),
        Some(Fuel::Convertible) | None => (true, true),
    };
    let burners = leg.fittings.iter().filter(|fitting| services::burns_gas(fitting)).map(of);
    burners.fold((false, false), |all, one| (all.0 || one.0, all.1 || one.1))
}

/// Whether some two of these vents lie on different faces, or at least half the leg apart on one face.
fn apart(leg: &Leg, vents: &[&Fitting]) -> bool {
    let half = (leg.datums.finished_right).half();
    let long = |face: Face| matches!(face, Face::Front | Face::Back);
    vents.iter().enumerate().any(|(at, a)| {
        let far = |b: &&Fitting| a.face != b.face || (long(a.face) && (a.centre() - b.centre()).abs() >= half);
        vents[at + 1..].iter().any(far)
    })
}

/// How far a vent's top lies under the counter.
fn under_the_top(leg: &Leg, fitting: &Fitting) -> Length {
    leg.datums.substrate_top - fitting.top.unwrap_or(leg.datums.frame_bottom)
}

/// How far a vent's bottom lies over the base of the enclosure.
fn over_the_base(leg: &Leg, fitting: &Fitting) -> Length {
    fitting.bottom.unwrap_or(leg.datums.frame_top) - leg.datums.frame_bottom
}
