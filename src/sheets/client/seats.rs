//! Stools along a seating side, pale, before the counter: where people sit, not what is built.

use super::brush::{Brush, SOFT};
use super::patch::{Patch, Rect};
use super::scene::{INCH, Scene};
use crate::drawing::Colour;
use crate::solve::Seating;

/// Draws the stools, as far apart as the job says, about the middle of the counter.
pub fn draw(brush: &mut Brush<'_>, scene: &Scene<'_>, seating: Seating) {
    let (from, to) = scene.counter;
    let apart = seating.width.mm();
    let count = seating.seats.min(((to - from) / apart.max(1.0)).floor().max(0.0) as u32);
    let middle = (from + to) / 2.0;
    let tone = Colour::from_hex(0xdddcd9);
    for k in 0..count {
        let x = middle + (f64::from(k) - (f64::from(count) - 1.0) / 2.0) * apart;
        let floor = scene.floor(x);
        // Knees want about a foot between seat and counter.
        let seat = (scene.levels.0 - 11.0 * INCH).max(floor + 14.0 * INCH);
        let half = (7.5 * INCH).min(apart * 0.36);
        let at = |dx: f64, y: f64| [x + dx, y];
        let leg = |way: f64| {
            let (top, foot) = (way * half * 0.62, way * half * 0.95);
            let w = 0.55 * INCH;
            Patch::of(vec![at(foot - w, floor), at(foot + w, floor), at(top + w, seat), at(top - w, seat)])
        };
        let rail = floor + (seat - floor) * 0.3;
        let reach = half * (0.95 - 0.33 * 0.3);
        let rung = Rect::new(x - reach, rail, x + reach, rail + 0.9 * INCH).patch();
        let board = Rect::new(x - half, seat, x + half, seat + 1.6 * INCH).rounded(0.7 * INCH);
        let whole = Patch::union(&[leg(-1.0), leg(1.0), rung, board]);
        brush.fill([&whole], tone);
        brush.outline(&whole, 0.18, SOFT);
    }
}
