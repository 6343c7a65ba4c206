//! A counter that spans too far on its own.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;
use crate::units::Length;

const THIN: Limit = Limit::new("thin", "24 in", "between supports, 2 cm and less");
const THICK: Limit = Limit::new("thick", "36 in", "between supports, 3 cm and more");
const SHEET: Limit = Limit::new("sheet", "9/16 in", "sheet under the counter that carries it between supports");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "counter-span-within-limit",
    severity: Severity::Warn,
    about: "A slab that lies on no sheet thick enough to carry it spans no farther between frame tubes than its thickness allows.",
    why: "Stone gives no warning before it breaks.",
    instead: "lay a thicker sheet under the counter, or add a tube",
    origin: Origin::Trade("natural-stone institute, as quoted on trade pages: 2 ft for 2 cm, 3 ft for 3 cm"),
    concerns: Concern::Counter,
    limits: &[THIN, THICK, SHEET],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    if solved.substrate.thickness >= RULE.length(solved, &SHEET) {
        return Vec::new();
    }
    let thin = solved.counter.thickness <= super::TWO_CENTIMETRES;
    let most = RULE.length(solved, if thin { &THIN } else { &THICK });
    let plain = |length| solved.show.plain(length);
    let tubes = solved.frame.tube * 2;
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let deep = leg.datums.frame_back - leg.datums.frame_face - tubes;
        for (index, module) in leg.modules.iter().enumerate() {
            let span: Length = (module.width() - tubes).min(deep);
            if span > most {
                let message = format!(
                    "the {} spans {} over module {} on {} of {}; {} is the most",
                    solved.counter.name,
                    plain(span),
                    module.id,
                    plain(solved.substrate.thickness),
                    solved.substrate.name,
                    plain(most)
                );
                let place = module.place.as_ref();
                findings.push(RULE.finding(Severity::Warn, Subject::Module(at, index), place, message, RULE.instead));
            }
        }
    }
    findings
}
