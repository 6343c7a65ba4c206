//! The counter of a leg: its outline, its pieces, and what each edge meets.

use super::slab::{Bite, Corner, bite_of_hole, bitten, outline};
use super::{Bound, Counter, Datums, Edge, EdgeKind, Extent, Fitting, FittingKind, Piece, Plane};
use crate::findings::Problem;
use crate::geometry::{Outline, Region, Vertex};
use crate::parameters::given;
use crate::units::{Length, Show};

/// What a leg's counter is made from.
pub struct Slab<'a> {
    /// Material, joints and radii.
    pub counter: &'a given::Counter,
    /// The leg's datums.
    pub datums: &'a Datums,
    /// What bounds it: left, right, behind.
    pub bounds: &'a [Bound; 3],
    /// The leg's fittings.
    pub fittings: &'a [Fitting],
}

/// No piece is narrower than this: a millimetre.
const NARROWEST: Length = Length::from_nm(1_000_000);

/// The counter. `seams` are the u of the leg's seams; the width of a seam's joint is not taken off the
/// pieces' areas: each piece reaches to the seam's middle.
///
/// Errors: a seam that lies off the counter.
pub fn counter(slab: &Slab, seams: &[Length], show: Show) -> Result<Counter, Vec<Problem>> {
    let d = slab.datums;
    let extent = Extent { x0: d.counter_left, y0: d.counter_front, x1: d.counter_right, y1: d.counter_back };
    let mut seams = seams.to_vec();
    seams.sort();
    seams.dedup();
    let problem = |message: String| Problem {
        message,
        instead: "place each seam between the counter's ends, from the finished left end".to_owned(),
        place: slab.counter.place.clone(),
    };
    let (first, last) = (show.plain(extent.x0), show.plain(extent.x1));
    let off = seams.iter().filter(|&&u| u < extent.x0 + NARROWEST || u > extent.x1 - NARROWEST);
    let mut problems: Vec<Problem> = off
        .map(|&u| {
            let u = show.plain(u);
            problem(format!("a seam at {u} lies off the counter, which runs from {first} to {last}"))
        })
        .collect();
    let near = seams.windows(2).filter(|pair| pair[1] - pair[0] < NARROWEST);
    problems.extend(near.map(|pair| problem(format!("two seams lie at {}", show.plain(pair[0])))));
    if !problems.is_empty() {
        return Err(problems);
    }
    let mut ends = vec![extent.x0];
    ends.extend(&seams);
    ends.push(extent.x1);
    let pieces: Vec<Piece> = ends
        .windows(2)
        .enumerate()
        .map(|(index, pair)| slab.piece(format!("Piece {}", index + 1), Extent { x0: pair[0], x1: pair[1], ..extent }))
        .collect();
    let region = match pieces.as_slice() {
        [only] => only.region.clone(),
        _ => slab.piece(String::new(), extent).region,
    };
    let splashes = slab.counter.splash.map_or_else(Vec::new, |splash| {
        let piece = |(index, pair): (usize, &[Length])| {
            let volume = (pair[1] - pair[0]).mm() * splash.height.mm() * splash.thickness.mm();
            (format!("Splash {}", index + 1), pair[0], pair[1], mass(volume, slab.counter.density))
        };
        ends.windows(2).enumerate().map(piece).collect()
    });
    Ok(Counter { extent, region, pieces, seams, splashes })
}

/// Mass in kg of a volume in mm3 at a density in kg/m3.
pub fn mass(volume: f64, density: f64) -> f64 {
    volume * 1e-9 * density
}

impl Slab<'_> {
    /// One piece between two ends, either of which may be a seam.
    fn piece(&self, name: String, extent: Extent) -> Piece {
        let region = self.region(&extent);
        let mass = mass(region.area() * self.counter.thickness.mm(), self.counter.density);
        let diagonal = Length::from_mm(extent.width().mm().hypot(extent.height().mm()));
        let edges = self.edges(&extent);
        Piece { name, extent, region, mass, diagonal, edges }
    }

    /// The notches that a piece has a share of, front edge left to right.
    fn notches(&self, extent: &Extent) -> Vec<(&Fitting, Extent)> {
        let mut notches: Vec<(&Fitting, Extent)> = self
            .fittings
            .iter()
            .filter(|fitting| fitting.kind == FittingKind::Notch)
            .filter_map(|fitting| fitting.cutout(Plane::Counter).map(|cutout| (fitting, cutout.extent)))
            .filter(|(_, cut)| cut.meets(extent))
            .collect();
        notches.sort_by_key(|(_, cut)| cut.x0);
        notches
    }

    /// A piece's outline and holes. Free corners are rounded, and so are the corners of a notch's mouth.
    fn region(&self, extent: &Extent) -> Region {
        let d = self.datums;
        let radius = self.counter.corner_radius.mm();
        let [left, right, back] = self.bounds.each_ref().map(Bound::is_open);
        let free_left = left && extent.x0 == d.counter_left;
        let free_right = right && extent.x1 == d.counter_right;
        let (x0, y0, x1, y1) = (extent.x0.mm(), extent.y0.mm(), extent.x1.mm(), extent.y1.mm());
        let corner = |x, y, free: bool| Corner { x, y, radius: if free { radius } else { 0.0 } };
        let corners = [
            corner(x0, y0, free_left),
            corner(x1, y0, free_right),
            corner(x1, y1, free_right && back),
            corner(x0, y1, free_left && back),
        ];
        let bites: Vec<Bite> = self
            .notches(extent)
            .into_iter()
            .map(|(fitting, cut)| Bite {
                x0: cut.x0.mm(),
                x1: cut.x1.mm(),
                y: cut.y1.min(extent.y1).mm(),
                mouth: radius,
                inner: fitting.cutout(Plane::Counter).map_or(0.0, |cutout| cutout.radius.mm()),
            })
            .collect();
        let mut outer = outline(&bitten(&corners, 0, &bites));
        let (mut holes, mut on_left, mut on_right) = (Vec::new(), Vec::new(), Vec::new());
        for cutout in self.fittings.iter().filter_map(|f| f.cutout(Plane::Counter).filter(|cutout| !cutout.open)) {
            if !cutout.extent.meets(extent) {
                continue;
            }
            let cut = cutout.extent;
            let (over_left, over_right) = (cut.x0 < extent.x0, cut.x1 > extent.x1);
            let corner = self.counter.corner_radius;
            let between = cut.y0 > extent.y0 + corner && cut.y1 < extent.y1 - corner;
            match (over_left, over_right, between) {
                (true, false, true) => on_left.extend(bite_of_hole(&cutout.outline, x0, false)),
                (false, true, true) => on_right.extend(bite_of_hole(&cutout.outline, x1, true)),
                (false, false, _) if cut.y0 >= extent.y0 && cut.y1 <= extent.y1 => holes.push(cutout.outline.clone()),
                // It leaves the sheet altogether, which a rule reports; what lies on the sheet is shown.
                _ => holes.push(cut.held_to(extent).outline()),
            }
        }
        set_in(&mut outer, x1, on_right);
        set_in(&mut outer, x0, on_left);
        Region { outer, holes }
    }

    /// A piece's outside edges, counter-clockwise from the front left, ignoring radii.
    fn edges(&self, extent: &Extent) -> Vec<Edge> {
        let (d, joint) = (self.datums, self.counter.wall_joint);
        let [left, right, back] = self.bounds.each_ref().map(Bound::is_open);
        let Extent { x0, y0, x1, y1 } = *extent;
        let finished =
            |from, to, overhang| Edge { kind: EdgeKind::Finished, from, to, overhang: Some(overhang), joint: None };
        let met = |kind, from, to, joint| Edge { kind, from, to, overhang: None, joint: Some(joint) };
        let mut edges = Vec::new();
        let mut at = x0;
        for (fitting, cut) in self.notches(extent) {
            let (a, b, deep) = (cut.x0.max(at), cut.x1.min(x1), cut.y1.min(y1));
            if b <= a {
                continue;
            }
            if a > at {
                edges.push(finished((at, y0), (a, y0), -y0));
            }
            let lap = &fitting.flange;
            let side = |from, to, lap: Length| {
                let kind = if lap > Length::ZERO { EdgeKind::Covered } else { EdgeKind::Finished };
                Edge { kind, from, to, overhang: None, joint: None }
            };
            if a > x0 {
                edges.push(side((a, y0), (a, deep), lap.left));
            }
            edges.push(side((a, deep), (b, deep), lap.far));
            if b < x1 {
                edges.push(side((b, deep), (b, y0), lap.right));
            }
            at = b;
        }
        if at < x1 {
            edges.push(finished((at, y0), (x1, y0), -y0));
        }
        let seam = self.counter.seam_joint;
        edges.push(if x1 != d.counter_right {
            met(EdgeKind::Seam, (x1, y0), (x1, y1), seam)
        } else if right {
            finished((x1, y0), (x1, y1), x1 - d.finished_right)
        } else {
            met(EdgeKind::Wall, (x1, y0), (x1, y1), joint)
        });
        edges.push(if back {
            finished((x1, y1), (x0, y1), y1 - d.finished_back)
        } else if self.counter.splash.is_some() {
            met(EdgeKind::Splash, (x1, y1), (x0, y1), joint)
        } else {
            met(EdgeKind::Wall, (x1, y1), (x0, y1), joint)
        });
        edges.push(if x0 != d.counter_left {
            met(EdgeKind::Seam, (x0, y1), (x0, y0), seam)
        } else if left {
            finished((x0, y1), (x0, y0), -x0)
        } else {
            met(EdgeKind::Wall, (x0, y1), (x0, y0), joint)
        });
        edges
    }
}

/// Sets bites of holes into the straight edge of an outline that lies on x = `at`.
fn set_in(outer: &mut Outline, at: f64, mut bites: Vec<Vec<Vertex>>) {
    let Some(edge) = outer.edges().position(|(a, b)| a.x == at && b.x == at && a.bulge == 0.0) else { return };
    let upwards = outer.vertices[(edge + 1) % outer.vertices.len()].y > outer.vertices[edge].y;
    let start = |bite: &Vec<Vertex>| bite.first().map_or(0.0, |vertex| vertex.y);
    bites.sort_by(|a, b| start(a).total_cmp(&start(b)));
    if !upwards {
        bites.reverse();
    }
    let place = edge + 1;
    outer.vertices.splice(place..place, bites.into_iter().flatten());
}
