//! Where everything goes on the sheet: title and sky, picture, dimensions, then materials beside the title block.

use super::figure;
use super::modules::Row;
use super::scene::{INCH, Scene};
use super::surround::GROUND;
use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::sheets::frame::{self, Area};
use crate::sheets::scale::{STANDARD, Scale};

/// From the lowest ground drawn to the line of the modules, mm of paper.
pub const TO_MODULES: f64 = 14.0;
/// From there to the overall dimension.
pub const TO_OVERALL: f64 = 16.0;
/// From there to the materials.
const TO_BAND: f64 = 6.5;
/// Lines of a key to the modules, apart.
pub const KEY_PITCH: f64 = 4.7;

/// A laid-out sheet.
pub struct Layout {
    /// Scale of the picture.
    pub scale: Scale,
    /// Where the picture's (0, 0) falls.
    pub origin: PaperPoint,
    /// The picture's left and right ends, model mm.
    pub left: f64,
    /// Its right end.
    pub right: f64,
    /// The wall behind, from where to where.
    pub wall: (f64, f64),
    /// The highest that anything is drawn; over it, it is broken off.
    pub tallest: f64,
    /// Middle of the figure and the way it walks.
    pub figure: Option<(f64, f64)>,
    /// The side that the counter's height is dimensioned on: 1 the viewer's right.
    pub height_side: f64,
    /// Baseline of the sheet's title.
    pub title: f64,
    /// The line of the modules.
    pub modules: f64,
    /// The overall dimension.
    pub overall: f64,
    /// First baseline of the key to modules that are too narrow for their names.
    pub key: f64,
    /// Materials: a row of large swatches, or lines of small ones.
    pub band: Area,
    /// Inside of the frame, with margins.
    pub room: Area,
    /// Names and widths of the modules.
    pub row: Row,
    /// Where the key plan of a run with several legs may come to stand: nothing grows there.
    pub reserved: Option<Area>,
}

/// Ends of a picture at a scale: left, right, figure, and the side of the height.
struct Ends {
    left: f64,
    right: f64,
    figure: (f64, f64),
    height_side: f64,
}

fn ends(scene: &Scene<'_>, factor: f64) -> Ends {
    let outer = |k: usize| match &scene.bounds[k] {
        Some(side) => {
            let (a, b) = (side.ends(0.0), side.ends(side.top.min(2400.0)));
            if k == 0 { a.0.min(b.0) - 1.5 * INCH } else { a.1.max(b.1) + 1.5 * INCH }
        }
        None if k == 0 => scene.reach.0,
        None => scene.reach.1,
    };
    let (a, b) = (outer(0), outer(1));
    // The figure comes from a free end; with none, from beyond what stands at the left.
    let from_right = scene.bounds[0].is_some() && scene.bounds[1].is_none();
    let with_figure = figure::REACH * 2.0 - 1.5 * INCH;
    let with_height = (9.0 * INCH).max(21.0 / factor);
    if from_right {
        Ends {
            left: a - with_height,
            right: b + with_figure,
            figure: (b + figure::REACH + 0.5 * INCH, -1.0),
            height_side: -1.0,
        }
    } else {
        Ends {
            left: a - with_figure,
            right: b + with_height,
            figure: (a - figure::REACH - 0.5 * INCH, 1.0),
            height_side: 1.0,
        }
    }
}

impl Layout {
    /// Keeps room for a key plan of a size at the upper right, beside the scale bar if that stands there.
    pub fn reserve(&mut self, (width, height): (f64, f64)) {
        let (right, top) = (self.room.right + 4.0, self.room.top);
        self.reserved = Some(Area { left: right - 70.0 - width, top, right, bottom: top + 10.0 + height });
    }

    /// What the picture takes with its dimensions, planting left out, for a scene.
    pub fn taken(&self, scene: &Scene<'_>) -> Area {
        let factor = self.scale.factor();
        let x = |x: f64| self.origin.x + x * factor;
        Area {
            left: x(self.left),
            top: self.origin.y - scene.top().max(figure::HEIGHT) * factor - 2.0,
            right: x(self.right),
            bottom: self.overall + 4.0,
        }
    }

    /// Lays a sheet out for a scene, at the largest standard scale that leaves it room.
    pub fn new(canvas: &Canvas, scene: &Scene<'_>) -> Layout {
        let border = frame::border(canvas);
        let margin = if canvas.width < 340.0 { 6.0 } else { 10.0 };
        let room =
            Area { left: border.left + margin, top: border.top, right: border.right - margin, bottom: border.bottom };
        let small = canvas.height < 250.0;
        let title = border.top + if small { 11.0 } else { 15.5 };
        let sky = title + if small { 14.0 } else { 16.0 };
        let band = super::swatches::band(canvas, room);
        let top = scene.top().max(figure::HEIGHT);
        let mut chosen = None;
        for scale in STANDARD.iter().copied().filter(|scale| *scale >= Scale(8)) {
            let factor = scale.factor();
            let ends = ends(scene, factor);
            let lowest = scene.floor(ends.left).min(scene.floor(ends.right)).min(0.0);
            let row = Row::new(scene, factor, room.width());
            let below = TO_MODULES + TO_OVERALL + TO_BAND + row.key.len() as f64 * KEY_PITCH;
            let width = (ends.right - ends.left) * factor;
            let height = (top - lowest + GROUND) * factor;
            let free = band.top - sky - below - height;
            let fits = width <= room.width() && free >= 0.0;
            chosen = Some((scale, ends, lowest, row, below, free));
            if fits {
                break;
            }
        }
        let (scale, ends, lowest, row, below, free) = chosen.unwrap_or_else(|| {
            let scale = Scale(100);
            (scale, self::ends(scene, scale.factor()), 0.0, Row::new(scene, scale.factor(), room.width()), 30.0, 0.0)
        });
        let factor = scale.factor();
        let ground = band.top - below - free.max(0.0) * 0.3;
        let y = ground + (lowest - GROUND) * factor;
        let x = (room.left + room.right) / 2.0 - (ends.left + ends.right) / 2.0 * factor;
        let wall_end = |k: usize| match &scene.bounds[k] {
            Some(side) => side.at(scene.levels.1),
            None if k == 0 => ends.left + 1.5 * INCH,
            None => ends.right - 1.5 * INCH,
        };
        let modules = ground + TO_MODULES;
        Layout {
            scale,
            origin: PaperPoint::new((x * 100.0).round() / 100.0, (y * 100.0).round() / 100.0),
            left: ends.left,
            right: ends.right,
            wall: (wall_end(0), wall_end(1)),
            tallest: (y - sky) / factor,
            figure: Some(ends.figure),
            height_side: ends.height_side,
            title,
            modules,
            overall: modules + TO_OVERALL,
            key: modules + TO_OVERALL + 6.5,
            band,
            room,
            row,
            reserved: None,
        }
    }
}
