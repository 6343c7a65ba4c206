//! The feet of the run and the floor under each leg, in the run's own heights.

use super::levelling::{Surface, facets};
use super::{Datums, Floor, FloorDrop, Foot, Module};
use crate::findings::Problem;
use crate::geometry::{Placement, PlanPoint};
use crate::parameters::given::{self, Feet, FloorStep, Frame, Site, Spot};
use crate::units::Length;

/// What a leg's feet stand under.
pub struct Stand<'a> {
    /// Where it lies in the plan.
    pub placement: Placement,
    /// Its modules.
    pub modules: &'a [Module],
    /// Its datums.
    pub datums: &'a Datums,
}

/// The floor and the feet of each leg. The floor was given over the first leg's (u, v); z = 0 is the highest
/// ground under any foot of the run, or under the frame's corners where a run has no feet.
///
/// A foot within reach of a measured spot stands on that spot's own height. So a step in the floor is met exactly where it
/// was measured under the feet.
///
/// Errors: measured spots that don't fix a plane.
pub fn feet(site: &Site, frame: &Frame, stands: &[Stand]) -> Result<Vec<(Floor, Vec<Foot>)>, Problem> {
    let Some(first) = stands.first().map(|stand| stand.placement) else { return Ok(Vec::new()) };
    let floor = surface(&site.floor, drops(&site.survey.steps, &first))?;
    let reach = if floor.facets.is_empty() { frame.feet.spot_reach.mm() } else { 0.0 };
    let mut all: Vec<(Floor, Vec<Foot>, Vec<f64>)> = Vec::with_capacity(stands.len());
    for (index, stand) in stands.iter().enumerate() {
        let floor = if index == 0 { floor.clone() } else { floor.seen_from(&first, &stand.placement) };
        let feet = places(frame, stand);
        let under = feet.iter().map(|foot| floor.ground(foot.u.mm(), foot.v.mm(), reach)).collect();
        all.push((floor, feet, under));
    }
    let highest = highest(&all, stands);
    let lowered = |((floor, mut feet, under), stand): ((Floor, Vec<Foot>, Vec<f64>), &Stand)| {
        for (foot, z) in feet.iter_mut().zip(under) {
            foot.ground = Length::from_mm(z - highest);
            foot.height = stand.datums.frame_bottom - foot.ground;
        }
        (floor.lowered(highest), feet)
    };
    Ok(all.into_iter().zip(stands).map(lowered).collect())
}

/// The highest ground under any foot, or under the frames' corners where there are no feet.
fn highest(all: &[(Floor, Vec<Foot>, Vec<f64>)], stands: &[Stand]) -> f64 {
    let under = all.iter().flat_map(|(_, _, under)| under.iter().copied());
    let corners = all.iter().zip(stands).flat_map(|((floor, _, _), stand)| {
        let d = stand.datums;
        [
            (d.frame_left, d.frame_face),
            (d.frame_right, d.frame_face),
            (d.frame_left, d.frame_back),
            (d.frame_right, d.frame_back),
        ]
        .map(|(u, v)| floor.height(u.mm(), v.mm()))
    });
    under.reduce(f64::max).or_else(|| corners.reduce(f64::max)).unwrap_or(0.0)
}

/// The floor as given over the first leg, heights as written.
fn surface(given: &given::Floor, steps: Vec<FloorDrop>) -> Result<Floor, Problem> {
    let (spots, through): (&[Spot], bool) = match given {
        given::Floor::Level => return Ok(Floor { steps, ..Floor::default() }),
        given::Floor::Fall { along, across } => {
            return Ok(Floor { per_u: -along, per_v: *across, steps, ..Floor::default() });
        }
        given::Floor::Spots(spots) => (spots, false),
        given::Floor::ThroughSpots(spots) => (spots, true),
    };
    let spots: Vec<(f64, f64, f64)> = spots.iter().map(|spot| (spot.u.mm(), spot.v.mm(), spot.z.mm())).collect();
    let stepped = Floor { steps, ..Floor::default() };
    // What was measured beyond a step is lifted by it first: the plane is that of the ground, not of the stairs.
    let smooth: Vec<(f64, f64, f64)> = spots.iter().map(|&(u, v, z)| (u, v, z + stepped.stepped(u, v))).collect();
    let Some(plane) = Surface::through(&smooth) else {
        return Err(Problem::new(
            format!("{} measured spots don't fix the floor's plane", spots.len()),
            "measure at least three spots that don't lie in a line",
        ));
    };
    let facets = if through { facets(&smooth) } else { Vec::new() };
    Ok(Floor { at_origin: plane.at_origin, per_u: plane.per_u, per_v: plane.per_v, spots, facets, ..stepped })
}

/// The surveyed steps over the first leg.
fn drops(steps: &[FloorStep], first: &Placement) -> Vec<FloorDrop> {
    let seen = |(x, y): (f64, f64)| {
        let point = first.to_leg(PlanPoint::new(x, y));
        (point.x, point.y)
    };
    steps.iter().map(|step| FloorDrop { from: seen(step.from), to: seen(step.to), drop: step.drop.mm() }).collect()
}

/// Where the feet stand: at each side of a module, front and back, under its posts; between them as many more as keep
/// them no farther apart than they may be where it is wide, and in further rows where it is deep. A module too narrow
/// for two pairs that keep their inset has one pair in the middle; one too narrow for posts hangs between its neighbours.
fn places(frame: &Frame, stand: &Stand) -> Vec<Foot> {
    let feet = &frame.feet;
    let d = stand.datums;
    let rows = spread(d.frame_face, d.frame_back, feet);
    let mut all = Vec::new();
    for (index, module) in stand.modules.iter().enumerate() {
        if module.width() < frame.tube * 2 {
            continue;
        }
        for u in spread(module.left, module.right, feet) {
            for &v in &rows {
                all.push(Foot { module: index, u, v, ground: Length::ZERO, height: Length::ZERO });
            }
        }
    }
    all
}

/// Places along one side of a box: inset from its ends, and evenly between; in the middle of a narrow one.
fn spread(low: Length, high: Length, feet: &Feet) -> Vec<Length> {
    let (from, to) = (low + feet.inset, high - feet.inset);
    // Two feet nearer to one another than to the sides would stand on each other's soles.
    if from >= to || to - from < feet.inset * 2 {
        return vec![(low + high).half()];
    }
    let span = to - from;
    let parts = if high - low > feet.middle_over {
        let spacing = feet.spacing.nm().max(1);
        ((span.nm() + spacing - 1) / spacing).max(2)
    } else {
        1
    };
    (0..=parts).map(|k| if k == parts { to } else { from + Length::from_nm(span.nm() * k / parts) }).collect()
}
