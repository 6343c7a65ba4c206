//! What has to be bought, as the list of materials has it, with the sum and the origin of each line.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::solve::Solved;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("group"),
        Column::words("what"),
        Column::counts("net"),
        Column::words("unit of net"),
        Column::numbers("waste", "%"),
        Column::counts("buy"),
        Column::words("of"),
        Column::words("the sum"),
        Column::words("figures from"),
    ];
    let mut list = Listing::new("materials", "Materials to buy", columns);
    for line in &solved.shop.quantities {
        let places = if line.net.fract() == 0.0 { 0 } else { 2 };
        list.push(vec![
            line.group.words().into(),
            line.name.as_str().into(),
            Value::Number(line.net, places),
            line.unit.as_str().into(),
            if line.waste > 0.0 { Value::Number(line.waste * 100.0, 1) } else { Value::Empty },
            Value::Count(line.count),
            line.order_unit.as_str().into(),
            line.how.as_str().into(),
            line.origin.as_str().into(),
        ]);
    }
    list
}

/// The figures that were taken for want of the job's own.
pub fn figures(solved: &Solved) -> Listing {
    let columns = vec![Column::words("figure"), Column::words("taken as"), Column::words("from")];
    let mut list = Listing::new("material-figures", "Figures of materials taken, not given", columns);
    for figure in &solved.shop.figures {
        list.push(vec![figure.name.as_str().into(), figure.value.as_str().into(), figure.origin.into()]);
    }
    list
}
