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
        Column::masses("carries, all feet bear"),
        Column::masses("carries, on three feet"),
    ];
    let mut list = Listing::new("feet", "Adjustable feet", columns);
    for (at, leg) in solved.legs.iter().enumerate() {
        let loads = solved.shop.levelling.loads.get(at);
        for (index, foot) in leg.feet.iter().enumerate() {
            let load = loads.and_then(|loads| loads.get(index)).copied().unwrap_or_default();
            list.push(vec![
                leg.id.as_str().into(),
                Value::Count(solved.foot_tag(at, index) as u64),
                module_id(leg, foot.module),
                foot.u.into(),
                foot.v.into(),
                (-foot.ground).into(),
                foot.height.into(),
                Value::Mass(load.all),
                Value::Mass(load.tripod),
            ]);
        }
    }
    list
}
