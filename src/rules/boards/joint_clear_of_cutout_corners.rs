//! A joint that runs into the corner of a cutout, or close by.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "joint-clear-of-cutout-corners",
    severity: Severity::Warn,
    about: "A joint in a face or in the substrate keeps the distance that the job asks for from every cutout's corner.",
    why: "A crack starts at a corner and takes the nearest joint.",
    instead: "move the fitting or the module's edge, or name a larger stock sheet so that the joint falls elsewhere",
    origin: Origin::CommonPractice,
    concerns: Concern::Cladding,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let (show, least) = (solved.show, solved.shop.cutting.laying.off_corner);
    let parted = solved.shop.cutting.joints.iter().filter(|joint| !joint.between_modules);
    parted
        .filter_map(|joint| {
            let leg = solved.legs.get(joint.leg)?;
            let found = joint.off_corner.filter(|found| *found < least)?;
            let message = format!(
                "leg {}: a joint in {} at {} is {} from a cutout\u{2019}s corner; {} is the least",
                leg.id,
                super::part(joint.part),
                show.prose(joint.at),
                show.prose(found),
                show.prose(least)
            );
            Some(RULE.finding(Severity::Warn, Subject::Leg(joint.leg), leg.place.as_ref(), message, RULE.instead))
        })
        .collect()
}
