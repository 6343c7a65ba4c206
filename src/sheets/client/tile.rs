//! Tiles on their true grid, stacked or staggered by half, with joints.

use super::brush::Brush;
use super::chance::Chance;
use super::patch::{Patch, Rect};
use crate::drawing::Colour;

const TONES: [Colour; 4] =
    [Colour::from_hex(0xd6dcd7), Colour::from_hex(0xd0d7d2), Colour::from_hex(0xdce1dc), Colour::from_hex(0xcad2cd)];
/// Between tiles.
pub const JOINT: Colour = Colour::from_hex(0xeceeeb);

/// A grid of tiles.
#[derive(Clone, Copy, Debug)]
pub struct Grid {
    /// Width of a tile, mm.
    pub width: f64,
    /// Height of a tile, mm.
    pub height: f64,
    /// Joint, mm.
    pub joint: f64,
    /// Rows are set off by half a tile.
    pub staggered: bool,
}

/// Most tiles that are drawn one by one; smaller ones are drawn as lines of their courses only.
const MOST: f64 = 9000.0;

/// Paints tiles over a box less its holes. The first whole tile stands at the left end and under the top edge.
pub fn paint(brush: &mut Brush<'_>, name: &str, area: Rect, holes: &[Rect], grid: Grid) {
    let seen = holes
        .iter()
        .fold(vec![area.patch()], |left, hole| left.iter().map(|patch| patch.less(&hole.patch())).collect());
    brush.fill(&seen, JOINT);
    // A joint thinner than a fine line would not be seen at all.
    let joint = grid.joint.max(brush.paper(0.12));
    let (step_x, step_y) = ((grid.width + grid.joint).max(1.0), (grid.height + grid.joint).max(1.0));
    if (area.width() / step_x) * (area.height() / step_y) > MOST || step_x.min(step_y) < brush.paper(0.45) {
        brush.fill(&seen, TONES[0]);
        return;
    }
    let mut chance = Chance::named(name);
    let mut tones: [Vec<Patch>; 4] = Default::default();
    let rows = (area.height() / step_y).ceil() as usize;
    for row in 0..rows {
        let y1 = area.y1 - step_y * row as f64 - joint / 2.0;
        let y0 = area.y1 - step_y * (row + 1) as f64 + joint / 2.0;
        let off = if grid.staggered && row % 2 == 1 { -step_x / 2.0 } else { 0.0 };
        let columns = ((area.width() - off) / step_x).ceil() as usize;
        for column in 0..columns {
            let x = area.x0 + off + step_x * column as f64;
            let tone = chance.weighted(&[5, 4, 3, 1]);
            let whole = Rect::new(x + joint / 2.0, y0, x + step_x - joint / 2.0, y1);
            let Some(tile) = whole.shared(&area) else { continue };
            let meeting: Vec<&Rect> = holes.iter().filter(|hole| hole.shared(&tile).is_some()).collect();
            let patch = meeting.iter().fold(tile.patch(), |left, hole| left.less(&hole.patch()));
            if !patch.is_empty() {
                tones[tone].push(patch);
            }
        }
    }
    for (patches, colour) in tones.iter().zip(TONES) {
        brush.fill(patches, colour);
    }
}
