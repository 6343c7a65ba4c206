//! A sharp inside corner in a slab.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, fittings, named, nothing};
use crate::solve::{CounterMaterial, Plane, Solved};

const STONE: Limit = Limit::new("stone", "3/8 in", "inside radius in stone and concrete");
const PORCELAIN: Limit =
    Limit::new("porcelain", "3/16 in", "inside radius in porcelain and sintered slabs (from memory)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "inside-corner-has-a-radius",
    severity: Severity::Warn,
    about: "Every inside corner of a cutout or a notch in the counter is rounded, under a zero-radius sink too.",
    why: "A crack begins at a sharp inside corner, often when the piece is lifted.",
    instead: "write a radius for the cutout; its flange covers it",
    origin: Origin::Trade("stone shops: 3/8 in and more"),
    concerns: Concern::Counter,
    limits: &[STONE, PORCELAIN],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let porcelain = solved.counter.material == CounterMaterial::Porcelain;
    let wanted = RULE.length(solved, if porcelain { &PORCELAIN } else { &STONE });
    let plain = |length| solved.show.plain(length);
    let sharp = fittings(solved).filter_map(|(_, fitting)| {
        let cut = fitting.cutout(Plane::Counter)?;
        (!cut.round && cut.radius < wanted).then(|| {
            let found = plain(cut.radius);
            let message =
                format!("{} has inside corners of {found} radius; {} is the least", named(fitting), plain(wanted));
            RULE.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, RULE.instead)
        })
    });
    let notched =
        solved.legs.iter().enumerate().flat_map(|(index, leg)| leg.notches.iter().map(move |one| (index, one)));
    let notched = notched.filter(|(_, notch)| notch.radius < wanted).map(|(index, notch)| {
        let (found, leg) = (plain(notch.radius), &solved.legs[index].id);
        let what = if notch.clearance.is_some() { "notch round " } else { "" };
        let message = format!(
            "the {what}{} of leg {leg} has inside corners of {found} radius; {} is the least",
            notch.name,
            plain(wanted)
        );
        let instead = "write a greater `radius` for the notch";
        RULE.finding(Severity::Warn, Subject::Leg(index), notch.place.as_ref(), message, instead)
    });
    sharp.chain(notched).collect()
}
