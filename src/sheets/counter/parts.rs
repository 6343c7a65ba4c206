//! Which stretch of the counter each page shows, and at which scale.

use crate::geometry::LegPoint;
use crate::sheets::frame::Area;
use crate::sheets::scale::{STANDARD, Scale};
use crate::solve::{Cutout, Extent, Fitting, Leg, Plane};
use crate::units::Length;

/// How a stretch ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// At the counter's own end.
    Counter,
    /// At a seam.
    Seam,
    /// Broken off.
    Break,
}

/// A stretch of the counter, u.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// Its left end.
    pub from: Length,
    /// Its right end.
    pub to: Length,
    /// What is at its left end.
    pub starts: End,
    /// What is at its right end.
    pub ends: End,
    /// Which of how many it is, from 1.
    pub number: (usize, usize),
}

impl Part {
    /// Its width.
    pub fn width(&self) -> Length {
        self.to - self.from
    }

    /// Whether a place lies on it.
    pub fn holds(&self, u: Length) -> bool {
        u >= self.from && u <= self.to
    }
}

/// White that the view needs round the counter: dimensions, tags, walls, names; mm.
#[derive(Clone, Copy, Debug)]
pub struct Margins {
    /// At the left.
    pub left: f64,
    /// Over the back edge.
    pub above: f64,
    /// At the right.
    pub right: f64,
    /// Under the front edge.
    pub below: f64,
}

/// Depth of the counter on the sheet under which tags and numbers no longer fit, mm.
const READABLE: f64 = 38.0;
/// A smaller scale that keeps details on the page is taken when it is no smaller than this share.
const WORTH: f64 = 0.75;

/// The stretches, one a page, and the scale of all of them. `below` is where details would like to begin.
pub fn parts(leg: &Leg, plane: Plane, extent: Extent, area: Area, margins: Margins, below: f64) -> (Vec<Part>, Scale) {
    let (width, depth) = (extent.width().mm(), extent.height().mm());
    let room_x = area.width() - margins.left - margins.right;
    let room_y = area.height() - margins.above - margins.below;
    let short_y = below - area.top - margins.above - margins.below;
    let largest = Scale(5);
    let whole = |room_y: f64| Scale::fitting((width, depth), (room_x, room_y), largest);
    let (tall, short) = (whole(room_y), whole(short_y.max(10.0)));
    let scale = if short.factor() >= tall.factor() * WORTH { short } else { tall };
    if depth * scale.factor() >= READABLE.min(depth / 20.0) || scale.0 <= 20 {
        return (
            vec![Part { from: extent.x0, to: extent.x1, starts: End::Counter, ends: End::Counter, number: (1, 1) }],
            scale,
        );
    }
    let readable = STANDARD.iter().copied().filter(|s| depth * s.factor() >= READABLE.min(depth / 20.0));
    let scale = readable.filter(|s| depth * s.factor() <= room_y).max_by_key(|s| s.0).unwrap_or(scale);
    (split(leg, plane, extent, Length::from_mm(room_x / scale.factor())), scale)
}

/// The next smaller standard scale, if the counter is still readable at it.
pub fn next_smaller(scale: Scale, extent: Extent) -> Scale {
    let next = STANDARD.iter().copied().find(|s| s.0 > scale.0).unwrap_or(scale);
    if extent.height().mm() * next.factor() >= READABLE { next } else { scale }
}

/// Stretches no longer than `most`: cut at seams where they can be, otherwise between cutouts.
fn split(leg: &Leg, plane: Plane, extent: Extent, most: Length) -> Vec<Part> {
    let count = (extent.width().mm() / most.mm().max(1.0)).ceil().max(1.0);
    let target = Length::from_mm((extent.width().mm() / count * 1.08).min(most.mm()));
    let joints = if plane == Plane::Substrate { &leg.substrate.joints } else { &leg.counter.seams };
    let (mut parts, mut from, mut starts) = (Vec::new(), extent.x0, End::Counter);
    while extent.x1 - from > most && parts.len() < 200 {
        let furthest = |within: Length| joints.iter().copied().rfind(|&u| u > from && u - from <= within);
        let seam = furthest(target).or_else(|| furthest(most)).filter(|&u| (u - from) * 3 >= most);
        let (to, ends) = match seam {
            Some(u) => (u, End::Seam),
            None => (clear_of_cutouts(leg, plane, from, from + target), End::Break),
        };
        parts.push(Part { from, to, starts, ends, number: (0, 0) });
        (from, starts) = (to, ends);
    }
    parts.push(Part { from, to: extent.x1, starts, ends: End::Counter, number: (0, 0) });
    let count = parts.len();
    for (index, part) in parts.iter_mut().enumerate() {
        part.number = (index + 1, count);
    }
    parts
}

/// The place nearest before `at` that lies 20 mm clear of all cutouts; `at` itself when none does.
fn clear_of_cutouts(leg: &Leg, plane: Plane, from: Length, at: Length) -> Length {
    let white = Length::from_mm(20.0);
    let mut place = at;
    for cut in cutouts(leg, plane).iter().rev() {
        if place > cut.1.extent.x0 - white && place < cut.1.extent.x1 + white {
            place = cut.1.extent.x0 - white;
        }
    }
    if (place - from) * 4 > at - from { place } else { at }
}

/// The fittings cut into a plane with their cutouts, left to right, nearest first.
pub fn cutouts(leg: &Leg, plane: Plane) -> Vec<(&Fitting, &Cutout)> {
    let mut found: Vec<(&Fitting, &Cutout)> =
        leg.fittings.iter().filter_map(|f| f.cutout(plane).map(|cutout| (f, cutout))).collect();
    found.sort_by_key(|(_, cutout)| (cutout.extent.x0, cutout.extent.y0));
    found
}

/// A polygon cut to a stretch (x between two places, mm).
pub fn clipped(points: &[LegPoint], from: f64, to: f64) -> Vec<LegPoint> {
    let half = |points: &[LegPoint], keep: &dyn Fn(f64) -> bool, at: f64| -> Vec<LegPoint> {
        let mut kept = Vec::new();
        for (index, &here) in points.iter().enumerate() {
            let next = points[(index + 1) % points.len()];
            if keep(here.x) {
                kept.push(here);
            }
            if keep(here.x) != keep(next.x) {
                kept.push(here.towards(next, (at - here.x) / (next.x - here.x)));
            }
        }
        kept
    };
    let left = half(points, &|x| x >= from, from);
    if left.is_empty() { left } else { half(&left, &|x| x <= to, to) }
}

#[cfg(test)]
mod tests {
    use super::clipped;
    use crate::geometry::LegPoint;

    #[test]
    fn a_stretch_of_an_outline_keeps_its_notch() {
        let ring = [
            (0.0, 0.0),
            (40.0, 0.0),
            (40.0, 20.0),
            (60.0, 20.0),
            (60.0, 0.0),
            (100.0, 0.0),
            (100.0, 30.0),
            (0.0, 30.0),
        ];
        let ring: Vec<LegPoint> = ring.iter().map(|&(x, y)| LegPoint::new(x, y)).collect();
        let part = clipped(&ring, 30.0, 70.0);
        let area: f64 = (0..part.len())
            .map(|k| {
                let (a, b) = (part[k], part[(k + 1) % part.len()]);
                (a.x * b.y - b.x * a.y) / 2.0
            })
            .sum();
        assert!((area - (40.0 * 30.0 - 20.0 * 20.0)).abs() < 1e-9);
        assert!(part.iter().all(|p| (30.0..=70.0).contains(&p.x)));
    }
}
