//! The border of a sheet and the columns inside it (ISO 5457: 20 mm at the left for filing, 10 elsewhere).

use super::canvas::{Canvas, Layer, Paint};
use crate::drawing::Pen;
use crate::geometry::PaperPoint;

/// A level area of paper, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Left.
    pub left: f64,
    /// Top.
    pub top: f64,
    /// Right.
    pub right: f64,
    /// Bottom.
    pub bottom: f64,
}

impl Area {
    /// Its width.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }
    /// Its height.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }
}

/// White between the border and any text but the title block's, mm.
pub const MARGIN: f64 = 6.0;

/// Inside of the border of a sheet.
pub fn border(canvas: &Canvas) -> Area {
    Area { left: 20.0, top: 10.0, right: canvas.width - 10.0, bottom: canvas.height - 10.0 }
}

/// Where views, tables and notes may lie.
pub fn inside(canvas: &Canvas) -> Area {
    let border = border(canvas);
    Area {
        left: border.left + MARGIN,
        top: border.top + MARGIN,
        right: border.right - MARGIN,
        bottom: border.bottom - MARGIN,
    }
}

/// Draws the border and its centring marks.
pub fn draw(canvas: &mut Canvas) -> Layer {
    let layer = canvas.layer(Canvas::ROOT, "border");
    let area = border(canvas);
    let (a, b) = (PaperPoint::new(area.left, area.top), PaperPoint::new(area.right, area.bottom));
    canvas.rectangle(layer, a, b, Paint::pen(Pen::CUT));
    let (x, y) = (canvas.width / 2.0, canvas.height / 2.0);
    let (width, height) = (canvas.width, canvas.height);
    for (x0, y0, x1, y1) in [
        (x, 5.0, x, area.top),
        (x, area.bottom, x, height - 5.0),
        (5.0, y, area.left, y),
        (area.right, y, width - 5.0, y),
    ] {
        canvas.line(layer, PaperPoint::new(x0, y0), PaperPoint::new(x1, y1), Pen::CUT);
    }
    layer
}

/// A thin border without centring marks, for a sheet that is a picture first.
pub fn draw_thin(canvas: &mut Canvas) -> Layer {
    let layer = canvas.layer(Canvas::ROOT, "border");
    let area = border(canvas);
    let (a, b) = (PaperPoint::new(area.left, area.top), PaperPoint::new(area.right, area.bottom));
    canvas.rectangle(layer, a, b, Paint::pen(Pen::DIMENSION));
    layer
}
