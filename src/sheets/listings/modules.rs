//! Modules: what each is for, its width, where it stands, and why it is as wide as it is.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::sheets::schedules::module_words;
use crate::solve::{Datum, Solved};

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("module"),
        Column::words("for"),
        Column::lengths("width"),
        Column::lengths("left edge from finished left end"),
        Column::lengths("right edge from finished left end"),
        Column::lengths("left edge from frame left end"),
        Column::words("how its width was found"),
    ];
    let mut list = Listing::new("modules", "Modules", columns)
        .noted("A module\u{2019}s width is that of its bare frame; left and right are those of the cook.");
    for leg in &solved.legs {
        for module in &leg.modules {
            let from = |datum, at| Value::Length(leg.datums.from(datum, at));
            list.push(vec![
                leg.id.as_str().into(),
                module.id.as_str().into(),
                module_words(module).into(),
                module.width().into(),
                from(Datum::FinishedLeftEnd, module.left),
                from(Datum::FinishedLeftEnd, module.right),
                from(Datum::FrameLeftEnd, module.left),
                module.why.as_str().into(),
            ]);
        }
    }
    list
}
