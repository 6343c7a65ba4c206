//! A counter that hangs out too far for its thickness, where no brackets hold it.

use super::brackets::{Side, Want, sides};
use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{CornerShape, Datums, Joint, JointKind, Solved};
use crate::units::Length;

const THIN: Limit = Limit::new("thin", "6 in", "past the frame, or past what carries it, 2 cm and less");
const THICK: Limit = Limit::new("thick", "10 in", "past the frame, or past what carries it, 3 cm and more");
const SHARE: Limit = Limit::new("share", "33.4 %", "of the counter's depth, whatever its thickness");
const BRACKETS: Limit = Limit::new("brackets", "36 in", "between brackets under a longer one");

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "counter-overhang-supported",
    severity: Severity::Warn,
    about: "Past the frame a counter hangs out no farther than its thickness allows, nor more than a third of its depth, unless \
            brackets carry it: near enough to one another and to its ends, long enough, strong and stiff enough.",
    why: "Somebody will sit on it. Board and finish carry nothing: the overhang counts from the frame.",
    instead: "let it hang out less, or give it brackets that hold: `counter.brackets` says how far apart, `supports.bracket` of what",
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
    let apart = RULE.length(solved, &BRACKETS);
    let free = RULE.length(solved, if thin { &THIN } else { &THICK });
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let most = free.min(leg.counter.extent.height().scaled(RULE.number(solved, &SHARE)));
        for side in sides(leg).into_iter().filter(|side| side.open && side.past > most) {
            let Some(want) = side.wants(solved, at, apart, free) else { continue };
            let hangs = format!("the counter hangs {} past the frame at the {}", plain(side.past), side.word);
            let (message, instead) = said(solved, &side, &want, &hangs, (most, apart, free));
            let place = solved.counter.place.as_ref();
            findings.push(RULE.finding(Severity::Warn, Subject::Counter(at), place, message, instead));
        }
    }
    findings.extend(solved.joints.iter().filter_map(|joint| clipped(solved, joint, free)));
    findings
}

/// What fills a clipped inside corner hangs out farthest in the middle of its edge: by as much as the edges that meet do,
/// and half the clip times the sine of the angle between them.
fn clipped(solved: &Solved, joint: &Joint, free: Length) -> Option<Finding> {
    let JointKind::Corner(corner) = &joint.kind else { return None };
    let CornerShape::Clipped(by) = corner.inner else { return None };
    let (left, right) = (solved.legs.get(joint.left)?, solved.legs.get(joint.right)?);
    let inside = corner.turn > 0.0;
    let past = |d: &Datums| if inside { d.frame_face - d.counter_front } else { d.counter_back - d.frame_back };
    let nearer = past(&left.datums).min(past(&right.datums));
    let hangs = nearer + by.half().scaled(corner.turn.sin().abs());
    (hangs > free).then(|| {
        let plain = |length| solved.show.plain(length);
        let message = format!(
            "what fills the corner between legs {} and {} hangs {} past their frames; {} is the most",
            left.id,
            right.id,
            plain(hangs),
            plain(free)
        );
        let instead = "clip the corner less, or carry what fills it";
        RULE.finding(Severity::Warn, Subject::Counter(joint.left), joint.place.as_ref(), message, instead)
    })
}

/// What is wanting, and what to do about it.
fn said(
    solved: &Solved,
    side: &Side,
    want: &Want,
    hangs: &str,
    (most, apart, free): (Length, Length, Length),
) -> (String, String) {
    let plain = |length| solved.show.plain(length);
    match want {
        Want::Any => {
            let placed = solved.shop.supports.work.as_ref().is_none_or(|work| side.past > work.overhang);
            let instead = if placed {
                "brackets found no room there: move what is cut into the counter, or let it hang out less".to_owned()
            } else {
                format!("let it hang out less, or have brackets placed: `supports: (overhang: \"{}\")`", plain(most))
            };
            (format!("{hangs}; {} is the most without brackets", plain(most)), instead)
        }
        Want::Nearer(found) => (
            format!("{hangs} on brackets {} apart; {} is the most", plain(*found), plain(apart)),
            "set them nearer, as `brackets: \"24 in\"`, or move what is cut into the counter between them".to_owned(),
        ),
        Want::AtEnd(found) => (
            format!("{hangs}; along it {} lie past the last bracket, and {} is the most", plain(*found), plain(free)),
            "let it hang out less there, or move what keeps a bracket from its end".to_owned(),
        ),
        Want::Longer(mark, found) => (
            format!("{hangs}, {} of that past the end of bracket {mark}; {} is the most", plain(*found), plain(free)),
            RULE.instead.to_owned(),
        ),
        Want::Stronger(marks) => {
            let (word, hold) = if marks.len() == 1 { ("bracket", "doesn't") } else { ("brackets", "don't") };
            (
                format!("{hangs}, and {word} {} there {hold} hold it", marks.join(", ")),
                "see what is said of them: a thicker bar, or less overhang".to_owned(),
            )
        }
    }
}
