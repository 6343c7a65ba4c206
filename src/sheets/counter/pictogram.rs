//! An edge of the counter cut through, 8 by 6 mm: the slab runs off to the left, what it meets is at the right.

use super::tag::Frame;
use crate::drawing::{Colour, Fill, Pen};
use crate::sheets::canvas::{Canvas, Layer, Paint};

/// What an edge looks like when it is cut through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pictogram {
    /// A finished nose.
    Finished,
    /// Against a wall.
    Wall,
    /// Against a wall, with an upstand.
    Splash,
    /// A cut edge under a flange.
    Cut,
    /// A finished edge over a bowl.
    Reveal,
}

const SLAB: Colour = Colour(0xc9, 0xc9, 0xc9);

/// Draws it about a point of a tag's own frame, mm.
pub fn draw(canvas: &mut Canvas, at: Layer, frame: Frame, (cx, cy): (f64, f64), pictogram: Pictogram) {
    let mut pen = Brush { canvas, at, frame, cx, cy };
    let (x0, x1, top, bottom) = (-3.3, 3.3, -0.95, 0.95);
    match pictogram {
        Pictogram::Finished => pen.slab(&rounded_end(x0, x1 - 0.4, top, bottom, 0.75)),
        Pictogram::Wall => {
            pen.slab(&[(x0, top), (x1 - 1.75, top), (x1 - 1.75, bottom), (x0, bottom)]);
            pen.wall(x1 - 1.25);
        }
        Pictogram::Splash => {
            let (end, top, bottom) = (x1 - 1.75, 0.6, 2.5);
            pen.slab(&[(x0, top), (end - 1.2, top), (end - 1.2, -2.5), (end, -2.5), (end, bottom), (x0, bottom)]);
            pen.line((end - 1.2, top), (end, top), Pen::FINE);
            pen.wall(x1 - 1.25);
        }
        Pictogram::Cut => {
            let end = 0.3;
            pen.slab(&[(x0, top), (end, top), (end, bottom), (x0, bottom)]);
            let lip = top - 0.3;
            pen.ink(&[
                (end - 1.8, lip - 0.7),
                (x1, lip - 0.7),
                (x1, lip),
                (end + 1.1, lip),
                (end + 1.1, bottom + 1.5),
                (end + 0.4, bottom + 1.5),
                (end + 0.4, lip),
                (end - 1.8, lip),
            ]);
        }
        Pictogram::Reveal => {
            let (end, top, bottom) = (0.5, top - 0.5, bottom - 0.5);
            pen.slab(&rounded_end(x0, end, top, bottom, 0.4));
            let rim = bottom + 0.3;
            pen.ink(&[
                (end - 2.2, rim),
                (end + 0.5, rim),
                (end + 0.5, bottom + 2.4),
                (end - 0.15, bottom + 2.4),
                (end - 0.15, rim + 0.65),
                (end - 2.2, rim + 0.65),
            ]);
        }
    }
}

/// An open outline whose right end is rounded at both arrises.
fn rounded_end(x0: f64, x1: f64, top: f64, bottom: f64, radius: f64) -> Vec<(f64, f64)> {
    let mut points = vec![(x0, top)];
    let arc = |centre: (f64, f64), from: f64| {
        (0..=5).map(move |k| {
            let angle = (from + 18.0 * f64::from(k)).to_radians();
            (centre.0 + radius * angle.cos(), centre.1 + radius * angle.sin())
        })
    };
    points.extend(arc((x1 - radius, top + radius), -90.0));
    points.extend(arc((x1 - radius, bottom - radius), 0.0));
    points.push((x0, bottom));
    points
}

struct Brush<'c> {
    canvas: &'c mut Canvas,
    at: Layer,
    frame: Frame,
    cx: f64,
    cy: f64,
}

impl Brush<'_> {
    fn places(&self, points: &[(f64, f64)]) -> Vec<crate::geometry::PaperPoint> {
        points.iter().map(|(x, y)| self.frame.at(self.cx + x, self.cy + y)).collect()
    }

    /// Filled grey; its outline stays open at the end that runs off.
    fn slab(&mut self, points: &[(f64, f64)]) {
        let places = self.places(points);
        self.canvas.polyline(self.at, &places, false, Paint::both(Pen::DIMENSION, Fill::tint(SLAB)));
    }

    fn ink(&mut self, points: &[(f64, f64)]) {
        let places = self.places(points);
        self.canvas.polyline(self.at, &places, true, Paint::fill(Fill::ink(Colour::INK)));
    }

    fn line(&mut self, a: (f64, f64), b: (f64, f64), pen: Pen) {
        let ends = self.places(&[a, b]);
        self.canvas.line(self.at, ends[0], ends[1], pen);
    }

    /// The face of a wall with its hatch behind it.
    fn wall(&mut self, x: f64) {
        self.line((x, -2.5), (x, 2.5), Pen::SECONDARY);
        for k in 0..5 {
            let y = -2.5 + f64::from(k);
            self.line((x, y + 1.2), (x + 1.2, y), Pen::FINE);
        }
    }
}
