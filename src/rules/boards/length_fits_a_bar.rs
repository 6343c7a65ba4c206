//! A tube, a support or a piece of trim longer than every stock bar.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::Solved;
use crate::units::Length;
use std::collections::BTreeSet;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "length-fits-a-bar",
    severity: Severity::Warn,
    about: "Every tube of the frame, every support and every piece of trim can be cut from a bar that is bought.",
    why: "A length that no bar has is on no cutting layout and in no count of bars.",
    instead: "name a longer bar under `stock` (or `trim.stock`), or make the module narrower",
    origin: Origin::Geometry,
    concerns: Concern::Cutting,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let shop = &solved.shop;
    let tubes = shop.supports.tubes.iter().map(|tube| (tube.leg, tube.mark.as_str(), tube.length));
    let supports = shop.supports.members.iter().map(|one| (one.leg, one.mark.as_str(), one.length));
    let trim = shop.trim.pieces.iter().map(|piece| (piece.leg, piece.mark.as_str(), piece.length()));
    let cut: BTreeSet<&str> =
        shop.cutting.bars.iter().flat_map(|bar| &bar.cuts).map(|(mark, _)| mark.as_str()).collect();
    let left = tubes.chain(supports).chain(trim).filter(|(_, mark, _)| !cut.contains(mark));
    left.map(|(leg, mark, length): (usize, &str, Length)| {
        let place = solved.legs.get(leg).and_then(|leg| leg.place.as_ref());
        let message = format!("{mark} is {} long; no stock bar has that", solved.show.prose(length));
        RULE.finding(Severity::Warn, Subject::Leg(leg), place, message, RULE.instead)
    })
    .collect()
}
