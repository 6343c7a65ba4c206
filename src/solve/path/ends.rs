//! What ends a leg on either side, and how far beyond its finished end each part of it reaches.

use super::super::depths::Depths;
use super::super::layout::{gap, lean_in};
use super::Turn;
use crate::findings::Problem;
use crate::parameters::given::{self, Bound, BoundKind, Build, Corner, Given, JointKind, Through};
use crate::units::Length;

/// How far beyond the finished end each part reaches; negative where it stays back.
#[derive(Clone, Debug)]
pub struct End {
    /// The bare frame.
    pub frame: Length,
    /// The front board's outside.
    pub board: Length,
    /// Where the room given for the leg is measured to.
    pub room: Length,
    /// What of the room a leaning wall takes.
    pub lean: Length,
    /// The counter's front edge; `None` where an overhang or a wall decides.
    pub counter: Option<Length>,
    /// Angle of the board's end edge from square, radians: positive leaves the outside face longer.
    pub bevel: f64,
    /// The level below which the end board is not seen, since a lower leg stands against it.
    pub seen_from: Option<usize>,
}

/// The two ends of a leg, left and right.
pub type Ends = [End; 2];

/// A job with what follows from how its legs meet: what bounds an end that meets another leg, and what covers it.
pub fn prepared(given: &Given) -> Given {
    let mut ready = given.clone();
    let bare = || Build { board: Length::ZERO, board_name: String::new(), finish: None, carries: None, joints: None };
    let leg_bound = |other: &given::Leg| Bound {
        kind: BoundKind::Leg,
        name: format!("leg {}", other.id),
        gap: Length::ZERO,
        lean: Length::ZERO,
        height: top(given, other),
        combustible: Some(false),
        width: Length::ZERO,
        place: other.place.clone(),
    };
    for joint in &given.joints {
        let (left, right) = (&given.legs[joint.left], &given.legs[joint.right]);
        let (mut of_left, mut of_right) = (Some(bare()), Some(bare()));
        match &joint.kind {
            JointKind::Corner(corner) => {
                let inside = corner.turn > 0.0;
                match corner.through {
                    Through::Left if inside => of_left = Some(right.faces.back.clone()),
                    Through::Right if inside => of_right = Some(left.faces.back.clone()),
                    _ => {}
                }
            }
            JointKind::Step if top(given, left) >= top(given, right) => of_left = None,
            JointKind::Step => of_right = None,
        }
        if let Some(build) = of_left {
            ready.legs[joint.left].right = leg_bound(right);
            ready.legs[joint.left].faces.right = build;
        } else {
            ready.legs[joint.left].right = Bound { kind: BoundKind::Open, ..leg_bound(right) };
        }
        if let Some(build) = of_right {
            ready.legs[joint.right].left = leg_bound(left);
            ready.legs[joint.right].faces.left = build;
        } else {
            ready.legs[joint.right].left = Bound { kind: BoundKind::Open, ..leg_bound(left) };
        }
    }
    for leg in &given.legs {
        if let Some(front) = leg.own.behind {
            ready.legs[front].back = leg_bound(leg);
            ready.legs[front].faces.back = bare();
        }
    }
    ready
}

/// The level that a leg's height gives, for comparing.
fn top(given: &Given, leg: &given::Leg) -> Length {
    match leg.own.height.unwrap_or(given.height) {
        given::Height::CounterTop(top) => top,
        given::Height::FrameTop(top) => top + given.substrate.thickness + given.counter.thickness,
    }
}

/// The ends of every leg of a prepared job. `depths` go with the legs.
///
/// Errors: a step without a difference in height.
pub fn ends(given: &Given, depths: &[Depths]) -> Result<Vec<Ends>, Vec<Problem>> {
    let mut problems = Vec::new();
    let mut ends: Vec<Ends> =
        given.legs.iter().map(|leg| [free(&leg.left, &leg.faces.left), free(&leg.right, &leg.faces.right)]).collect();
    for joint in &given.joints {
        let (left, right) = (joint.left, joint.right);
        match &joint.kind {
            JointKind::Corner(corner) => {
                let (a, b) = (&depths[left], &depths[right]);
                let leg = |index: usize| &given.legs[index];
                ends[left][1] = at_corner(corner, corner.through == Through::Left, a, b, leg(left), leg(right));
                ends[right][0] = at_corner(corner, corner.through == Through::Right, b, a, leg(right), leg(left));
            }
            JointKind::Step => {
                let (a, b) = (depths[left].counter_top, depths[right].counter_top);
                if a == b {
                    problems.push(Problem {
                        message: format!(
                            "legs {} and {} meet in a step, but their counters are equally high",
                            given.legs[left].id, given.legs[right].id
                        ),
                        instead: "give one of them a `height` of its own, or write them as one leg".to_owned(),
                        place: joint.place.clone(),
                    });
                }
                let (high, low) = if a >= b { ((left, 1), (right, 0)) } else { ((right, 0), (left, 1)) };
                let faces = &given.legs[high.0].faces;
                let build = if high.1 == 0 { &faces.left } else { &faces.right };
                ends[high.0][high.1].seen_from = Some(low.0);
                ends[low.0][low.1] = End {
                    frame: build.total(),
                    board: build.finish_thickness(),
                    counter: Some(-given.counter.wall_joint),
                    ..free(&Bound { kind: BoundKind::Open, ..given.legs[low.0].left.clone() }, build)
                };
            }
        }
    }
    if problems.is_empty() { Ok(ends) } else { Err(problems) }
}

/// An end that meets no other leg.
fn free(bound: &Bound, build: &Build) -> End {
    End {
        frame: -build.total(),
        board: -build.finish_thickness(),
        room: gap(bound),
        lean: lean_in(bound),
        counter: None,
        bevel: 0.0,
        seen_from: None,
    }
}

/// An end at a corner.
fn at_corner(
    corner: &Corner,
    runs_through: bool,
    own: &Depths,
    other: &Depths,
    leg: &given::Leg,
    across: &given::Leg,
) -> End {
    let turn = Turn::of(corner.turn);
    let inside = turn.is_inside();
    let nearer = |plane: Length| turn.beyond(own.frame_face, plane).min(turn.beyond(own.frame_back, plane));
    let frame = match (corner.through, runs_through, inside) {
        (Through::Neither, ..) => turn.halving(own.frame_face).min(turn.halving(own.frame_back)),
        (_, true, true) | (_, false, false) => nearer(other.frame_back),
        _ => nearer(other.frame_face),
    };
    let board = match (corner.through, runs_through, inside) {
        (Through::Neither, ..) | (_, false, true) | (_, true, false) => other.board_face,
        _ => other.frame_face,
    };
    // Walls stand behind; where there is none, the finished back is what a tape is held to.
    let wall = |depths: &Depths, leg: &given::Leg| depths.finished_back + gap(&leg.back) + lean_in(&leg.back);
    let room = if inside { turn.beyond(wall(own, leg), wall(other, across)) } else { Length::ZERO };
    let square = std::f64::consts::FRAC_PI_2 * turn.sin.signum();
    // Where neither frame runs through, the boards are mitred: each edge lies in the plane that halves the corner.
    let bevel = match corner.through {
        Through::Neither => -turn.angle / 2.0,
        _ => square - turn.angle,
    };
    End {
        frame,
        board: turn.beyond(own.board_face, board),
        room,
        lean: Length::ZERO,
        counter: Some(turn.beyond(own.counter_front, other.counter_front)),
        bevel,
        seen_from: None,
    }
}
