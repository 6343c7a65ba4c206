//! Openings side by side, with too little face between them for both to open.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Limit, Rule, named, nothing};
use crate::solve::{Face, Fitting, FittingKind, Look, OpeningSort, Solved};
use crate::units::Length;

const DRAWERS: Limit = Limit::new("drawers", "3 in", "between two fronts without a hinge at the pier");
const ONE: Limit = Limit::new("one_hinge", "8 in", "where one of two doors is hinged at the pier");
const TWO: Limit = Limit::new("two_hinges", "14 in", "where both are, and both open fully");
const PLAIN: Limit =
    Limit::new("door_and_drawer", "5 in", "where a door is hinged at the pier beside a drawer (common practice)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "pier-between-openings",
    severity: Severity::Note,
    about: "Between two openings there is enough face for their flanges and for what swings.",
    why: "A door that is hinged at a narrow pier opens against its neighbour's pull, and the pier's finish has nothing to hold to.",
    instead: "move the openings apart, or hinge the door on its other side",
    origin: Origin::Trade("a built-in suite's planning guide: 3, 8 and 14 in; its doors are deep, others need less"),
    concerns: Concern::Landing,
    limits: &[DRAWERS, PLAIN, ONE, TWO],
    needs: nothing,
    check,
};

/// A front with its hinges.
type Front<'s> = (&'s Fitting, (bool, bool));

/// Hinges of a front: at its left and at its right side.
fn hinges(fitting: &Fitting) -> Option<(bool, bool)> {
    match fitting.look {
        Look::Door { pull_right } => Some((pull_right, !pull_right)),
        Look::Doors => Some((true, true)),
        Look::Drawers(_) | Look::WastePullOut | Look::Refrigerator => Some((false, false)),
        _ => None,
    }
}

fn check(solved: &Solved) -> Vec<Finding> {
    let mut findings = Vec::new();
    for leg in &solved.legs {
        for face in [Face::Front, Face::Back] {
            let mut fronts: Vec<Front> = leg
                .fittings
                .iter()
                .filter(|f| f.face == face && f.kind == FittingKind::Opening(OpeningSort::Fitting))
                .filter_map(|f| hinges(f).map(|hinges| (f, hinges)))
                .collect();
            fronts.sort_by_key(|(fitting, _)| fitting.left);
            for (at, one) in fronts.iter().enumerate() {
                let beside = |other: &&Front| other.0.left >= one.0.right && level(one.0, other.0);
                if let Some(other) = fronts[at + 1..].iter().find(beside) {
                    findings.extend(pier(solved, one, other));
                }
            }
        }
    }
    findings
}

/// Whether two openings share some height.
fn level(a: &Fitting, b: &Fitting) -> bool {
    let bottom = |fitting: &Fitting| if fitting.to_floor { Length::ZERO } else { fitting.bottom.unwrap_or_default() };
    let top = |fitting: &Fitting| fitting.top.unwrap_or_default();
    bottom(a) < top(b) && bottom(b) < top(a)
}

fn pier(solved: &Solved, one: &Front, two: &Front) -> Option<Finding> {
    let ((a, a_hinges), (b, b_hinges)) = (one, two);
    let door = |hinges: &(bool, bool)| hinges.0 || hinges.1;
    let limit = match (a_hinges.1, b_hinges.0) {
        (true, true) => &TWO,
        (true, false) | (false, true) if door(a_hinges) && door(b_hinges) => &ONE,
        (true, false) | (false, true) => &PLAIN,
        (false, false) => &DRAWERS,
    };
    let (found, wanted) = (b.left - a.right, RULE.length(solved, limit));
    if found >= wanted {
        return None;
    }
    let plain = |length| solved.show.plain(length);
    let message = format!(
        "{} of face is between {} and {}; {} is wanted {}",
        plain(found),
        named(a),
        named(b),
        plain(wanted),
        limit.about
    );
    Some(RULE.finding(Severity::Note, a.subject(), a.place.as_ref(), message, RULE.instead))
}
