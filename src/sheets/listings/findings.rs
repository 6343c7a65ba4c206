//! What the check found, by the numbers that the marks on the sheets carry.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::findings::Finding;
use crate::sheets::schedules::about;
use crate::solve::Solved;

/// The list.
pub fn listing(solved: &Solved, findings: &[Finding]) -> Listing {
    let columns = vec![
        Column::counts("no."),
        Column::words("severity"),
        Column::words("about"),
        Column::words("what was found"),
        Column::words("what to do instead"),
        Column::words("source"),
        Column::words("rule"),
    ];
    let mut list = Listing::new("findings", "Findings", columns)
        .noted("stop: don\u{2019}t cut before it is mended; warn: decide; note: know.");
    for (index, finding) in findings.iter().enumerate() {
        list.push(vec![
            Value::Count(index as u64 + 1),
            finding.severity.word().into(),
            about(solved, &finding.subject).into(),
            finding.message.as_str().into(),
            finding.instead.as_str().into(),
            finding.origin.words().into(),
            finding.rule.into(),
        ]);
    }
    list
}
