//! What stands round the run: the wall behind, piers, posts and walls at its ends, and the ground as it falls.

use super::brush::{Brush, DARK, MID, SHADE, SOFT};
use super::chance::Chance;
use super::layout::Layout;
use super::masonry;
use super::patch::{Patch, Rect, Ring, Spot};
use super::scene::{CAP, COPING, INCH, Scene, Side};
use super::skim;
use crate::drawing::Colour;
use crate::solve::BoundKind;

/// Coping stones.
const PALE: Colour = Colour::from_hex(0xe9e7e2);
/// Slabs underfoot.
pub const PAVING: Colour = Colour::from_hex(0xe5e3de);
/// Thickness of what lies underfoot.
const SLAB: f64 = 2.1 * INCH;
/// Depth of its bed.
const BED: f64 = 1.8 * INCH;
/// How far the ground is drawn down under the floor.
pub const GROUND: f64 = SLAB + BED;

/// The wall behind with its coping, between what stands at the ends. Returns the patch that shadows may fall on.
pub fn wall(brush: &mut Brush<'_>, scene: &Scene<'_>, layout: &Layout) -> Option<Patch> {
    let (_, whole) = scene.wall?;
    let broken = whole + COPING > layout.tallest;
    let top = if broken { layout.tallest } else { whole };
    let (left, right) = layout.wall;
    let area = Rect::new(left, scene.floor(left).min(scene.floor(right)), right, top);
    let patch = Patch::of(vec![[left, scene.floor(left)], [right, scene.floor(right)], [right, top], [left, top]]);
    brush.fill([&patch], skim::WALL.ground);
    for deep in if broken { &[][..] } else { &[1.6, 2.4] } {
        brush.glaze_rect(Rect { y0: top - deep * INCH, ..area }, SHADE, 0.06);
    }
    // Passes stay off the run, the figure, and the shade of the coping.
    let run = Rect::new(scene.counter.0, area.y0, scene.counter.1, scene.levels.1 + scene.splash.0);
    let figure =
        layout.figure.map(|(x, _)| Rect::new(x - 18.0 * INCH, area.y0, x + 18.0 * INCH, scene.levels.1 + 40.0 * INCH));
    let avoid: Vec<Rect> = std::iter::once(run).chain(figure).collect();
    let quiet = Rect { y1: top - 3.5 * INCH, ..area }.inset(0.6 * INCH);
    skim::texture(brush, "wall", quiet, &avoid, scene.size, skim::WALL);
    if broken {
        brush.edge(&break_line(left, right, top), 0.25, MID);
    } else {
        coping(
            brush,
            "coping",
            Rect::new(left, top, right, top + COPING),
            [scene.bounds[0].is_none(), scene.bounds[1].is_none()],
        );
    }
    for (x, open) in [(left, scene.bounds[0].is_none()), (right, scene.bounds[1].is_none())] {
        if open {
            brush.edge(&[[x, top], [x, scene.floor(x)]], 0.25, MID);
        }
    }
    Some(patch)
}

/// A coping that oversails a free end.
fn coping(brush: &mut Brush<'_>, name: &str, rect: Rect, free: [bool; 2]) {
    let mut chance = Chance::named(name);
    let over = |free: bool| if free { INCH } else { 0.0 };
    let (a, b) = (rect.x0 - over(free[0]), rect.x1 + over(free[1]));
    let cut = 0.4 * INCH;
    let mut ring = vec![[a, rect.y0], [b, rect.y0]];
    ring.extend(if free[1] { vec![[b, rect.y1 - cut], [b - cut * 1.5, rect.y1]] } else { vec![[b, rect.y1]] });
    ring.extend(if free[0] { vec![[a + cut * 1.5, rect.y1], [a, rect.y1 - cut]] } else { vec![[a, rect.y1]] });
    let patch = Patch::of(ring);
    brush.fill([&patch], PALE);
    brush.glaze_rect(Rect::new(a, rect.y0, b, rect.y0 + rect.height() * 0.25), SHADE, 0.07);
    brush.outline(&patch, 0.25, MID);
    let mut joints: Vec<Ring> = Vec::new();
    let mut x = rect.x0 + chance.between(20.0, 30.0) * INCH;
    while x < rect.x1 - 8.0 * INCH {
        joints.push(vec![[x, rect.y0], [x, rect.y1]]);
        x += 30.0 * INCH;
    }
    brush.lines(&joints, 0.18, SOFT);
}

/// What stands at an end, to its height and with its masonry.
pub fn side(brush: &mut Brush<'_>, scene: &Scene<'_>, side: &Side<'_>, name: &str, tallest: f64) {
    let broken = side.top + CAP > tallest;
    let top = if broken { tallest } else { side.top };
    let lean = |[x, y]: Spot| [x + (side.at(y) - side.at(0.0)), y];
    let (left, right) = side.ends(0.0);
    let bottom = scene.floor(left).min(scene.floor(right));
    let area = Rect::new(left, bottom, right, top);
    let patch = area.patch().mapped(lean);
    match texture_of(side) {
        Texture::Stone => {
            brush.fill([&patch], masonry::ASHLAR.joint);
            let stones = masonry::ashlar(&mut Chance::named(name), area, scene.size.min(1.2));
            let stones = masonry::moved(stones, lean);
            masonry::paint(brush, &stones, &masonry::ASHLAR);
        }
        Texture::Coat => skim::paint(brush, name, &patch, &[], scene.size, skim::WALL),
        Texture::Plain => {
            brush.fill([&patch], Colour::from_hex(0xd9d7d2));
            let part = area.width() * 0.3;
            brush.glaze([&Rect { x0: area.x1 - part, ..area }.patch().mapped(lean)], SHADE, 0.10);
            brush.glaze([&Rect { x1: area.x0 + part * 0.6, ..area }.patch().mapped(lean)], Colour::WHITE, 0.4);
        }
    }
    if broken {
        broken_top(brush, &area, lean);
        return;
    }
    for (deep, opacity) in [(2.6, 0.10), (1.5, 0.07)] {
        brush.glaze([&Rect { y0: top - deep * INCH, ..area }.patch().mapped(lean)], SHADE, opacity);
    }
    brush.outline(&patch, 0.5, DARK);
    if side.bound.kind != BoundKind::Post {
        cap(brush, side, top);
    } else {
        let (a, b) = side.ends(top);
        let plate = Rect::new(a - 0.4 * INCH, top, b + 0.4 * INCH, top + 0.9 * INCH);
        brush.fill_rect(plate, PALE);
        brush.outline(&plate.patch(), 0.35, DARK);
    }
}

/// How something at an end is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Texture {
    /// Squared stones.
    Stone,
    /// A rendered coat.
    Coat,
    /// Plain timber or steel.
    Plain,
}

/// A pier is of stone, a post plain; a wall is rendered unless its name says what it is built of.
pub fn texture_of(side: &Side<'_>) -> Texture {
    let name = side.bound.name.to_lowercase();
    let built = ["stone", "masonry", "brick", "block"].iter().any(|word| name.contains(word));
    match side.bound.kind {
        BoundKind::Post => Texture::Plain,
        BoundKind::Pier => Texture::Stone,
        _ if built => Texture::Stone,
        _ => Texture::Coat,
    }
}

/// A weathered cap stone.
fn cap(brush: &mut Brush<'_>, side: &Side<'_>, top: f64) {
    let (a, b) = side.ends(top);
    let over = 1.5 * INCH;
    let slope = (1.7 * INCH).min((b - a) * 0.2);
    let (low, rise) = (top + 1.8 * INCH, top + 3.2 * INCH);
    let patch = Patch::of(vec![
        [a - over, top],
        [b + over, top],
        [b + over, low],
        [b + over - slope, rise],
        [a - over + slope, rise],
        [a - over, low],
    ]);
    brush.fill([&patch], Colour::from_hex(0xe6e4df));
    brush.glaze_rect(Rect::new(a - over, top, b + over, top + 0.55 * INCH), SHADE, 0.09);
    brush.lines([&vec![[a - over, low], [b + over, low]]], 0.18, SOFT);
    brush.outline(&patch, 0.5, DARK);
}

/// Two sides and a break line over what goes on higher than it is drawn.
fn broken_top(brush: &mut Brush<'_>, area: &Rect, lean: impl Fn(Spot) -> Spot) {
    for x in [area.x0, area.x1] {
        brush.edge(&[lean([x, area.y0]), lean([x, area.y1])], 0.5, DARK);
    }
    let line: Ring = break_line(area.x0, area.x1, area.y1).into_iter().map(lean).collect();
    brush.edge(&line, 0.25, DARK);
}

/// A level line with a kink in its middle, past both ends.
fn break_line(left: f64, right: f64, y: f64) -> Ring {
    let (middle, kink) = ((left + right) / 2.0, 1.4 * INCH);
    let over = 1.2 * INCH;
    vec![
        [left - over, y],
        [middle - kink, y],
        [middle - kink * 0.4, y - kink],
        [middle + kink * 0.4, y + kink],
        [middle + kink, y],
        [right + over, y],
    ]
}

/// Slabs on their bed, cut through; their top follows the true fall.
pub fn ground(brush: &mut Brush<'_>, scene: &Scene<'_>, layout: &Layout) {
    let (a, b) = (layout.left, layout.right);
    let floor = |x: f64| scene.floor(x);
    let strip = |from: f64, to: f64| {
        Patch::of(vec![[a, floor(a) - to], [b, floor(b) - to], [b, floor(b) - from], [a, floor(a) - from]])
    };
    brush.fill([&strip(0.0, SLAB)], PAVING);
    let mut joints: Vec<Ring> = Vec::new();
    let mut x = a + 8.5 * INCH;
    while x < b - INCH {
        joints.push(vec![[x, floor(x)], [x, floor(x) - SLAB]]);
        x += 24.25 * INCH * scene.size.max(1.0).floor();
    }
    brush.lines(&joints, 0.25, Colour::from_hex(0x6d6a66));
    brush.lines([&vec![[a, floor(a) - SLAB], [b, floor(b) - SLAB]]], 0.18, MID);
    // Dots of bedding, one to each cell of a net, off its corners.
    let mut chance = Chance::named("bed");
    let step = brush.paper(1.25);
    let (mut fine, mut coarse) = (Vec::new(), Vec::new());
    let (columns, rows) = (((b - a) / step) as usize, (BED / step).max(1.0) as usize);
    for row in 0..rows {
        for column in 0..columns {
            let x = a + step * (column as f64 + chance.between(0.05, 0.95));
            let y = floor(x) - SLAB - 0.15 * INCH - step * (row as f64 + chance.between(0.05, 0.95));
            // Thinner towards its foot.
            if chance.happens(0.9 - 0.45 * (row as f64 / rows as f64)) {
                if chance.happens(0.7) { fine.push([x, y]) } else { coarse.push([x, y]) }
            }
        }
    }
    brush.dots(&fine, 0.10, Colour::from_hex(0xa5a29d));
    brush.dots(&coarse, 0.16, Colour::from_hex(0xa5a29d));
}

/// The floor itself, on top of all that stands on it.
pub fn floor_line(brush: &mut Brush<'_>, scene: &Scene<'_>, layout: &Layout) {
    let (a, b) = (layout.left, layout.right);
    brush.edge(&[[a, scene.floor(a)], [b, scene.floor(b)]], 0.7, DARK);
}

/// Soft ground behind a run that has no wall: a pale strip with an uneven top.
pub fn meadow(brush: &mut Brush<'_>, scene: &Scene<'_>, layout: &Layout) {
    let mut chance = Chance::named("meadow");
    let (a, b) = (layout.left, layout.right);
    let steps = ((b - a) / (14.0 * INCH)).ceil().max(4.0) as usize;
    let crest: Ring = (0..=steps)
        .map(|k| (k, b - (b - a) * k as f64 / steps as f64))
        .map(|(k, x)| {
            let rise = chance.between(6.0, 10.0) * INCH;
            [x, scene.floor(x) + if k == 0 || k == steps { 0.0 } else { rise }]
        })
        .collect();
    brush.fill([&Patch::of(super::patch::smooth(&crest, false, 5))], Colour::from_hex(0xf3f4f0));
}
