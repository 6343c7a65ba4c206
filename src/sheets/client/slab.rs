//! The counter's material: concrete with pinholes, stone with flecks, porcelain with faint veins.

use super::brush::{Brush, SHADE};
use super::chance::Chance;
use super::patch::{Rect, Ring, Spot, smooth};
use super::scene::INCH;
use crate::drawing::Colour;
use crate::solve::CounterMaterial;

/// Ground tones: the edge, and the face of an upstand, which is a little further back.
pub fn ground(material: CounterMaterial) -> (Colour, Colour) {
    let (edge, face) = match material {
        CounterMaterial::Concrete => (0xdcdad6, 0xdddbd7),
        CounterMaterial::Stone => (0xcccbc8, 0xd2d1ce),
        CounterMaterial::Porcelain => (0xe7e6e2, 0xe9e8e5),
    };
    (Colour::from_hex(edge), Colour::from_hex(face))
}

/// The finished edge of a slab, seen square on: lit arris, shaded foot.
pub fn edge(brush: &mut Brush<'_>, name: &str, rect: Rect, material: CounterMaterial) {
    edge_face(brush, name, rect, material);
    brush.outline(&rect.patch(), 0.5, super::brush::DARK);
}

/// The same without its outline.
pub fn edge_face(brush: &mut Brush<'_>, name: &str, rect: Rect, material: CounterMaterial) {
    brush.fill_rect(rect, ground(material).0);
    let strip = |share: f64, most: f64| (rect.height() * share).min(most * INCH);
    brush.glaze_rect(Rect { y1: rect.y0 + strip(0.28, 0.42), ..rect }, SHADE, 0.10);
    brush.glaze_rect(Rect { y0: rect.y1 - strip(0.19, 0.28), ..rect }, Colour::WHITE, 0.75);
    texture(brush, name, rect.inset(strip(0.19, 0.28)), material, 1.0);
}

/// What makes the material: `strength` 1 as on the run, more for a swatch.
pub fn texture(brush: &mut Brush<'_>, name: &str, area: Rect, material: CounterMaterial, strength: f64) {
    let mut chance = Chance::named(name);
    let mut spots = |per_inch: f64, most: usize| -> Vec<Spot> {
        let wanted = area.width() * area.height() / (INCH * INCH) * per_inch;
        (0..(wanted as usize).min(most))
            .map(|_| [chance.between(area.x0, area.x1), chance.between(area.y0, area.y1)])
            .collect()
    };
    match material {
        CounterMaterial::Concrete => {
            let dots = spots(0.14 * strength, 900);
            let (small, large) = dots.split_at(dots.len() * 2 / 3);
            brush.dots(small, 0.09, Colour::from_hex(0xa8a5a0));
            brush.dots(large, 0.16, Colour::from_hex(0xaeaba6));
        }
        CounterMaterial::Stone => {
            let dots = spots(0.5 * strength, 1500);
            let third = dots.len() / 3;
            brush.dots(&dots[..third], 0.10, Colour::from_hex(0x9b9a97));
            brush.dots(&dots[third..third * 2], 0.13, Colour::from_hex(0xe4e3e0));
            brush.dots(&dots[third * 2..], 0.08, Colour::from_hex(0x7f7e7b));
        }
        CounterMaterial::Porcelain => {
            // Long veins of one lean: many short stretches of them on an edge, a few whole ones on a face.
            let tall = area.height() > area.width() / 4.0;
            let count = if tall { 4 } else { (area.width() / (11.0 * INCH)).round().clamp(1.0, 60.0) as usize };
            let mut veins: Vec<Ring> = Vec::new();
            for k in 0..count {
                let place = (k as f64 + chance.between(0.1, 0.6)) / count as f64;
                let (from, to, low, high) = if tall {
                    let y = area.y0 + area.height() * place;
                    (area.x0, area.x1, y, (y + area.height() * chance.between(0.05, 0.22)).min(area.y1))
                } else {
                    let x = area.x0 + area.width() * place;
                    (x, (x + chance.between(3.0, 8.0) * INCH).min(area.x1), area.y0, area.y1)
                };
                let points: Vec<Spot> = (0..7)
                    .map(|j| f64::from(j) / 6.0)
                    .map(|t| {
                        let off = chance.between(-0.03, 0.03) * area.height();
                        [from + (to - from) * t, (low + (high - low) * t + off).clamp(area.y0, area.y1)]
                    })
                    .collect();
                veins.push(smooth(&points, false, 3));
            }
            brush.lines(&veins, 0.13, Colour::from_hex(0xc4c2bc));
        }
    }
}
