//! How pieces of trim lie and end, in words.

use crate::solve::{Datum, Face, Leg, TrimEnd, TrimPiece};
use crate::units::{Length, Show};

/// Seen from outside, places run to the left on the back and on the left end.
fn mirrored(piece: &TrimPiece) -> bool {
    matches!(piece.face, Face::Back | Face::Left)
}

/// A place along a piece from its left end as it is seen.
pub fn seen(piece: &TrimPiece, at: Length) -> Length {
    if mirrored(piece) { piece.to - at } else { at - piece.from }
}

/// A stretch along a piece as it is seen.
pub fn seen_span(piece: &TrimPiece, from: Length, to: Length) -> (Length, Length) {
    let (a, b) = (seen(piece, from), seen(piece, to));
    (a.min(b), a.max(b))
}

/// Its ends at the left and at the right as it is seen.
pub fn ends(piece: &TrimPiece) -> [TrimEnd; 2] {
    let [low, high] = piece.ends;
    if mirrored(piece) { [high, low] } else { [low, high] }
}

/// The face that a piece runs along.
pub const fn face(face: Face) -> &'static str {
    match face {
        Face::Front => "front",
        Face::Left => "left end",
        Face::Right => "right end",
        Face::Back => "back",
    }
}

/// Where a piece's left end as it is seen lies, from the finished face there.
pub fn begins(leg: &Leg, piece: &TrimPiece, show: Show) -> String {
    let d = &leg.datums;
    let (off, datum) = match piece.face {
        Face::Front => (piece.from, Datum::FinishedLeftEnd),
        Face::Right => (piece.from, Datum::FinishedFace),
        Face::Back => (d.finished_right - piece.to, Datum::FinishedRightEnd),
        Face::Left => (d.finished_back - piece.to, Datum::FinishedBack),
    };
    match off {
        Length::ZERO => format!("at the {}", datum.words()),
        inside if inside > Length::ZERO => format!("{} from the {}", show.prose(inside), datum.words()),
        outside => format!("{} past the {}", show.prose(-outside), datum.words()),
    }
}

/// How an end is cut, in a word or two.
pub fn short(end: TrimEnd) -> String {
    match end {
        TrimEnd::Square => "square".to_owned(),
        TrimEnd::AtBound => "gap".to_owned(),
        TrimEnd::Butt => "butts".to_owned(),
        TrimEnd::Past => "runs past".to_owned(),
        TrimEnd::Mitre(angle) => {
            let degrees = (angle.to_degrees() * 10.0).round() / 10.0;
            format!("mitre {degrees}\u{b0}")
        }
        TrimEnd::Joint(_) => "joint".to_owned(),
    }
}
