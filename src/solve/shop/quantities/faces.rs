//! The run's faces as they are covered: areas, joints between boards, corners.

use crate::geometry::Region;
use crate::solve::{Build, Extent, Face, JointKind, Leg, SheetPart, Shop, Solved, takeoff};
use crate::units::{Exact, Length};

/// The faces of a leg with their words.
pub const FACES: [(Face, &str); 4] =
    [(Face::Front, "front"), (Face::Left, "left end"), (Face::Right, "right end"), (Face::Back, "back")];

/// Boards that lie no farther apart than this meet in a joint: half an inch.
const JOINT: Length = Length::from_sixty_fourths(32);

/// One covered face.
pub struct Faced<'a> {
    /// Its leg, by index.
    pub leg: usize,
    /// Which.
    pub face: Face,
    /// In words, with its leg where there are several.
    pub word: String,
    /// Board and finish.
    pub build: &'a Build,
    /// Its sheets: box and outline in the face's plane.
    pub sheets: Vec<(Extent, &'a Region)>,
    /// Area of the boards.
    pub area: Exact,
}

/// Every boarded face of a run.
pub fn faced<'a>(solved: &'a Solved, shop: &'a Shop) -> Vec<Faced<'a>> {
    let mut all = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        for (face, word) in FACES {
            let sheets = sheets(leg, shop, index, face);
            if sheets.is_empty() {
                continue;
            }
            let area = sheets.iter().map(|(_, region)| takeoff::area(region)).sum();
            let word = if solved.legs.len() > 1 { format!("{word}, {}", leg.id) } else { word.to_owned() };
            all.push(Faced { leg: index, face, word, build: leg.build(face), sheets, area });
        }
    }
    all
}

/// The pieces of a face where they are worked out, else its boards.
fn sheets<'a>(leg: &'a Leg, shop: &'a Shop, index: usize, face: Face) -> Vec<(Extent, &'a Region)> {
    let own = |part: SheetPart| part == SheetPart::Face(face);
    let pieces: Vec<(Extent, &Region)> = shop
        .pieces
        .iter()
        .filter(|piece| piece.leg == index && own(piece.part))
        .map(|piece| (piece.extent, &piece.region))
        .collect();
    if !pieces.is_empty() {
        return pieces;
    }
    leg.boards.iter().filter(|board| board.face == face).map(|board| (board.extent, &board.region)).collect()
}

/// Length of the joints between the sheets of one face.
pub fn joints(faced: &Faced) -> Length {
    let near = |a: Length, b: Length| (a - b).abs() <= JOINT;
    let over = |a: (Length, Length), b: (Length, Length)| (a.1.min(b.1) - a.0.max(b.0)).max(Length::ZERO);
    let mut long = Length::ZERO;
    for (index, (a, _)) in faced.sheets.iter().enumerate() {
        for (b, _) in &faced.sheets[index + 1..] {
            if near(a.x1, b.x0) || near(b.x1, a.x0) {
                long += over((a.y0, a.y1), (b.y0, b.y1));
            } else if near(a.y1, b.y0) || near(b.y1, a.y0) {
                long += over((a.x0, a.x1), (b.x0, b.x1));
            }
        }
    }
    long
}

/// An upright corner where two faces meet.
pub struct Corner {
    /// The faces, by index in the list of faces.
    pub faces: [usize; 2],
    /// It stands out; else it is an inside one.
    pub outside: bool,
    /// Its height.
    pub high: Length,
}

/// Every upright corner of a run: at the ends of legs, and where legs meet.
pub fn corners(solved: &Solved, faced: &[Faced]) -> Vec<Corner> {
    let find = |leg: usize, face: Face| faced.iter().position(|one| one.leg == leg && one.face == face);
    let mut all = Vec::new();
    let mut put = |a: Option<usize>, b: Option<usize>, outside: bool| {
        let (Some(a), Some(b)) = (a, b) else { return };
        let ((a0, a1), (b0, b1)) = (levels(&faced[a]), levels(&faced[b]));
        let high = a1.min(b1) - a0.max(b0);
        if high > Length::ZERO {
            all.push(Corner { faces: [a, b], outside, high });
        }
    };
    for index in 0..solved.legs.len() {
        for (side, end) in [(0, Face::Left), (1, Face::Right)] {
            // Where a leg meets another the end that shows over it turns no corner of its own.
            if !solved.legs[index].meets_leg(side) {
                put(find(index, Face::Front), find(index, end), true);
                put(find(index, Face::Back), find(index, end), true);
            }
        }
    }
    for joint in &solved.joints {
        if let JointKind::Corner(corner) = &joint.kind {
            put(find(joint.left, Face::Front), find(joint.right, Face::Front), corner.turn < 0.0);
        }
    }
    all
}

/// From where to where a face is boarded.
fn levels(faced: &Faced) -> (Length, Length) {
    let low = faced.sheets.iter().map(|(extent, _)| extent.y0).min().unwrap_or_default();
    let high = faced.sheets.iter().map(|(extent, _)| extent.y1).max().unwrap_or_default();
    (low, high)
}
