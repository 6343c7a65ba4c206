//! Brushed metal: a ramp of tones in flat strips, level grain, pulls and flanges. No gradient: the same in every writer.

use super::brush::{Brush, MID, SHADE};
use super::chance::Chance;
use super::patch::{Patch, Rect, Ring, Spot};
use super::scene::INCH;
use crate::drawing::Colour;

/// Outlines of metal parts.
pub const LINE: Colour = Colour::from_hex(0x4c4f51);
/// Outlines of a whole front.
pub const RIM: Colour = Colour::from_hex(0x3c3d3d);
/// The gap round a leaf.
pub const REVEAL: Colour = Colour::from_hex(0x6d7072);
/// Grain.
pub const GRAIN: Colour = Colour::from_hex(0xbfc3c5);

/// A ramp: places from 0 to 1 with their tones.
pub type Ramp = &'static [(f64, Colour)];

/// Steel that stands upright: reflections stand upright since the grain is level.
pub const STEEL: Ramp = &[
    (0.0, Colour::from_hex(0xd0d3d4)),
    (0.14, Colour::from_hex(0xdfe2e3)),
    (0.33, Colour::from_hex(0xeff0f0)),
    (0.50, Colour::from_hex(0xdde0e1)),
    (0.70, Colour::from_hex(0xe8eaea)),
    (0.88, Colour::from_hex(0xd9dcdd)),
    (1.0, Colour::from_hex(0xcbcecf)),
];

/// A hood from its sill to its crown, brightest where the curve meets the sky.
pub const HOOD: Ramp = &[
    (0.0, Colour::from_hex(0xc6cacc)),
    (0.15, Colour::from_hex(0xd4d8d9)),
    (0.43, Colour::from_hex(0xe3e5e6)),
    (0.69, Colour::from_hex(0xf5f6f6)),
    (0.83, Colour::from_hex(0xe1e4e5)),
    (0.94, Colour::from_hex(0xc4c8ca)),
    (1.0, Colour::from_hex(0xb2b7b9)),
];

fn tone(ramp: Ramp, t: f64) -> Colour {
    for pair in ramp.windows(2) {
        if t <= pair[1].0 {
            return pair[0].1.mixed(pair[1].1, (t - pair[0].0) / (pair[1].0 - pair[0].0));
        }
    }
    ramp.last().map_or(Colour::WHITE, |key| key.1)
}

/// A ramp across a patch in strips of about 1.2 mm of paper; strips of one tone are one path. `upright`: strips stand.
pub fn bands(brush: &mut Brush<'_>, patch: &Patch, ramp: Ramp, upright: bool, shift: f64) {
    let b = patch.bounds();
    let whole = patch.rings.len() == 1 && patch.rings[0].len() == 4;
    let length = if upright { b.width() } else { b.height() };
    let count = (length / brush.paper(1.2)).round().clamp(5.0, 48.0) as usize;
    let place = |k: usize| k as f64 / count as f64;
    brush.fill([patch], tone(ramp, 0.5));
    let mut strips: Vec<(Colour, Vec<Patch>)> = Vec::new();
    for k in 0..count {
        let middle = (k as f64 + 0.5) / count as f64;
        let bulge = 4.0 * middle * (1.0 - middle);
        let colour = tone(ramp, (middle + shift * bulge).clamp(0.0, 1.0));
        // Strips overlap a hair, so that no white shows between them.
        let (from, to) = (length * place(k), (length * place(k + 1) + brush.paper(0.06)).min(length));
        let strip = if upright {
            Rect::new(b.x0 + from, b.y0, b.x0 + to, b.y1)
        } else {
            Rect::new(b.x0, b.y0 + from, b.x1, b.y0 + to)
        };
        let strip = if whole { strip.patch() } else { strip.patch().within(patch) };
        match strips.last_mut() {
            Some((last, group)) if *last == colour => group.push(strip),
            _ => strips.push((colour, vec![strip])),
        }
    }
    for (colour, group) in &strips {
        for strip in group {
            brush.fill([strip], *colour);
        }
    }
}

/// Level grain inside a patch, a margin off its ends.
pub fn grain(brush: &mut Brush<'_>, chance: &mut Chance, patch: &Patch, pitch: f64, colour: Colour) {
    let b = patch.bounds();
    let pitch = pitch.max(brush.paper(1.0));
    let margin = 0.25 * INCH;
    if b.height() < brush.paper(4.0) {
        return;
    }
    let reach = b.width().max(8.0 * INCH);
    let mut lines: Vec<Ring> = Vec::new();
    let mut y = b.y0 + pitch * 0.7;
    while y < b.y1 - 0.2 * INCH {
        let spans = patch.spans(y);
        let mut x = b.x0 + chance.between(0.0, b.width() * 0.3);
        while x < b.x1 {
            let end = x + chance.between(0.12, 0.5) * reach;
            for &(from, to) in &spans {
                let (a, z) = (x.max(from + margin), end.min(to - margin));
                if z - a > margin {
                    lines.push(vec![[a, y], [z, y]]);
                }
            }
            x = end + chance.between(0.06, 0.4) * reach * 0.76;
        }
        y += pitch * chance.between(0.7, 1.35);
    }
    brush.lines(&lines, 0.13, colour);
}

/// A flat leaf of brushed steel.
pub fn leaf(brush: &mut Brush<'_>, rect: Rect, name: &str) -> Patch {
    let patch = rect.patch();
    let mut chance = Chance::named(name);
    let shift = chance.between(-0.06, 0.06);
    bands(brush, &patch, STEEL, true, shift);
    grain(brush, &mut chance, &patch, 0.5 * INCH, GRAIN);
    lit(brush, rect, 0.3 * INCH, 0.55, 0.08);
    brush.outline(&patch, 0.25, MID);
    patch
}

/// Light along the upper edge, shade along the lower one.
pub fn lit(brush: &mut Brush<'_>, rect: Rect, strip: f64, light: f64, shade: f64) {
    let strip = strip.min(rect.height() / 4.0);
    brush.glaze_rect(Rect { y0: rect.y1 - strip, ..rect }, Colour::WHITE, light);
    brush.glaze_rect(Rect { y1: rect.y0 + strip, ..rect }, SHADE, shade);
}

/// The flange round a front, with its outline. Returns what is left inside it for leaves: held to a share of the front.
pub fn flange(brush: &mut Brush<'_>, outside: Rect, facts: Vec<crate::drawing::Fact>) -> Rect {
    let patch = outside.rounded(0.3 * INCH);
    let broad = (0.95 * INCH).min(outside.width() * 0.09).min(outside.height() * 0.09);
    brush.fill([&patch], Colour::from_hex(0xd2d5d6));
    lit(brush, outside, 0.3 * INCH, 0.55, 0.10);
    brush.outline_with(&patch, 0.35, RIM, facts);
    let inside = outside.inset(broad);
    brush.fill_rect(inside, REVEAL);
    inside
}

/// A bar pull about a middle, `length` long; bounded by the leaf that carries it.
pub fn pull(brush: &mut Brush<'_>, middle: Spot, length: f64, upright: bool, on: &Patch, thick: f64) {
    let b = on.bounds();
    let room = if upright { b.height() } else { b.width() };
    let length = length.min(room * 0.72);
    let d = thick.min(length * 0.3);
    let (w, h) = if upright { (d, length) } else { (length, d) };
    let rect = Rect::new(middle[0] - w / 2.0, middle[1] - h / 2.0, middle[0] + w / 2.0, middle[1] + h / 2.0);
    let bar = rect.rounded(d / 2.0);
    brush.cast(&bar, 0.8 * INCH, on, (0.14, 0.10));
    brush.fill([&bar], Colour::from_hex(0xf1f3f4));
    let far = if upright { Rect { x0: rect.x0 + d * 0.62, ..rect } } else { Rect { y1: rect.y0 + d * 0.38, ..rect } };
    brush.glaze([&far.patch().within(&bar)], Colour::from_hex(0x9fa5a9), 0.8);
    brush.outline(&bar, 0.18, LINE);
}

/// A knob seen square on.
pub fn knob(brush: &mut Brush<'_>, centre: Spot, radius: f64, on: &Patch) {
    use super::patch::disc;
    let (outer, inner) = (disc(centre, radius * 1.3, 16), disc(centre, radius, 16));
    brush.cast(&outer, radius * 0.6, on, (0.15, 0.11));
    brush.fill([&outer], Colour::from_hex(0xc3c9cc));
    brush.outline(&outer, 0.18, REVEAL);
    brush.fill([&inner], Colour::from_hex(0xeef0f1));
    brush.outline(&inner, 0.25, RIM);
    let line = vec![[centre[0], centre[1] + radius * 0.28], [centre[0], centre[1] + radius * 0.82]];
    brush.lines([&line], 0.35, RIM);
}
