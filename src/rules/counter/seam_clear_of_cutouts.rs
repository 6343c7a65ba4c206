//! A seam over or beside a cutout.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::hot::is_hot;
use crate::rules::{Concern, Limit, Rule, named, nothing};
use crate::solve::{Fitting, Plane, Solved};
use crate::units::Length;

const HOT: Limit = Limit::new("hot", "10 in", "from a seam to a hot cutout");
const COLD: Limit = Limit::new("cold", "6 in", "from a seam to any other cutout (common practice)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "seam-clear-of-cutouts",
    severity: Severity::Warn,
    about: "Seams keep clear of cutouts, and far from hot ones.",
    why: "Beside a cutout a seam has the least stone to hold it, and heat works on its glue. Sources differ: a stone institute shows \
          seams at a sink with reinforcement, a millwork standard wants 18 in; the fabricator decides.",
    instead: "move the seam to solid counter over a tube, or agree on its reinforcement with the fabricator",
    origin: Origin::Trade("a burner's manual: 250 mm from its cutout; shops"),
    concerns: Concern::Counter,
    limits: &[HOT, COLD],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for &seam in &leg.counter.seams {
            let near = leg.fittings.iter().filter_map(|fitting| {
                let x = fitting.cutout(Plane::Counter)?.extent;
                let away = (x.x0 - seam).max(seam - x.x1);
                let wanted = RULE.length(solved, if is_hot(fitting) { &HOT } else { &COLD });
                (away < wanted).then_some((away, wanted, fitting))
            });
            let Some((away, wanted, fitting)) = near.min_by_key(|(away, _, _): &(Length, Length, &Fitting)| *away)
            else {
                continue;
            };
            let seam = plain(seam);
            let message = if away < Length::ZERO {
                format!("the seam at {seam} runs through the cutout of {}", named(fitting))
            } else {
                format!("the seam at {seam} is {} from {}; {} is wanted", plain(away), named(fitting), plain(wanted))
            };
            let place = solved.counter.place.as_ref();
            findings.push(RULE.finding(Severity::Warn, Subject::Counter(at), place, message, RULE.instead));
        }
    }
    findings
}
