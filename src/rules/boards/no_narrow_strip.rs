//! A piece of sheet too narrow to be fixed.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "no-narrow-strip",
    severity: Severity::Note,
    about: "No piece of board or substrate is narrower than the least strip that the job asks for.",
    why: "A narrow strip breaks when it is screwed near both of its edges.",
    instead: "make the module wider, let the neighbouring board run over it, or accept a smaller `least_strip`",
    origin: Origin::CommonPractice,
    concerns: Concern::Cladding,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let (show, least) = (solved.show, solved.shop.cutting.laying.least_strip);
    let narrow = solved.shop.pieces.iter().filter(|piece| piece.blank.0.min(piece.blank.1) < least);
    narrow
        .map(|piece| {
            let message = format!(
                "{} is {} wide; {} is the least",
                piece.mark,
                show.prose(piece.blank.0.min(piece.blank.1)),
                show.prose(least)
            );
            let place = solved.legs.get(piece.leg).and_then(|leg| leg.place.as_ref());
            RULE.finding(Severity::Note, Subject::Leg(piece.leg), place, message, RULE.instead)
        })
        .collect()
}
