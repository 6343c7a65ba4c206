//! A joint between two pieces with no tube behind it.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "joint-lies-on-framing",
    severity: Severity::Warn,
    about: "Pieces of one face, or of the substrate, meet over a tube.",
    why: "Edges that hang free move against each other, and the finish or the counter over them cracks along the joint.",
    instead: "add studs (`frame.studs`), or name a larger stock sheet so that no joint is needed",
    origin: Origin::CommonPractice,
    concerns: Concern::Cladding,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let free = solved.shop.cutting.joints.iter().filter(|joint| !joint.on_framing && !joint.between_modules);
    free.filter_map(|joint| {
        let leg = solved.legs.get(joint.leg)?;
        let (show, part) = (solved.show, super::part(joint.part));
        let at = if joint.level { "level at" } else { "at" };
        let message =
            format!("leg {}: a joint in {part}, {at} {}, has no tube behind it", leg.id, show.prose(joint.at));
        Some(RULE.finding(Severity::Warn, Subject::Leg(joint.leg), leg.place.as_ref(), message, RULE.instead))
    })
    .collect()
}
