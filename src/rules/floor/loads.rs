//! What two rules on the feet's loads share: the worst foot of each module.

use crate::findings::{Finding, Severity, Subject};
use crate::rules::Rule;
use crate::solve::{FootLoad, Solved};

/// A finding for each module with a foot that has more on it than its rating, in some case of load.
pub(super) fn over(
    solved: &Solved,
    rule: &Rule,
    load: fn(&FootLoad) -> f64,
    counts: impl Fn(&FootLoad) -> bool,
    when: &str,
) -> Vec<Finding> {
    let rating = solved.frame.foot_rating;
    if rating <= 0.0 {
        return Vec::new();
    }
    let mass = |mass| solved.show.mass(mass);
    let mut findings = Vec::new();
    for (at, (leg, loads)) in solved.legs.iter().zip(&solved.shop.levelling.loads).enumerate() {
        let mut feet: Vec<(usize, usize, f64)> = Vec::new();
        for (index, (foot, own)) in leg.feet.iter().zip(loads).enumerate() {
            if load(own) <= rating || !counts(own) {
                continue;
            }
            match feet.last_mut().filter(|(_, module, _)| *module == foot.module) {
                Some(worst) if load(own) > worst.2 => *worst = (index, foot.module, load(own)),
                Some(_) => {}
                None => feet.push((index, foot.module, load(own))),
            }
        }
        for (index, module, most) in feet {
            let Some(module) = leg.modules.get(module) else { continue };
            let message = format!(
                "foot {} of module {} has {} on it {when}; it carries {}",
                solved.foot_tag(at, index),
                module.id,
                mass(most),
                mass(rating)
            );
            findings.push(rule.finding(
                Severity::Warn,
                Subject::Foot(at, index),
                module.place.as_ref(),
                message,
                rule.instead,
            ));
        }
    }
    findings
}
