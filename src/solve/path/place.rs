//! Where every leg lies in the plan.

use super::{Chain, Turn};
use crate::geometry::{LegPoint, Placement, PlanPoint};
use crate::parameters::given::{Given, JointKind};
use crate::units::Length;

/// The placement of each leg: as written for the first of a chain and for legs by themselves, along the path for the
/// others. `rights` are the finished right ends on u; `backs` are the finished backs on v.
pub fn placements(given: &Given, chains: &[Chain], rights: &[Length], backs: &[Length]) -> Vec<Placement> {
    let mut all: Vec<Placement> = given
        .legs
        .iter()
        .map(|leg| Placement { origin: PlanPoint::new(leg.origin.0, leg.origin.1), angle: leg.angle })
        .collect();
    for chain in chains {
        for (at, &joint) in chain.joints.iter().enumerate() {
            let (left, right) = (chain.legs[at], chain.legs[at + 1]);
            let turn = match &given.joints[joint].kind {
                JointKind::Corner(corner) => Turn::of(corner.turn).angle,
                JointKind::Step => 0.0,
            };
            let from = all[left];
            all[right] =
                Placement { origin: from.to_plan(LegPoint::new(rights[left].mm(), 0.0)), angle: from.angle - turn };
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
