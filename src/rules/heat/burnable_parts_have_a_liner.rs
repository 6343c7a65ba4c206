//! A hot fitting hung in parts that burn.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::hot::cooking;
use crate::rules::{Concern, Lack, Rule, named};
use crate::solve::{FrameMaterial, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "burnable-parts-have-a-liner",
    severity: Severity::Stop,
    about: "Where the frame or the sheet under the counter burns, a hot fitting hangs in the insulated liner made for it.",
    why: "Wood beside a fire box dries, chars and lights after months, not on the first evening.",
    instead: "hang it in its maker's insulated liner, or change what burns round it",
    origin: Origin::Trade("grill manuals and built-in suite guides: insulated jacket in combustible enclosures"),
    concerns: Concern::Heat,
    limits: &[],
    needs,
    check,
};

fn needs(solved: &Solved) -> Vec<Lack> {
    if solved.substrate.combustible.is_some() {
        return Vec::new();
    }
    let bare = cooking(solved).filter(|(_, fitting)| fitting.needs.liner != Some(true));
    bare.map(|(_, fitting)| {
        let instead = "write `combustible: true` or `false` beside the substrate's thickness";
        let place = solved.substrate.place.as_ref();
        Lack::of_safety("substrate.combustible", fitting.subject(), place, instead).for_what(named(fitting))
    })
    .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let wood = solved.frame.material == FrameMaterial::Wood;
    let sheet = solved.substrate.combustible == Some(true);
    let mut findings = Vec::new();
    for (_, fitting) in cooking(solved).filter(|(_, fitting)| fitting.needs.liner != Some(true)) {
        let (severity, what) = match (wood, sheet) {
            (true, _) => (Severity::Stop, "a wooden frame".to_owned()),
            (false, true) => (Severity::Warn, format!("{}, which burns", solved.substrate.name)),
            (false, false) => continue,
        };
        findings.push(RULE.finding(
            severity,
            fitting.subject(),
            fitting.place.as_ref(),
            format!("{} hangs in {what}, without an insulated liner", named(fitting)),
            "write `liner: true` when it has its maker's liner, or choose a sheet that doesn't burn",
        ));
    }
    findings
}
