//! A counter that hangs out too far.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;

const THIN: Limit = Limit::new("thin", "6 in", "past the frame, 2 cm and less");
const THICK: Limit = Limit::new("thick", "10 in", "past the frame, 3 cm and more");
const SHARE: Limit = Limit::new("share", "33.4 %", "of the counter's depth, whatever its thickness");
const BRACKETS: Limit = Limit::new("brackets", "36 in", "between brackets under a longer one");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "counter-overhang-supported",
    severity: Severity::Warn,
    about: "Past the frame a counter hangs out no farther than its thickness allows, nor more than a third of its depth, unless \
            brackets carry it.",
    why: "Somebody will sit on it. Board and finish carry nothing: the overhang counts from the frame.",
    instead: "add brackets and write how far apart, as `brackets: \"24 in\"`, or let it hang out less",
    origin: Origin::Trade(
        "natural-stone institute, as quoted: 6 in for 2 cm, 10 in for 3 cm; brackets 30 to 36 in: shops",
    ),
    concerns: Concern::Counter,
    limits: &[THIN, THICK, SHARE, BRACKETS],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let thin = solved.counter.thickness <= super::TWO_CENTIMETRES;
    let plain = |length| solved.show.plain(length);
    let brackets = RULE.length(solved, &BRACKETS);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let (d, e) = (&leg.datums, &leg.counter.extent);
        let share = RULE.number(solved, &SHARE);
        let most = RULE.length(solved, if thin { &THIN } else { &THICK }).min(e.height().scaled(share));
        let sides = [
            ("front", d.frame_face - e.y0, true),
            ("back", e.y1 - d.frame_back, leg.back.is_open()),
            ("left", d.frame_left - e.x0, leg.left.is_open()),
            ("right", e.x1 - d.frame_right, leg.right.is_open()),
        ];
        for (side, found, free) in sides {
            let carried = solved.counter.needs.brackets.is_some_and(|apart| apart <= brackets);
            if free && found > most && !carried {
                let message = match solved.counter.needs.brackets {
                    Some(apart) => format!(
                        "the counter hangs {} past the frame at the {side} on brackets {} apart; {} is the most",
                        plain(found),
                        plain(apart),
                        plain(brackets)
                    ),
                    None => format!(
                        "the counter hangs {} past the frame at the {side}; {} is the most without brackets",
                        plain(found),
                        plain(most)
                    ),
                };
                let place = solved.counter.place.as_ref();
                findings.push(RULE.finding(Severity::Warn, Subject::Counter(at), place, message, RULE.instead));
            }
        }
    }
    findings
}
