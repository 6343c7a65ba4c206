//! The floor's line under a face, and the feet that stand on it.

use super::facing::Facing;
use crate::solve::{Face, Foot, Leg};
use crate::units::Length;

/// The floor as a viewer of a face sees it, in the row of feet nearest to that face.
#[derive(Clone, Debug)]
pub struct FloorLine {
    /// Points (x, z) mm in rising x; two for a plane.
    points: Vec<(f64, f64)>,
    /// Rise per unit to the viewer's right.
    pub slope: f64,
    /// It goes through measured heights.
    pub measured: bool,
}

/// Feet nearest to a face.
pub fn front_row<'l>(leg: &'l Leg, facing: &Facing) -> Vec<(usize, &'l Foot)> {
    let depths = leg.feet.iter().map(|foot| foot.v);
    let nearest = if facing.face == Face::Back { depths.max() } else { depths.min() };
    leg.feet.iter().enumerate().filter(|(_, foot)| Some(foot.v) == nearest).collect()
}

impl FloorLine {
    /// Of a leg.
    pub fn new(leg: &Leg, facing: &Facing) -> FloorLine {
        let slope = facing.slope(leg.floor.per_u);
        let d = &leg.datums;
        let line = leg.floor_along(facing.face, d.frame_left.min(Length::ZERO), d.frame_right.max(d.finished_right));
        let mut points: Vec<(f64, f64)> =
            line.into_iter().map(|(u, z)| (facing.x(Length::from_mm(u)).mm(), z)).collect();
        // Of a straight floor one point does: it goes on with its slope.
        if points.len() == 2 {
            points.truncate(1);
        }
        // Both heights of a step have one x; the order in which they come has to turn with the view.
        if points.first().zip(points.last()).is_some_and(|(a, b)| a.0 > b.0) {
            points.reverse();
        }
        FloorLine { points, slope, measured: !leg.floor.spots.is_empty() }
    }

    /// Its height over z = 0 at a viewer's x, mm. Past the outermost measured heights it goes on with the plane's slope.
    pub fn height(&self, x: f64) -> f64 {
        let (Some(&first), Some(&last)) = (self.points.first(), self.points.last()) else { return 0.0 };
        if x <= first.0 || self.points.len() == 1 {
            return first.1 + (x - first.0) * self.slope;
        }
        if x >= last.0 {
            return last.1 + (x - last.0) * self.slope;
        }
        let after = self.points.partition_point(|p| p.0 <= x);
        match (self.points.get(after.wrapping_sub(1)), self.points.get(after)) {
            (Some(a), Some(b)) => a.1 + (b.1 - a.1) * (x - a.0) / (b.0 - a.0),
            _ => last.1,
        }
    }

    /// The line between two viewer's x, mm, with every bend between them.
    pub fn between(&self, x0: f64, x1: f64) -> Vec<(f64, f64)> {
        let mut line = vec![(x0, self.height(x0))];
        line.extend(self.points.iter().copied().filter(|p| p.0 > x0 && p.0 < x1));
        line.push((x1, self.height(x1)));
        line
    }

    /// Its lowest height between two viewer's x, mm.
    pub fn lowest(&self, x0: f64, x1: f64) -> f64 {
        self.between(x0, x1).iter().map(|p| p.1).fold(f64::INFINITY, f64::min)
    }
}
