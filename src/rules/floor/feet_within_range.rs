//! A foot that would have to be shorter or longer than it can be.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "feet-within-range",
    severity: Severity::Stop,
    about: "Every foot can be set to the height that the floor asks of it.",
    why: "A frame that can't be levelled tilts the counter, or stands on three feet.",
    instead: "choose longer feet, pack under the far ones, or make the frame higher or lower",
    origin: Origin::Geometry,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let (shortest, longest) = (solved.frame.foot_shortest, solved.frame.foot_longest);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for (index, foot) in leg.feet.iter().enumerate() {
            let (lacking, way) = if foot.height > longest {
                (foot.height - longest, "longer")
            } else if foot.height < shortest {
                (shortest - foot.height, "shorter")
            } else {
                continue;
            };
            let module = leg.modules.get(foot.module);
            let id = module.map_or("", |module| module.id.as_str());
            findings.push(RULE.finding(
                Severity::Stop,
                Subject::Foot(at, index),
                module.and_then(|module| module.place.as_ref()),
                format!(
                    "the foot of module {id} at {} from the finished left end and {} from the finished face has to be \
                     {} high; it can be from {} to {}",
                    plain(foot.u),
                    plain(foot.v),
                    plain(foot.height),
                    plain(shortest),
                    plain(longest)
                ),
                format!("choose feet that go {} {way}, or change the frame's height by as much", plain(lacking)),
            ));
        }
    }
    findings
}
