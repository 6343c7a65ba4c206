//! Board that spans too far between tubes to carry a finish.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Limit, Rule, nothing};
use crate::solve::{Board, Face, Leg, Plane, Solved};
use crate::units::Length;

const APART: Limit = Limit::new("", "16 in", "from centre to centre of the tubes behind a clad board");
/// Places on a board are tried this far apart: 2 in.
const STEP: Length = Length::from_sixty_fourths(2 * 64);

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "framing-close-enough-for-its-board",
    severity: Severity::Warn,
    about: "Behind a clad board there is a tube near every place: no more than 16 in from one to the next.",
    why: "Board that gives between tubes cracks skim coats, and tile lets go of it.",
    instead: "add studs: write `studs: \"16 in\"` under `frame`",
    origin: Origin::Trade("a cement board maker: framing 16 in on centre at most, steel of 20 gauge and more"),
    concerns: Concern::Cladding,
    limits: &[APART],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let apart = RULE.length(solved, &APART);
    let tube = solved.frame.tube;
    // From the edge of one tube to the middle of the bay.
    let reach = (apart - tube).half();
    let plain = |length| solved.show.plain(length);
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        let mut wide: Vec<(Length, &str)> = Vec::new();
        for board in leg.boards.iter().filter(|board| leg.finish(board.face).is_some()) {
            let far = farthest(leg, board);
            if far > reach {
                wide.push((far, &board.name));
            }
        }
        let Some((far, worst)) = wide.iter().max_by_key(|(far, _)| *far) else { continue };
        let more = if wide.len() > 1 { format!(", and on {} more", wide.len() - 1) } else { String::new() };
        let message = format!(
            "the board {worst} has a place {} from the nearest tube{more}; tubes {} apart leave {}",
            plain(*far),
            plain(apart),
            plain(reach)
        );
        findings.push(RULE.finding(Severity::Warn, Subject::Leg(at), leg.place.as_ref(), message, RULE.instead));
    }
    findings
}

/// How far the farthest place of a board is from a tube behind it.
fn farthest(leg: &Leg, board: &Board) -> Length {
    let d = &leg.datums;
    let touches = |body: &crate::solve::BodyBox| match board.face {
        Face::Front => body.v.0 == d.frame_face,
        Face::Back => body.v.1 == d.frame_back,
        Face::Left => body.u.0 == d.frame_left,
        Face::Right => body.u.1 == d.frame_right,
    };
    // A neighbour's post stands behind a board's edge too.
    let near = board.module.map_or(0..=leg.modules.len(), |own| own.saturating_sub(1)..=own + 1);
    let tubes: Vec<_> = leg
        .members_of(near)
        .iter()
        .filter(|member| touches(&member.body))
        .map(|member| {
            let across = if matches!(board.face, Face::Front | Face::Back) { member.body.u } else { member.body.v };
            (across, member.body.z)
        })
        .collect();
    let cuts: Vec<_> = {
        let cut = |&index: &usize| leg.fittings.get(index)?.cutout(Plane::of(board.face)).map(|cutout| cutout.extent);
        board.fittings.iter().filter_map(cut).collect()
    };
    let e = &board.extent;
    let off = |at: Length, (low, high): (Length, Length)| (low - at).max(at - high).max(Length::ZERO);
    let mut farthest = Length::ZERO;
    let mut x = e.x0;
    while x <= e.x1 {
        let mut y = e.y0;
        while y <= e.y1 {
            let open = cuts.iter().any(|cut| cut.x0 <= x && x <= cut.x1 && cut.y0 <= y && y <= cut.y1);
            if !open {
                let nearest =
                    tubes.iter().map(|(us, zs)| off(x, *us).mm().hypot(off(y, *zs).mm())).fold(f64::MAX, f64::min);
                if nearest < f64::MAX {
                    farthest = farthest.max(Length::from_mm(nearest));
                }
            }
            y += STEP;
        }
        x += STEP;
    }
    farthest
}
