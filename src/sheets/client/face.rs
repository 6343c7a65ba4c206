//! The face of the run: its finish cut round every opening, the shadows on it, and the base trim.

use super::brush::{Brush, DARK, SHADE};
use super::chance::Chance;
use super::fronts;
use super::masonry;
use super::patch::{Patch, Rect, Spot};
use super::scene::{INCH, Scene};
use super::{skim, tile};
use crate::drawing::Colour;
use crate::solve::FinishKind;

/// Bare board.
pub const BOARD: Colour = Colour::from_hex(0xe2e1de);
/// Base trim.
pub const TRIM: Colour = Colour::from_hex(0xa9a6a0);

/// The finish with its shadows.
pub fn finish(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    let area = scene.face_rect();
    let covered = scene.covered();
    let patch = scene.face_patch();
    match scene.finish().map(|finish| finish.kind) {
        None => brush.fill([&patch], BOARD),
        Some(FinishKind::SkimCoat) => {
            let openings: Vec<Rect> = scene.fronts.iter().map(|front| front.outside).collect();
            skim::paint(brush, "face skim", &patch, &openings, scene.size, skim::FACE);
        }
        Some(FinishKind::Veneer) => {
            brush.fill([&patch], masonry::LEDGER.joint);
            let levels: Vec<f64> = scene.fronts.iter().flat_map(|f| [f.outside.y0, f.outside.y1]).collect();
            let stones = masonry::ledger(&mut Chance::named("ledger"), area, &levels, &covered, scene.size);
            masonry::paint(brush, &stones, &masonry::LEDGER);
        }
        Some(FinishKind::Tile { width, height, joint, staggered }) => {
            let grid = tile::Grid { width: width.mm(), height: height.mm(), joint: joint.mm(), staggered };
            tile::paint(brush, "face tile", area, &covered, grid);
        }
    }
    // Under the overhang.
    for (deep, opacity) in [(2.1, 0.15), (1.0, 0.26)] {
        let shadow = Rect { y0: area.y1 - deep * scene.under() * INCH, ..area }.patch().within(&patch);
        brush.glaze([&shadow], SHADE, opacity / scene.under().sqrt());
    }
    fronts::shadows(brush, scene, &patch);
}

/// Outlines of the face's two ends, as long as nothing stands there.
pub fn ends(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    for (x, bound) in [(0.0, &scene.bounds[0]), (scene.right, &scene.bounds[1])] {
        match bound {
            None => {
                let foot = if scene.trim.is_some() { scene.floor(x) } else { scene.board_bottom };
                brush.edge(&[[x, scene.levels.0], [x, foot]], 0.5, DARK);
            }
            Some(side) => {
                // The joint to what stands there: dark, and no more of it than there is.
                let (bottom, top) = (scene.floor(x), scene.levels.0);
                let joint = Patch::of(vec![[x, bottom], [side.at(bottom), bottom], [side.at(top), top], [x, top]]);
                brush.fill([&joint], Colour::from_hex(0x8d8a85));
            }
        }
    }
}

/// Base trim scribed to the floor between the bays that reach it; without trim, the feet in the dark.
pub fn base(brush: &mut Brush<'_>, scene: &Scene<'_>) {
    let mut bays: Vec<Rect> = scene.fronts.iter().filter(|f| f.fitting.to_floor).map(|f| f.hole).collect();
    bays.sort_by(|a, b| a.x0.total_cmp(&b.x0));
    let mut stretches = Vec::new();
    let mut from = scene.span.0;
    for bay in &bays {
        stretches.push((from, bay.x0));
        from = bay.x1;
    }
    stretches.push((from, scene.span.1));
    let floor = |x: f64| scene.floor(x);
    let Some(top) = scene.trim else {
        for (a, b) in stretches.into_iter().filter(|(a, b)| b - a > 1.0) {
            feet(brush, scene, a, b);
        }
        return;
    };
    for (a, b) in stretches.into_iter().filter(|(a, b)| b - a > 1.0) {
        let lift = 0.1 * INCH;
        let board = Patch::of(vec![[a, floor(a) + lift], [b, floor(b) + lift], [b, top], [a, top]]);
        brush.fill([&board], TRIM);
        let strip = (0.4 * INCH).min((top - floor(a)) * 0.2);
        brush.glaze_rect(Rect::new(a, top - strip, b, top), Colour::WHITE, 0.35);
        let low = (0.9 * INCH).min((top - floor(a)) * 0.3);
        let shade = vec![[a, floor(a) + lift], [b, floor(b) + lift], [b, floor(b) + low], [a, floor(a) + low]];
        brush.glaze([&Patch::of(shade)], SHADE, 0.16);
        brush.outline(&board, 0.25, DARK);
    }
}

/// A dark recess with the adjustable feet in it.
fn feet(brush: &mut Brush<'_>, scene: &Scene<'_>, a: f64, b: f64) {
    let bottom = scene.board_bottom;
    let recess: Vec<Spot> = vec![[a, scene.floor(a)], [b, scene.floor(b)], [b, bottom], [a, bottom]];
    brush.fill([&Patch::of(recess)], Colour::from_hex(0xc9c7c3));
    brush.glaze_rect(Rect::new(a, bottom - 0.8 * INCH, b, bottom), SHADE, 0.25);
    let row = scene.leg.feet.iter().map(|foot| scene.foot(foot)).filter(|x| *x > a && *x < b);
    let mut parts = Vec::new();
    for x in row {
        let floor = scene.floor(x);
        parts.push(Rect::new(x - 0.3 * INCH, floor, x + 0.3 * INCH, bottom).patch());
        parts.push(Rect::new(x - 0.9 * INCH, floor, x + 0.9 * INCH, floor + 0.3 * INCH).patch());
    }
    if !parts.is_empty() {
        brush.fill([&Patch::union(&parts)], Colour::from_hex(0x7d7b77));
    }
    brush.edge(&[[a, bottom], [b, bottom]], 0.35, DARK);
}
