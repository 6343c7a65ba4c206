//! A fitting in hand that is not as its sheet says.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Rule, fittings, named, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "published-agrees-with-measured",
    severity: Severity::Warn,
    about: "What was measured on the fitting in hand agrees with its sheet.",
    why: "Either the sheet is of another model, or the tape was held to another edge.",
    instead: "measure again; what was measured is what is drawn",
    origin: Origin::CommonPractice,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (_, fitting) in fittings(solved) {
        for (name, measure) in &fitting.measures {
            let (Some(published), Some(measured)) = (measure.published, measure.measured) else { continue };
            let apart = (published - measured).abs();
            if apart > solved.tolerances.published {
                findings.push(RULE.finding(
                    Severity::Warn,
                    fitting.subject(),
                    measure.place.as_ref().or(fitting.place.as_ref()),
                    format!(
                        "the {name} of {} was published as {} and measured as {}: {} apart, more than {}. The \
                         measured one is drawn",
                        named(fitting),
                        plain(published),
                        plain(measured),
                        plain(apart),
                        plain(solved.tolerances.published)
                    ),
                    "measure it again, and check that the sheet is of this very model",
                ));
            }
        }
    }
    findings
}
