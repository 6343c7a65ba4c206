//! Sparse planting, paler than everything else: leaf clouds behind the run, grass beside it.

use super::brush::Brush;
use super::chance::Chance;
use super::patch::{Patch, Rect, Ring, Spot};
use super::scene::INCH;
use crate::drawing::Colour;

const LEAVES: [Colour; 3] = [Colour::from_hex(0xeceee9), Colour::from_hex(0xe4e8e0), Colour::from_hex(0xdbe0d6)];
const STEM: Colour = Colour::from_hex(0xdcddd7);
const GRASS: [Colour; 3] = [Colour::from_hex(0xd9dfd4), Colour::from_hex(0xccd4c6), Colour::from_hex(0xe3e8df)];

/// A pointed oval as eight corners.
pub fn leaf([x, y]: Spot, length: f64, turn: f64, fat: f64) -> Patch {
    let (cos, sin) = (turn.cos(), turn.sin());
    let shape =
        [(0.0, 0.0), (0.18, 0.62), (0.45, 1.0), (0.75, 0.66), (1.0, 0.0), (0.75, -0.66), (0.45, -1.0), (0.18, -0.62)];
    Patch::of(
        shape
            .iter()
            .map(|(t, w)| {
                let (px, py) = ((t - 0.5) * length, w * length * fat * 0.5);
                [x + px * cos - py * sin, y + px * sin + py * cos]
            })
            .collect(),
    )
}

/// A tapered, bowed stroke.
fn stem(from: Spot, to: Spot, wide: (f64, f64), bow: f64) -> Patch {
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let length = dx.hypot(dy).max(1e-9);
    let (nx, ny) = (-dy / length, dx / length);
    let (mut left, mut right) = (Ring::new(), Ring::new());
    for k in 0..=6 {
        let t = f64::from(k) / 6.0;
        let off = (std::f64::consts::PI * t).sin() * bow;
        let half = (wide.0 + (wide.1 - wide.0) * t) / 2.0;
        let (x, y) = (from[0] + dx * t + nx * off, from[1] + dy * t + ny * off);
        left.push([x + nx * half, y + ny * half]);
        right.push([x - nx * half, y - ny * half]);
    }
    left.extend(right.into_iter().rev());
    Patch::of(left)
}

/// A round cloud of leaves: middle and radius.
pub type Cloud = (Spot, f64);

/// A shrub of a few clouds on stems, rising from a foot; `height` is that of its top over the foot.
pub fn clouds(chance: &mut Chance, foot: Spot, height: f64) -> Vec<Cloud> {
    let count = if height > 26.0 * INCH {
        6
    } else if height > 16.0 * INCH {
        4
    } else {
        3
    };
    let spread = height * 0.62;
    (0..count)
        .map(|k| {
            let t = (k as f64 + 0.5) / count as f64 * 2.0 - 1.0;
            let radius = height * chance.between(0.24, 0.33);
            let rise = height - radius - (t * t * 0.42 + chance.between(0.0, 0.12)) * height;
            ([foot[0] + t * spread + chance.between(-0.08, 0.08) * height, foot[1] + rise], radius)
        })
        .collect()
}

/// Paints a shrub; leaves outside `inside` are left off.
pub fn shrub(brush: &mut Brush<'_>, chance: &mut Chance, foot: Spot, clouds: &[Cloud], inside: Rect, size: f64) {
    let mut stems = Vec::new();
    let broad = clouds.iter().map(|cloud| cloud.1).fold(0.0, f64::max);
    let thick = (broad * 0.09).min(1.0 * INCH);
    for (k, (middle, radius)) in clouds.iter().enumerate() {
        let start = [foot[0] + (k as f64 - 2.0) * 0.7 * thick, foot[1]];
        stems.push(stem(
            start,
            [middle[0], middle[1] + radius * 0.2],
            (thick, thick * 0.25),
            chance.between(-1.4, 1.4) * INCH,
        ));
    }
    for one in &stems {
        brush.fill([one], STEM);
    }
    let mut tones: [Vec<Patch>; 3] = Default::default();
    for spot in darts(chance, clouds, 1.32 * INCH * size) {
        let share = |(middle, radius): &Cloud| (spot[0] - middle[0]).hypot(spot[1] - middle[1]) / radius;
        let Some((middle, radius)) = clouds.iter().min_by(|a, b| share(a).total_cmp(&share(b))) else { continue };
        let far = share(&(*middle, *radius));
        if chance.happens((far - 0.62).max(0.0) * 1.5) {
            continue;
        }
        let turn = (spot[1] - middle[1]).atan2(spot[0] - middle[0]) * 0.55 - 0.5 + chance.near(0.0, 0.75);
        let side = (spot[0] - middle[0]) * -0.5 + (spot[1] - middle[1]);
        let mut tone = if side > 0.2 * radius {
            0
        } else if side < -0.45 * radius {
            2
        } else {
            1
        };
        if chance.happens(0.22) {
            tone = chance.below(3);
        }
        let length = chance.between(1.5, 2.7) * INCH * size * (1.05 - 0.25 * far);
        if inside.inset(length).holds(spot) {
            tones[tone].push(leaf(spot, length, turn, 0.42));
        }
    }
    for (group, colour) in tones.iter().zip(LEAVES) {
        // Leaves may cross: one path each group would leave their crossings white.
        let (even, odd): (Vec<_>, Vec<_>) = group.iter().enumerate().partition(|(k, _)| k % 2 == 0);
        brush.fill(even.into_iter().map(|(_, leaf)| leaf), colour);
        brush.fill(odd.into_iter().map(|(_, leaf)| leaf), colour);
    }
}

/// Spots at least `apart` from one another inside some of the clouds: darts thrown on a grid of cells.
fn darts(chance: &mut Chance, clouds: &[Cloud], apart: f64) -> Vec<Spot> {
    let bounds = clouds.iter().fold(
        Rect { x0: f64::INFINITY, y0: f64::INFINITY, x1: f64::NEG_INFINITY, y1: f64::NEG_INFINITY },
        |b, (c, r)| Rect {
            x0: b.x0.min(c[0] - r),
            y0: b.y0.min(c[1] - r),
            x1: b.x1.max(c[0] + r),
            y1: b.y1.max(c[1] + r),
        },
    );
    let columns = (bounds.width() / apart).ceil().max(1.0) as usize + 1;
    let rows = (bounds.height() / apart).ceil().max(1.0) as usize + 1;
    let mut cells: Vec<Option<Spot>> = vec![None; columns * rows];
    let (mut spots, mut misses) = (Vec::new(), 0);
    while misses < 260 && spots.len() < 1200 {
        let spot = [chance.between(bounds.x0, bounds.x1), chance.between(bounds.y0, bounds.y1)];
        let (i, j) = (((spot[0] - bounds.x0) / apart) as usize, ((spot[1] - bounds.y0) / apart) as usize);
        let inside = clouds.iter().any(|(c, r)| (spot[0] - c[0]).hypot(spot[1] - c[1]) < *r);
        let near = (i.saturating_sub(1)..=(i + 1).min(columns - 1))
            .flat_map(|a| (j.saturating_sub(1)..=(j + 1).min(rows - 1)).map(move |b| (a, b)))
            .filter_map(|(a, b)| cells[b * columns + a])
            .any(|other| (other[0] - spot[0]).hypot(other[1] - spot[1]) < apart);
        if !inside || near || cells[j * columns + i].is_some() {
            misses += 1;
            continue;
        }
        cells[j * columns + i] = Some(spot);
        spots.push(spot);
        misses = 0;
    }
    spots
}

/// A tuft of grass at a foot; blades that would leave `inside` are left off.
pub fn tuft(
    brush: &mut Brush<'_>,
    chance: &mut Chance,
    foot: Spot,
    spread: f64,
    height: f64,
    count: usize,
    inside: Rect,
) {
    let mut tones: [Vec<Patch>; 3] = Default::default();
    for _ in 0..count {
        let lean = chance.near(0.0, 0.5);
        let long = height * chance.between(0.62, 1.0);
        let nod = (lean * 0.75 + chance.near(0.0, 0.12)).clamp(-0.75, 0.75);
        let wide = chance.between(0.28, 0.5) * INCH;
        let (mut left, mut right) = (Ring::new(), Ring::new());
        for k in 0..=6 {
            let t = f64::from(k) / 6.0;
            let x = foot[0] + lean * spread * 0.35 + nod * long * t.powi(2);
            let y = foot[1] + long * (t - 0.22 * nod.abs() * t.powi(3));
            let half = wide * (1.0 - t) / 2.0 + 0.02 * INCH;
            left.push([x - half, y]);
            right.push([x + half, y]);
        }
        left.extend(right.into_iter().rev());
        let blade = Patch::of(left);
        let b = blade.bounds();
        let tone = chance.below(3);
        if b.x0 > inside.x0 && b.x1 < inside.x1 && b.y1 < inside.y1 {
            tones[tone].push(blade);
        }
    }
    for (group, colour) in tones.iter().zip(GRASS) {
        for blade in group {
            brush.fill([blade], colour);
        }
    }
}
