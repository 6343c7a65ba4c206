//! Two materials that go by one name, so that an order mixes them.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, cladding, nothing};
use crate::solve::{Finish, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "one-name-one-material",
    severity: Severity::Warn,
    about: "What is called alike is alike: finishes of one name have one thickness, bed and weight.",
    why: "A supplier reads the name. Stone of the wrong thickness moves the finished face, and every cut behind it.",
    instead: "give each a name of its own, or make them alike",
    origin: Origin::CommonPractice,
    concerns: Concern::Materials,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let all: Vec<&Finish> =
        solved.legs.iter().flat_map(|leg| cladding::clad(leg).map(|(_, _, _, finish)| finish)).collect();
    let mut names: Vec<&str> = Vec::new();
    let mut findings = Vec::new();
    for finish in &all {
        if names.contains(&finish.name.as_str()) {
            continue;
        }
        names.push(&finish.name);
        let Some(other) = all.iter().find(|other| other.name == finish.name && !alike(other, finish)) else { continue };
        let thick = |finish: &Finish| {
            let plain = |length| solved.show.plain(length);
            format!(
                "{} on a bed of {}, {}",
                plain(finish.thickness),
                plain(finish.bed),
                solved.show.area_mass(finish.mass)
            )
        };
        let message =
            format!("two finishes are called {}: one is {}, another {}", finish.name, thick(finish), thick(other));
        findings.push(RULE.finding(Severity::Warn, Subject::Job, None, message, RULE.instead));
    }
    findings
}

/// Whether one can be bought for the other. What the face may be off by is no part of it.
fn alike(a: &Finish, b: &Finish) -> bool {
    (a.kind, a.thickness, a.bed, a.mass) == (b.kind, b.thickness, b.bed, b.mass)
}
