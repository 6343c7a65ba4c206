//! The seams of a joined counter: where, how, and their letters.

use super::joined::Joined;
use crate::drawing::lettering::Style;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::solve::{CornerSeam, EdgeKind, JointKind, Plane};
use crate::units::Length;

/// One seam.
pub struct Seam {
    /// Its letter on the sheet.
    pub letter: String,
    /// Where it is, in words.
    pub place: String,
    /// Butt, mitre, or across a leg.
    pub kind: &'static str,
    /// How long it is.
    pub length: Length,
    /// Its ends on the sheet.
    pub ends: [PaperPoint; 2],
}

/// All seams, left to right.
pub fn all(sheet: &Joined<'_>) -> Vec<Seam> {
    let solved = sheet.set.solved;
    let mut seams: Vec<Seam> = Vec::new();
    for piece in sheet.pieces() {
        for edge in piece.edges.iter().filter(|edge| edge.kind == EdgeKind::Seam) {
            let ends = [edge.from, edge.to].map(|(u, v)| sheet.at(piece.leg, u.mm(), v.mm()));
            let same = |seam: &Seam| ends.iter().all(|p| seam.ends.iter().any(|q| p.distance(*q) < 0.05));
            if seams.iter().any(same) {
                continue;
            }
            // Across its own leg a seam is upright in it, at one of the leg's seams; else it lies in a corner.
            let across = sheet.legs().find_map(|(index, leg)| {
                let middle = ends[0].towards(ends[1], 0.5);
                let factor = sheet.view.scale.factor();
                let p = sheet.in_leg(
                    index,
                    (middle.x - sheet.view.origin.x) / factor,
                    (sheet.view.origin.y - middle.y) / factor,
                );
                leg.counter.seams.iter().find(|u| (u.mm() - p.x).abs() < 0.5).map(|&u| (leg, u))
            });
            let (place, kind) = match across {
                Some((leg, u)) => {
                    (format!("leg {}, {} from its finished left end", leg.id, solved.show.prose(u)), "across")
                }
                None => corner(sheet, ends),
            };
            let letter = char::from(b'A' + u8::try_from(seams.len() % 26).unwrap_or(0)).to_string();
            let (du, dv) = (edge.to.0 - edge.from.0, edge.to.1 - edge.from.1);
            seams.push(Seam { letter, place, kind, length: Length::from_mm(du.mm().hypot(dv.mm())), ends });
        }
    }
    seams
}

/// The corner that a seam lies in: the nearest.
fn corner(sheet: &Joined<'_>, ends: [PaperPoint; 2]) -> (String, &'static str) {
    let legs = &sheet.set.solved.legs;
    let far = |right: usize| {
        let place = sheet.at(right, 0.0, 0.0);
        place.distance(ends[0]).min(place.distance(ends[1]))
    };
    let joints = sheet
        .set
        .solved
        .joints
        .iter()
        .filter(|joint| sheet.slab.legs.contains(&joint.left) && sheet.slab.legs.contains(&joint.right));
    let nearest = joints.min_by(|a, b| far(a.right).total_cmp(&far(b.right)));
    let Some(joint) = nearest else { return (String::new(), "butt") };
    let kind = match &joint.kind {
        JointKind::Corner(corner) if corner.seam == CornerSeam::Mitre => "mitre",
        _ => "butt",
    };
    (format!("corner of {} and {}", legs[joint.left].id, legs[joint.right].id), kind)
}

/// The letter of each seam beside its line.
pub fn letters(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "seams");
    for seam in all(sheet) {
        let [a, b] = seam.ends;
        let long = a.distance(b).max(1e-9);
        let off = (-(b.y - a.y) / long, (b.x - a.x) / long);
        let places: Vec<PaperPoint> = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8]
            .iter()
            .flat_map(|share| {
                let on = a.towards(b, *share);
                [3.0, -3.0].map(|by| on.moved(off.0 * by, off.1 * by + 1.25))
            })
            .collect();
        let word = if sheet.plane == Plane::Counter { "seam" } else { "joint" };
        let text = format!("{word} {}", seam.letter);
        let style = Style::body().bold().middle();
        if canvas.text_at_first(layer, &places, &text, &style).is_none() {
            canvas.text_at_first(layer, &places, &seam.letter, &style);
        }
    }
}
