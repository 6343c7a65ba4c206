//! The counter with its upstand, and what stands on it.

use super::brush::{Brush, MID, SOFT};
use super::chance::Chance;
use super::metal::{LINE, RIM};
use super::patch::{Patch, Rect, Ring, Spot, arc, disc, smooth};
use super::planting;
use super::scene::{INCH, Scene};
use super::{grill, slab};
use crate::drawing::Colour;
use crate::solve::Look;

/// The upstand at the back.
pub fn splash(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    let (height, pieces) = &scene.splash;
    for (k, (a, b)) in pieces.iter().enumerate() {
        let rect = Rect::new(*a, scene.levels.1, *b, scene.levels.1 + height);
        brush.fill_rect(rect, slab::ground(scene.material()).1);
        slab::texture(brush, &format!("splash {k}"), rect.inset(0.3 * INCH), scene.material(), 0.3);
        brush.glaze_rect(Rect { y0: rect.y1 - (0.45 * INCH).min(height * 0.2), ..rect }, Colour::WHITE, 0.5);
        brush.outline(&rect.patch(), 0.18, MID);
    }
}

/// The front edge, cut at notches, with its seams.
pub fn edge(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    let (low, high) = scene.levels;
    for (k, (a, b)) in scene.counter_stretches().into_iter().enumerate() {
        slab::edge(brush, &format!("counter {k}"), Rect::new(a, low, b, high), scene.material());
    }
    for seam in &scene.leg.counter.seams {
        let x = scene.x(seam.mm());
        brush.lines([&vec![[x, low], [x, high]]], 0.18, SOFT);
    }
}

/// What is let into the counter and stands over it, and hoods of the other face.
pub fn stands(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    let behind = scene.hoods_behind();
    for (fitting, ends) in behind {
        match fitting.look {
            Look::Grill => grill::hood(
                brush,
                scene,
                fitting,
                Rect { x0: ends.x0 + 0.5 * INCH, x1: ends.x1 - 0.5 * INCH, ..ends },
                true,
            ),
            Look::SideBurner => grill::low_lid(brush, scene, fitting, ends),
            _ => {}
        }
    }
    for (fitting, ends) in scene.wells() {
        match fitting.look {
            Look::Grill => grill::let_in(brush, scene, fitting, ends),
            Look::SideBurner => grill::low_lid(brush, scene, fitting, ends),
            Look::Faucet => faucet(brush, scene, ends.middle()),
            Look::Sink if fitting.flange.left.mm() > 0.0 => {
                let rim = Rect { y1: ends.y0 + 0.2 * INCH, ..ends };
                brush.fill_rect(rim, Colour::from_hex(0xd9dddf));
                brush.outline(&rim.patch(), 0.18, LINE);
            }
            _ => {}
        }
    }
}

/// A swan-neck tap: 8 to its bend, its spout turned to the sink beside it if there is one.
fn faucet(brush: &mut Brush<'_>, scene: &Scene<'_>, x: f64) {
    let top = scene.levels.1;
    let sinks = scene.wells().into_iter().filter(|(f, _)| f.look == Look::Sink);
    let nearest = sinks.map(|(_, r)| r.middle() - x).min_by(|a, b| a.abs().total_cmp(&b.abs())).unwrap_or(1.0);
    let turn = if nearest < -INCH { -1.0 } else { 1.0 };
    tap(brush, [x, top], turn);
}

/// The tap alone, its foot at a spot, turned to the right (1) or left (-1).
pub fn tap(brush: &mut Brush<'_>, [x, top]: Spot, turn: f64) {
    let at = |dx: f64, dy: f64| [x + turn * dx * INCH, top + dy * INCH];
    let line: Ring = spine().into_iter().map(|[dx, dy]| at(dx, dy)).collect();
    let tube = tube(&line, 0.95 * INCH);
    brush.fill([&tube], Colour::from_hex(0xd9dddf));
    brush.lines(
        [&line.iter().map(|[a, b]| [a - 0.16 * INCH, *b]).collect::<Ring>()],
        brush.paper(1.0).recip() * 0.2 * INCH,
        Colour::WHITE,
    );
    brush.outline(&tube, 0.18, LINE);
    let block = |a: [f64; 2], b: [f64; 2]| Rect::new(a[0], a[1], b[0], b[1]).patch();
    for (part, colour) in
        [(block(at(-0.95, 0.0), at(0.95, 1.3)), 0xd9dddf), (block(at(4.4, 6.0), at(5.5, 6.7)), 0xc7cccf)]
    {
        brush.fill([&part], Colour::from_hex(colour));
        brush.outline(&part, 0.18, LINE);
    }
    let lever = self::tube(&[at(0.9, 2.2), at(3.2, 3.3)], 0.34 * INCH);
    brush.fill([&lever], Colour::from_hex(0xe6e9ea));
    brush.outline(&lever, 0.18, RIM);
}

/// The middle of its tube, inches from its foot.
fn spine() -> Ring {
    let mut line: Ring = vec![[0.0, 0.0], [0.0, 8.0]];
    line.extend(arc([2.475, 8.0], 2.475, 180.0, 0.0, 12));
    line.push([4.95, 6.4]);
    line
}

/// The outline of a tap turned to the right, its foot at (0, 0).
pub fn tap_outline() -> Patch {
    let at = |[x, y]: Spot| [x * INCH, y * INCH];
    let line: Ring = spine().into_iter().map(at).collect();
    let block = |a: Spot, b: Spot| Rect::new(at(a)[0], at(a)[1], at(b)[0], at(b)[1]).patch();
    let lever = self::tube(&[at([0.9, 2.2]), at([3.2, 3.3])], 0.34 * INCH);
    let parts =
        [self::tube(&line, 0.95 * INCH), block([-0.95, 0.0], [0.95, 1.3]), block([4.4, 6.0], [5.5, 6.7]), lever];
    Patch::union(&parts)
}

/// A band of one width along a line.
fn tube(line: &[Spot], width: f64) -> Patch {
    let (mut left, mut right) = (Ring::new(), Ring::new());
    for (k, p) in line.iter().enumerate() {
        let (a, b) = (line[k.saturating_sub(1)], line[(k + 1).min(line.len() - 1)]);
        let length = (b[0] - a[0]).hypot(b[1] - a[1]).max(1e-9);
        let (nx, ny) = (-(b[1] - a[1]) / length * width / 2.0, (b[0] - a[0]) / length * width / 2.0);
        left.push([p[0] + nx, p[1] + ny]);
        right.push([p[0] - nx, p[1] - ny]);
    }
    left.extend(right.into_iter().rev());
    Patch::of(left)
}

/// Stretches of the counter that nothing stands on.
fn clear(scene: &Scene<'_>) -> Vec<(f64, f64)> {
    let margin = 4.0 * INCH;
    let mut taken: Vec<(f64, f64)> =
        scene.fronts.iter().filter(|f| f.hung).map(|f| (f.outside.x0, f.outside.x1)).collect();
    taken.extend(
        scene
            .wells()
            .iter()
            .map(|(f, r)| if f.look == Look::Faucet { (r.x0 - 6.0 * INCH, r.x1 + 6.0 * INCH) } else { (r.x0, r.x1) }),
    );
    taken.extend(scene.hoods_behind().iter().map(|(_, r)| (r.x0, r.x1)));
    taken.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (mut from, mut free) = (scene.counter.0 + margin, Vec::new());
    for (a, b) in taken {
        if a - margin > from {
            free.push((from, a - margin));
        }
        from = from.max(b + margin);
    }
    if scene.counter.1 - margin > from {
        free.push((from, scene.counter.1 - margin));
    }
    free
}

/// A bowl and a pot of herbs, each where the counter is free; light, so that nobody counts them.
pub fn still_life(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    let mut free = clear(scene);
    free.sort_by(|a, b| (b.1 - b.0).total_cmp(&(a.1 - a.0)).then(a.0.total_cmp(&b.0)));
    let roomy: Vec<(f64, f64)> = free.into_iter().filter(|(a, b)| b - a > 14.0 * INCH).collect();
    match roomy.as_slice() {
        [] => {}
        [(a, b)] if b - a > 34.0 * INCH => {
            bowl(brush, [a + (b - a) * 0.36, scene.levels.1]);
            herbs(brush, [a + (b - a) * 0.8, scene.levels.1]);
        }
        [(a, b)] => bowl(brush, [(a + b) / 2.0, scene.levels.1]),
        [first, second, ..] => {
            bowl(brush, [(first.0 + first.1) / 2.0, scene.levels.1]);
            herbs(brush, [second.0 + (second.1 - second.0) * 0.62, scene.levels.1]);
        }
    }
}

fn bowl(brush: &mut Brush<'_>, [x, y]: Spot) {
    let at = |dx: f64, dy: f64| [x + dx * INCH, y + dy * INCH];
    for (dx, dy, r) in [(-2.8, 2.3, 1.5), (0.0, 2.6, 1.6), (2.6, 2.2, 1.4)] {
        let fruit = disc(at(dx, dy), r * INCH, 18);
        brush.fill([&fruit], Colour::from_hex(0xe3e3df));
        brush.outline(&fruit, 0.18, SOFT);
    }
    let rim = [(-5.4, 2.6), (-4.4, 1.2), (-2.1, 0.25), (0.0, 0.1), (2.1, 0.25), (4.4, 1.2), (5.4, 2.6)];
    let shape = Patch::of(smooth(&rim.map(|(dx, dy)| at(dx, dy)), false, 5));
    brush.fill([&shape], Colour::from_hex(0xeeedea));
    brush.outline(&shape, 0.18, SOFT);
}

fn herbs(brush: &mut Brush<'_>, [x, y]: Spot) {
    let mut chance = Chance::named("herbs");
    let at = |dx: f64, dy: f64| [x + dx * INCH, y + dy * INCH];
    let mut stems = Vec::new();
    let mut leaves: [Vec<Patch>; 3] = Default::default();
    for k in 0..22_usize {
        let turn = chance.near(90.0, 26.0).clamp(30.0, 150.0).to_radians();
        let long = chance.between(4.0, 8.2);
        let foot = chance.between(-1.4, 1.4);
        let tip = (foot + long * turn.cos(), 4.2 + long * turn.sin());
        stems.push(vec![at(foot, 4.2), at(tip.0, tip.1)]);
        for j in 0..5_usize {
            let t = 0.3 + j as f64 * 0.16;
            let (dx, dy) = (foot + (tip.0 - foot) * t, 4.2 + (tip.1 - 4.2) * t);
            for side in [-1.0, 1.0] {
                let leaf = planting::leaf(at(dx + side * 0.35, dy + 0.2), 1.15 * INCH, turn + side * 0.84, 0.34);
                leaves[(k + j) % 3].push(leaf);
            }
        }
    }
    brush.lines(&stems, 0.18, Colour::from_hex(0xc6cec2));
    for (group, colour) in leaves.iter().zip([0xccd4c8, 0xbfc8ba, 0xd8dfd4]) {
        brush.fill(group, Colour::from_hex(colour));
    }
    let side = [(2.4, 4.4), (2.2, 3.6), (1.9, 3.5), (1.5, 0.05)];
    let mut ring: Ring = side.iter().map(|(dx, dy)| at(*dx, *dy)).collect();
    ring.extend(side.iter().rev().map(|(dx, dy)| at(-dx, *dy)));
    let pot = Patch::of(ring);
    brush.fill([&pot], Colour::from_hex(0xe4e2dd));
    brush.outline(&pot, 0.18, SOFT);
}
