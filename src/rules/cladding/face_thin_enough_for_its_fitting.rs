//! A finish so thick that a flange floats or a body doesn't reach through.

use crate::findings::{Finding, Origin, Severity};
use crate::rules::{Concern, Lack, Limit, Rule, fittings, named};
use crate::solve::{Fitting, FittingKind, OpeningSort, Solved};
use crate::units::Length;

const USUAL: Limit = Limit::new("", "1 in", "board and finish that any flanged front takes (common practice)");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "face-thin-enough-for-its-fitting",
    severity: Severity::Warn,
    about: "Board and finish together are no thicker than a flanged front takes.",
    why: "A front is made to be screwed to the frame through a thin face; on thick stone its screws hold in nothing and its flange \
          stands off, unless the opening is lined.",
    instead: "line the opening out to the finished face, or choose a thinner finish; write what the front takes as `most_face: \"…\"`",
    origin: Origin::CommonPractice,
    concerns: Concern::Cladding,
    limits: &[USUAL],
    needs,
    check,
};

/// Flanged fronts, with the thickness of the face that they are set into.
fn flanged(solved: &Solved) -> impl Iterator<Item = (&Fitting, Length)> {
    let fronts = fittings(solved).filter(|(_, fitting)| {
        let lap = &fitting.flange;
        fitting.kind == FittingKind::Opening(OpeningSort::Fitting)
            && lap.left.max(lap.right).max(lap.far) > Length::ZERO
    });
    fronts.map(|(leg, fitting)| (fitting, leg.build(fitting.face).total()))
}

fn needs(solved: &Solved) -> Vec<Lack> {
    let usual = RULE.length(solved, &USUAL);
    let unknown = flanged(solved).filter(|(fitting, face)| fitting.needs.most_face.is_none() && *face > usual);
    unknown
        .map(|(fitting, _)| {
            let instead = "write the thickest face, board and finish, that its maker allows, as `most_face: \"2 in\"`";
            Lack::of_practice("most_face", fitting.subject(), fitting.place.as_ref(), instead).for_what(named(fitting))
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    let plain = |length| solved.show.plain(length);
    let thick = flanged(solved).filter_map(|(fitting, face)| {
        let most = fitting.needs.most_face?;
        (face > most).then(|| {
            let message =
                format!("board and finish at {} are {} thick; it takes {}", named(fitting), plain(face), plain(most));
            RULE.finding(Severity::Warn, fitting.subject(), fitting.place.as_ref(), message, RULE.instead)
        })
    });
    thick.collect()
}
