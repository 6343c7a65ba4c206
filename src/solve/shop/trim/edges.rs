//! How far the trim runs along a face, and how it ends there.

use super::Stretch;
use crate::solve::{Bound, BoundKind, Corner, Face, JointKind, Leg, Solved, Trim, TrimCorner, TrimEnd};
use crate::units::Length;

/// The trim of a face from end to end; `None` where the face has none.
pub fn whole(solved: &Solved, trim: &Trim, at: usize, face: Face) -> Option<Stretch> {
    let leg = solved.legs.get(at)?;
    if !has_trim(leg, trim, face) {
        return None;
    }
    let ends = match face {
        Face::Front | Face::Back => [long_end(solved, trim, at, face, 0), long_end(solved, trim, at, face, 1)],
        Face::Left | Face::Right => [short_end(leg, trim, Face::Front), short_end(leg, trim, Face::Back)],
    };
    let stretch = Stretch { from: ends[0].0, to: ends[1].0, ends: [ends[0].1, ends[1].1] };
    (stretch.to > stretch.from).then_some(stretch)
}

/// The front, ends and backs that nothing stands against, but the front of a leg that stands behind another.
fn has_trim(leg: &Leg, trim: &Trim, face: Face) -> bool {
    let free = match face {
        Face::Front => leg.behind.is_none(),
        Face::Left => leg.left.is_open(),
        Face::Right => leg.right.is_open(),
        Face::Back => leg.back.is_open(),
    };
    free && trim.faces.as_ref().is_none_or(|faces| faces.contains(&face))
}

/// Where the trim lies before a long face: its back on the board, and the side that is seen, as depths behind the
/// finished face.
fn depths(leg: &Leg, trim: &Trim, face: Face) -> (Length, Length) {
    let d = &leg.datums;
    if face == Face::Front {
        (d.board_face, d.board_face - trim.thickness)
    } else {
        (d.board_back, d.board_back + trim.thickness)
    }
}

/// An end of the trim along a long face: side 0 left, 1 right.
fn long_end(solved: &Solved, trim: &Trim, at: usize, face: Face, side: usize) -> (Length, TrimEnd) {
    let Some(leg) = solved.legs.get(at) else { return (Length::ZERO, TrimEnd::Square) };
    let (d, out) = (&leg.datums, if side == 0 { -1 } else { 1 });
    let (bound, board) = if side == 0 { (&leg.left, d.board_left) } else { (&leg.right, d.board_right) };
    let proud = board + trim.thickness * out;
    match bound.kind {
        BoundKind::Open => {
            let end = if side == 0 { Face::Left } else { Face::Right };
            match (has_trim(leg, trim, end), trim.corners) {
                (false, _) => (board, TrimEnd::Square),
                (true, TrimCorner::Mitred) => (proud, TrimEnd::Mitre(std::f64::consts::FRAC_PI_4)),
                // The long faces run past, the ends butt against their backs.
                (true, TrimCorner::Butted) => (proud, TrimEnd::Past),
            }
        }
        BoundKind::Leg => match corner(solved, at, side) {
            Some((other, corner)) => at_corner(solved, trim, (at, other), face, side, corner),
            None => (if side == 0 { Length::ZERO } else { d.finished_right }, TrimEnd::Joint(true)),
        },
        BoundKind::Wall | BoundKind::Pier | BoundKind::Post => {
            let wall = stop(bound, trim, out);
            // It runs on to a wall that is near; a far one leaves the end to be seen.
            if (wall - board) * out <= NEAR { (wall, TrimEnd::AtBound) } else { (board, TrimEnd::Square) }
        }
    }
}

/// A gap off a bound's face; `out` is the way towards it, 1 or -1.
fn stop(bound: &Bound, trim: &Trim, out: i64) -> Length {
    // A face that leans in stands farther off at the floor, where the trim is.
    bound.at - trim.notch_gap * out
}

/// The leg that an end meets at a corner.
fn corner(solved: &Solved, at: usize, side: usize) -> Option<(usize, Corner)> {
    solved.joints.iter().find_map(|joint| match joint.kind {
        JointKind::Corner(corner) if side == 1 && joint.left == at => Some((joint.right, corner)),
        JointKind::Corner(corner) if side == 0 && joint.right == at => Some((joint.left, corner)),
        _ => None,
    })
}

/// An end at a corner. Where the trim sees an outside corner it is mitred or runs past; where it sees an inside one the left leg's
/// runs into the corner and the right leg's butts against it.
fn at_corner(
    solved: &Solved,
    trim: &Trim,
    (at, other): (usize, usize),
    face: Face,
    side: usize,
    corner: Corner,
) -> (Length, TrimEnd) {
    let (Some(leg), Some(next)) = (solved.legs.get(at), solved.legs.get(other)) else {
        return (Length::ZERO, TrimEnd::Square);
    };
    let ((_, own), (board, seen)) = (depths(leg, trim, face), depths(next, trim, face));
    let (sin, cos) = corner.turn.sin_cos();
    if sin.abs() < 1e-6 {
        return (if side == 0 { Length::ZERO } else { leg.datums.finished_right }, TrimEnd::Joint(true));
    }
    // Where the line `own` behind this leg's finished face meets the one `depth` behind the other's: from this leg's
    // end for the left leg, on the right leg's own u for the right one.
    let meets = |depth: Length| match side {
        1 => leg.datums.finished_right + Length::from_mm((depth.mm() - own.mm() * cos) / sin),
        _ => Length::from_mm((own.mm() * cos - depth.mm()) / sin),
    };
    let inside = (corner.turn > 0.0) == (face == Face::Front);
    if inside {
        // To the board behind the other's trim, or to that trim's seen side.
        return if side == 1 { (meets(board), TrimEnd::Past) } else { (meets(seen), TrimEnd::Butt) };
    }
    match (trim.corners, side) {
        (TrimCorner::Mitred, _) => (meets(seen), TrimEnd::Mitre(corner.turn.abs() / 2.0)),
        (TrimCorner::Butted, 1) => (meets(seen), TrimEnd::Past),
        (TrimCorner::Butted, _) => (meets(board), TrimEnd::Butt),
    }
}

/// An end of the trim along a leg's end: at its front, or at its back.
fn short_end(leg: &Leg, trim: &Trim, towards: Face) -> (Length, TrimEnd) {
    let d = &leg.datums;
    let (board, frame, out) = match towards {
        Face::Front => (d.board_face, d.frame_face, -1),
        _ => (d.board_back, d.frame_back, 1),
    };
    match (has_trim(leg, trim, towards), trim.corners) {
        (true, TrimCorner::Mitred) => (board + trim.thickness * out, TrimEnd::Mitre(std::f64::consts::FRAC_PI_4)),
        (true, TrimCorner::Butted) => (board, TrimEnd::Butt),
        (false, _) => match towards {
            Face::Back if matches!(leg.back.kind, BoundKind::Wall | BoundKind::Pier | BoundKind::Post) => {
                let wall = stop(&leg.back, trim, 1);
                if wall - board <= NEAR { (wall, TrimEnd::AtBound) } else { (board, TrimEnd::Square) }
            }
            Face::Back if leg.back.kind == BoundKind::Leg => (frame, TrimEnd::Joint(true)),
            Face::Front if leg.behind.is_some() => (frame, TrimEnd::Joint(true)),
            _ => (board, TrimEnd::Square),
        },
    }
}

/// A wall behind a run no farther off than this is run up to: 2 in, common practice.
const NEAR: Length = Length::from_sixty_fourths(2 * 64);
