//! Points tagged with the space they live in.

use std::marker::PhantomData;

/// The plan of the whole site: x to the right, y away from the cook of the first leg, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plan;
/// A leg seen from above: x is u (right), y is v (away from the cook), mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leg;
/// A long face seen square on: x is u to the right as that face's viewer sees it, y is z (up), mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrontFace;
/// An end face seen square on: x to the viewer's right, y is z (up), mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndFace;
/// A section across the run: x is v (away from the cook), y is z (up), mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cut;
/// A sheet of paper: x to the right, y DOWN from the top left corner, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Paper;

/// A point of one space, mm.
#[derive(Debug, PartialEq)]
pub struct Point<S> {
    /// First coordinate, mm.
    pub x: f64,
    /// Second coordinate, mm.
    pub y: f64,
    space: PhantomData<S>,
}

impl<S> Clone for Point<S> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<S> Copy for Point<S> {}

impl<S> Point<S> {
    /// The point at (x, y) mm.
    pub const fn new(x: f64, y: f64) -> Point<S> {
        Point { x, y, space: PhantomData }
    }

    /// Moved by (dx, dy) mm.
    pub const fn moved(self, dx: f64, dy: f64) -> Point<S> {
        Point::new(self.x + dx, self.y + dy)
    }

    /// Distance to another point of the same space, mm.
    pub fn distance(self, other: Point<S>) -> f64 {
        (self.x - other.x).hypot(self.y - other.y)
    }

    /// The point this far (0 to 1) on the way to another.
    pub fn towards(self, other: Point<S>, share: f64) -> Point<S> {
        Point::new(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)
    }
}

/// A point of the plan.
pub type PlanPoint = Point<Plan>;
/// A point of a leg seen from above.
pub type LegPoint = Point<Leg>;
/// A point of a sheet.
pub type PaperPoint = Point<Paper>;

/// Where a leg lies in the plan: a turn, then a move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placement {
    /// Where the leg's (0, 0) lies.
    pub origin: PlanPoint,
    /// Turn of +u from the plan's x, counter-clockwise, radians.
    pub angle: f64,
}

impl Placement {
    /// A leg's point in the plan.
    pub fn to_plan(self, point: LegPoint) -> PlanPoint {
        let (sin, cos) = self.angle.sin_cos();
        self.origin.moved(point.x * cos - point.y * sin, point.x * sin + point.y * cos)
    }

    /// A plan point in the leg.
    pub fn to_leg(self, point: PlanPoint) -> LegPoint {
        let (sin, cos) = self.angle.sin_cos();
        let (dx, dy) = (point.x - self.origin.x, point.y - self.origin.y);
        LegPoint::new(dx * cos + dy * sin, -dx * sin + dy * cos)
    }
}
