//! Adjustable feet and their heights, numbered as on the plan.

use super::module_id;
use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::solve::Solved;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::counts("foot"),
        Column::words("module"),
        Column::lengths("from finished left end"),
        Column::lengths("from finished face"),
        Column::lengths("floor below its high point"),
        Column::lengths("set to, floor to frame"),
    ];
    let mut list = Listing::new("feet", "Adjustable feet", columns);
    for leg in &solved.legs {
        for (index, foot) in leg.feet.iter().enumerate() {
            list.push(vec![
                leg.id.as_str().into(),
                Value::Count(index as u64 + 1),
                module_id(leg, foot.module),
                foot.u.into(),
                foot.v.into(),
                (-foot.ground).into(),
                foot.height.into(),
            ]);
        }
    }
    list
}
