//! Orders, line by line.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::solve::Solved;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("order to the"),
        Column::words("mark"),
        Column::counts("count"),
        Column::words("what"),
        Column::words("what must not be got wrong"),
        Column::words("ask first"),
        Column::masses("weight each"),
    ];
    let mut list = Listing::new("orders", "Orders", columns)
        .noted("Material for gas, electricity and water is no order of ours: licensed trades choose and bring it.");
    for order in &solved.shop.orders {
        for line in &order.lines {
            list.push(vec![
                order.supplier.words().into(),
                line.mark.as_str().into(),
                Value::Count(line.count),
                line.what.as_str().into(),
                line.mind.join("; ").into(),
                line.missing.join(", ").into(),
                line.mass.map(Value::Mass).unwrap_or_default(),
            ]);
        }
        list.notes.push(format!("To the {}: {}", order.supplier.words(), order.mind.join(" ")));
    }
    list
}
