//! Characters that the carried font lacks: said as a finding, never drawn as a blank.

use crate::drawing::lettering;
use crate::findings::{Finding, Origin, Place, Severity, Subject};
use crate::solve::Solved;

/// A finding for each name in the job with characters that can't be lettered.
pub fn letters_lacking(solved: &Solved) -> Vec<Finding> {
    let job = &solved.job;
    let mut names: Vec<(Subject, &str, Option<&Place>)> = [
        &job.title,
        &job.client,
        &job.address,
        &job.number,
        &job.owner,
        &job.drawn_by,
        &job.approved_by,
        &job.date,
        &solved.counter.name,
        &solved.substrate.name,
        &solved.paving,
    ]
    .into_iter()
    .map(|name| (Subject::Job, name.as_str(), job.place.as_ref()))
    .collect();
    for revision in &job.revisions {
        names.extend(
            [&revision.mark, &revision.date, &revision.note].map(|t| (Subject::Job, t.as_str(), job.place.as_ref())),
        );
    }
    for (index, leg) in solved.legs.iter().enumerate() {
        for bound in [&leg.left, &leg.right, &leg.back] {
            names.push((Subject::Leg(index), &bound.name, bound.place.as_ref()));
        }
        for (module, it) in leg.modules.iter().enumerate() {
            names.extend([&it.id, &it.name].map(|t| (Subject::Module(index, module), t.as_str(), it.place.as_ref())));
        }
        for it in &leg.fittings {
            names.extend([&it.name, &it.mark].map(|t| (it.subject(), t.as_str(), it.place.as_ref())));
        }
    }
    let lacking = |(subject, name, place): (Subject, &str, Option<&Place>)| {
        let missing = lettering::missing(name);
        let shown: Vec<String> = missing.iter().map(|c| format!("\u{201c}{c}\u{201d} (U+{:04X})", *c as u32)).collect();
        (!missing.is_empty()).then(|| Finding {
            rule: "every-character-can-be-lettered",
            severity: Severity::Warn,
            subject,
            message: format!(
                "\u{201c}{}\u{201d} has characters that the sheets' font lacks: {}",
                name.escape_debug(),
                shown.join(", ")
            ),
            instead: "write it in Latin letters; a question mark stands in their place".to_owned(),
            place: place.cloned(),
            origin: Origin::CommonPractice,
        })
    };
    names.into_iter().filter_map(lacking).collect()
}
