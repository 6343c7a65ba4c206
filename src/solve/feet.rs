//! The feet of the run and the floor under each leg, in the run's own heights.

use super::levelling::{Surface, ground_under};
use super::{Datums, DefaultUsed, Floor, Foot, Module};
use crate::findings::Problem;
use crate::geometry::{LegPoint, Placement};
use crate::parameters::given::{self, Frame};
use crate::units::Length;

/// A foot stands on a measured spot when it is this near to it: 2 in, common practice.
const SPOT_REACH: Length = Length::from_sixty_fourths(2 * 64);

/// The named value of this file, for the sheets to state.
pub fn defaults() -> DefaultUsed {
    DefaultUsed { name: "floor.spot_reach".to_owned(), value: "2 in".to_owned(), origin: "common practice" }
}

/// What a leg's feet stand under.
pub struct Stand<'a> {
    /// Where it lies in the plan.
    pub placement: Placement,
    /// Its modules.
    pub modules: &'a [Module],
    /// Its datums.
    pub datums: &'a Datums,
}

/// Measured spots, (u, v, z) mm.
type Spots = Vec<(f64, f64, f64)>;

/// One leg's floor and feet while the highest ground is not known yet.
struct Ground {
    plane: Surface,
    spots: Spots,
    feet: Vec<Foot>,
    under: Vec<f64>,
}

/// The floor and the feet of each leg. The floor was given over the first leg's (u, v); z = 0 is the highest
/// ground under any foot of the run, or under the frame's corners where a run has no feet.
///
/// Errors: measured spots that don't fix a plane.
pub fn feet(given: &given::Floor, frame: &Frame, stands: &[Stand]) -> Result<Vec<(Floor, Vec<Foot>)>, Problem> {
    let (plane, spots) = surface(given)?;
    let reach = SPOT_REACH.mm();
    let mut all: Vec<Ground> = Vec::with_capacity(stands.len());
    for (index, stand) in stands.iter().enumerate() {
        let first = &stands[0].placement;
        let plane = if index == 0 { plane } else { plane_in(&plane, first, &stand.placement) };
        let spots = if index == 0 { spots.clone() } else { spots_in(&spots, first, &stand.placement) };
        let feet = places(frame, stand);
        let points: Vec<(f64, f64)> = feet.iter().map(|foot| (foot.u.mm(), foot.v.mm())).collect();
        let under = ground_under(&points, &plane, &spots, reach);
        all.push(Ground { plane, spots, feet, under });
    }
    let highest = highest(&all, stands);
    let lowered = |(ground, stand): (Ground, &Stand)| {
        let Ground { plane, spots, mut feet, under } = ground;
        for (foot, z) in feet.iter_mut().zip(under) {
            foot.ground = Length::from_mm(z - highest);
            foot.height = stand.datums.frame_bottom - foot.ground;
        }
        let spots = spots.into_iter().map(|(u, v, z)| (u, v, z - highest)).collect();
        let at_origin = plane.at_origin - highest;
        (Floor { at_origin, per_u: plane.per_u, per_v: plane.per_v, spots }, feet)
    };
    Ok(all.into_iter().zip(stands).map(lowered).collect())
}

/// The highest ground under any foot, or under the frames' corners where there are no feet.
fn highest(all: &[Ground], stands: &[Stand]) -> f64 {
    let under = all.iter().flat_map(|ground| ground.under.iter().copied());
    let corners = all.iter().zip(stands).flat_map(|(ground, stand)| {
        let d = stand.datums;
        [
            (d.frame_left, d.frame_face),
            (d.frame_right, d.frame_face),
            (d.frame_left, d.frame_back),
            (d.frame_right, d.frame_back),
        ]
        .map(|(u, v)| ground.plane.height(u.mm(), v.mm()))
    });
    under.reduce(f64::max).or_else(|| corners.reduce(f64::max)).unwrap_or(0.0)
}

/// The floor's plane and its measured spots, mm, over the first leg.
fn surface(given: &given::Floor) -> Result<(Surface, Spots), Problem> {
    match given {
        given::Floor::Level => Ok((Surface::default(), Vec::new())),
        given::Floor::Fall { along, across } => {
            Ok((Surface { at_origin: 0.0, per_u: -along, per_v: *across }, Vec::new()))
        }
        given::Floor::Spots(given) => {
            let spots: Spots = given.iter().map(|spot| (spot.u.mm(), spot.v.mm(), spot.z.mm())).collect();
            match Surface::through(&spots) {
                Some(plane) => Ok((plane, spots)),
                None => Err(Problem::new(
                    format!("{} measured spots don't fix the floor's plane", spots.len()),
                    "measure at least three spots that don't lie in a line",
                )),
            }
        }
    }
}

/// A plane over the first leg's (u, v), seen from another leg.
fn plane_in(plane: &Surface, first: &Placement, leg: &Placement) -> Surface {
    let height = |u, v| {
        let point = first.to_leg(leg.to_plan(LegPoint::new(u, v)));
        plane.height(point.x, point.y)
    };
    let (sin, cos) = (leg.angle - first.angle).sin_cos();
    Surface {
        at_origin: height(0.0, 0.0),
        per_u: plane.per_u * cos + plane.per_v * sin,
        per_v: -plane.per_u * sin + plane.per_v * cos,
    }
}

/// Spots of the first leg, seen from another.
fn spots_in(spots: &[(f64, f64, f64)], first: &Placement, leg: &Placement) -> Spots {
    spots
        .iter()
        .map(|&(u, v, z)| {
            let point = leg.to_leg(first.to_plan(LegPoint::new(u, v)));
            (point.x, point.y, z)
        })
        .collect()
}

/// Where the feet stand: a pair, front and back, at each side of a module, and one in the middle of a wide
/// one. A module too narrow for two pairs that keep their inset has one pair in the middle; one too narrow for
/// posts hangs between its neighbours.
fn places(frame: &Frame, stand: &Stand) -> Vec<Foot> {
    let feet = &frame.feet;
    let d = stand.datums;
    let mut all = Vec::new();
    for (index, module) in stand.modules.iter().enumerate() {
        let (left, right) = (module.left + feet.inset, module.right - feet.inset);
        let across = if module.width() < frame.tube * 2 {
            Vec::new()
        } else if left >= right {
            vec![module.centre()]
        } else if module.width() > feet.middle_over {
            vec![left, module.centre(), right]
        } else {
            vec![left, right]
        };
        for u in across {
            for v in [d.frame_face + feet.inset, d.frame_back - feet.inset] {
                all.push(Foot { module: index, u, v, ground: Length::ZERO, height: Length::ZERO });
            }
        }
    }
    all
}
