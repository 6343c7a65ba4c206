//! What modules weigh, layer by layer, and everything that is lifted.

use super::module_id;
use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::sheets::weights::lift_kind;
use crate::solve::Solved;
use crate::units::Length;

/// Every module, dressed.
pub fn modules(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("module"),
        Column::masses("frame"),
        Column::masses("boards"),
        Column::masses("finish"),
        Column::masses("substrate"),
        Column::masses("counter"),
        Column::masses("fittings"),
        Column::masses("together"),
        Column::masses("on its feet"),
        Column::lengths("centre from finished left end"),
        Column::lengths("centre from finished face"),
    ];
    let mut list = Listing::new("module-weights", "Modules dressed", columns);
    for (leg, modules) in solved.legs.iter().zip(&solved.shop.weights.modules) {
        for (index, weight) in modules.iter().enumerate() {
            list.push(vec![
                leg.id.as_str().into(),
                module_id(leg, index),
                Value::Mass(weight.frame),
                Value::Mass(weight.boards),
                Value::Mass(weight.finish),
                Value::Mass(weight.substrate),
                Value::Mass(weight.counter),
                Value::Mass(weight.fittings),
                Value::Mass(weight.total()),
                Value::Mass(weight.on_feet()),
                Length::from_mm(weight.centre.0).into(),
                Length::from_mm(weight.centre.1).into(),
            ]);
        }
    }
    list
}

/// Everything that is lifted by itself.
pub fn lifts(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("what"),
        Column::words("kind"),
        Column::masses("weight"),
        Column::counts("people"),
        Column::words("more than two people lift"),
    ];
    let mut list = Listing::new("lifts", "What is lifted, and by how many", columns);
    let weights = &solved.shop.weights;
    for lift in &weights.lifts {
        let leg = solved.legs.get(lift.leg).map(|leg| leg.id.as_str());
        list.push(vec![
            leg.into(),
            lift.name.as_str().into(),
            lift_kind(lift.kind).into(),
            Value::Mass(lift.mass),
            Value::Count(u64::from(weights.lifters(lift))),
            if weights.wants_more_than_two(lift) { "yes".into() } else { Value::Empty },
        ]);
    }
    list
}
