//! Where boards of one module meet, as far as board is seen there: what elevations draw besides the boards' own edges.

use crate::solve::{Face, Plane, SheetPart, Solved};
use crate::units::Length;

/// The ends of what is seen of the joints of a face that are not the edge between two modules, in the face's plane. The
/// gap is too narrow for two lines: a joint is one, in its middle.
pub fn seen(solved: &Solved, leg: usize, face: Face) -> Vec<[(Length, Length); 2]> {
    let Some(of) = solved.legs.get(leg) else { return Vec::new() };
    let plane = Plane::of(face);
    let joints = solved.shop.cutting.joints.iter();
    let own = joints.filter(|one| one.leg == leg && one.part == SheetPart::Face(face) && !one.between_modules);
    let mut lines = Vec::new();
    for joint in own {
        // Cutouts that it crosses, from and to along it.
        let mut open: Vec<(Length, Length)> = of
            .fittings
            .iter()
            .filter_map(|fitting| fitting.cutout(plane))
            .map(|cutout| cutout.extent)
            .map(|e| if joint.level { ((e.y0, e.y1), (e.x0, e.x1)) } else { ((e.x0, e.x1), (e.y0, e.y1)) })
            .filter(|((low, high), _)| *low < joint.at && joint.at < *high)
            .map(|(_, along)| along)
            .collect();
        open.sort();
        let at = |along: Length| if joint.level { (along, joint.at) } else { (joint.at, along) };
        let mut from = joint.span.0;
        for (a, b) in open {
            if a > from {
                lines.push([at(from), at(a.min(joint.span.1))]);
            }
            from = from.max(b);
        }
        if from < joint.span.1 {
            lines.push([at(from), at(joint.span.1)]);
        }
    }
    lines
}
