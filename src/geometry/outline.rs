//! A closed outline of straight edges and true arcs.

use kurbo::{Arc, BezPath, Shape};

use super::Point;

/// A corner of an outline and how the edge that leaves it bends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vertex {
    /// x, mm.
    pub x: f64,
    /// y, mm.
    pub y: f64,
    /// Tangent of a quarter of the included angle of the arc to the next corner: 0 is straight,
    /// positive bends counter-clockwise (y up), 1 is half a circle.
    pub bulge: f64,
}

/// A closed outline, its corners in order; counter-clockwise (y up) encloses a positive area.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outline {
    /// The corners.
    pub vertices: Vec<Vertex>,
}

impl Outline {
    /// Straight edges through these points, mm.
    pub fn from_points(points: impl IntoIterator<Item = (f64, f64)>) -> Outline {
        Outline { vertices: points.into_iter().map(|(x, y)| Vertex { x, y, bulge: 0.0 }).collect() }
    }

    /// A rectangle between two corners, counter-clockwise from the lower left, mm.
    pub fn from_corners(x0: f64, y0: f64, x1: f64, y1: f64) -> Outline {
        let (x0, x1) = (x0.min(x1), x0.max(x1));
        let (y0, y1) = (y0.min(y1), y0.max(y1));
        Outline::from_points([(x0, y0), (x1, y0), (x1, y1), (x0, y1)])
    }

    /// A circle of two half arcs, mm.
    pub fn from_circle(x: f64, y: f64, radius: f64) -> Outline {
        let half = |x, bulge| Vertex { x, y, bulge };
        Outline { vertices: vec![half(x + radius, 1.0), half(x - radius, 1.0)] }
    }

    /// The same with its straight corners rounded: `radius_at(index)` mm, 0 leaves a corner sharp. A radius
    /// is held to what half of the shorter neighbouring edge allows. Corners next to arcs stay.
    pub fn rounded(&self, radius_at: impl Fn(usize) -> f64) -> Outline {
        let count = self.vertices.len();
        let mut vertices = Vec::with_capacity(count * 2);
        for (index, here) in self.vertices.iter().enumerate() {
            let before = self.vertices[(index + count - 1) % count];
            let after = self.vertices[(index + 1) % count];
            let radius = radius_at(index);
            if radius <= 0.0 || before.bulge != 0.0 || here.bulge != 0.0 {
                vertices.push(*here);
                continue;
            }
            let (ax, ay) = (before.x - here.x, before.y - here.y);
            let (bx, by) = (after.x - here.x, after.y - here.y);
            let (a, b) = (ax.hypot(ay), bx.hypot(by));
            let cross = ax * by - ay * bx;
            if a <= 0.0 || b <= 0.0 || cross.abs() < 1e-9 * a * b {
                vertices.push(*here);
                continue;
            }
            let between = ((ax * bx + ay * by) / (a * b)).clamp(-1.0, 1.0).acos();
            let trim = (radius / (between / 2.0).tan()).min(a / 2.0).min(b / 2.0);
            let turn = (std::f64::consts::PI - between) / 4.0;
            // A left turn has the edge before it on its right: cross < 0.
            let bulge = if cross < 0.0 { turn.tan() } else { -turn.tan() };
            vertices.push(Vertex { x: here.x + ax / a * trim, y: here.y + ay / a * trim, bulge });
            vertices.push(Vertex { x: here.x + bx / b * trim, y: here.y + by / b * trim, bulge: 0.0 });
        }
        Outline { vertices }
    }

    /// Each edge as start, end and bulge.
    pub fn edges(&self) -> impl Iterator<Item = (Vertex, Vertex)> + '_ {
        let count = self.vertices.len();
        (0..count).map(move |index| (self.vertices[index], self.vertices[(index + 1) % count]))
    }

    /// Enclosed area, mm2, arcs exact; positive when counter-clockwise.
    pub fn area(&self) -> f64 {
        self.edges().map(|(a, b)| (a.x * b.y - b.x * a.y) / 2.0 + segment_area(a, b)).sum()
    }

    /// Length of the outline, mm, arcs exact.
    pub fn perimeter(&self) -> f64 {
        self.edges()
            .map(|(a, b)| {
                let chord = (b.x - a.x).hypot(b.y - a.y);
                if a.bulge == 0.0 {
                    return chord;
                }
                let angle = 4.0 * a.bulge.abs().atan();
                chord / (2.0 * (angle / 2.0).sin()) * angle
            })
            .sum()
    }

    /// First moments of area about the origin (integral of x, integral of y), mm3, arcs exact.
    pub fn moments(&self) -> (f64, f64) {
        let (mut mx, mut my) = (0.0, 0.0);
        for (a, b) in self.edges() {
            let cross = a.x * b.y - b.x * a.y;
            mx += (a.x + b.x) * cross / 6.0;
            my += (a.y + b.y) * cross / 6.0;
            if a.bulge != 0.0 {
                let (area, (cx, cy)) = (segment_area(a, b), segment_centroid(a, b));
                mx += area * cx;
                my += area * cy;
            }
        }
        (mx, my)
    }

    /// Smallest box round it: (x0, y0, x1, y1), mm.
    pub fn bounds(&self) -> (f64, f64, f64, f64) {
        let rect = self.to_path().bounding_box();
        (rect.x0, rect.y0, rect.x1, rect.y1)
    }

    /// Whether a point lies inside.
    ///
    /// Counted with the corners as they are written: a curve's own winding number is off where a corner lies level with
    /// the point, since it cuts its pieces anew.
    pub fn contains<S>(&self, point: Point<S>) -> bool {
        self.edges().map(|(a, b)| super::winding::of_edge(a, b, (point.x, point.y))).sum::<i32>() != 0
    }

    /// Moved by (dx, dy) mm.
    pub fn moved(&self, dx: f64, dy: f64) -> Outline {
        self.mapped(|x, y| (x + dx, y + dy), false)
    }

    /// Mirrored left to right about x = `axis` mm, still counter-clockwise if it was.
    pub fn mirrored(&self, axis: f64) -> Outline {
        self.mapped(|x, y| (2.0 * axis - x, y), true)
    }

    /// Every corner through `map`; `flips` says that the map turns the plane over (order and bulges are reversed).
    pub fn mapped(&self, map: impl Fn(f64, f64) -> (f64, f64), flips: bool) -> Outline {
        let vertices: Vec<Vertex> = self
            .vertices
            .iter()
            .map(|v| {
                let (x, y) = map(v.x, v.y);
                Vertex { x, y, bulge: v.bulge }
            })
            .collect();
        if flips {
            let turned = Outline { vertices: vertices.iter().map(|v| Vertex { bulge: -v.bulge, ..*v }).collect() };
            turned.reversed()
        } else {
            Outline { vertices }
        }
    }

    /// Walked the other way round.
    pub fn reversed(&self) -> Outline {
        let count = self.vertices.len();
        let vertices = (0..count)
            .rev()
            .map(|index| Vertex { bulge: -self.vertices[(index + count - 1) % count].bulge, ..self.vertices[index] })
            .collect();
        Outline { vertices }
    }

    /// As a curve, arcs as cubics that stay within a ten-thousandth of a millimetre.
    pub fn to_path(&self) -> BezPath {
        let mut path = BezPath::new();
        for (index, (a, b)) in self.edges().enumerate() {
            if index == 0 {
                path.move_to((a.x, a.y));
            }
            match arc_of(a, b) {
                None => path.line_to((b.x, b.y)),
                Some(arc) => arc.to_cubic_beziers(1e-4, |c1, c2, end| path.curve_to(c1, c2, end)),
            }
        }
        path.close_path();
        path
    }

    /// As points, arcs cut into chords that stay within `tolerance` mm.
    pub fn flattened(&self, tolerance: f64) -> Vec<(f64, f64)> {
        let mut points = Vec::new();
        for (a, b) in self.edges() {
            points.push((a.x, a.y));
            let Some(arc) = arc_of(a, b) else { continue };
            let step = 2.0 * (1.0 - (tolerance / arc.radii.x).min(1.0)).acos();
            let count = (arc.sweep_angle.abs() / step.max(1e-3)).ceil().max(2.0) as usize;
            for k in 1..count {
                let angle = arc.start_angle + arc.sweep_angle * k as f64 / count as f64;
                points.push((arc.center.x + arc.radii.x * angle.cos(), arc.center.y + arc.radii.x * angle.sin()));
            }
        }
        points
    }
}

/// Area between an edge's chord and its arc, with the sign of its bulge, mm2.
fn segment_area(a: Vertex, b: Vertex) -> f64 {
    if a.bulge == 0.0 {
        return 0.0;
    }
    let angle = 4.0 * a.bulge.abs().atan();
    let radius = (b.x - a.x).hypot(b.y - a.y) / (2.0 * (angle / 2.0).sin());
    a.bulge.signum() * radius * radius * (angle - angle.sin()) / 2.0
}

/// Centroid of the area between an edge's chord and its arc, mm.
fn segment_centroid(a: Vertex, b: Vertex) -> (f64, f64) {
    let Some(arc) = arc_of(a, b) else { return ((a.x + b.x) / 2.0, (a.y + b.y) / 2.0) };
    let (radius, angle) = (arc.radii.x, arc.sweep_angle.abs());
    let out = 4.0 * radius * (angle / 2.0).sin().powi(3) / (3.0 * (angle - angle.sin()));
    let middle = arc.start_angle + arc.sweep_angle / 2.0;
    (arc.center.x + out * middle.cos(), arc.center.y + out * middle.sin())
}

/// The arc from one corner to the next, or `None` for a straight edge.
pub(super) fn arc_of(a: Vertex, b: Vertex) -> Option<Arc> {
    if a.bulge == 0.0 {
        return None;
    }
    let sweep = 4.0 * a.bulge.atan();
    let (dx, dy) = (b.x - a.x, b.y - a.y);
    let chord = dx.hypot(dy);
    let radius = chord / (2.0 * (sweep.abs() / 2.0).sin());
    // The centre lies to the left of the chord for a positive bulge under 1.
    let off = (1.0 - a.bulge * a.bulge) / (4.0 * a.bulge);
    let (cx, cy) = ((a.x + b.x) / 2.0 - dy * off, (a.y + b.y) / 2.0 + dx * off);
    let start = (a.y - cy).atan2(a.x - cx);
    Some(Arc::new((cx, cy), (radius, radius), start, sweep, 0.0))
}

#[cfg(test)]
mod tests {
    use super::Outline;
    use std::f64::consts::PI;

    #[test]
    fn a_circle_has_its_area_perimeter_and_centroid() {
        let circle = Outline::from_circle(10.0, -4.0, 3.0);
        assert!((circle.area() - PI * 9.0).abs() < 1e-9);
        assert!((circle.perimeter() - PI * 6.0).abs() < 1e-9);
        let (mx, my) = circle.moments();
        assert!((mx / circle.area() - 10.0).abs() < 1e-9 && (my / circle.area() + 4.0).abs() < 1e-9);
    }

    #[test]
    fn rounding_takes_four_corners_off() {
        let plain = Outline::from_corners(0.0, 0.0, 40.0, 20.0);
        let round = plain.rounded(|_| 5.0);
        assert!((plain.area() - round.area() - (4.0 - PI) * 25.0).abs() < 1e-9);
        assert!((round.perimeter() - (120.0 - 40.0 + 10.0 * PI)).abs() < 1e-9);
    }

    #[test]
    fn an_inside_corner_rounds_the_other_way() {
        let ell =
            Outline::from_points([(0.0, 0.0), (30.0, 0.0), (30.0, 30.0), (20.0, 30.0), (20.0, 10.0), (0.0, 10.0)]);
        let round = ell.rounded(|index| if index == 4 { 4.0 } else { 0.0 });
        assert!((round.area() - ell.area() - (4.0 - PI) * 4.0).abs() < 1e-9);
    }

    #[test]
    fn a_point_level_with_a_corner_lies_inside_all_the_same() {
        let level = [(-25.4, -25.4), (1803.3999999999999, -25.4), (1803.3999999999999, -1397.0)];
        let ell =
            Outline::from_points(level.into_iter().chain([(2632.075, -1397.0), (2632.075, 803.275), (-25.4, 803.275)]));
        let at = |x: f64, y: f64| ell.contains(crate::geometry::LegPoint::new(x, y));
        assert!(at(2217.7, -25.4) && at(2217.7, -25.3) && at(2217.7, -25.5));
        assert!(!at(100.0, -25.5) && !at(2700.0, -25.4) && !at(-30.0, -25.4) && !at(1800.0, -1397.0));
    }

    #[test]
    fn points_round_arcs_are_told_apart() {
        let shape = Outline::from_corners(0.0, 0.0, 40.0, 20.0).rounded(|_| 8.0);
        let circle = Outline::from_circle(10.0, -4.0, 3.0);
        for k in 0..720 {
            let (sin, cos) = (f64::from(k) * PI / 360.0).sin_cos();
            for (radius, inside) in [(2.999_999, true), (3.000_001, false)] {
                let point = crate::geometry::LegPoint::new(10.0 + radius * cos, -4.0 + radius * sin);
                assert_eq!(circle.contains(point), inside, "{k} {radius}");
            }
            let point = crate::geometry::LegPoint::new(8.0 + 7.999 * cos, 8.0 + 7.999 * sin);
            assert!(shape.contains(point), "{k}");
        }
        assert!(!shape.contains(crate::geometry::LegPoint::new(2.3, 2.3)));
    }

    #[test]
    fn mirroring_twice_and_reversing_twice_change_nothing() {
        let shape = Outline::from_corners(0.0, 0.0, 40.0, 20.0).rounded(|i| i as f64);
        assert!((shape.mirrored(7.0).area() - shape.area()).abs() < 1e-9);
        assert_eq!(shape.reversed().reversed(), shape);
        assert!((shape.reversed().area() + shape.area()).abs() < 1e-9);
    }
}
