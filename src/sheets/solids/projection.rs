//! Parallel projections: how places fall on the picture, and from where they are seen.
//!
//! Axonometric views are those of ISO 5456-3: isometric, its three axes 120 degrees apart and drawn at full length, and
//! dimetric, two axes at full length (upright, and 7 degrees off level) and the third at half (42 degrees off level).
//! The standard's angles and factors are from memory, verify; a test holds them to Gauss's theorem on axonometry.

use super::space::{Place, Pose, cross, dot, minus, plus, unit};
use crate::sheets::client::patch::Spot;

/// A parallel projection onto the picture (x to the right, y up, mm at full size).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Projection {
    /// What falls on the picture's (0, 0).
    from: Place,
    /// Picture x of a place, as a scalar product.
    x: Place,
    /// Picture y.
    y: Place,
    /// From the things towards the viewer, of length 1.
    pub towards: Place,
}

/// How the axes of an axonometric view lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum System {
    /// All three axes at full length, 120 degrees apart.
    Isometric,
    /// Along the face and upright at full length, depth at half.
    Dimetric,
}

impl System {
    /// As the sheet names it.
    pub const fn words(self) -> &'static str {
        match self {
            System::Isometric => "Isometric projection",
            System::Dimetric => "Dimetric projection",
        }
    }

    /// Images of the three axes for a viewer who stands before the right end of the face: along it, depth, up.
    pub fn axes(self) -> [Spot; 3] {
        let polar = |length: f64, angle: f64| {
            let (sin, cos) = f64::to_radians(angle).sin_cos();
            [length * cos, length * sin]
        };
        match self {
            System::Isometric => [polar(1.0, -30.0), polar(1.0, 30.0), [0.0, 1.0]],
            System::Dimetric => [polar(1.0, -7.0), polar(0.5, 42.0), [0.0, 1.0]],
        }
    }
}

impl Projection {
    /// An axonometric view. `along` is the direction of the face in plan (radians), its depth a quarter turn
    /// counter-clockwise from it; `left`: the viewer stands before the left end of the face instead of the right one.
    pub fn axonometric(system: System, along: f64, left: bool) -> Projection {
        let [u, v, z] = system.axes();
        let (u, v) = if left { ([u[0], -u[1]], [-v[0], v[1]]) } else { (u, v) };
        let (sin, cos) = along.sin_cos();
        let row = |c: usize| [u[c] * cos - v[c] * sin, u[c] * sin + v[c] * cos, z[c]];
        Projection::of([0.0; 3], row(0), row(1), true)
    }

    /// Square on to a frame: its spots fall where they lie.
    pub fn square_on(pose: &Pose) -> Projection {
        Projection { from: pose.at, x: pose.across, y: pose.up, towards: pose.normal() }
    }

    fn of(from: Place, x: Place, y: Place, above: bool) -> Projection {
        let kernel = unit(cross(x, y));
        let towards = if (kernel[2] > 0.0) == above { kernel } else { kernel.map(|c| -c) };
        Projection { from, x, y, towards }
    }

    /// Where a place falls.
    pub fn spot(&self, place: Place) -> Spot {
        let place = minus(place, self.from);
        [dot(self.x, place), dot(self.y, place)]
    }

    /// What a direction moves on the picture.
    pub fn step(&self, way: Place) -> Spot {
        [dot(self.x, way), dot(self.y, way)]
    }

    /// The direction of the picture's x, of a view square on.
    pub fn right(&self) -> Place {
        self.x
    }

    /// The way that light travels: from the viewer's upper left, over the shoulder, as in the elevations.
    pub fn light(&self) -> Place {
        let level = unit([self.towards[0], self.towards[1], 0.0]);
        let right = cross([0.0, 0.0, 1.0], level);
        unit(plus(plus([0.0, 0.0, -1.0], level, -0.55), right, 0.75))
    }

    /// A place that falls on a spot; all others lie on its line towards the viewer.
    #[cfg(test)]
    pub fn some_place(&self, [x, y]: Spot) -> Place {
        // The place in the picture's own plane: solve the two rows and "not along the line of sight".
        let rows = [self.x, self.y, self.towards];
        let determinant = dot(rows[0], cross(rows[1], rows[2]));
        let solved = plus(cross(rows[1], rows[2]).map(|c| c * x), cross(rows[2], rows[0]), y);
        plus(self.from, solved, 1.0 / determinant)
    }
}

#[cfg(test)]
mod tests {
    use super::super::space::dot;
    use super::{Projection, System};

    /// Gauss's theorem: three plane vectors, read as complex numbers, are the images of three equal axes at right
    /// angles under a scaled square projection exactly when the sum of their squares is zero.
    fn sum_of_squares(axes: [[f64; 2]; 3]) -> f64 {
        let (mut re, mut im) = (0.0, 0.0);
        for [x, y] in axes {
            re += x * x - y * y;
            im += 2.0 * x * y;
        }
        f64::hypot(re, im)
    }

    #[test]
    fn axes_are_those_of_square_projections() {
        assert!(sum_of_squares(System::Isometric.axes()) < 1e-12);
        // 7 and 42 degrees are rounded: exactly they are 7 deg 10' and 41 deg 25'.
        assert!(sum_of_squares(System::Dimetric.axes()) < 0.02);
        let exact = |l: f64, a: f64| [l * a.to_radians().cos(), l * a.to_radians().sin()];
        let axes = [exact(1.0, -(7.0 + 10.0 / 60.0)), exact(0.5, 41.0 + 25.0 / 60.0), [0.0, 1.0]];
        assert!(sum_of_squares(axes) < 0.001);
    }

    #[test]
    fn isometric_axes_are_120_degrees_apart_and_the_view_is_down_35_degrees() {
        let [u, v, z] = System::Isometric.axes();
        // A receding axis and the one coming forward: u comes forward for a viewer before the right end.
        let angle = |a: [f64; 2], b: [f64; 2]| (a[0] * b[0] + a[1] * b[1]).acos().to_degrees();
        assert!((angle(u, z) - 120.0).abs() < 1e-9);
        assert!((angle([-v[0], -v[1]], z) - 120.0).abs() < 1e-9);
        assert!((angle(u, [-v[0], -v[1]]) - 120.0).abs() < 1e-9);
        let view = Projection::axonometric(System::Isometric, 0.0, false);
        assert!((view.towards[2].asin().to_degrees() - 35.264).abs() < 0.001);
        // Unreduced, the axes are drawn at 1; a square projection would draw them at sqrt(2/3) = 0.816.
        let reduced = (1.0 - view.towards[0] * view.towards[0]).sqrt();
        assert!((reduced - 0.816).abs() < 0.001);
    }

    #[test]
    fn lines_of_sight_fall_on_one_spot() {
        for system in [System::Isometric, System::Dimetric] {
            for (along, left) in [(0.0, false), (0.4, true), (2.0, false)] {
                let view = Projection::axonometric(system, along, left);
                let step = view.step(view.towards);
                assert!(step[0].abs() < 1e-12 && step[1].abs() < 1e-12 && view.towards[2] > 0.0);
                let spot = view.spot(view.some_place([123.0, -45.0]));
                assert!((spot[0] - 123.0).abs() < 1e-9 && (spot[1] + 45.0).abs() < 1e-9);
                assert!((dot(view.light(), view.light()) - 1.0).abs() < 1e-12);
            }
        }
    }
}
