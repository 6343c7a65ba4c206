//! Fittings that lie on arms and whose weight nobody gave: the arms are placed, and nothing says whether they hold.

use crate::rules::{Lack, named};
use crate::solve::{Solved, SupportRole};

/// The weight of every fitting that lies on arms and has none, once for each.
pub(super) fn unweighed(solved: &Solved) -> Vec<Lack> {
    let arms = solved.shop.supports.members.iter().filter(|one| one.role == SupportRole::Arm);
    let mut on_arms: Vec<(usize, usize)> = arms.filter_map(|arm| Some((arm.leg, arm.fitting?))).collect();
    on_arms.dedup();
    let lacking = on_arms.into_iter().filter_map(|(leg, index)| {
        let fitting = solved.legs.get(leg)?.fittings.get(index)?;
        let instead = "write what its sheet or its box says as `weight: \"135 lb\"`, with what is laid on it as `supports.food`: \
                       till then its arms are placed and not checked";
        let lack = Lack::of_safety("weight", fitting.subject(), fitting.place.as_ref(), instead);
        fitting.mass.is_none().then(|| lack.for_what(named(fitting)))
    });
    lacking.collect()
}
