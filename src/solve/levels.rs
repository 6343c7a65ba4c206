//! Where every face, edge and level of a leg lies.

use super::layout::{Layout, gap, lean_in};
use super::{Bound, BoundKind, Datums};
use crate::findings::Problem;
use crate::parameters::given::{self, Given, Height};
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
pub fn levels(given: &Given, leg: &given::Leg, layout: &Layout) -> Result<Levels, Vec<Problem>> {
    let faces = &leg.faces;
    let (first, last) = (layout.modules.first(), layout.modules.last());
    let frame_left = first.map_or(faces.left.total(), |module| module.left);
    let frame_right = last.map_or(frame_left, |module| module.right);
    let finished_right = frame_right + faces.right.total();
    let frame_face = faces.front.total();
    let frame_back = frame_face + given.frame.depth;
    let finished_back = frame_back + faces.back.total();

    let left = bound(&leg.left, -(gap(&leg.left) + lean_in(&leg.left)), 1);
    let right = bound(&leg.right, finished_right + gap(&leg.right) + lean_in(&leg.right), -1);
    let back = bound(&leg.back, finished_back + gap(&leg.back) + lean_in(&leg.back), -1);

    let counter = &given.counter;
    let (over_left, over_right) = (counter.overhang_left, counter.overhang_right);
    let joint = counter.wall_joint;
    let counter_left = if left.is_open() { -over_left } else { left.at_counter + joint };
    let counter_right = if right.is_open() { finished_right + over_right } else { right.at_counter - joint };
    let counter_back = if back.is_open() { finished_back + counter.overhang_back } else { back.at_counter - joint };

    let stack = counter.thickness + given.substrate.thickness;
    let frame_top = match given.height {
        Height::CounterTop(top) => top - stack,
        Height::FrameTop(top) => top,
    };
    let frame_bottom = given.frame.height.map_or(given.frame.feet.shortest, |height| frame_top - height);
    let datums = Datums {
        board_left: faces.left.finish_thickness(),
        frame_left,
        frame_right,
        board_right: finished_right - faces.right.finish_thickness(),
        finished_right,
        counter_left,
        counter_right,
        counter_front: -counter.overhang_front,
        board_face: faces.front.finish_thickness(),
        frame_face,
        frame_back,
        board_back: frame_back + faces.back.board,
        finished_back,
        counter_back,
        frame_bottom,
        frame_top,
        substrate_top: frame_top + given.substrate.thickness,
        counter_top: frame_top + stack,
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
    if long < tube || deep < tube {
        say(
            format!("leg {} has no counter: it would be {} by {}", leg.id, show.plain(long), show.plain(deep)),
            "check the overhangs, and how far the walls lean in",
        );
    }
    problems
}
