//! A floor on which water stands, or that leads it to a wall.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;

const LEAST: Limit = Limit::new("", "1 %", "fall of a terrace");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "floor-sheds-water",
    severity: Severity::Warn,
    about: "The floor under the run falls by 1 % and more, away from walls.",
    why: "Water that stands under a run can't be seen or swept, and takes board, feet and veneer with it. Near a house 2 % away from it \
          is asked.",
    instead: "measure the floor and write its fall or its spots; mend a floor that is truly level before anything stands on it",
    origin: Origin::Trade(
        "paving guides: 1/8 in a foot at least, 1/4 in usual; IRC R401.3 as quoted: 2 % near a house",
    ),
    concerns: Concern::Floor,
    limits: &[LEAST],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let least = RULE.number(solved, &LEAST);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let fall = leg.floor.per_u.hypot(leg.floor.per_v);
        let mut tell = |message: String, instead: &str| {
            findings.push(RULE.finding(Severity::Warn, Subject::Leg(at), leg.place.as_ref(), message, instead));
        };
        if fall + 1e-9 < least {
            let message = format!(
                "the floor under leg {} falls by {:.1} %; {:.1} % is the least",
                leg.id,
                fall * 100.0,
                least * 100.0
            );
            tell(message, RULE.instead);
        } else if leg.floor.per_v < -least && !leg.back.is_open() {
            let message = format!("the floor under leg {} leads water to the {}", leg.id, leg.back.name);
            tell(message, "set a drain along it, or turn the fall");
        }
    }
    findings
}
