//! Base trim that is left too narrow somewhere.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::Solved;

const LEAST: Limit = Limit::new("", "1 1/2 in", "least height of a strip of trim");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "trim-keeps-a-strip",
    severity: Severity::Warn,
    about: "The base trim keeps a strip that can be handled and fastened at its narrowest place, scribed and notched.",
    why: "A narrow strip breaks when it is cut or screwed, and has no edge distance for a fastener.",
    instead: "raise the top of the trim, move the fitting, or let the trim end on both sides of it",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[LEAST],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let least = RULE.length(solved, &LEAST);
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for piece in &solved.shop.trim.pieces {
        let (narrowest, at) = piece.narrowest();
        if narrowest >= least {
            continue;
        }
        let Some(leg) = solved.legs.get(piece.leg) else { continue };
        let under = piece.notches.iter().find(|notch| notch.left_over == narrowest);
        let fitting = under.and_then(|notch| leg.fittings.get(notch.fitting));
        let (message, subject) = match fitting {
            Some(fitting) => (
                format!(
                    "trim {} is {} high under {}; {} is wanted",
                    piece.mark,
                    plain(narrowest),
                    fitting.mark,
                    plain(least)
                ),
                fitting.subject(),
            ),
            None => (
                format!(
                    "trim {} is {} high at {} along its face; {} is wanted",
                    piece.mark,
                    plain(narrowest),
                    plain(at),
                    plain(least)
                ),
                Subject::Leg(piece.leg),
            ),
        };
        let place = solved.trim.as_ref().and_then(|trim| trim.place.as_ref());
        findings.push(RULE.finding(Severity::Warn, subject, place, message, RULE.instead));
    }
    findings
}
