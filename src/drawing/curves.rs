//! Shapes as cubic curves, for writers whose format knows no arcs.

use kurbo::{Arc, BezPath, Point};

use super::page::{Shape, Step};
use crate::geometry::PaperPoint;

/// How far a curve may stray from its arc, mm: far below what any printer or reader can tell.
const TOLERANCE: f64 = 1e-4;

impl Shape {
    /// The shape in paper mm, y down, arcs as cubics that stray less than a ten-thousandth of a millimetre.
    pub fn to_path(&self) -> BezPath {
        let mut path = BezPath::new();
        match self {
            Shape::Line(a, b) => {
                path.move_to(spot(*a));
                path.line_to(spot(*b));
            }
            Shape::Circle(centre, radius) => {
                path.move_to((centre.x + radius, centre.y));
                let arc = Arc::new(spot(*centre), (*radius, *radius), 0.0, std::f64::consts::TAU, 0.0);
                arc.to_cubic_beziers(TOLERANCE, |a, b, to| path.curve_to(a, b, to));
                path.close_path();
            }
            Shape::Steps(steps) => {
                let mut here = PaperPoint::new(0.0, 0.0);
                let mut start = here;
                for step in steps {
                    match *step {
                        Step::Move(to) => {
                            path.move_to(spot(to));
                            (here, start) = (to, to);
                        }
                        Step::Line(to) => {
                            path.line_to(spot(to));
                            here = to;
                        }
                        Step::Arc { radius, large, clockwise, to } => {
                            add_arc(&mut path, here, to, radius, large, clockwise);
                            here = to;
                        }
                        Step::Close => {
                            path.close_path();
                            here = start;
                        }
                    }
                }
            }
        }
        path
    }
}

fn spot(point: PaperPoint) -> Point {
    Point::new(point.x, point.y)
}

fn add_arc(path: &mut BezPath, a: PaperPoint, b: PaperPoint, radius: f64, large: bool, clockwise: bool) {
    let chord = a.distance(b);
    if chord < 1e-9 {
        return;
    }
    let radius = radius.max(chord / 2.0);
    let off = (radius * radius - chord * chord / 4.0).max(0.0).sqrt();
    // On the paper (y down) a clockwise arc that is the shorter way has its centre to the right of travel.
    let side = if clockwise == large { 1.0 } else { -1.0 };
    let (nx, ny) = ((b.y - a.y) / chord, -(b.x - a.x) / chord);
    let centre = a.towards(b, 0.5).moved(nx * off * side, ny * off * side);
    let start = (a.y - centre.y).atan2(a.x - centre.x);
    let mut sweep = (b.y - centre.y).atan2(b.x - centre.x) - start;
    if clockwise && sweep < 0.0 {
        sweep += std::f64::consts::TAU;
    } else if !clockwise && sweep > 0.0 {
        sweep -= std::f64::consts::TAU;
    }
    let arc = Arc::new(spot(centre), (radius, radius), start, sweep, 0.0);
    let mut curves = Vec::new();
    arc.to_cubic_beziers(TOLERANCE, |c1, c2, to| curves.push((c1, c2, to)));
    // The last curve ends where the step says, to the last bit.
    if let Some(last) = curves.last_mut() {
        last.2 = spot(b);
    }
    for (c1, c2, to) in curves {
        path.curve_to(c1, c2, to);
    }
}

#[cfg(test)]
mod tests {
    use super::{Shape, Step};
    use crate::geometry::PaperPoint;
    use kurbo::{ParamCurve, PathSeg};

    fn strays(shape: &Shape, centre: PaperPoint, radius: f64) -> f64 {
        let mut worst = 0.0_f64;
        for segment in shape.to_path().segments() {
            if let PathSeg::Cubic(cubic) = segment {
                for k in 0..=50 {
                    let p = cubic.eval(f64::from(k) / 50.0);
                    worst = worst.max(((p.x - centre.x).hypot(p.y - centre.y) - radius).abs());
                }
            }
        }
        worst
    }

    #[test]
    fn large_arcs_and_circles_stay_true() {
        let centre = PaperPoint::new(400.0, 300.0);
        assert!(strays(&Shape::Circle(centre, 280.0), centre, 280.0) < 2e-4);
        let (from, to) = (centre.moved(280.0, 0.0), centre.moved(0.0, 280.0));
        for (large, clockwise) in [(false, true), (true, false)] {
            let shape = Shape::Steps(vec![Step::Move(from), Step::Arc { radius: 280.0, large, clockwise, to }]);
            assert!(strays(&shape, centre, 280.0) < 2e-4, "{large} {clockwise}");
        }
    }
}
