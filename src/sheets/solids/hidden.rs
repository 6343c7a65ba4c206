//! What is seen of each face, and of each edge, in a parallel projection.
//!
//! A spot of a face is hidden exactly where another face covers it that lies on the viewer's side of its plane there.
//! So of each other face only the part on that side counts: cut at the plane, projected, and taken off. That needs no
//! order of depth, and is right also where faces hide each other in turn or pass through each other.

use super::facet::Facet;
use super::projection::Projection;
use super::space::{Place, dot};
use crate::sheets::client::patch::{Patch, Rect, Ring, Spot, area, inside_shares};

/// Things nearer to a plane than this lie in it, mm.
const IN_PLANE: f64 = 0.2;
/// The same for edges, which lie in two planes.
const ON_EDGE: f64 = 0.5;
/// What is seen of a face in pieces smaller than this is rounding, mm2.
const SLIVER: f64 = 1.0;

/// A face that is turned to the viewer, projected.
pub struct Shown<'f> {
    /// Its place in the list.
    pub index: usize,
    /// The face.
    pub facet: &'f Facet,
    /// Its whole outline on the picture.
    pub patch: Patch,
    /// The box round it.
    pub bounds: Rect,
}

/// The faces turned towards the viewer.
pub fn turned<'f>(facets: &'f [Facet], view: &Projection) -> Vec<Shown<'f>> {
    let turned = facets.iter().enumerate().filter(|(_, facet)| faces(facet, view.towards));
    turned
        .map(|(index, facet)| {
            let patch = facet.patch.mapped(|spot| view.spot(facet.pose.place(spot)));
            let bounds = patch.bounds();
            Shown { index, facet, patch, bounds }
        })
        .collect()
}

/// Whether a face is turned towards a direction.
pub fn faces(facet: &Facet, towards: Place) -> bool {
    dot(facet.pose.normal(), towards) > 1e-4
}

/// The part of a face, in its own frame, that lies in front of another's plane by more than `by`.
fn before(facet: &Facet, other: &Facet, by: f64) -> Option<Patch> {
    let ahead = |spot: &Spot| other.pose.ahead(facet.pose.place(*spot)) - by;
    let (mut some, mut all) = (false, true);
    for spot in facet.patch.rings.iter().flatten() {
        let front = ahead(spot) > 0.0;
        some |= front;
        all &= front;
    }
    if !some {
        return None;
    }
    if all {
        return Some(facet.patch.clone());
    }
    let rings = facet.patch.rings.iter().map(|ring| halved(ring, ahead)).filter(|ring| ring.len() > 2);
    Some(Patch { rings: rings.collect() })
}

/// A ring less what lies behind. Where it is cut in pieces they hang together by edges without area.
pub fn halved(ring: &[Spot], ahead: impl Fn(&Spot) -> f64) -> Ring {
    let mut kept = Ring::new();
    for (k, a) in ring.iter().enumerate() {
        let b = ring[(k + 1) % ring.len()];
        let (da, db) = (ahead(a), ahead(&b));
        if da > 0.0 {
            kept.push(*a);
        }
        if (da > 0.0) != (db > 0.0) {
            let t = da / (da - db);
            kept.push([a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
        }
    }
    kept
}

/// Both patches share some of their boxes.
fn meet(a: &Rect, b: &Rect) -> bool {
    a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1
}

/// What one face hides of the picture of another's plane; `None` for nothing.
pub fn covered(by: &Shown<'_>, one: &Shown<'_>, view: &Projection) -> Option<Patch> {
    if !meet(&one.bounds, &by.bounds) {
        return None;
    }
    Some(before(by.facet, one.facet, IN_PLANE)?.mapped(|spot| view.spot(by.facet.pose.place(spot))))
}

/// What is seen of each of the faces, on the picture.
pub fn seen(shown: &[Shown<'_>], view: &Projection) -> Vec<Patch> {
    shown
        .iter()
        .map(|one| {
            let hiding: Vec<Patch> = shown
                .iter()
                .filter(|other| other.index != one.index)
                .filter_map(|other| covered(other, one, view))
                .collect();
            if hiding.is_empty() {
                return one.patch.clone();
            }
            without_slivers(one.patch.less(&Patch::union_of(&hiding)))
        })
        .collect()
}

/// Shadows that other faces throw on a face, in its own frame: `light` is the way the light travels. Faces count for
/// which `throws` holds.
pub fn shadow(facet: &Facet, facets: &[Facet], light: Place, throws: impl Fn(&Facet) -> bool) -> Patch {
    let normal = facet.pose.normal();
    let fall = -dot(normal, light);
    if fall <= 1e-3 {
        return Patch::default();
    }
    let parts: Vec<Patch> = facets
        .iter()
        .filter(|other| throws(other) && dot(other.pose.normal(), light) < -1e-4)
        .filter_map(|other| Some((other, before(other, facet, IN_PLANE)?)))
        .map(|(other, part)| {
            part.mapped(|spot| {
                let place = other.pose.place(spot);
                let far = facet.pose.ahead(place) / fall;
                let on = super::space::plus(place, light, far);
                let from = super::space::minus(on, facet.pose.at);
                [dot(from, facet.pose.across), dot(from, facet.pose.up)]
            })
        })
        .filter(|part| meet(&part.bounds(), &facet.patch.bounds()))
        .collect();
    if parts.is_empty() { Patch::default() } else { Patch::union_of(&parts).within(&facet.patch) }
}

fn without_slivers(patch: Patch) -> Patch {
    Patch { rings: patch.rings.into_iter().filter(|ring| area(ring).abs() > SLIVER).collect() }
}

/// The stretches of an edge that are seen, on the picture.
pub fn stretches(edge: (Place, Place), shown: &[Shown<'_>], view: &Projection) -> Vec<[Spot; 2]> {
    let (a, b) = (view.spot(edge.0), view.spot(edge.1));
    let bounds = Rect::new(a[0], a[1], b[0], b[1]);
    let mut hidden: Vec<(f64, f64)> = Vec::new();
    for other in shown {
        let o = &other.bounds;
        if bounds.x0 > o.x1 || o.x0 > bounds.x1 || bounds.y0 > o.y1 || o.y0 > bounds.y1 {
            continue;
        }
        // From where to where it lies behind the other's plane.
        let (da, db) = (other.facet.pose.ahead(edge.0) + ON_EDGE, other.facet.pose.ahead(edge.1) + ON_EDGE);
        let turn = if (da - db).abs() > 1e-12 { da / (da - db) } else { 0.0 };
        let behind = match (da < 0.0, db < 0.0) {
            (false, false) => continue,
            (true, true) => (0.0, 1.0),
            (true, false) => (0.0, turn),
            (false, true) => (turn, 1.0),
        };
        let covered = inside_shares(&other.patch, a, b).into_iter();
        hidden.extend(
            covered.map(|(from, to)| (from.max(behind.0), to.min(behind.1))).filter(|(from, to)| to - from > 1e-9),
        );
    }
    hidden.sort_by(|p, q| p.0.total_cmp(&q.0));
    let at = |t: f64| [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    let length = (b[0] - a[0]).hypot(b[1] - a[1]);
    let (mut from, mut left) = (0.0_f64, Vec::new());
    for (start, end) in hidden.into_iter().chain([(1.0, 1.0)]) {
        if (start - from) * length > 0.8 {
            left.push([at(from), at(start)]);
        }
        from = from.max(end);
    }
    left
}
