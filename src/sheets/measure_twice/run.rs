//! The lengths of the run itself: room, walls, heights, build-ups, floor.

use super::{Check, add};
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::solve::{Bound, Face, Leg};
use crate::units::Length;

/// Adds the checks of every leg.
pub fn add_all(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    for (index, leg) in set.solved.legs.iter().enumerate() {
        let several = set.solved.legs.len() > 1;
        let titled = |title: &str| if several { format!("{title}, leg {}", index + 1) } else { title.to_owned() };
        let mut site = room(set, leg);
        site.extend(floor(set, (index, leg)));
        add(flow, set.solved.show, &titled("Site"), &site, false);
        add(flow, set.solved.show, &titled("Frame, board and finish"), &layers(set, leg), false);
    }
}

fn check(name: impl Into<String>, used: Length, tolerance: Length) -> Check {
    Check { name: name.into(), published: None, measured: None, used, tolerance }
}

/// Room between bounds at the floor and at counter height, and what stands behind.
fn room(set: &Set<'_>, leg: &Leg) -> Vec<Check> {
    let cut = set.solved.tolerances.cut;
    let mut checks = Vec::new();
    let corner = leg.meets_leg(0) || leg.meets_leg(1);
    if let Some(room) = leg.room {
        let name = match &leg.surveyed {
            // Where walls meet out of square only the line along the back runs into their corner.
            Some([left, right]) if corner => format!("room for the run, along its back, from {left} to {right}"),
            None if corner => "room for the run, along its back, into the corner".to_owned(),
            Some([left, right]) => format!("room for the run, tightest, from {left} to {right}"),
            None => "room for the run, tightest level".to_owned(),
        };
        checks.push(check(name, room.given, cut));
    }
    let ends = [(&leg.left, true), (&leg.right, false)];
    for (bound, left) in ends {
        if bound.is_open() {
            continue;
        }
        let end = if left { Length::ZERO } else { leg.datums.finished_right };
        let gap = |at: Length| if left { end - at } else { at - end };
        let side = if left { "left" } else { "right" };
        checks.push(check(format!("{} to finished {side} end, floor", name(bound)), gap(bound.at), cut));
        checks.push(check("the same, counter height", gap(bound.at_counter), cut));
    }
    if !leg.back.is_open() {
        checks.push(check(format!("finished face to {}, floor", name(&leg.back)), leg.back.at, cut));
        checks.push(check("the same, counter height", leg.back.at_counter, cut));
    }
    checks
}

fn name(bound: &Bound) -> String {
    if bound.name.is_empty() { "wall".to_owned() } else { bound.name.clone() }
}

/// The floor's fall between the feet of a leg that stand highest and lowest.
fn floor(set: &Set<'_>, (index, leg): (usize, &Leg)) -> Vec<Check> {
    let lowest = leg.feet.iter().enumerate().min_by_key(|(index, foot)| (foot.ground, *index));
    let highest = leg.feet.iter().enumerate().max_by_key(|(index, foot)| (foot.ground, usize::MAX - index));
    let (Some((low, under)), Some((high, over))) = (lowest, highest) else { return Vec::new() };
    let tag = |foot: usize| set.solved.foot_tag(index, foot);
    let fall = check(
        format!("floor, from foot {} down to foot {}", tag(high), tag(low)),
        over.ground - under.ground,
        set.solved.tolerances.cut,
    );
    vec![fall]
}

/// Heights, depths and thicknesses that every datum hangs on.
fn layers(set: &Set<'_>, leg: &Leg) -> Vec<Check> {
    let (solved, datums) = (set.solved, &leg.datums);
    let cut = solved.tolerances.cut;
    let mut checks = vec![
        check("counter top over the floor\u{2019}s high point", datums.counter_top, cut),
        check("frame top over the floor\u{2019}s high point", datums.frame_top, cut),
        check("frame, front to back", datums.frame_back - datums.frame_face, cut),
        check("frame, end to end", datums.frame_right - datums.frame_left, cut),
        check("counter, thickness", solved.counter.thickness, cut),
        check("substrate, thickness", solved.substrate.thickness, cut),
        check("counter past the finished face", -datums.counter_front, cut),
    ];
    for (face, word) in
        [(Face::Front, "front"), (Face::Left, "left end"), (Face::Right, "right end"), (Face::Back, "back")]
    {
        let build = leg.build(face);
        if build.board > Length::ZERO {
            checks.push(check(format!("{word}, {} thickness", build.board_name), build.board, cut));
        }
        if let Some(finish) = &build.finish {
            let spread = if finish.spread > Length::ZERO { finish.spread } else { cut };
            checks.push(check(format!("{word}, finish with its bed"), finish.total(), spread));
        }
    }
    checks
}
