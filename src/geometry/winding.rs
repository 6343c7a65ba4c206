//! How often an edge winds round a point.

use super::Vertex;
use super::outline::arc_of;
use std::f64::consts::{FRAC_PI_2, PI};

/// What an edge adds to the winding number of a point: crossings of the level line from the point to the left, upwards -1,
/// downwards 1. A crossing at a corner counts for the edge that lies above it.
pub fn of_edge(a: Vertex, b: Vertex, p: (f64, f64)) -> i32 {
    let Some(arc) = arc_of(a, b) else {
        return crossing(a.y, b.y, p.1, || {
            let left = (b.x - a.x) * (p.1 - a.y) - (p.0 - a.x) * (b.y - a.y);
            if b.y > a.y { left <= 0.0 } else { left >= 0.0 }
        });
    };
    let (centre, radius) = (arc.center, arc.radii.x);
    // Stretches on which y only rises or only falls: between the top and the bottom of the circle.
    let (start, end) = (arc.start_angle, arc.start_angle + arc.sweep_angle);
    let (low, high) = (start.min(end), start.max(end));
    let first = ((low + FRAC_PI_2) / PI).ceil() as i64;
    let turns = (first..).map(|k| k as f64 * PI - FRAC_PI_2).take_while(|&angle| angle < high);
    let mut stops: Vec<f64> = std::iter::once(low).chain(turns.filter(|&angle| angle > low)).collect();
    stops.push(high);
    let y = |angle: f64| {
        // The corners are exact; the ends of an arc as an arc are not.
        if angle == start {
            a.y
        } else if angle == end {
            b.y
        } else {
            centre.y + radius * angle.sin()
        }
    };
    let mut sum = 0;
    for pair in stops.windows(2) {
        let (from, to) = if arc.sweep_angle > 0.0 { (pair[0], pair[1]) } else { (pair[1], pair[0]) };
        let right = ((pair[0] + pair[1]) / 2.0).cos() > 0.0;
        sum += crossing(y(from), y(to), p.1, || {
            let off = (radius * radius - (p.1 - centre.y) * (p.1 - centre.y)).max(0.0).sqrt();
            p.0 >= if right { centre.x + off } else { centre.x - off }
        });
    }
    sum
}

/// A crossing of a stretch that goes from one level to another, if it lies left of the point.
fn crossing(from: f64, to: f64, level: f64, left: impl Fn() -> bool) -> i32 {
    let up = from <= level && level < to;
    let down = to <= level && level < from;
    match (up, down) {
        (true, _) if left() => -1,
        (_, true) if left() => 1,
        _ => 0,
    }
}
