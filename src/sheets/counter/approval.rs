//! The approval box that stands on the title block.

use super::Task;
use crate::drawing::lettering::Style;
use crate::drawing::{Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Paint};
use crate::sheets::title_block;

/// Its height, mm.
pub const HEIGHT: f64 = 16.0;

/// Draws it for a page of the sheet.
pub fn draw(canvas: &mut Canvas, task: &Task<'_>, page: usize) {
    let layer = canvas.layer(Canvas::ROOT, "approval");
    let corner = title_block::corner(canvas).moved(0.0, -HEIGHT);
    let at = |x: f64, y: f64| corner.moved(x, y);
    canvas.rectangle(layer, corner, at(title_block::WIDTH, HEIGHT), Paint::fill(Fill::WHITE));
    canvas.polyline(layer, &[at(0.0, HEIGHT), corner, at(title_block::WIDTH, 0.0)], false, Paint::pen(Pen::CUT));
    canvas.text(layer, at(1.8, 4.9), "Approved for cutting", &Style::body().bold());
    let block = task.set.title_block(task.kind, page);
    let drawing = format!("drawing {}, rev {}", block.number, block.revision);
    let shown = title_block::shortened(&drawing, 48.0, &Style::caption());
    canvas.text(layer, at(1.8, 10.0), &shown, &Style::caption());
    for (from, to, caption) in [(54.0, 104.0, "Name"), (108.0, 150.0, "Signature"), (154.0, 178.0, "Date")] {
        let y = HEIGHT - 5.6;
        canvas.line(layer, PaperPoint::new(corner.x + from, corner.y + y), at(to, y), Pen::FINE);
        canvas.text(layer, at(from, HEIGHT - 1.7), caption, &Style::caption());
    }
}
