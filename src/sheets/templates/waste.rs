//! The band of hatch along a cut on the side that falls off.

use super::plan::Window;
use crate::geometry::Region;

/// Width of the band, mm.
pub const BAND: f64 = 9.0;
/// From line to line, mm.
const STEP: f64 = 2.2;

/// Level strokes of a band at 45 degrees on the outside of a region, within a window; (x0, y0, x1, y1). Their phase is
/// fixed to the part, so that they go on from tile to tile.
pub fn strokes(region: &Region, window: &Window) -> Vec<[f64; 4]> {
    let half = std::f64::consts::FRAC_1_SQRT_2;
    // Turned so that the hatch runs along t.
    let turn = |x: f64, y: f64| ((x + y) * half, (y - x) * half);
    let back = |t: f64, n: f64| ((t - n) * half, (t + n) * half);
    let rings: Vec<Vec<(f64, f64)>> = region
        .outlines()
        .map(|outline| outline.flattened(0.05).into_iter().map(|(x, y)| turn(x, y)).collect())
        .collect();
    let corners = [(window.x0, window.y0), (window.x1, window.y0), (window.x1, window.y1), (window.x0, window.y1)];
    let levels = corners.map(|(x, y)| turn(x, y).1);
    let (low, high) = levels.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), n| (a.min(*n), b.max(*n)));
    let mut strokes = Vec::new();
    let mut level = (low / STEP).ceil();
    while level * STEP <= high {
        let n = level * STEP;
        level += 1.0;
        let (mut near, mut crossings) = (Vec::new(), Vec::new());
        for ring in &rings {
            for (index, &a) in ring.iter().enumerate() {
                let b = ring[(index + 1) % ring.len()];
                near.extend(reach(a, b, n));
                if (a.1 <= n) != (b.1 <= n) {
                    crossings.push(a.0 + (b.0 - a.0) * (n - a.1) / (b.1 - a.1));
                }
            }
        }
        if near.is_empty() {
            continue;
        }
        crossings.sort_by(f64::total_cmp);
        let inside: Vec<(f64, f64)> = crossings.chunks_exact(2).map(|pair| (pair[0], pair[1])).collect();
        let (from, to) = across(window, n);
        for (t0, t1) in less(joined(near), &inside) {
            let (t0, t1) = (t0.max(from), t1.min(to));
            if t1 - t0 > 0.3 {
                let ((x0, y0), (x1, y1)) = (back(t0, n), back(t1, n));
                strokes.push([x0, y0, x1, y1]);
            }
        }
    }
    strokes
}

/// Where the line at level n is nearer than the band's width to a straight edge.
fn reach(a: (f64, f64), b: (f64, f64), n: f64) -> Option<(f64, f64)> {
    if n < a.1.min(b.1) - BAND || n > a.1.max(b.1) + BAND {
        return None;
    }
    let mut span: Option<(f64, f64)> = None;
    let mut take = |t0: f64, t1: f64| {
        span = Some(span.map_or((t0, t1), |(low, high)| (low.min(t0), high.max(t1))));
    };
    for end in [a, b] {
        let off = n - end.1;
        if off.abs() < BAND {
            let half = (BAND * BAND - off * off).sqrt();
            take(end.0 - half, end.0 + half);
        }
    }
    // The four sides of the box along the edge.
    let (dt, dn) = (b.0 - a.0, b.1 - a.1);
    let length = dt.hypot(dn);
    if length > 1e-9 {
        let (st, sn) = (-dn / length * BAND, dt / length * BAND);
        let corners = [(a.0 + st, a.1 + sn), (b.0 + st, b.1 + sn), (b.0 - st, b.1 - sn), (a.0 - st, a.1 - sn)];
        for k in 0..4 {
            let (p, q) = (corners[k], corners[(k + 1) % 4]);
            if (p.1 <= n) != (q.1 <= n) {
                let t = p.0 + (q.0 - p.0) * (n - p.1) / (q.1 - p.1);
                take(t, t);
            }
        }
    }
    span
}

fn joined(mut spans: Vec<(f64, f64)>) -> Vec<(f64, f64)> {
    spans.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut joined: Vec<(f64, f64)> = Vec::new();
    for span in spans {
        match joined.last_mut() {
            Some(last) if span.0 <= last.1 => last.1 = last.1.max(span.1),
            _ => joined.push(span),
        }
    }
    joined
}

/// Spans less what lies inside the material.
fn less(spans: Vec<(f64, f64)>, inside: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut left = Vec::new();
    for (mut from, to) in spans {
        for &(a, b) in inside {
            if b <= from || a >= to {
                continue;
            }
            if a > from {
                left.push((from, a));
            }
            from = b;
        }
        if from < to {
            left.push((from, to));
        }
    }
    left
}

/// Where the line at level n runs through a window.
fn across(window: &Window, n: f64) -> (f64, f64) {
    // x = (t - n) / sqrt 2 and y = (t + n) / sqrt 2 both lie in the window.
    let root = std::f64::consts::SQRT_2;
    ((window.x0 * root + n).max(window.y0 * root - n), (window.x1 * root + n).min(window.y1 * root - n))
}

#[cfg(test)]
mod tests {
    use super::{BAND, strokes};
    use crate::geometry::{LegPoint, Outline, Region};
    use crate::sheets::templates::plan::Window;

    #[test]
    fn the_hatch_lies_outside_the_material_and_near_its_edge() {
        let region = Region {
            outer: Outline::from_corners(0.0, 0.0, 200.0, 100.0).rounded(|_| 12.0),
            holes: vec![Outline::from_circle(60.0, 50.0, 30.0)],
        };
        let window = Window { x0: -20.0, y0: -20.0, x1: 150.0, y1: 120.0 };
        let strokes = strokes(&region, &window);
        assert!(strokes.len() > 100);
        for [x0, y0, x1, y1] in strokes {
            for share in [0.02, 0.5, 0.98] {
                let (x, y) = (x0 + (x1 - x0) * share, y0 + (y1 - y0) * share);
                let point = LegPoint::new(x, y);
                let material = region.outer.contains(point) && !region.holes[0].contains(point);
                assert!(!material, "{x} {y}");
                assert!(x > -BAND - 0.01 && y > -BAND - 0.01 && x < 150.01 && y < 100.0 + BAND + 0.01);
                let from_middle = (x - 60.0).hypot(y - 50.0);
                assert!(from_middle > 30.0 - BAND - 0.06, "the middle of the hole is white");
            }
        }
    }
}
