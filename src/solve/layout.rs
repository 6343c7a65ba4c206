//! How wide the modules of a leg become, and where everything along it then lies.

use super::fill::{CannotFill, fill};
use super::path::Ends;
use super::{Module, Room};
use crate::findings::Problem;
use crate::parameters::given::{self, BoundKind, ModuleKind, Width};
use crate::units::{Length, Show};

/// The modules of a leg with their places, and how the room was used.
pub struct Layout {
    /// The modules, left to right.
    pub modules: Vec<Module>,
    /// How the site's room was used.
    pub room: Option<Room>,
}

/// How far a bound's face leans towards the run somewhere below counter height: what its gap has to be
/// greater by at the floor, so that the gap is kept at the tightest level.
pub fn lean_in(bound: &given::Bound) -> Length {
    if bound.kind == BoundKind::Open { Length::ZERO } else { bound.lean.max(Length::ZERO) }
}

/// The gap to keep at an end; an open end has none.
pub fn gap(bound: &given::Bound) -> Length {
    if bound.kind == BoundKind::Open { Length::ZERO } else { bound.gap }
}

/// Lays a leg out. The room counts at the tightest level: what the bounds lean in is taken off it. The first
/// module starts at the bare frame's left end, which is the left build-up from the finished left end, or beyond it
/// where the frame runs on into a corner. At a corner the room is measured to where the legs' backs meet
/// (inside) or to where their finished faces meet (outside), so that what it leaves depends on the other leg's depth.
///
/// Errors: when widths that may vary can't be chosen so that the leg fits, by how much and which bind.
pub fn layout(leg: &given::Leg, ends: &Ends, tube: Length, show: Show) -> Result<Layout, Problem> {
    let [left, right] = ends;
    let taken = left.room - left.frame + right.room - right.frame;
    let tight = leg.room.map(|room| room - left.lean - right.lean);
    let widths: Vec<Width> = leg.modules.iter().map(|module| module.width).collect();
    let least: Vec<Length> = leg.modules.iter().map(|module| least_left(module.kind, tube, show)).collect();
    let room_for_modules = tight.map(|tight| tight - taken);
    let chosen = fill(&widths, &least, room_for_modules, show.step())
        .map_err(|why| refusal(leg, why, &least, tight, taken, show))?;
    let needed = taken + chosen.iter().copied().sum();
    let told = Told { room: tight, free: room_for_modules.map(|room| room - chosen.iter().copied().sum()), show };
    let mut at = -left.frame;
    let mut modules = Vec::with_capacity(leg.modules.len());
    let sharers = widths.iter().filter(|width| matches!(width, Width::WhatIsLeft)).count();
    for (module, width) in leg.modules.iter().zip(chosen) {
        let edge = at;
        at += width;
        modules.push(Module {
            id: module.id.clone(),
            name: module.name.clone(),
            kind: module.kind,
            left: edge,
            right: at,
            asked: module.width,
            why: told.why(module.width, width, sharers),
            place: module.place.clone(),
        });
    }
    Ok(Layout { modules, room: tight.map(|given| Room { given, needed }) })
}

/// The least that 'what is left' may come to: two posts side by side for a box, one step for a filler.
pub fn least_left(kind: ModuleKind, tube: Length, show: Show) -> Length {
    match kind {
        ModuleKind::Filler => show.step(),
        ModuleKind::Base | ModuleKind::OpenBay | ModuleKind::Corner => tube * 2,
    }
}

/// What the sentences about chosen widths need to know.
struct Told {
    room: Option<Length>,
    free: Option<Length>,
    show: Show,
}

impl Told {
    /// What was chosen, and why, in a sentence.
    fn why(&self, asked: Width, chosen: Length, sharers: usize) -> String {
        let text = |length| self.show.prose(length);
        match asked {
            Width::Fixed(_) => format!("{}, as given.", text(chosen)),
            Width::Range(least, most) => {
                let range = format!("{}, from {} to {}", text(chosen), text(least), text(most));
                match self.free {
                    None => format!("{range}: the least, since no room is given to grow into."),
                    Some(free) if chosen == most && free > Length::ZERO => {
                        format!("{range}: the greatest; {} of the room stays free.", text(free))
                    }
                    Some(_) if chosen == most => format!("{range}: the greatest."),
                    Some(_) if chosen == least => format!("{range}: the least, since the room is taken."),
                    Some(_) => format!("{range}: its share of what the room leaves to the ranges."),
                }
            }
            Width::WhatIsLeft => {
                let shared = if sharers > 1 { format!(", shared equally by {sharers}") } else { String::new() };
                let room = self.room.map_or_else(String::new, |room| format!(" of {}", text(room)));
                format!("{}: what is left{room} when the others have their width{shared}.", text(chosen))
            }
        }
    }
}

/// Why a leg can't be laid out: by how much, and which widths bind.
fn refusal(
    leg: &given::Leg,
    why: CannotFill,
    least: &[Length],
    tight: Option<Length>,
    ends: Length,
    show: Show,
) -> Problem {
    let place = leg.place.clone();
    let CannotFill::TooLong(by) = why else {
        let who = names(leg.modules.iter().filter(|m| m.width == Width::WhatIsLeft).map(|m| m.id.clone()));
        return Problem {
            message: format!("module {who} is to take what is left, but leg {} has no room given", leg.id),
            instead: format!("give leg {} its room, or module {who} a width", leg.id),
            place,
        };
    };
    let binding = names(leg.modules.iter().zip(least).map(|(module, least)| match module.width {
        Width::Fixed(width) => format!("{} ({}, fixed)", module.id, show.plain(width)),
        Width::Range(least, _) => format!("{} (at least {})", module.id, show.plain(least)),
        Width::WhatIsLeft => format!("{} (what is left, at least {})", module.id, show.plain(*least)),
    }));
    let given = tight.unwrap_or(Length::ZERO);
    let corner = [&leg.left, &leg.right].iter().any(|bound| bound.kind == BoundKind::Leg);
    let what = if corner { "gaps, build-ups and corners" } else { "gaps and build-ups" };
    let between = leg.own.surveyed.as_ref().and_then(|room| room.between.as_ref());
    let from = between.map_or_else(String::new, |[left, right]| format!(", as surveyed from {left} to {right}"));
    let more = if between.is_some() { "survey its walls again" } else { "give more room" };
    Problem {
        message: format!(
            "leg {} is {} too long for its room: it has {}{from}, and needs at least {}. What binds: {binding}, and {} of \
             {what} at the ends",
            leg.id,
            show.plain(by),
            show.plain(given),
            show.plain(given + by),
            show.plain(ends),
        ),
        instead: format!("take {} off the widths that bind, or {more}", show.plain(by)),
        place,
    }
}

/// A list as a person says it, cut short when long.
fn names(all: impl Iterator<Item = String>) -> String {
    const SHOWN: usize = 12;
    let all: Vec<String> = all.collect();
    let mut text = all.iter().take(SHOWN).cloned().collect::<Vec<_>>().join(", ");
    if all.len() > SHOWN {
        text.push_str(&format!(" and {} more", all.len() - SHOWN));
    }
    text
}
