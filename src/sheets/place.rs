//! Looking for white: the nearest spot where a box, or a line, meets nothing that is on the sheet.

use super::canvas::Canvas;
use super::frame::Area;
use crate::geometry::PaperPoint;

/// From one spot that is tried to the next, mm.
const STEP: f64 = 2.0;
/// White kept round a box that is placed, mm.
const MARGIN: f64 = 0.8;

/// Centre of a free box of a size inside an area, as near as can be to a place that is preferred; mm.
pub fn free_spot(canvas: &Canvas, area: Area, size: (f64, f64), prefer: PaperPoint) -> Option<PaperPoint> {
    free_spot_off(canvas, area, size, prefer, &[], |_| true)
}

/// The same, off other areas, and only where `accept` says so.
pub fn free_spot_off(
    canvas: &Canvas,
    area: Area,
    size: (f64, f64),
    prefer: PaperPoint,
    others: &[Area],
    accept: impl Fn(PaperPoint) -> bool,
) -> Option<PaperPoint> {
    let (half_x, half_y) = (size.0 / 2.0 + MARGIN, size.1 / 2.0 + MARGIN);
    let (x0, x1) = (area.left + half_x, area.right - half_x);
    let (y0, y1) = (area.top + half_y, area.bottom - half_y);
    if x0 > x1 || y0 > y1 {
        return None;
    }
    let start = PaperPoint::new(prefer.x.clamp(x0, x1), prefer.y.clamp(y0, y1));
    let mut spots = vec![start];
    for column in 0..=((x1 - x0) / STEP) as usize {
        for row in 0..=((y1 - y0) / STEP) as usize {
            spots.push(PaperPoint::new(x0 + column as f64 * STEP, y0 + row as f64 * STEP));
        }
    }
    spots.sort_by(|a, b| a.distance(start).total_cmp(&b.distance(start)));
    let meets = |at: &PaperPoint, other: &Area| {
        at.x - half_x < other.right
            && at.x + half_x > other.left
            && at.y - half_y < other.bottom
            && at.y + half_y > other.top
    };
    spots.into_iter().find(|at| {
        !others.iter().any(|other| meets(at, other))
            && canvas.is_box_free(at.x - half_x, at.y - half_y, at.x + half_x, at.y + half_y)
            && accept(*at)
    })
}

/// Whether a line from one place to another, its first two millimetres aside, meets nothing.
pub fn is_path_free(canvas: &Canvas, from: PaperPoint, to: PaperPoint) -> bool {
    let length = from.distance(to);
    let count = (length / 0.8).ceil().max(1.0) as usize;
    (0..=count).all(|k| {
        let share = (2.2 + (length - 2.2) * k as f64 / count as f64) / length.max(2.2);
        let at = from.towards(to, share);
        canvas.is_box_free(at.x - 0.2, at.y - 0.2, at.x + 0.2, at.y + 0.2)
    })
}
