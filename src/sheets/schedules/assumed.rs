//! Values that the job does not give, with what was assumed for each.

use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::DefaultUsed;

/// Adds the list.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    flow.table("Assumed, not given", 1, &|_| table(set));
}

/// The list as a table.
pub fn table(set: &Set<'_>) -> Table {
    let all = &set.solved.defaults;
    let widest = |texts: &mut dyn Iterator<Item = &str>| {
        texts.map(|text| lettering::width(text, BODY, Weight::Regular)).fold(18.0, f64::max) + 3.0
    };
    let name = widest(&mut all.iter().map(|it| it.name.as_str())).min(60.0);
    let value = widest(&mut all.iter().map(|it| it.value.as_str())).min(34.0);
    let columns = vec![Column::words(name, "value"), Column::words(value, "assumed"), Column::words(52.0, "from")];
    let row = |it: &DefaultUsed| {
        vec![Cell::Words(it.name.clone()), Cell::Words(it.value.clone()), Cell::Grey(it.origin.to_owned())]
    };
    Table { columns, rows: all.iter().map(row).collect(), breaks: Vec::new() }
}
