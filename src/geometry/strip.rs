//! The part of a region between two upright lines, true arcs kept.

use super::window::{along, crossings};
use super::{Outline, Region, Vertex};

/// Pieces with less area than this are slivers of rounding, mm2.
const SLIVER: f64 = 1e-6;

/// So many spans are each cut from the whole.
const FEW: usize = 12;

impl Region {
    /// What lies between `x0` and `x1`, each connected piece by itself, from left to right.
    pub fn strip(&self, x0: f64, x1: f64) -> Vec<Region> {
        let mut rings: Vec<Outline> = vec![facing(&self.outer, true)];
        rings.extend(self.holes.iter().map(|hole| facing(hole, false)));
        let right = kept(&rings, x0, true);
        regions(kept(&right, x1, false))
    }

    /// [`strip`](Self::strip) for many spans, which follow one another from left to right: halved again and again, so that
    /// the time grows little faster than with the number of spans.
    pub fn strips(&self, spans: &[(f64, f64)]) -> Vec<Vec<Region>> {
        if spans.len() <= FEW {
            return spans.iter().map(|&(x0, x1)| self.strip(x0, x1)).collect();
        }
        let (left, right) = spans.split_at(spans.len() / 2);
        let half = |spans: &[(f64, f64)]| {
            let reach = spans.first().map_or(0.0, |span| span.0)..spans.last().map_or(0.0, |span| span.1);
            let mut all = vec![Vec::new(); spans.len()];
            for part in self.strip(reach.start, reach.end) {
                for (own, found) in all.iter_mut().zip(part.strips(spans)) {
                    own.extend(found);
                }
            }
            all
        };
        let mut all = half(left);
        all.extend(half(right));
        all
    }
}

/// The ring turned counter-clockwise, or clockwise.
fn facing(ring: &Outline, counter_clockwise: bool) -> Outline {
    if (ring.area() > 0.0) == counter_clockwise { ring.clone() } else { ring.reversed() }
}

/// Rings (material to the left of travel) cut at x = `at`; what is right of it stays, or what is left.
fn kept(rings: &[Outline], at: f64, right: bool) -> Vec<Outline> {
    let inside = |vertex: &Vertex| if right { vertex.x > at } else { vertex.x < at };
    let (mut whole, mut chains) = (Vec::new(), Vec::new());
    for ring in rings {
        let split = split(ring, at);
        if split.iter().all(|(a, b)| inside(&middle(*a, *b))) {
            whole.push(Outline { vertices: split.iter().map(|(a, _)| *a).collect() });
            continue;
        }
        // Begin where the ring comes in, so that no chain is broken by where the ring was written to start.
        let count = split.len();
        let comes_in = |k: usize| {
            let (before, here) = (split[(k + count - 1) % count], split[k]);
            !inside(&middle(before.0, before.1)) && inside(&middle(here.0, here.1))
        };
        let Some(first) = (0..count).find(|&k| comes_in(k)) else { continue };
        let mut chain: Vec<Vertex> = Vec::new();
        for k in 0..count {
            let (a, b) = split[(first + k) % count];
            if inside(&middle(a, b)) {
                chain.push(a);
                let next = split[(first + k + 1) % count];
                if !inside(&middle(next.0, next.1)) {
                    chain.push(Vertex { bulge: 0.0, ..b });
                    chains.push(std::mem::take(&mut chain));
                }
            }
        }
    }
    whole.extend(joined(chains, right));
    whole.retain(|ring| ring.area().abs() > SLIVER);
    whole
}

/// Edges of a ring, those that cross x = `at` split there.
fn split(ring: &Outline, at: f64) -> Vec<(Vertex, Vertex)> {
    let mut pieces = Vec::new();
    for (a, b) in ring.edges() {
        let mut shares = crossings(a, b, at, true);
        shares.sort_by(f64::total_cmp);
        let mut from = 0.0;
        let mut start = a;
        for share in shares.into_iter().chain([1.0]) {
            let end = if share == 1.0 { b } else { Vertex { x: at, ..along(a, b, share) } };
            let bulge = (a.bulge.atan() * (share - from)).tan();
            pieces.push((Vertex { bulge, ..start }, end));
            (from, start) = (share, end);
        }
    }
    pieces
}

fn middle(a: Vertex, b: Vertex) -> Vertex {
    along(a, b, 0.5)
}

/// Chains whose ends lie on the cut, joined along it. With the material to the left of travel, what is right of the cut
/// is walked down it and what is left of it is walked up.
fn joined(mut chains: Vec<Vec<Vertex>>, right: bool) -> Vec<Outline> {
    let mut rings = Vec::new();
    while let Some(mut ring) = chains.pop() {
        loop {
            let end = ring[ring.len() - 1].y;
            let ahead = |y: f64| if right { end - y } else { y - end };
            let starts =
                std::iter::once((None, ring[0].y)).chain(chains.iter().enumerate().map(|(k, c)| (Some(k), c[0].y)));
            let next = starts.filter(|(_, y)| ahead(*y) >= -1e-9).min_by(|a, b| ahead(a.1).total_cmp(&ahead(b.1)));
            match next {
                Some((Some(index), _)) => ring.extend(chains.swap_remove(index)),
                _ => break,
            }
        }
        rings.push(tidy(ring));
    }
    rings
}

/// A ring without repeated corners.
fn tidy(ring: Vec<Vertex>) -> Outline {
    let mut vertices: Vec<Vertex> = Vec::with_capacity(ring.len());
    for vertex in ring {
        match vertices.last_mut() {
            Some(last) if (last.x - vertex.x).hypot(last.y - vertex.y) < 1e-9 => *last = vertex,
            _ => vertices.push(vertex),
        }
    }
    while let [first, .., last] = vertices.as_slice()
        && (first.x - last.x).hypot(first.y - last.y) < 1e-9
    {
        vertices.pop();
    }
    Outline { vertices }
}

/// Outer rings with the holes that lie in them, from left to right.
fn regions(rings: Vec<Outline>) -> Vec<Region> {
    let (outer, holes): (Vec<Outline>, Vec<Outline>) = rings.into_iter().partition(|ring| ring.area() > 0.0);
    let mut regions: Vec<Region> = outer.into_iter().map(Region::solid).collect();
    for hole in holes {
        let Some(first) = hole.vertices.first() else { continue };
        let point = super::LegPoint::new(first.x, first.y);
        if let Some(region) = regions.iter_mut().find(|region| region.outer.contains(point)) {
            region.holes.push(hole.reversed());
        }
    }
    regions.sort_by(|a, b| a.outer.bounds().0.total_cmp(&b.outer.bounds().0));
    regions
}

#[cfg(test)]
mod tests {
    use super::{Outline, Region};

    fn sheet() -> Region {
        let outer = Outline::from_points([
            (0.0, 0.0),
            (300.0, 0.0),
            (300.0, 200.0),
            (500.0, 200.0),
            (500.0, 0.0),
            (1000.0, 0.0),
            (1000.0, 400.0),
            (0.0, 400.0),
        ]);
        let outer = outer.rounded(|k| if k == 2 || k == 3 { 20.0 } else { 0.0 });
        let holes = vec![
            Outline::from_circle(700.0, 200.0, 60.0),
            Outline::from_corners(850.0, 50.0, 950.0, 150.0).rounded(|_| 9.0),
        ];
        Region { outer, holes }
    }

    #[test]
    fn the_parts_add_up_to_the_whole_wherever_it_is_cut() {
        let whole = sheet();
        for cut in
            [0.0, 150.0, 300.0, 310.0, 400.0, 495.0, 500.0, 640.0, 641.0, 700.0, 760.0, 850.0, 853.0, 999.0, 1000.0]
        {
            let (left, right) = (whole.strip(-10.0, cut), whole.strip(cut, 1010.0));
            let total: f64 = left.iter().chain(&right).map(Region::area).sum();
            assert!((total - whole.area()).abs() < 1e-6, "at {cut}: {total} of {}", whole.area());
            assert!(left.iter().all(|region| region.outer.bounds().2 <= cut + 1e-9), "at {cut}");
            assert!(right.iter().all(|region| region.outer.bounds().0 >= cut - 1e-9), "at {cut}");
        }
    }

    #[test]
    fn many_spans_at_once_are_each_what_its_strip_alone_is() {
        let whole = sheet();
        let spans: Vec<(f64, f64)> =
            (0..97).map(|k| f64::from(k) * 11.0 - 20.0).map(|from| (from, from + 10.5)).collect();
        let all = whole.strips(&spans);
        assert_eq!(all.len(), spans.len());
        for (&(from, to), own) in spans.iter().zip(&all) {
            let sorted = |parts: &[Region]| {
                let mut parts = parts.to_vec();
                parts.sort_by(|a, b| a.outer.bounds().1.total_cmp(&b.outer.bounds().1));
                parts
            };
            let (own, alone) = (sorted(own), sorted(&whole.strip(from, to)));
            assert_eq!(own.len(), alone.len(), "{from} to {to}");
            for (part, other) in own.iter().zip(&alone) {
                assert!((part.area() - other.area()).abs() < 1e-6, "{from} to {to}");
                let (here, there) = (part.outer.bounds(), other.outer.bounds());
                assert!((here.0 - there.0).abs() < 1e-9 && (here.3 - there.3).abs() < 1e-9, "{from} to {to}");
            }
        }
        assert!(all.iter().any(|parts| parts.len() == 2), "the notch parts some spans");
    }

    #[test]
    fn a_strip_under_a_notch_falls_into_its_pieces() {
        let whole = Region::solid(Outline::from_points([
            (0.0, 0.0),
            (9.0, 0.0),
            (9.0, 9.0),
            (6.0, 9.0),
            (6.0, 3.0),
            (3.0, 3.0),
            (3.0, 9.0),
            (0.0, 9.0),
        ]));
        // Cut level with the notch's sides: a hole through the middle parts nothing, two uprights stay joined below.
        assert_eq!(whole.strip(1.0, 8.0).len(), 1);
        let ring = Region {
            outer: Outline::from_corners(0.0, 0.0, 9.0, 9.0),
            holes: vec![Outline::from_corners(2.0, 2.0, 7.0, 7.0)],
        };
        let parts = ring.strip(3.0, 6.0);
        assert_eq!(parts.len(), 2, "below and above the hole");
        assert!((parts.iter().map(Region::area).sum::<f64>() - 12.0).abs() < 1e-9);
    }
}
