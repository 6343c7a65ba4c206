//! A frame that gives more than a slab can.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::beams::{Beam, Held, Load};
use crate::solve::{Role, Solved};

const SHARE: Limit = Limit::new("", "720", "the span over its deflection, under a hard top");
const LIVE: Limit = Limit::new("live", "50 lb/ft2", "load on the counter (from memory)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "frame-stiff-enough-for-its-top",
    severity: Severity::Warn,
    about: "Under counter and load the long tubes at the frame's top bend by no more than 1/720 of their span.",
    why: "Stone and tile don't bend: what they lie on has to be stiff enough. Tile asks 1/360, stone 1/720.",
    instead: "choose a larger or thicker tube, or narrow the module",
    origin: Origin::Trade("tile and stone manuals, as quoted: stone L/720 under total load; 5wL4/384EI"),
    concerns: Concern::Counter,
    limits: &[SHARE, LIVE],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let share = RULE.number(solved, &SHARE).max(1.0);
    let live = RULE.number(solved, &LIVE);
    let own = solved.counter.density * solved.counter.thickness.mm() / 1e3;
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let half = (leg.datums.frame_back - leg.datums.frame_face).mm() / 2e3;
        let load = (own + live) * 9.806_65 * half;
        for (index, module) in leg.modules.iter().enumerate() {
            let rails = leg
                .members_of(index..=index)
                .iter()
                .filter(|member| member.role == Role::Rail && member.body.z.1 == leg.datums.frame_top);
            let Some(span) = rails.map(|member| member.body.u.1 - member.body.u.0).max() else { continue };
            let span_m = span.mm() / 1e3;
            let even = Load::Even { by_length: load, from: 0.0, to: span_m };
            let beam =
                Beam { held: Held::Simple, length: span_m, stiffness: solved.frame.stiffness, loads: vec![even] };
            let bent = beam.bent().middle();
            if bent * share > span_m {
                let plain = |length| solved.show.plain(length);
                let message = format!(
                    "the top rail of module {} spans {} and bends by 1/{:.0} of it; 1/{share:.0} is the most",
                    module.id,
                    plain(span),
                    span_m / bent
                );
                let place = module.place.as_ref();
                findings.push(RULE.finding(Severity::Warn, Subject::Module(at, index), place, message, RULE.instead));
            }
        }
    }
    findings
}
