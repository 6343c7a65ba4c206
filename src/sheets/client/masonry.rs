//! Stones: coursed ledger veneer, and the squared stones of a pier or wall.

use super::brush::{Brush, SHADE};
use super::chance::Chance;
use super::patch::{Patch, Rect, Ring, Spot};
use super::scene::INCH;
use crate::drawing::Colour;

/// One stone.
pub struct Stone {
    /// Its face.
    pub shape: Patch,
    tone: usize,
    shade: Patch,
    light: Patch,
    marks: Vec<Ring>,
}

/// Tones of a kind of masonry.
pub struct Tones {
    stones: &'static [Colour],
    weights: &'static [u32],
    /// Between the stones.
    pub joint: Colour,
    mark: Colour,
}

/// Thin ledger veneer: joints darker than the stones.
pub const LEDGER: Tones = Tones {
    stones: &[
        Colour::from_hex(0xdedad3),
        Colour::from_hex(0xd3cec6),
        Colour::from_hex(0xc9c3ba),
        Colour::from_hex(0xe6e3dd),
        Colour::from_hex(0xbeb8af),
        Colour::from_hex(0xd8d5d0),
    ],
    weights: &[5, 5, 4, 3, 2, 3],
    joint: Colour::from_hex(0x98938b),
    mark: Colour::from_hex(0x8f8a82),
};

/// Squared stones: mortar paler than the stones.
pub const ASHLAR: Tones = Tones {
    stones: &[
        Colour::from_hex(0xdcd8d1),
        Colour::from_hex(0xd4cfc7),
        Colour::from_hex(0xcbc5bc),
        Colour::from_hex(0xe2dfd9),
    ],
    weights: &[4, 4, 3, 3],
    joint: Colour::from_hex(0xefece7),
    mark: Colour::from_hex(0xa39e96),
};

/// Paints stones, all of one tone at once.
pub fn paint(brush: &mut Brush<'_>, stones: &[Stone], tones: &Tones) {
    for (tone, colour) in tones.stones.iter().enumerate() {
        brush.fill(stones.iter().filter(|stone| stone.tone == tone).map(|stone| &stone.shape), *colour);
    }
    brush.glaze(stones.iter().map(|stone| &stone.light), Colour::WHITE, 0.34);
    brush.glaze(stones.iter().map(|stone| &stone.shade), SHADE, 0.085);
    brush.lines(stones.iter().flat_map(|stone| &stone.marks), 0.13, tones.mark);
}

/// Ledger stone in courses over a box. Courses break at `levels` so that no sliver is left at an opening; joints are
/// staggered; `holes` are cut out of the stones that meet them. `size` 1 is the stones' true size.
pub fn ledger(chance: &mut Chance, area: Rect, levels: &[f64], holes: &[Rect], size: f64) -> Vec<Stone> {
    let inch = INCH * size;
    let mut stones = Vec::new();
    let (mut joints, mut last_height) = (Vec::<f64>::new(), 0.0);
    for (low, high) in breaks(area, levels, 1.15 * inch) {
        for height in courses(chance, high - low, inch, &mut last_height, low, &mut Vec::new()) {
            let (y0, y1) = height;
            let mut here = Vec::new();
            let (mut x, mut last_tone) = (area.x0, usize::MAX);
            while x < area.x1 - 1e-6 {
                let length = ((y1 - y0) * chance.between(2.0, 5.4)).clamp(3.8 * inch, 12.5 * inch);
                let mut end = x + length;
                for _ in 0..8 {
                    if joints.iter().all(|joint| (joint - end).abs() > 1.6 * inch) {
                        break;
                    }
                    end += 0.7 * inch;
                }
                if area.x1 - end < 3.6 * inch {
                    end = area.x1;
                }
                // Now and then a thick stone gives way to two thin ones.
                let mut rows = vec![(y0, y1)];
                if y1 - y0 > 2.4 * inch && chance.happens(0.22) {
                    let split = y0 + (y1 - y0) * chance.between(0.4, 0.6);
                    rows = vec![(y0, split), (split, y1)];
                }
                for (a, b) in rows {
                    let mut tone = chance.weighted(LEDGER.weights);
                    if tone == last_tone {
                        tone = (tone + [1, 2, 5][chance.below(3)]) % LEDGER.stones.len();
                    }
                    last_tone = tone;
                    let stone = rough(chance, Rect::new(x, a, end, b), 0.055 * inch, inch, (0.10, 0.22), (0.06, 0.16));
                    let marks = clefts(chance, Rect::new(x, a, end, b), inch);
                    stones.extend(cut(Stone { tone, marks, ..stone }, Rect::new(x, a, end, b), holes, 0.22 * inch));
                }
                here.push(end);
                x = end;
            }
            here.pop();
            joints = here;
        }
    }
    stones
}

/// Squared stones in courses of 5 to 7 inches with mortar between; one upright joint for each 20 in of width, turn about.
pub fn ashlar(chance: &mut Chance, area: Rect, size: f64) -> Vec<Stone> {
    let inch = INCH * size;
    let joint = 0.38 * inch;
    let mut stones = Vec::new();
    let (mut y, mut odd) = (area.y0, false);
    while y < area.y1 - 1e-6 {
        let left = area.y1 - y;
        let mut height = chance.between(5.2, 7.4) * inch;
        if left - height < 4.2 * inch {
            height = if left < 8.5 * inch { left } else { left / 2.0 };
        }
        let count = (area.width() / (9.5 * inch)).round().max(1.0) as usize;
        let mut cuts = vec![area.x0];
        for k in 1..count {
            let lean = if odd { -0.14 } else { 0.14 } + chance.between(-0.05, 0.05);
            let keep = !chance.happens(0.10);
            let step = area.width() / count as f64;
            if keep {
                cuts.push(area.x0 + step * (k as f64 + lean * 2.0));
            }
        }
        cuts.push(area.x1);
        for (k, pair) in cuts.windows(2).enumerate() {
            let a = if k == 0 { pair[0] } else { pair[0] + joint / 2.0 };
            let b = if k + 2 == cuts.len() { pair[1] } else { pair[1] - joint / 2.0 };
            let spot = Rect::new(a, y + joint / 2.0, b, y + height - joint / 2.0);
            let stone = rough(chance, spot, 0.0, inch, (0.05, 0.10), (0.04, 0.08));
            let marks = chisel(chance, spot, inch);
            stones.push(Stone { tone: chance.weighted(ASHLAR.weights), marks, ..stone });
        }
        y += height;
        odd = !odd;
    }
    stones
}

/// The box cut at levels, none of the parts lower than `least`.
fn breaks(area: Rect, levels: &[f64], least: f64) -> Vec<(f64, f64)> {
    let mut sorted: Vec<f64> =
        levels.iter().copied().filter(|y| *y > area.y0 + least && *y < area.y1 - least).collect();
    sorted.sort_by(f64::total_cmp);
    let mut kept = vec![area.y0];
    for level in sorted {
        if level - kept[kept.len() - 1] >= least {
            kept.push(level);
        }
    }
    kept.push(area.y1);
    kept.windows(2).map(|pair| (pair[0], pair[1])).collect()
}

/// Heights of courses that fill a height, as (bottom, top); never two alike in a row.
fn courses(
    chance: &mut Chance,
    total: f64,
    inch: f64,
    last: &mut f64,
    from: f64,
    out: &mut Vec<(f64, f64)>,
) -> Vec<(f64, f64)> {
    let heights = [1.2, 1.6, 2.1, 2.7, 3.3];
    let (mut left, mut y) = (total, from);
    while left > 1e-6 {
        let mut height = heights[chance.weighted(&[2, 4, 4, 3, 1])] * inch;
        if (*last - height).abs() < 0.05 * inch {
            continue;
        }
        if left - height < 1.1 * inch {
            height = if left <= 3.7 * inch { left } else { left / 2.0 };
        }
        out.push((y, y + height));
        (left, y, *last) = (left - height, y + height, height);
    }
    std::mem::take(out)
}

/// A stone's uneven outline with its lit upper and shaded lower edge.
fn rough(chance: &mut Chance, spot: Rect, gap: f64, inch: f64, shade: (f64, f64), light: (f64, f64)) -> Stone {
    let height = spot.height();
    let corner = (0.16 * inch).min(height * 0.12);
    let (a, b, low, high) = (spot.x0 + gap, spot.x1 - gap, spot.y0 + gap, spot.y1 - gap);
    let mut edge = |y: f64| -> Ring {
        let (from, to) = (a + corner, b - corner);
        let count = ((to - from) / (2.4 * inch)).round().clamp(1.0, 40.0) as usize;
        let jitter = |chance: &mut Chance, by: f64, k: usize| {
            if k > 0 && k < count { chance.between(-by, by) * inch } else { 0.0 }
        };
        (0..=count)
            .map(|k| {
                [from + (to - from) * k as f64 / count as f64 + jitter(chance, 0.3, k), y + jitter(chance, 0.05, k)]
            })
            .collect()
    };
    let (bottom, top) = (edge(low), edge(high));
    let mut ring = vec![[a, low + corner]];
    ring.extend(bottom.iter().copied());
    ring.extend([[b, low + corner], [b, high - corner]]);
    ring.extend(top.iter().rev().copied());
    ring.push([a, high - corner]);
    let mut strip = |edge: &Ring, by: (f64, f64), up: f64| {
        let (first, last) = (edge[0], edge[edge.len() - 1]);
        let mut ring = edge.clone();
        ring.push([last[0], last[1] + up * height * chance.between(by.0, by.1)]);
        ring.push([first[0], first[1] + up * height * chance.between(by.0, by.1)]);
        Patch::of(ring)
    };
    let (shade, light) = (strip(&bottom, shade, 1.0), strip(&top, light, -1.0));
    Stone { shape: Patch::of(ring), tone: 0, shade, light, marks: Vec::new() }
}

/// Fine level cracks of split stone.
fn clefts(chance: &mut Chance, spot: Rect, inch: f64) -> Vec<Ring> {
    let count = if spot.height() > inch { [0, 0, 1, 1, 2, 3][chance.below(6)] } else { [0, 0, 1][chance.below(3)] };
    let mut lines = Vec::new();
    for _ in 0..count {
        let length = (spot.width() * chance.between(0.14, 0.42)).min(3.2 * inch);
        let room = spot.x1 - length - 0.3 * inch;
        let x =
            if room > spot.x0 + 0.3 * inch { chance.between(spot.x0 + 0.3 * inch, room) } else { spot.x0 + 0.3 * inch };
        let y = spot.y0 + spot.height() * chance.between(0.25, 0.75);
        let mut off = |by: f64| y + chance.between(-by, by) * inch;
        lines.push(vec![
            [x, y],
            [x + length * 0.4, off(0.07)],
            [x + length * 0.75, off(0.07)],
            [x + length, off(0.05)],
        ]);
    }
    lines
}

/// Short chisel strokes of one lean.
fn chisel(chance: &mut Chance, spot: Rect, inch: f64) -> Vec<Ring> {
    let count = (spot.width() * spot.height() / (inch * inch) * 0.16) as usize;
    let field = spot.inset(0.9 * inch);
    (0..count)
        .map(|_| {
            let [x, y] = [chance.between(field.x0, field.x1), chance.between(field.y0, field.y1)];
            let (length, lean) = (chance.between(0.35, 0.8) * inch, chance.near(58.0, 9.0).to_radians());
            vec![[x, y], [x + length * lean.cos(), y + length * lean.sin()]]
        })
        .collect()
}

/// A stone less the holes that meet it, in as many pieces as are left; slivers fall away.
fn cut(stone: Stone, spot: Rect, holes: &[Rect], least: f64) -> Vec<Stone> {
    let meeting: Vec<&Rect> = holes.iter().filter(|hole| hole.shared(&spot).is_some()).collect();
    if meeting.is_empty() {
        return vec![stone];
    }
    if meeting.iter().any(|hole| hole.x0 <= spot.x0 && hole.x1 >= spot.x1 && hole.y0 <= spot.y0 && hole.y1 >= spot.y1) {
        return Vec::new();
    }
    let hole = Patch::union(&meeting.iter().map(|hole| hole.patch()).collect::<Vec<_>>());
    let shape = stone.shape.less(&hole);
    let rings = shape.rings.into_iter().filter(|ring| {
        let bounds = Patch::of(ring.clone()).bounds();
        bounds.width() >= least && bounds.height() >= least
    });
    let shape = Patch { rings: rings.collect() };
    if shape.is_empty() {
        return Vec::new();
    }
    let whole = |line: &Ring| line.iter().all(|&spot: &Spot| shape.holds(spot));
    let marks = stone.marks.into_iter().filter(whole).collect();
    let (shade, light) = (stone.shade.within(&shape), stone.light.within(&shape));
    vec![Stone { shape, tone: stone.tone, shade, light, marks }]
}

/// Stones with every point moved, for a pier that leans.
pub fn moved(stones: Vec<Stone>, map: impl Fn(Spot) -> Spot) -> Vec<Stone> {
    stones
        .into_iter()
        .map(|stone| Stone {
            shape: stone.shape.mapped(&map),
            shade: stone.shade.mapped(&map),
            light: stone.light.mapped(&map),
            marks: stone.marks.iter().map(|line| line.iter().map(|&spot| map(spot)).collect()).collect(),
            tone: stone.tone,
        })
        .collect()
}

/// Stones cut to a box, for a swatch.
pub fn trimmed(stones: Vec<Stone>, area: Rect) -> Vec<Stone> {
    let patch = area.patch();
    stones
        .into_iter()
        .map(|stone| Stone {
            shape: stone.shape.within(&patch),
            shade: stone.shade.within(&patch),
            light: stone.light.within(&patch),
            marks: stone.marks.into_iter().filter(|line| line.iter().all(|&spot| area.holds(spot))).collect(),
            ..stone
        })
        .collect()
}
