//! A troweled skim coat: shallow lens-shaped passes within some degrees of level, a few with fine edge lines.

use super::brush::{Brush, SHADE};
use super::chance::Chance;
use super::patch::{Patch, Rect, Ring, arc};
use super::scene::INCH;
use crate::drawing::Colour;

/// How a coat is painted.
#[derive(Clone, Copy, Debug)]
pub struct Coat {
    /// Ground tone.
    pub ground: Colour,
    /// Edge lines.
    pub line: Colour,
    /// Opacity of the passes.
    pub pass: f64,
    /// Passes to the square foot, at true size.
    pub dense: f64,
}

/// A rendered wall behind the run: paler than all that stands before it.
pub const WALL: Coat =
    Coat { ground: Colour::from_hex(0xf3f1ed), line: Colour::from_hex(0xdad5cd), pass: 0.02, dense: 1.5 };
/// The face of a run.
pub const FACE: Coat =
    Coat { ground: Colour::from_hex(0xe4e0d9), line: Colour::from_hex(0xc6bfb4), pass: 0.05, dense: 3.4 };

/// Passes inside a box, clear of others and of what is in `avoid`; `size` 1 is true size.
pub fn passes(chance: &mut Chance, area: Rect, avoid: &[Rect], size: f64, dense: f64) -> (Vec<Patch>, Vec<Ring>) {
    let inch = INCH * size;
    let feet = area.width() * area.height() / (144.0 * inch * inch);
    let (mut lenses, mut lines, mut taken) = (Vec::new(), Vec::new(), Vec::<Rect>::new());
    let wanted = (feet * dense) as usize;
    for _ in 0..(wanted * 14).min(6000) {
        if lenses.len() >= wanted {
            break;
        }
        let middle = [chance.between(area.x0, area.x1), chance.between(area.y0, area.y1)];
        let radius = chance.between(20.0, 46.0) * inch;
        let turn = if chance.happens(0.5) { 90.0 } else { 270.0 } + chance.near(0.0, 15.0).clamp(-24.0, 24.0);
        let half = (chance.between(3.5, 8.5) * inch / radius).to_degrees();
        let fat = chance.between(0.5, 1.2) * inch;
        let (cos, sin) = (f64::to_radians(turn).cos(), f64::to_radians(turn).sin());
        let centre = [middle[0] - radius * cos, middle[1] - radius * sin];
        let outer = arc(centre, radius, turn - half, turn + half, 10);
        let mut ring = outer.clone();
        ring.extend(outer.iter().enumerate().rev().map(|(k, [x, y])| {
            let thick = fat * (std::f64::consts::PI * k as f64 / 10.0).sin();
            [x - thick * cos, y - thick * sin]
        }));
        let lens = Patch::of(ring);
        let bounds = lens.bounds();
        let inside = bounds.x0 > area.x0 && bounds.x1 < area.x1 && bounds.y0 > area.y0 && bounds.y1 < area.y1;
        let free = |others: &[Rect], by: f64| others.iter().all(|other| !bounds.is_near(other, by));
        if !inside || !free(&taken, 2.2 * inch) || !free(avoid, 0.4 * inch) {
            continue;
        }
        taken.push(bounds);
        lenses.push(lens);
        if chance.happens(0.42) {
            for k in 0..1 + chance.below(3) {
                let (back, ahead) = (half * chance.between(0.55, 0.95), half * chance.between(0.3, 0.95));
                lines.push(arc(centre, radius + (0.1 - 0.36 * k as f64) * inch, turn - back, turn + ahead, 7));
            }
        }
    }
    (lenses, lines)
}

/// Paints a coat on a patch whose box is `area`; passes keep clear of `avoid`.
pub fn paint(brush: &mut Brush<'_>, name: &str, patch: &Patch, avoid: &[Rect], size: f64, coat: Coat) {
    brush.fill([patch], coat.ground);
    texture(brush, name, patch.bounds(), avoid, size, coat);
}

/// The passes alone.
pub fn texture(brush: &mut Brush<'_>, name: &str, area: Rect, avoid: &[Rect], size: f64, coat: Coat) {
    let (lenses, lines) = passes(&mut Chance::named(name), area, avoid, size, coat.dense);
    brush.glaze(&lenses, SHADE, coat.pass);
    brush.lines(&lines, 0.13, coat.line);
}
