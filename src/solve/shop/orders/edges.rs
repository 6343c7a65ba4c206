//! What the edges of a piece of counter are, for whoever cuts and finishes them.

use crate::solve::{Edge, EdgeKind, Piece};
use crate::units::{Length, Show};

/// The sides of a piece, in the order in which they are told.
const SIDES: [Side; 4] = [Side::Front, Side::Left, Side::Right, Side::Back];

/// A side of a piece, as the cook of its leg sees it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    Front,
    Left,
    Right,
    Back,
}

impl Side {
    const fn words(self) -> &'static str {
        match self {
            Side::Front => "front",
            Side::Left => "left",
            Side::Right => "right",
            Side::Back => "back",
        }
    }

    /// The side that an edge faces: pieces are walked counter-clockwise, so that what is outside lies at its right. One
    /// that lies aslant, as a mitre, counts to the end that it is at.
    fn of(edge: &Edge) -> Side {
        let (du, dv) = ((edge.to.0 - edge.from.0).mm(), (edge.to.1 - edge.from.1).mm());
        match (du.abs() > 2.0 * dv.abs(), du > 0.0, dv > 0.0) {
            (true, true, _) => Side::Front,
            (true, false, _) => Side::Back,
            (false, _, true) => Side::Right,
            (false, _, false) => Side::Left,
        }
    }
}

/// Edges of one side that follow one another and are alike, a notch between them left out of account.
struct Stretch {
    side: Side,
    words: String,
    from: (Length, Length),
    to: (Length, Length),
}

impl Stretch {
    fn length(&self) -> Length {
        let (du, dv) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        match (du == Length::ZERO, dv == Length::ZERO) {
            (true, _) => dv.abs(),
            (_, true) => du.abs(),
            _ => Length::from_mm(du.mm().hypot(dv.mm())),
        }
    }
}

/// All edges of a piece in a sentence; edges of cutouts, which are told with them, are left out.
pub fn words(piece: &Piece, show: Show) -> Option<String> {
    let all = stretches(piece, show);
    let first = all.first()?;
    let turns = (0..all.len()).filter(|&at| all[at].side != all[(at + 1) % all.len()].side).count();
    let sides: Vec<(Side, Vec<&Stretch>)> = SIDES
        .into_iter()
        .map(|side| (side, all.iter().filter(|one| one.side == side).collect()))
        .filter(|(_, own): &(Side, Vec<&Stretch>)| !own.is_empty())
        .collect();
    let long = |one: &Stretch| format!("{} {}", show.prose(one.length()), one.words);
    if turns > sides.len() {
        // A piece that turns a corner has two fronts: only a walk round it tells which edge is which.
        let walk: Vec<String> = all.iter().map(|one| format!("{} {}", one.side.words(), long(one))).collect();
        return Some(format!(
            "edges, each by the side that it faces, round from the left of the {}: {}",
            first.side.words(),
            walk.join("; ")
        ));
    }
    let shaped = !sides.iter().any(|(side, _)| *side == Side::Front);
    // A front that slopes or swells overhangs otherwise at each place.
    let front = shaped.then(|| "front finished, shape and overhang as on the counter sheet".to_owned());
    let told: Vec<String> = sides
        .into_iter()
        .map(|(side, mut own)| {
            // Sides are told from the left, or from the front.
            if matches!(side, Side::Back | Side::Left) {
                own.reverse();
            }
            match own.as_slice() {
                [only] => format!("{} {}", side.words(), only.words),
                several => {
                    let parts: Vec<String> = several.iter().copied().map(long).collect();
                    let from = if matches!(side, Side::Front | Side::Back) { "left" } else { "front" };
                    format!("{} from the {from} {}", side.words(), parts.join(", then "))
                }
            }
        })
        .collect();
    let told: Vec<String> = front.into_iter().chain(told).collect();
    Some(format!("edges: {}", told.join("; ")))
}

/// The stretches, walked counter-clockwise from the one at the front that starts farthest left.
fn stretches(piece: &Piece, show: Show) -> Vec<Stretch> {
    let mut all: Vec<Stretch> = Vec::new();
    for edge in &piece.edges {
        let Some(words) = what(edge, show) else { continue };
        let side = Side::of(edge);
        match all.last_mut() {
            Some(last) if last.side == side && last.words == words => last.to = edge.to,
            _ => all.push(Stretch { side, words, from: edge.from, to: edge.to }),
        }
    }
    let start = (0..all.len()).filter(|&at| all[at].side == Side::Front).min_by_key(|&at| all[at].from);
    all.rotate_left(start.unwrap_or(0));
    // What the walk of the outline began amidst.
    if all.len() > 1
        && let (Some(last), Some(first)) = (all.last(), all.first())
        && (last.side, &last.words) == (first.side, &first.words)
    {
        let from = last.from;
        all.pop();
        all[0].from = from;
    }
    all
}

/// What an edge is; nothing where it is one of a cutout.
fn what(edge: &Edge, show: Show) -> Option<String> {
    Some(match (edge.kind, edge.overhang) {
        (EdgeKind::Finished, Some(over)) if over == Length::ZERO => "finished, no overhang".to_owned(),
        (EdgeKind::Finished, Some(over)) => format!("finished, overhang {}", show.prose(over)),
        (EdgeKind::Wall, _) => "at a wall".to_owned(),
        (EdgeKind::Splash, _) => "at a wall with upstand".to_owned(),
        (EdgeKind::Seam, _) => "seam, against another piece".to_owned(),
        (EdgeKind::Finished, None) | (EdgeKind::Covered | EdgeKind::Reveal, _) => return None,
    })
}
