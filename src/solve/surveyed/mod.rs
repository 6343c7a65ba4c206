//! Rooms that are taken from the survey: the clear distance along a leg between what was surveyed at its ends.
//!
//! It is taken at the least over the leg's whole depth, from the counter's front to its back, so that a wall out of
//! square is respected where it stands nearest. A survey is a plan: what a wall leans is taken off afterwards, as from a
//! room that was written. Walls, posts, doors' ways and steps in the floor all bound a leg whose depth they reach into.

mod reach;

use super::DefaultUsed;
use super::depths::Depths;
use super::layout::{gap, layout, lean_in, least_left};
use super::path::{self, Chain, Ends, Turn};
use crate::findings::Problem;
use crate::geometry::{LegPoint, Placement};
use crate::parameters::given::{self, BoundKind, Given, JointKind, Notch, NotchCut, Survey, Width};
use crate::units::{Length, Show, System};
use reach::{GRAZE, Reach, Strip, reaches};

/// So little past a step of rounding is rounding of the arithmetic, mm.
const NOTHING: f64 = 1e-3;
/// What rooms are rounded down to.
const ROUNDED: Length = Length::from_sixty_fourths(1);
/// The same in millimetres.
const ROUNDED_METRIC: Length = Length::from_nm(500_000);

/// A job whose surveyed rooms are lengths, with what they lie between. A leg that has a wall at its left end is slid
/// along its face, so that it keeps its gap to that wall.
///
/// Errors: an end that nothing surveyed bounds, a wall that crosses a leg, a leg before it that can't be laid out.
pub fn rooms(given: &Given, chains: &[Chain], depths: &[Depths], ends: &[Ends]) -> Result<Given, Vec<Problem>> {
    let mut ready = given.clone();
    let mut problems = Vec::new();
    // A ledge has the room of the leg that it stands behind.
    let wanted = |leg: usize| given.legs[leg].own.surveyed.is_some() && !given.legs[leg].own.ledge;
    for chain in chains.iter().filter(|chain| chain.legs.iter().any(|&leg| wanted(leg))) {
        let mut placement = path::written(&given.legs[chain.legs[0]]);
        for (at, &leg) in chain.legs.iter().enumerate() {
            if wanted(leg) {
                match found(&ready, leg, placement, depths, &ends[leg]) {
                    Ok(room) => {
                        placement.origin = placement.to_plan(LegPoint::new(room.slid, 0.0));
                        state(&mut ready, leg, &room, placement);
                    }
                    Err(problem) => {
                        problems.push(problem);
                        break;
                    }
                }
            }
            if !chain.legs[at + 1..].iter().any(|&leg| wanted(leg)) {
                break;
            }
            let show = Show::new(given.job.units);
            match layout(&ready.legs[leg], &ends[leg], given.frame.tube, show) {
                Ok(layout) => {
                    let right = layout.modules.last().map_or(Length::ZERO, |module| module.right) - ends[leg][1].frame;
                    placement = path::next(placement, right, &given.joints[chain.joints[at]].kind);
                }
                Err(problem) => {
                    problems.push(problem);
                    break;
                }
            }
        }
    }
    if problems.is_empty() { Ok(ready) } else { Err(problems) }
}

/// A room that was found.
struct Found {
    room: Length,
    between: [String; 2],
    /// How far the leg slides to the right to keep its gap to what stands at its left, mm.
    slid: f64,
}

/// Writes a found room into the job, and states it.
fn state(ready: &mut Given, leg: usize, found: &Found, placement: Placement) {
    let show = Show::new(ready.job.units);
    let at = &mut ready.legs[leg];
    at.room = Some(found.room);
    at.origin = (placement.origin.x, placement.origin.y);
    if let Some(surveyed) = &mut at.own.surveyed {
        surveyed.between = Some(found.between.clone());
    }
    for ledge in ready.legs.iter_mut().filter(|one| one.own.ledge && one.own.behind == Some(leg)) {
        ledge.room = Some(found.room);
        if let Some(surveyed) = &mut ledge.own.surveyed {
            surveyed.between = Some(found.between.clone());
        }
    }
    let at = &ready.legs[leg];
    let origin = match ready.job.units {
        System::Millimetres => "the survey: the least over its depth, rounded down to 1/2 mm",
        System::Inches | System::Both => "the survey: the least over its depth, rounded down to 1/64 in",
    };
    let [left, right] = &found.between;
    let name = format!("room of leg {}", at.id);
    let ends = [("from", left), ("to", right)];
    let ends = ends.map(|(word, end)| DefaultUsed {
        name: format!("{name}, {word}"),
        value: end.clone(),
        origin: "the survey",
    });
    ready.defaults.push(DefaultUsed { name, value: show.plain(found.room), origin });
    ready.defaults.extend(ends);
    if found.slid.abs() > GRAZE {
        let by = show.plain(Length::from_mm(found.slid.abs()));
        let way = if found.slid > 0.0 { "right" } else { "left" };
        let name = format!("leg {}, finished left end", ready.legs[leg].id);
        let value = format!("{by} to the {way} of `at`");
        ready.defaults.push(DefaultUsed { name, value, origin: "the survey: so it keeps its gap at the left" });
    }
}

/// Finds the room of one leg.
fn found(given: &Given, index: usize, placement: Placement, depths: &[Depths], ends: &Ends) -> Result<Found, Problem> {
    let (leg, depth) = (&given.legs[index], &depths[index]);
    let show = Show::new(given.job.units);
    let place = leg.own.surveyed.as_ref().and_then(|room| room.place.clone()).or_else(|| leg.place.clone());
    let refuse =
        |message: String, instead: &str| Problem { message, instead: instead.to_owned(), place: place.clone() };
    let id = &leg.id;
    if leg.own.behind.is_some() {
        let message =
            format!("leg {id} stands behind another, which places it: its room can't be taken from the survey");
        return Err(refuse(message, "write its room as a length"));
    }
    let corner = corner(given, index);
    let met = given.joints.iter().find(|joint| joint.left == index);
    if let (Some(joint), None) = (met, corner) {
        let next = &given.legs[joint.right].id;
        let message = format!("leg {id} meets leg {next} at its right end, where nothing that was surveyed bounds it");
        return Err(refuse(message, "write its room as a length"));
    }
    if leg.right.kind == BoundKind::Open {
        let message = format!("the room of leg {id} is to be taken from the survey, but its right end is open");
        let instead = "write what stands there, as `right: wall(gap: \"1/2 in\")`, or its room as a length";
        return Err(refuse(message, instead));
    }
    // At a corner that the cook stands in, the leg's end is the other leg's back, at the angle that was written.
    let lean = corner.map_or(0.0, |turn| -turn.cos / turn.sin);
    let front = depth.counter_front.min(Length::ZERO).mm();
    let back = depth.finished_back.max(depth.counter_back).mm();
    let straight = Strip { front, back, lean: 0.0 };
    let survey = &unnotched(given, index);
    let lefts = reaches(survey, placement, &straight);
    let rights = reaches(survey, placement, &Strip { lean, ..straight });
    let middle = middle(given, leg, ends);
    let bounded = !matches!(leg.left.kind, BoundKind::Open | BoundKind::Leg);
    if let Some(across) = lefts.iter().find(|one| one.least < middle - GRAZE && one.most > middle + GRAZE) {
        let message =
            format!("{} crosses leg {id} as it was surveyed, so the survey gives no room for it", across.name);
        return Err(refuse(message, "move or turn the leg with `at`, or check the survey"));
    }
    let left: Option<&Reach> =
        lefts.iter().filter(|one| one.most <= middle + GRAZE).max_by(|a, b| a.most.total_cmp(&b.most));
    let right: Option<&Reach> =
        rights.iter().filter(|one| one.least > middle).min_by(|a, b| a.least.total_cmp(&b.least));
    let deep = format!("over its depth of {}", show.plain(Length::from_mm(back - front)));
    let instead = "survey what stands there as far as the leg is deep, place the leg between its walls with `at`, or write \
                   its room as a length";
    let (left, right) = match (left, right) {
        (None, None) => {
            return Err(refuse(format!("nothing that was surveyed bounds leg {id} {deep}"), instead));
        }
        (Some(left), None) => {
            let message =
                format!("{} bounds leg {id} at its left, but nothing that was surveyed at its right {deep}", left.name);
            return Err(refuse(message, instead));
        }
        (None, Some(right)) if bounded => {
            let message = format!(
                "{} bounds leg {id} at its right, but nothing that was surveyed at its left {deep}",
                right.name
            );
            return Err(refuse(message, instead));
        }
        (left, Some(right)) => (left.filter(|_| bounded), right),
    };
    let (from, name) = match (left, leg.left.kind) {
        (Some(left), _) => (left.most, left.name.clone()),
        (None, BoundKind::Leg) => (-ends[0].room.mm(), "where the walls meet".to_owned()),
        (None, _) => (0.0, "its finished left end".to_owned()),
    };
    let to = right.least + lean * depth.back_at.mm();
    let slid = left.map_or(0.0, |left| left.most + (gap(&leg.left) + lean_in(&leg.left)).mm());
    Ok(Found { room: down(to - from, given.job.units), between: [name, right.name.clone()], slid })
}

/// The turn of the inside corner at a leg's right end.
fn corner(given: &Given, leg: usize) -> Option<Turn> {
    given.joints.iter().filter(|joint| joint.left == leg).find_map(|joint| match &joint.kind {
        JointKind::Corner(corner) if corner.turn > 0.0 => Some(Turn::of(corner.turn)),
        _ => None,
    })
}

/// A place along a leg that is surely in it: the middle of its modules at their least, mm along u.
fn middle(given: &Given, leg: &given::Leg, ends: &Ends) -> f64 {
    let show = Show::new(given.job.units);
    let least = |module: &given::Module| match module.width {
        Width::Fixed(width) | Width::Range(width, _) => width,
        Width::WhatIsLeft => least_left(module.kind, given.frame.tube, show),
    };
    (leg.modules.iter().map(least).sum::<Length>().half() - ends[0].frame).mm()
}

/// A room rounded down to what a tape tells.
fn down(room: f64, units: System) -> Length {
    let step = if units == System::Millimetres { ROUNDED_METRIC } else { ROUNDED };
    step * ((room + NOTHING) / step.mm()).floor() as i64
}

/// The survey without the posts that a leg's counter is notched round.
fn unnotched(given: &Given, leg: usize) -> Survey {
    let notched = |post: usize| {
        let round = |notch: &Notch| matches!(notch.cut, NotchCut::Post { post: other, .. } if other == post);
        given.counter.notches.iter().any(|notch| notch.leg == leg && round(notch))
    };
    let mut survey = given.site.survey.clone();
    let mut index = 0..;
    survey.posts.retain(|_| !index.next().is_some_and(notched));
    survey
}
