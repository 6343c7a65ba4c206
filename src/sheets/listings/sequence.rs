//! The sequence of the work, step by step.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::solve::Solved;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::counts("no."),
        Column::words("step"),
        Column::words("who"),
        Column::words("after"),
        Column::numbers("wait", "h"),
        Column::words("what is done"),
        Column::words("why it comes now"),
        Column::words("caution"),
        Column::words("origin"),
    ];
    let mut list = Listing::new("sequence", "Sequence of the work", columns).noted(
        "Waits are least times in fair weather; the data sheets, local code, manuals and licensed trades decide.",
    );
    for (index, step) in solved.shop.sequence.iter().enumerate() {
        let after: Vec<String> = step.after.iter().map(|before| (before + 1).to_string()).collect();
        list.push(vec![
            Value::Count(index as u64 + 1),
            step.name.into(),
            step.who.words().into(),
            // A step's only number would pass for a number of its own.
            if after.is_empty() { Value::Empty } else { format!("step {}", after.join(", ")).into() },
            step.wait.map_or(Value::Empty, |hours| Value::Number(hours, 1)),
            step.what.as_str().into(),
            step.why.as_str().into(),
            step.caution.unwrap_or("").into(),
            step.origin.as_str().into(),
        ]);
    }
    list
}
