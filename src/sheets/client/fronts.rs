//! Fronts of the fittings in a face: doors, drawers, a refrigerator, panels, vents.

use super::brush::{Brush, MID, SHADE};
use super::grill;
use super::metal;
use super::patch::{Patch, Rect, Ring};
use super::scene::{Front, INCH, Scene};
use crate::drawing::{Colour, Fact};
use crate::sheets::view::number;
use crate::solve::Look;

/// Gap round a leaf.
const GAP: f64 = 0.13 * INCH;
/// Inside of an open hole.
const DEEP: Colour = Colour::from_hex(0x6a6866);

/// Shadows of all fronts on the finish round them.
pub fn shadows(brush: &mut Brush<'_>, scene: &Scene<'_>, on: &Patch) {
    for front in &scene.fronts {
        let proud = if front.hung { 1.7 * INCH } else { 0.7 * INCH };
        let outside = front.outside.patch();
        if front.hung {
            let below = on.within(&Rect { y1: scene.levels.0, ..scene.face_rect() }.patch());
            brush.cast_wide(&outside, proud, &below, (0.15, 0.11), 1.35);
        } else if front.outside.x0 < front.hole.x0 {
            brush.cast(&outside, proud, on, (0.12, 0.10));
        }
    }
}

/// Every front, left to right, what hangs in a notch last: it stands proud of the others.
pub fn draw(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    for hung in [false, true] {
        for front in scene.fronts.iter().filter(|front| front.hung == hung) {
            one(brush, scene, front);
        }
    }
}

/// The facts by which a checker finds a front.
pub fn facts(front: &Front<'_>) -> Vec<Fact> {
    let r = front.outside;
    let values = [r.x0, r.y0, r.x1, r.y1].map(|v| number(v, 4)).join(",");
    vec![("data-feature", front.fitting.mark.clone()), ("data-bbox-mm", values)]
}

fn one(brush: &mut Brush<'_>, scene: &Scene<'_>, front: &Front<'_>) {
    if front.hung {
        grill::hung(brush, scene, front);
        return;
    }
    hole(brush, scene, front);
    body(brush, scene, front);
}

/// The hole itself: what no flange covers is open to the dark.
pub fn hole(brush: &mut Brush<'_>, scene: &Scene<'_>, front: &Front<'_>) {
    let mut hole = front.hole;
    if front.fitting.to_floor {
        hole.y0 = scene.floor(hole.x0).min(scene.floor(hole.x1));
        let foot = Patch::of(vec![
            [hole.x0, scene.floor(hole.x0)],
            [hole.x1, scene.floor(hole.x1)],
            [hole.x1, hole.y1],
            [hole.x0, hole.y1],
        ]);
        brush.fill([&foot], DEEP);
        brush.outline(&foot, 0.25, MID);
    } else {
        brush.fill_rect(hole, DEEP);
        if front.fitting.look == Look::Hole {
            brush.outline_with(&hole.patch(), 0.25, MID, Vec::new());
        }
    }
}

/// The box of what is set into a hole.
pub fn box_of(scene: &Scene<'_>, front: &Front<'_>) -> Rect {
    let mut outside = front.outside;
    if front.fitting.to_floor && !front.hung {
        outside.y0 = scene.floor(outside.x0).max(scene.floor(outside.x1)) + 0.35 * INCH;
    }
    outside
}

/// What is set into the hole: its flange and leaves.
pub fn body(brush: &mut Brush<'_>, scene: &Scene<'_>, front: &Front<'_>) {
    let name = front.fitting.id.as_str();
    let outside = box_of(scene, front);
    let mut known = facts(front);
    if front.fitting.to_floor {
        known.clear();
    }
    match front.fitting.look {
        Look::Hole => {}
        Look::Vent => vent(brush, outside, known),
        Look::Refrigerator => {
            let inside = metal::flange(brush, outside, known);
            refrigerator(brush, inside, name);
        }
        Look::Doors => {
            let inside = metal::flange(brush, outside, known);
            let middle = inside.middle();
            let (tall, off) = pull_size(inside.width() / 2.0, inside.height());
            let leaf = metal::leaf(brush, gap(Rect { x1: middle + GAP / 2.0, ..inside }), &format!("{name} left"));
            metal::pull(brush, [middle - off, inside.y1 - tall * 0.5 - 1.8 * INCH], tall, true, &leaf, 0.62 * INCH);
            let leaf = metal::leaf(brush, gap(Rect { x0: middle - GAP / 2.0, ..inside }), &format!("{name} right"));
            metal::pull(brush, [middle + off, inside.y1 - tall * 0.5 - 1.8 * INCH], tall, true, &leaf, 0.62 * INCH);
        }
        Look::Drawers(count) => {
            let inside = metal::flange(brush, outside, known);
            drawers(brush, inside, usize::from(count.max(1)), name);
        }
        Look::WastePullOut => {
            let inside = metal::flange(brush, outside, known);
            let leaf = metal::leaf(brush, gap(inside), name);
            let length = (inside.width() * 0.5).min(12.0 * INCH);
            let y = inside.y1 - (1.75 * INCH).min(inside.height() * 0.2);
            metal::pull(brush, [inside.middle(), y], length, false, &leaf, 0.62 * INCH);
        }
        Look::Panel => {
            let inside = metal::flange(brush, outside, known);
            let leaf = metal::leaf(brush, gap(inside), name);
            latch(brush, inside, &leaf);
        }
        Look::Door { pull_right } => {
            let inside = metal::flange(brush, outside, known);
            door(brush, inside, pull_right, name);
        }
        Look::Grill | Look::SideBurner | Look::Sink | Look::Faucet => {
            let inside = metal::flange(brush, outside, known);
            metal::leaf(brush, gap(inside), name);
        }
    }
}

fn gap(rect: Rect) -> Rect {
    rect.inset(GAP)
}

/// Length of an upright pull on a leaf, and how far its middle is from the leaf's edge.
fn pull_size(width: f64, height: f64) -> (f64, f64) {
    ((9.0 * INCH).min(height * 0.42), (1.8 * INCH).min(width * 0.22))
}

fn door(brush: &mut Brush<'_>, inside: Rect, pull_right: bool, name: &str) {
    let leaf = metal::leaf(brush, gap(inside), name);
    let (tall, off) = pull_size(inside.width(), inside.height());
    let x = if pull_right { inside.x1 - off } else { inside.x0 + off };
    let down = (2.0 * INCH).min(inside.height() * 0.15);
    metal::pull(brush, [x, inside.y1 - down - tall / 2.0], tall, true, &leaf, 0.62 * INCH);
}

/// A stack: the top drawer is the lowest, where there is room for that.
fn drawers(brush: &mut Brush<'_>, inside: Rect, count: usize, name: &str) {
    let even = inside.height() / count as f64;
    let first = if count > 1 && even > 6.0 * INCH { (even * 0.72).max(5.2 * INCH) } else { even };
    let rest = if count > 1 { (inside.height() - first) / (count - 1) as f64 } else { even };
    let mut top = inside.y1;
    for k in 0..count {
        let height = if k == 0 { first } else { rest };
        let leaf = metal::leaf(brush, gap(Rect { y0: top - height, y1: top, ..inside }), &format!("{name} drawer {k}"));
        let down = (1.75 * INCH).min(height * 0.38);
        let length = (10.0 * INCH).min(inside.width() * 0.55);
        metal::pull(brush, [inside.middle(), top - down], length, false, &leaf, (0.62 * INCH).min(height * 0.2));
        top -= height;
    }
}

/// A door over an air grille.
fn refrigerator(brush: &mut Brush<'_>, inside: Rect, name: &str) {
    let grille = (3.5 * INCH).min(inside.height() * 0.16);
    let leaf = metal::leaf(brush, gap(Rect { y0: inside.y0 + grille, ..inside }), name);
    let off = (2.1 * INCH).min(inside.width() * 0.2);
    let length = (15.0 * INCH).min(inside.height() * 0.5);
    let y = inside.y1 - length / 2.0 - (3.5 * INCH).min(inside.height() * 0.12);
    metal::pull(brush, [inside.x0 + off, y], length, true, &leaf, 0.75 * INCH);
    let foot = gap(Rect { y1: inside.y0 + grille, ..inside });
    brush.fill_rect(foot, Colour::from_hex(0xc4c9cc));
    slats(brush, foot.inset((0.7 * INCH).min(foot.height() / 5.0)), 5);
    brush.outline(&foot.patch(), 0.18, MID);
}

/// Dark level slots.
fn slats(brush: &mut Brush<'_>, rect: Rect, count: usize) {
    let step = rect.height() / (count.max(2) - 1) as f64;
    let most = (rect.height() / brush.paper(0.55)).floor().max(1.0) as usize;
    let every = count.div_ceil(most.max(1)).max(1);
    let lines: Vec<Ring> = (0..count)
        .step_by(every)
        .map(|k| vec![[rect.x0, rect.y0 + step * k as f64], [rect.x1, rect.y0 + step * k as f64]])
        .collect();
    brush.lines(&lines, 0.25, Colour::from_hex(0x6f7375));
}

/// Louvres: each a lit blade over a dark slot.
fn vent(brush: &mut Brush<'_>, outside: Rect, facts: Vec<Fact>) {
    let inside = metal::flange(brush, outside, facts);
    let pitch = (0.75 * INCH).max(brush.paper(0.9));
    let count = (inside.height() / pitch).floor().max(1.0) as usize;
    let pitch = inside.height() / count as f64;
    let blades: Vec<Patch> = (0..count)
        .map(|k| {
            let y = inside.y0 + pitch * k as f64;
            Rect { y0: y + pitch * 0.34, y1: y + pitch, ..inside }.patch()
        })
        .collect();
    brush.fill(&blades, Colour::from_hex(0xd9dcdd));
    let lights: Vec<Patch> =
        blades.iter().map(|blade| blade.bounds()).map(|b| Rect { y0: b.y1 - pitch * 0.2, ..b }.patch()).collect();
    brush.glaze(&lights, Colour::WHITE, 0.6);
    brush.outline(&inside.patch(), 0.18, MID);
}

/// A small turn latch at the middle of a panel's upper edge.
fn latch(brush: &mut Brush<'_>, inside: Rect, on: &Patch) {
    let (w, h) = ((2.2 * INCH).min(inside.width() * 0.3), (0.9 * INCH).min(inside.height() * 0.12));
    let y = inside.y1 - (1.8 * INCH).min(inside.height() * 0.2);
    let plate =
        Rect::new(inside.middle() - w / 2.0, y - h / 2.0, inside.middle() + w / 2.0, y + h / 2.0).rounded(h / 2.0);
    brush.cast(&plate, 0.35 * INCH, on, (0.14, 0.10));
    brush.fill([&plate], Colour::from_hex(0xe9ecec));
    brush.outline(&plate, 0.18, metal::LINE);
    let slot = Rect::new(inside.middle() - w * 0.3, y - h * 0.12, inside.middle() + w * 0.3, y + h * 0.12);
    brush.glaze_rect(slot, SHADE, 0.4);
}
