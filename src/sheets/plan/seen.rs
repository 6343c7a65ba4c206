//! A leg as a plan shows it: leg coordinates to the sheet by way of the leg's placement.

use crate::drawing::Step;
use crate::geometry::{LegPoint, Outline, PaperPoint, Placement, Plan, PlanPoint, Region};
use crate::sheets::view::View;
use crate::solve::{Extent, Leg};
use crate::units::Length;

/// A leg placed on a view of the plan.
pub struct Seen<'l> {
    /// The leg.
    pub leg: &'l Leg,
    /// Its index.
    pub index: usize,
    /// Where it lies in the view.
    pub placement: Placement,
    /// The view.
    pub view: &'l View<Plan>,
}

/// A leg by itself: its finished left end and finished face at the plan's zero, its face along the sheet.
pub const LEVEL: Placement = Placement { origin: PlanPoint::new(0.0, 0.0), angle: 0.0 };

impl Seen<'_> {
    /// A leg's point on the sheet.
    pub fn at(&self, u: Length, v: Length) -> PaperPoint {
        self.at_mm(u.mm(), v.mm())
    }

    /// A leg's point on the sheet, mm.
    pub fn at_mm(&self, u: f64, v: f64) -> PaperPoint {
        self.view.point(self.placement.to_plan(LegPoint::new(u, v)))
    }

    /// Model millimetres of a length of paper.
    pub fn model(&self, paper: f64) -> f64 {
        paper / self.view.scale.factor()
    }

    /// The four corners of a box of the leg, on the sheet.
    pub fn corners(&self, u0: f64, v0: f64, u1: f64, v1: f64) -> [PaperPoint; 4] {
        [self.at_mm(u0, v0), self.at_mm(u1, v0), self.at_mm(u1, v1), self.at_mm(u0, v1)]
    }

    /// The corners of an extent.
    pub fn extent(&self, extent: &Extent) -> [PaperPoint; 4] {
        self.corners(extent.x0.mm(), extent.y0.mm(), extent.x1.mm(), extent.y1.mm())
    }

    /// An outline of the leg as steps on the sheet.
    pub fn steps(&self, outline: &Outline) -> Vec<Step> {
        let place = |x: f64, y: f64| {
            let point = self.placement.to_plan(LegPoint::new(x, y));
            (point.x, point.y)
        };
        self.view.steps(&outline.mapped(place, false))
    }

    /// A region of the leg as steps on the sheet.
    pub fn region(&self, region: &Region) -> Vec<Step> {
        region.outlines().flat_map(|outline| self.steps(outline)).collect()
    }
}
