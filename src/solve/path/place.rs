//! Where every leg lies in the plan.

use super::{Chain, Turn};
use crate::geometry::{LegPoint, Placement, PlanPoint};
use crate::parameters::given::{Given, JointKind, Leg};
use crate::units::Length;

/// The placement of each leg: as written for the first of a chain and for legs by themselves, along the path for the
/// others. `rights` are the finished right ends on u; `backs` are the finished backs on v.
pub fn placements(given: &Given, chains: &[Chain], rights: &[Length], backs: &[Length]) -> Vec<Placement> {
    let mut all: Vec<Placement> = given.legs.iter().map(written).collect();
    for chain in chains {
        for (at, &joint) in chain.joints.iter().enumerate() {
            let (left, right) = (chain.legs[at], chain.legs[at + 1]);
            all[right] = next(all[left], rights[left], &given.joints[joint].kind);
        }
    }
    for (index, leg) in given.legs.iter().enumerate() {
        if let Some(front) = leg.own.behind {
            let from = all[front];
            let origin = from.to_plan(LegPoint::new(leg.own.offset.mm(), backs[front].mm()));
            all[index] = Placement { origin, angle: from.angle };
        }
    }
    all
}

/// The placement of the leg after one whose finished right end lies at `right` on its u.
pub fn next(from: Placement, right: Length, joint: &JointKind) -> Placement {
    let turn = match joint {
        JointKind::Corner(corner) => Turn::of(corner.turn).angle,
        JointKind::Step => 0.0,
    };
    Placement { origin: from.to_plan(LegPoint::new(right.mm(), 0.0)), angle: from.angle - turn }
}

/// The placement of a leg as written.
pub fn written(leg: &Leg) -> Placement {
    Placement { origin: PlanPoint::new(leg.origin.0, leg.origin.1), angle: leg.angle }
}
