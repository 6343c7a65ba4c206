//! Feet that are all but run out.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;

const SPARE: Limit = Limit::new("", "1/4 in", "travel left over at the longest foot, for a floor that isn't flat");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "feet-keep-some-travel",
    severity: Severity::Note,
    about: "At the lowest place of the floor a foot still has some travel left.",
    why: "Paving is never as flat as its fall: what isn't left over in the feet is packed under them.",
    instead: "choose feet that go farther, or measure the floor and write its spots",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[SPARE],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let spare = RULE.length(solved, &SPARE);
    let longest = solved.frame.foot_longest;
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        // A floor that was measured where the feet stand has no surprises left.
        if !leg.floor.spots.is_empty() {
            continue;
        }
        let Some((index, foot)) = leg.feet.iter().enumerate().max_by_key(|(_, foot)| foot.height) else { continue };
        let left = longest - foot.height;
        if left < spare && foot.height <= longest {
            let id = leg.modules.get(foot.module).map_or("", |module| module.id.as_str());
            let message = format!(
                "the longest foot, in module {id}, has {} of travel left; {} is wanted",
                plain(left),
                plain(spare)
            );
            findings.push(RULE.finding(
                Severity::Note,
                Subject::Foot(at, index),
                leg.place.as_ref(),
                message,
                RULE.instead,
            ));
        }
    }
    findings
}
