//! Where every face, edge and level of a leg lies.

use super::depths::Depths;
use super::layout::{Layout, gap, lean_in};
use super::path::Ends;
use super::{Bound, BoundKind, Datums};
use crate::findings::Problem;
use crate::parameters::given::{self, Given};
use crate::units::{Length, Show};

/// What bounds a leg, located, and every datum of it.
pub struct Levels {
    /// The datums.
    pub datums: Datums,
    /// What bounds it on the left, on the right, behind.
    pub bounds: [Bound; 3],
}

/// Locates the datums and the bounds of a leg that has been laid out.
///
/// A bound's face keeps its gap to the outermost layer of the run at the level where it stands nearest, so
/// a face that leans in stands that much farther off at the floor. At a bound the counter ends a joint off
/// the face at counter height; at an open end it hangs over the finished face.
pub fn levels(
    given: &Given,
    leg: &given::Leg,
    depths: &Depths,
    ends: &Ends,
    layout: &Layout,
) -> Result<Levels, Vec<Problem>> {
    let frame_left = layout.modules.first().map_or(-ends[0].frame, |module| module.left);
    let frame_right = layout.modules.last().map_or(frame_left, |module| module.right);
    let finished_right = frame_right - ends[1].frame;

    let left = bound(&leg.left, -(gap(&leg.left) + lean_in(&leg.left)), 1);
    let right = bound(&leg.right, finished_right + gap(&leg.right) + lean_in(&leg.right), -1);
    let back = bound(&leg.back, depths.back_at, -1);

    let counter = &given.counter;
    let over_left = leg.own.overhang_left.unwrap_or(counter.overhang_left);
    let over_right = leg.own.overhang_right.unwrap_or(counter.overhang_right);
    let joint = counter.wall_joint;
    let counter_left = match ends[0].counter {
        Some(beyond) => -beyond,
        None if left.is_open() => -over_left,
        None => left.at_counter + joint,
    };
    let counter_right = match ends[1].counter {
        Some(beyond) => finished_right + beyond,
        None if right.is_open() => finished_right + over_right,
        None => right.at_counter - joint,
    };
    let datums = Datums {
        board_left: -ends[0].board,
        frame_left,
        frame_right,
        board_right: finished_right + ends[1].board,
        finished_right,
        counter_left,
        counter_right,
        counter_front: depths.counter_front,
        board_face: depths.board_face,
        frame_face: depths.frame_face,
        frame_back: depths.frame_back,
        board_back: depths.board_back,
        finished_back: depths.finished_back,
        counter_back: depths.counter_back,
        frame_bottom: depths.frame_bottom,
        frame_top: depths.frame_top,
        substrate_top: depths.substrate_top,
        counter_top: depths.counter_top,
    };
    let problems = impossible(&datums, leg, given.frame.tube, Show::new(given.job.units));
    if problems.is_empty() { Ok(Levels { datums, bounds: [left, right, back] }) } else { Err(problems) }
}

/// A bound with its face at `at`, `inward` being the direction (+1 or -1) in which the run lies.
fn bound(given: &given::Bound, at: Length, inward: i64) -> Bound {
    let lean = if given.kind == BoundKind::Open { Length::ZERO } else { given.lean * inward };
    Bound {
        kind: given.kind,
        name: given.name.clone(),
        at,
        at_counter: at + lean,
        height: given.height,
        width: given.width,
        combustible: given.combustible,
        place: given.place.clone(),
    }
}

/// What leaves no frame or no counter to draw: less than two tubes of height, less than a tube of counter.
fn impossible(datums: &Datums, leg: &given::Leg, tube: Length, show: Show) -> Vec<Problem> {
    let mut problems = Vec::new();
    let mut say = |message: String, instead: &str| {
        problems.push(Problem { message, instead: instead.to_owned(), place: leg.place.clone() });
    };
    if datums.frame_top - datums.frame_bottom < tube * 2 {
        say(
            format!(
                "leg {} has no height for a frame of {} tube: its top is at {}, its bottom at {}",
                leg.id,
                show.plain(tube),
                show.plain(datums.frame_top),
                show.plain(datums.frame_bottom)
            ),
            "raise the counter, or make the counter, the substrate or the feet less high",
        );
    }
    let depth = datums.frame_back - datums.frame_face;
    if depth < tube * 2 {
        say(
            format!(
                "leg {} has a frame {} deep, less than two tubes of {}",
                leg.id,
                show.plain(depth),
                show.plain(tube)
            ),
            "make the frame deeper, or its tube thinner",
        );
    }
    if datums.frame_bottom < Length::ZERO {
        say(
            format!("leg {} has its frame {} below the floor", leg.id, show.plain(-datums.frame_bottom)),
            "make the frame less high, or raise the counter",
        );
    }
    let (long, deep) = (datums.counter_right - datums.counter_left, datums.counter_back - datums.counter_front);
    let corner = [&leg.left, &leg.right].iter().any(|bound| bound.kind == BoundKind::Leg);
    if long < tube && corner {
        say(
            format!("leg {} is too short for what it meets: {} of its counter would be left", leg.id, show.plain(long)),
            "make its modules longer than the depth of the leg that it meets, or let the other leg run through",
        );
    } else if long < tube || deep < tube {
        say(
            format!("leg {} has no counter: it would be {} by {}", leg.id, show.plain(long), show.plain(deep)),
            "check the overhangs, and how far the walls lean in",
        );
    }
    problems
}
