//! What of an outline lies inside a level box, true arcs kept.

use super::outline::arc_of;
use super::{Outline, Vertex};

/// Corners along a line that isn't closed: each bends to the next by its bulge; the last one's doesn't count.
pub type Chain = Vec<Vertex>;

/// The part of an outline inside a box.
#[derive(Clone, Debug, PartialEq)]
pub enum Within {
    /// Nothing of its line.
    Nothing,
    /// All of it.
    Whole,
    /// These pieces of its line, each from where it comes in to where it goes out.
    Parts(Vec<Chain>),
}

impl Outline {
    /// What of the outline's line lies between the corners (x0, y0) and (x1, y1).
    pub fn within(&self, x0: f64, y0: f64, x1: f64, y1: f64) -> Within {
        let mut pieces: Vec<(Vertex, Vertex, bool)> = Vec::new();
        for (a, b) in self.edges() {
            let mut shares: Vec<f64> = [x0, x1].into_iter().flat_map(|at| crossings(a, b, at, true)).collect();
            shares.extend([y0, y1].into_iter().flat_map(|at| crossings(a, b, at, false)));
            shares.sort_by(f64::total_cmp);
            let (mut from, mut start) = (0.0, a);
            for share in shares.into_iter().chain([1.0]) {
                if share - from < 1e-12 {
                    continue;
                }
                let end = if share == 1.0 { b } else { along(a, b, share) };
                let piece = Vertex { bulge: (a.bulge.atan() * (share - from)).tan(), ..start };
                let middle = along(a, b, (from + share) / 2.0);
                let inside = middle.x > x0 && middle.x < x1 && middle.y > y0 && middle.y < y1;
                pieces.push((piece, end, inside));
                (from, start) = (share, end);
            }
        }
        if pieces.iter().all(|piece| piece.2) {
            return if pieces.is_empty() { Within::Nothing } else { Within::Whole };
        }
        let count = pieces.len();
        let Some(first) = (0..count).find(|&k| !pieces[(k + count - 1) % count].2 && pieces[k].2) else {
            return Within::Nothing;
        };
        let mut parts: Vec<Chain> = Vec::new();
        let mut open: Option<Chain> = None;
        for k in 0..count {
            let (a, b, inside) = pieces[(first + k) % count];
            if !inside {
                parts.extend(open.take());
                continue;
            }
            let chain = open.get_or_insert_with(Vec::new);
            // The corner before is where this piece starts.
            chain.pop();
            chain.extend([a, Vertex { bulge: 0.0, ..b }]);
        }
        parts.extend(open);
        Within::Parts(parts)
    }
}

/// Where an edge crosses x = `at` (or y), as shares of its length strictly between its ends.
pub(super) fn crossings(a: Vertex, b: Vertex, at: f64, across_x: bool) -> Vec<f64> {
    let pick = |x: f64, y: f64| if across_x { x } else { y };
    let strictly = |share: &f64| *share > 1e-9 && *share < 1.0 - 1e-9;
    let Some(arc) = arc_of(a, b) else {
        let (p, q) = (pick(a.x, a.y), pick(b.x, b.y));
        return if (p - at) * (q - at) < 0.0 {
            vec![(at - p) / (q - p)].into_iter().filter(strictly).collect()
        } else {
            Vec::new()
        };
    };
    let ratio = (at - pick(arc.center.x, arc.center.y)) / arc.radii.x;
    if ratio.abs() >= 1.0 {
        return Vec::new();
    }
    let angles =
        if across_x { [ratio.acos(), -ratio.acos()] } else { [ratio.asin(), std::f64::consts::PI - ratio.asin()] };
    let share = |angle: f64| {
        let turn = (angle - arc.start_angle) * arc.sweep_angle.signum();
        turn.rem_euclid(std::f64::consts::TAU) / arc.sweep_angle.abs()
    };
    angles.map(share).into_iter().filter(strictly).collect()
}

/// The point at a share of an edge.
pub(super) fn along(a: Vertex, b: Vertex, share: f64) -> Vertex {
    match arc_of(a, b) {
        None => Vertex { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, bulge: 0.0 },
        Some(arc) => {
            let angle = arc.start_angle + arc.sweep_angle * share;
            Vertex {
                x: arc.center.x + arc.radii.x * angle.cos(),
                y: arc.center.y + arc.radii.x * angle.sin(),
                bulge: 0.0,
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Chain, Outline, Within};

    fn length(chain: &Chain) -> f64 {
        chain
            .windows(2)
            .map(|pair| {
                let chord = (pair[1].x - pair[0].x).hypot(pair[1].y - pair[0].y);
                let angle = 4.0 * pair[0].bulge.abs().atan();
                if angle == 0.0 { chord } else { chord / (2.0 * (angle / 2.0).sin()) * angle }
            })
            .sum()
    }

    #[test]
    fn windows_side_by_side_show_all_of_a_line_once() {
        let shape = Outline::from_corners(0.0, 0.0, 200.0, 120.0).rounded(|_| 30.0);
        let circle = Outline::from_circle(90.0, 60.0, 41.0);
        for outline in [shape, circle] {
            let mut total = 0.0;
            for column in -1..6 {
                for row in -1..5 {
                    let (x, y) = (f64::from(column) * 47.0 + 3.0, f64::from(row) * 39.0 - 5.0);
                    match outline.within(x, y, x + 47.0, y + 39.0) {
                        Within::Nothing => {}
                        Within::Whole => total += outline.perimeter(),
                        Within::Parts(parts) => total += parts.iter().map(length).sum::<f64>(),
                    }
                }
            }
            assert!((total - outline.perimeter()).abs() < 1e-6, "{total} of {}", outline.perimeter());
        }
    }

    #[test]
    fn a_window_round_all_of_it_says_so() {
        let circle = Outline::from_circle(0.0, 0.0, 5.0);
        assert_eq!(circle.within(-9.0, -9.0, 9.0, 9.0), Within::Whole);
        assert_eq!(circle.within(-1.0, -1.0, 1.0, 1.0), Within::Nothing);
    }
}
