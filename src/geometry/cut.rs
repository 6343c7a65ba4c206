//! A sheet cut in two along a straight line: true arcs stay arcs, and every edge keeps what is known of it.
//!
//! The pieces are cut out of the whole, never drawn anew, so that their areas add up to it by construction.

use super::window::{along, crossings};
use super::{LegPoint, Outline, Vertex};
use std::f64::consts::TAU;

/// A corner of a ring, and what is known of the edge that leaves it.
#[derive(Clone, Copy, Debug)]
pub struct Step<T> {
    /// The corner, and how the edge that leaves it bends.
    pub at: Vertex,
    /// The edge.
    pub side: T,
}

/// A closed ring of edges with the material to the left of travel: outer ones counter-clockwise, holes clockwise.
pub type Ring<T> = Vec<Step<T>>;

/// What lies left and what lies right of a cut.
pub type Halves<T> = (Vec<Ring<T>>, Vec<Ring<T>>);

/// Corners nearer to the cut than this lie on it, mm.
const ON: f64 = 1e-7;
/// Places on the cut nearer than this are one, mm.
const SAME: f64 = 1e-6;
/// Rings with less area than this are slivers of rounding, mm2.
const SLIVER: f64 = 1e-6;

/// A ring as an outline.
pub fn outline_of<T>(ring: &Ring<T>) -> Outline {
    Outline { vertices: ring.iter().map(|step| step.at).collect() }
}

/// A stretch of a ring between two places on the cut, or one of the two sides of the cut itself.
struct Chain<T> {
    steps: Vec<Step<T>>,
    starts: usize,
    ends: usize,
    leaves: (f64, f64),
    arrives: (f64, f64),
    /// A side of the cut: with it (the material on its left lies left of the cut), or against it.
    cut: Option<bool>,
}

/// An edge, or a part of it between two places on the cut.
#[derive(Clone, Copy)]
struct Part<T> {
    from: Vertex,
    to: Vertex,
    side: T,
    on: (Option<f64>, Option<f64>),
    /// It starts at a crossing, not at a corner.
    crosses: bool,
}

/// Cuts rings along the line through two points wherever that runs through material and over some of the stretch between
/// them. `side` is what is known of the new edges. `None` where nothing is cut, or nothing falls apart.
pub fn cut<T: Copy>(rings: &[Ring<T>], from: (f64, f64), to: (f64, f64), side: T) -> Option<Halves<T>> {
    let long = (to.0 - from.0).hypot(to.1 - from.1);
    if long < SAME {
        return None;
    }
    let way = ((to.0 - from.0) / long, (to.1 - from.1) / long);
    let place = |t: f64| (from.0 + t * way.0, from.1 + t * way.1);
    let local = |v: &Vertex| {
        let (x, y) = (v.x - from.0, v.y - from.1);
        Vertex { x: x * way.0 + y * way.1, y: y * way.0 - x * way.1, bulge: v.bulge }
    };
    let parts: Vec<Vec<Part<T>>> = rings.iter().map(|ring| parts(ring, &local, &place)).collect();
    let mut places: Vec<f64> = parts.iter().flatten().filter_map(|part| part.on.0).collect();
    places.sort_by(f64::total_cmp);
    places.dedup_by(|a, b| (*a - *b).abs() < SAME);
    let index = |t: f64| {
        let after = places.partition_point(|&other| other < t);
        let nearer = |k: &usize| places.get(*k).map_or(f64::INFINITY, |other| (other - t).abs());
        if after > 0 && nearer(&(after - 1)) < nearer(&after) { after - 1 } else { after }
    };
    let outlines: Vec<Outline> = rings.iter().map(outline_of).collect();
    let is_material = |t: f64| {
        let point = LegPoint::new(place(t).0, place(t).1);
        let mut inside = false;
        for outline in outlines.iter().filter(|outline| outline.contains(point)) {
            if outline.area() < 0.0 {
                return false;
            }
            inside = true;
        }
        inside
    };
    // A cut that follows an edge of the sheet cuts nothing there.
    let is_edge = |k: usize| {
        parts.iter().flatten().filter(|part| part.from.bulge == 0.0).any(|part| {
            let ends = part.on.0.map(index).zip(part.on.1.map(index));
            ends == Some((k, k + 1)) || ends == Some((k + 1, k))
        })
    };
    let cuts: Vec<usize> = (1..places.len())
        .map(|k| k - 1)
        .filter(|&k| {
            let (a, b) = (places[k], places[k + 1]);
            b.min(long) - a.max(0.0) > SAME && !is_edge(k) && is_material((a + b) / 2.0)
        })
        .collect();
    if cuts.is_empty() {
        return None;
    }
    let touched = |k: usize| cuts.iter().any(|&cut| cut == k || cut + 1 == k);
    let at = |k: usize| {
        let found = parts.iter().flatten().find(|part| part.on.0.is_some_and(|t| index(t) == k));
        found.map_or_else(|| Vertex { x: place(places[k]).0, y: place(places[k]).1, bulge: 0.0 }, |part| part.from)
    };
    let mut chains: Vec<Chain<T>> = Vec::new();
    let mut whole: Vec<Ring<T>> = Vec::new();
    for (parts, ring) in parts.iter().zip(rings) {
        let starts = |part: &Part<T>| part.on.0.map(index).filter(|&k| touched(k));
        let Some(first) = parts.iter().position(|part| starts(part).is_some()) else {
            whole.push(ring.clone());
            continue;
        };
        for part in parts[first..].iter().chain(&parts[..first]) {
            let step = Step { at: part.from, side: part.side };
            match (starts(part), chains.last_mut()) {
                // Nothing is cut at this crossing: the edge goes on.
                (None, Some(Chain { steps, .. })) if part.crosses => {
                    if let Some(last) = steps.last_mut() {
                        last.at.bulge = (last.at.bulge.atan() + part.from.bulge.atan()).tan();
                    }
                }
                (None, Some(chain)) => chain.steps.push(step),
                (starts, _) => chains.push(Chain {
                    steps: vec![step],
                    starts: starts.unwrap_or(0),
                    ends: 0,
                    leaves: tangents(part.from, part.to).0,
                    arrives: (0.0, 0.0),
                    cut: None,
                }),
            }
            if let Some(chain) = chains.last_mut() {
                chain.ends = part.on.1.map_or(0, index);
                chain.arrives = tangents(part.from, part.to).1;
            }
        }
    }
    let line = |a: usize, b: usize, with: bool, way: (f64, f64)| Chain {
        steps: vec![Step { at: Vertex { bulge: 0.0, ..at(a) }, side }],
        starts: a,
        ends: b,
        leaves: way,
        arrives: way,
        cut: Some(with),
    };
    for &k in &cuts {
        chains.push(line(k, k + 1, true, way));
        chains.push(line(k + 1, k, false, (-way.0, -way.1)));
    }
    halves(&chains, whole)
}

/// The edges of a ring, parted where they cross the cut.
fn parts<T: Copy>(
    ring: &Ring<T>,
    local: &impl Fn(&Vertex) -> Vertex,
    place: &impl Fn(f64) -> (f64, f64),
) -> Vec<Part<T>> {
    let mut parts = Vec::with_capacity(ring.len());
    for (index, step) in ring.iter().enumerate() {
        let next = &ring[(index + 1) % ring.len()];
        let (a, b) = (local(&step.at), local(&next.at));
        let on = |v: &Vertex| (v.y.abs() < ON).then_some(v.x);
        let mut shares = crossings(a, b, 0.0, false);
        shares.sort_by(f64::total_cmp);
        shares.retain(|&share| {
            let crossed = along(a, b, share);
            let off = |v: &Vertex| on(v).is_none() || (v.x - crossed.x).hypot(v.y - crossed.y) > SAME;
            off(&a) && off(&b)
        });
        let (mut gone, mut from, mut starts) = (0.0, step.at, on(&a));
        for share in shares.into_iter().chain([1.0]) {
            let (to, ends) = if share == 1.0 {
                (next.at, on(&b))
            } else {
                let t = along(a, b, share).x;
                let (x, y) = place(t);
                (Vertex { x, y, bulge: 0.0 }, Some(t))
            };
            let bulge = (step.at.bulge.atan() * (share - gone)).tan();
            parts.push(Part {
                from: Vertex { bulge, ..from },
                to,
                side: step.side,
                on: (starts, ends),
                crosses: gone > 0.0,
            });
            (gone, from, starts) = (share, to, ends);
        }
    }
    parts
}

/// What an arc leans off its tangent just beside its end, radians: it tells an arc from a straight line that it touches.
const LEAN: f64 = 1e-7;

/// The directions in which an edge leaves and arrives.
fn tangents(a: Vertex, b: Vertex) -> ((f64, f64), (f64, f64)) {
    let lean = if a.bulge == 0.0 { 0.0 } else { LEAN * a.bulge.signum() };
    let half = 2.0 * a.bulge.atan() - lean;
    let way = (b.x - a.x, b.y - a.y);
    let turned = |by: f64| {
        let (sin, cos) = by.sin_cos();
        (way.0 * cos - way.1 * sin, way.0 * sin + way.1 * cos)
    };
    (turned(-half), turned(half))
}

/// Walks round the faces that the chains enclose, and sorts them by the side of the cut that they lie on.
fn halves<T: Copy>(chains: &[Chain<T>], whole: Vec<Ring<T>>) -> Option<Halves<T>> {
    let (mut left, mut right): Halves<T> = (Vec::new(), Vec::new());
    let mut used = vec![false; chains.len()];
    while let Some(first) = used.iter().position(|used| !used) {
        let mut ring: Ring<T> = Vec::new();
        let (mut here, mut sides) = (first, (false, false));
        loop {
            used[here] = true;
            ring.extend_from_slice(&chains[here].steps);
            match chains[here].cut {
                Some(true) => sides.0 = true,
                Some(false) => sides.1 = true,
                None => {}
            }
            let arrives = chains[here].arrives;
            let back = (-arrives.1).atan2(-arrives.0);
            // The sharpest turn to the left keeps to one face.
            let turn = |k: usize| {
                let clockwise = (back - chains[k].leaves.1.atan2(chains[k].leaves.0)).rem_euclid(TAU);
                if clockwise < 1e-9 { TAU } else { clockwise }
            };
            let open = |k: &usize| chains[*k].starts == chains[here].ends && (*k == first || !used[*k]);
            let next = (0..chains.len()).filter(open).min_by(|&a, &b| turn(a).total_cmp(&turn(b)))?;
            if next == first {
                break;
            }
            here = next;
        }
        tidy(&mut ring);
        if outline_of(&ring).area().abs() < SLIVER {
            continue;
        }
        match sides {
            (true, true) => return None,
            (true, false) => left.push(ring),
            _ => right.push(ring),
        }
    }
    let lies_left = |ring: &Ring<T>| {
        let Some(step) = ring.first() else { return false };
        let point = LegPoint::new(step.at.x, step.at.y);
        let holds = |other: &&Ring<T>| outline_of(other).area() > 0.0 && outline_of(other).contains(point);
        outline_of(ring).area() < 0.0 && left.iter().any(|ring| holds(&ring))
    };
    let (of_left, of_right): Halves<T> = whole.into_iter().partition(lies_left);
    left.extend(of_left);
    right.extend(of_right);
    (!left.is_empty() && !right.is_empty()).then_some((left, right))
}

/// Without edges of no length.
fn tidy<T>(ring: &mut Ring<T>) {
    let near = |a: &Step<T>, b: &Step<T>| (a.at.x - b.at.x).hypot(a.at.y - b.at.y) < ON;
    let mut at = 0;
    while ring.len() > 2 && at < ring.len() {
        let next = (at + 1) % ring.len();
        if near(&ring[at], &ring[next]) {
            ring.remove(at);
        } else {
            at += 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Ring, Step, cut, outline_of};
    use crate::geometry::Outline;

    fn ring(outline: &Outline, side: u8) -> Ring<u8> {
        outline.vertices.iter().map(|&at| Step { at, side }).collect()
    }

    fn area(rings: &[Ring<u8>]) -> f64 {
        rings.iter().map(|ring| outline_of(ring).area()).sum()
    }

    #[test]
    fn halves_add_up_wherever_and_however_a_sheet_is_cut() {
        let sheet = Outline::from_points([
            (0.0, 0.0),
            (40.0, 0.0),
            (40.0, 20.0),
            (60.0, 20.0),
            (60.0, 0.0),
            (100.0, 0.0),
            (100.0, 40.0),
            (0.0, 40.0),
        ])
        .rounded(|k| if k == 5 { 6.0 } else { 2.0 });
        let rings = [
            ring(&sheet, 1),
            ring(&Outline::from_circle(20.0, 20.0, 8.0).reversed(), 2),
            ring(&Outline::from_corners(75.0, 10.0, 90.0, 30.0).rounded(|_| 3.0).reversed(), 3),
        ];
        for k in 0..400 {
            let (a, b) = (f64::from(k % 20) * 5.0, f64::from(k / 20) * 5.0);
            let Some((left, right)) = cut(&rings, (a, -1.0), (b, 41.0), 9) else {
                // Only along an edge, or past the sheet.
                assert!(a == b && (a == 0.0 || a == 100.0), "{a} {b}");
                continue;
            };
            let total = area(&left) + area(&right);
            assert!((total - area(&rings)).abs() < 1e-6, "{a} {b}: {total}");
        }
    }

    #[test]
    fn a_cut_along_an_edge_begins_where_the_edge_ends() {
        let ell =
            Outline::from_points([(0.0, 0.0), (20.0, 0.0), (20.0, -30.0), (30.0, -30.0), (30.0, 10.0), (0.0, 10.0)]);
        let (left, right) = cut(&[ring(&ell, 1)], (20.0, 0.0), (30.0, 0.0), 9).unwrap();
        assert!((area(&left) - 300.0).abs() < 1e-9 && (area(&right) - 300.0).abs() < 1e-9);
        assert_eq!(left[0].iter().filter(|step| step.side == 9).count(), 1);
    }

    #[test]
    fn a_cut_that_parts_nothing_is_none() {
        let ring = ring(&Outline::from_corners(0.0, 0.0, 10.0, 10.0), 1);
        assert!(cut(std::slice::from_ref(&ring), (20.0, 0.0), (20.0, 5.0), 9).is_none());
        assert!(cut(&[ring], (0.0, 0.0), (0.0, 10.0), 9).is_none());
    }
}
