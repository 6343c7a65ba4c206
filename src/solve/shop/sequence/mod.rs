//! What has to be done before what: of all steps that a run may need, those that this one does, in an order in which
//! each comes after what it needs.

mod causes;
mod graph;
mod steps;

pub use causes::Causes;

use crate::parameters::given::Given;
use crate::solve::{Shop, Solved, Step};
use steps::Template;

/// What has to be done before what.
pub fn sequence(given: &Given, solved: &Solved, shop: &Shop) -> Vec<Step> {
    let causes = Causes::of(given, solved, shop);
    let all = steps::all();
    let before = befores(&all);
    let wanted: Vec<usize> = (0..all.len()).filter(|&index| (all[index].needed)(&causes)).collect();
    let order = graph::order(&before, &wanted);
    let place = |index: usize| order.iter().position(|&other| other == index);
    order
        .iter()
        .map(|&index| {
            let template = all[index];
            let (wait, origin) = match template.wait.and_then(|wait| causes.wait(wait)) {
                Some((hours, origin)) => (Some(hours), origin),
                None => (None, template.origin.to_owned()),
            };
            let after = graph::nearest(&before, &wanted, index);
            let mut after: Vec<usize> = after.into_iter().filter_map(place).collect();
            after.sort_unstable();
            Step {
                key: template.key,
                name: template.name,
                who: template.who,
                what: (template.what)(&causes),
                why: template.why.to_owned(),
                after,
                wait,
                origin,
                caution: template.caution,
            }
        })
        .collect()
}

/// Of each step the steps before it, by index, as the table says.
fn befores(all: &[&Template]) -> Vec<Vec<usize>> {
    let index = |key: &&str| all.iter().position(|step| step.key == *key);
    all.iter().map(|step| step.after.iter().filter_map(index).collect()).collect()
}
