//! Outlines of sheets by construction: a polygon with bites out of its edges, corners rounded last.

use crate::geometry::{Outline, Vertex};

/// A corner of a sheet, and the radius that rounds it, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// x, mm.
    pub x: f64,
    /// y, mm.
    pub y: f64,
    /// Radius, mm; 0 is sharp.
    pub radius: f64,
}

/// A rectangular bite out of a level edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bite {
    /// Least x, mm.
    pub x0: f64,
    /// Greatest x, mm.
    pub x1: f64,
    /// How far in it reaches: a y, mm.
    pub y: f64,
    /// Radius of the two corners at the edge, mm.
    pub mouth: f64,
    /// Radius of the two corners inside, mm.
    pub inner: f64,
}

/// The four corners of a box, counter-clockwise from the lower left, all sharp, mm.
pub fn sharp_box(x0: f64, y0: f64, x1: f64, y1: f64) -> [Corner; 4] {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|(x, y)| Corner { x, y, radius: 0.0 })
}

/// Takes bites out of the level edge that runs from corner `edge` to the next. Bites are held to the edge
/// and to one another: where two overlap the second starts where the first ends. A sheet of which
/// nothing would be left is given back whole; that it can't be cut so is for the rules to say.
pub fn bitten(corners: &[Corner], edge: usize, bites: &[Bite]) -> Vec<Corner> {
    let (Some(&from), Some(&to)) = (corners.get(edge), corners.get((edge + 1) % corners.len().max(1))) else {
        return corners.to_vec();
    };
    let (low, high) = (from.x.min(to.x), from.x.max(to.x));
    let mut kept: Vec<Bite> = Vec::with_capacity(bites.len());
    let mut sorted = bites.to_vec();
    sorted.sort_by(|a, b| a.x0.total_cmp(&b.x0));
    let mut free = low;
    for bite in sorted {
        let cut = Bite { x0: bite.x0.max(free), x1: bite.x1.min(high), ..bite };
        if cut.x1 > cut.x0 {
            free = cut.x1;
            kept.push(cut);
        }
    }
    let rightwards = to.x > from.x;
    if !rightwards {
        kept.reverse();
    }
    let mut all = corners[..=edge].to_vec();
    for bite in kept {
        let (near, far) = if rightwards { (bite.x0, bite.x1) } else { (bite.x1, bite.x0) };
        // A bite that the end of the edge cuts short has no mouth and no inside corner there.
        let inner = |x: f64| if x > low && x < high { bite.inner } else { 0.0 };
        all.push(Corner { x: near, y: from.y, radius: bite.mouth });
        all.push(Corner { x: near, y: bite.y, radius: inner(near) });
        all.push(Corner { x: far, y: bite.y, radius: inner(far) });
        all.push(Corner { x: far, y: from.y, radius: bite.mouth });
    }
    all.extend_from_slice(&corners[edge + 1..]);
    let left = without_spikes(all);
    if left.len() < 3 { corners.to_vec() } else { left }
}

/// Without repeated corners and without corners on a straight line or at the tip of a spike.
fn without_spikes(mut corners: Vec<Corner>) -> Vec<Corner> {
    loop {
        let count = corners.len();
        let mut kept: Vec<Corner> = Vec::with_capacity(count);
        for (index, &here) in corners.iter().enumerate() {
            let before = kept.last().copied().unwrap_or(corners[count - 1]);
            let after = corners[(index + 1) % count];
            let cross = (here.x - before.x) * (after.y - here.y) - (here.y - before.y) * (after.x - here.x);
            if cross.abs() > 1e-9 {
                kept.push(here);
            }
        }
        if kept.len() == count || kept.len() < 3 {
            return kept;
        }
        corners = kept;
    }
}

/// The outline through the corners, each rounded by its radius.
pub fn outline(corners: &[Corner]) -> Outline {
    Outline::from_points(corners.iter().map(|corner| (corner.x, corner.y))).rounded(|index| corners[index].radius)
}

/// The edge of a closed, convex hole that lies on one side of the line x = `at`: from where the hole's
/// outline leaves the line to where it comes back, walked clockwise, so that it can be set into the edge
/// of a piece. `None` when the line misses the hole.
pub fn bite_of_hole(hole: &Outline, at: f64, left: bool) -> Option<Vec<Vertex>> {
    let inside = |x: f64| if left { x < at } else { x > at };
    let parts: Vec<(Vertex, Vertex)> = hole.edges().flat_map(|(a, b)| split(a, b, at)).collect();
    let count = parts.len();
    let kept = |index: usize| {
        let (a, b) = parts[index % count.max(1)];
        inside(middle(a, b))
    };
    let first = (0..count).find(|&index| kept(index) && !kept(index + count - 1))?;
    let chain: Vec<(Vertex, Vertex)> =
        (first..first + count).take_while(|&index| kept(index)).map(|index| parts[index % count]).collect();
    // Backwards: the piece lies outside the hole.
    let mut vertices: Vec<Vertex> =
        chain.iter().rev().map(|(a, b)| Vertex { x: b.x, y: b.y, bulge: -a.bulge }).collect();
    let (start, _) = chain.first()?;
    vertices.push(Vertex { bulge: 0.0, ..*start });
    if let (Some(head), Some(tail)) = (vertices.first().copied(), vertices.last().copied()) {
        let last = vertices.len() - 1;
        vertices[0] = Vertex { x: at, ..head };
        vertices[last] = Vertex { x: at, ..tail };
    }
    Some(vertices)
}

/// x of the middle of an edge.
fn middle(a: Vertex, b: Vertex) -> f64 {
    // The middle of an arc lies off its chord by half the chord times the bulge, to the right for a positive one.
    (a.x + b.x) / 2.0 + a.bulge * (b.y - a.y) / 2.0
}

/// An edge in parts that don't cross the line x = `at`.
fn split(a: Vertex, b: Vertex, at: f64) -> Vec<(Vertex, Vertex)> {
    if a.bulge == 0.0 {
        if (a.x - at) * (b.x - at) < 0.0 {
            let y = a.y + (b.y - a.y) * (at - a.x) / (b.x - a.x);
            let cut = Vertex { x: at, y, bulge: 0.0 };
            return vec![(a, cut), (cut, b)];
        }
        return vec![(a, b)];
    }
    let off = (1.0 - a.bulge * a.bulge) / (4.0 * a.bulge);
    let (cx, cy) = ((a.x + b.x) / 2.0 - (b.y - a.y) * off, (a.y + b.y) / 2.0 + (b.x - a.x) * off);
    let radius = (a.x - cx).hypot(a.y - cy);
    let sweep = 4.0 * a.bulge.atan();
    let start = (a.y - cy).atan2(a.x - cx);
    let along = ((at - cx) / radius).clamp(-1.0, 1.0).acos();
    let turn = std::f64::consts::TAU;
    let mut cuts: Vec<f64> = [along, -along]
        .into_iter()
        .filter(|_| (at - cx).abs() < radius)
        .map(|angle| ((angle - start) * sweep.signum()).rem_euclid(turn))
        .filter(|&swept| swept > 1e-9 && swept < sweep.abs() - 1e-9)
        .collect();
    cuts.sort_by(f64::total_cmp);
    let mut parts = Vec::with_capacity(3);
    let (mut from, mut done) = (a, 0.0);
    for swept in cuts.into_iter().chain([sweep.abs()]) {
        let angle = start + swept * sweep.signum();
        let end = (swept - sweep.abs()).abs() < 1e-12;
        let to =
            if end { b } else { Vertex { x: cx + radius * angle.cos(), y: cy + radius * angle.sin(), bulge: 0.0 } };
        from.bulge = ((swept - done) * sweep.signum() / 4.0).tan();
        parts.push((from, to));
        (from, done) = (to, swept);
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::{Bite, bite_of_hole, bitten, outline, sharp_box};
    use crate::geometry::Outline;

    fn bite(x0: f64, x1: f64, y: f64) -> Bite {
        Bite { x0, x1, y, mouth: 0.0, inner: 0.0 }
    }

    #[test]
    fn bites_are_held_to_the_edge_and_to_one_another() {
        let sheet = sharp_box(0.0, 0.0, 100.0, 40.0);
        let area = |bites: &[Bite]| outline(&bitten(&sheet, 0, bites)).area();
        assert!((area(&[bite(10.0, 20.0, 5.0)]) - 3950.0).abs() < 1e-9);
        assert!((area(&[bite(-10.0, 20.0, 5.0)]) - 3900.0).abs() < 1e-9);
        assert!((area(&[bite(15.0, 30.0, 5.0), bite(10.0, 20.0, 5.0)]) - 3900.0).abs() < 1e-9);
        assert!((area(&[bite(-5.0, 105.0, 10.0)]) - 3000.0).abs() < 1e-9);
        let top = outline(&bitten(&sheet, 2, &[bite(10.0, 20.0, 35.0), bite(40.0, 50.0, 30.0)])).area();
        assert!((top - 3850.0).abs() < 1e-9);
    }

    #[test]
    fn a_hole_on_a_seam_is_shared_between_the_pieces() {
        for hole in
            [Outline::from_circle(50.0, 20.0, 10.0), Outline::from_corners(40.0, 12.0, 60.0, 30.0).rounded(|_| 6.0)]
        {
            for at in [43.0, 50.0, 52.5, 58.0] {
                let left = Outline { vertices: bite_of_hole(&hole, at, true).unwrap() };
                let right = Outline { vertices: bite_of_hole(&hole, at, false).unwrap() };
                assert!(left.area() < 0.0 && right.area() < 0.0);
                assert!((left.area() + right.area() + hole.area()).abs() < 1e-6, "{at}");
            }
            assert_eq!(bite_of_hole(&hole, 70.0, false), None);
        }
    }
}
