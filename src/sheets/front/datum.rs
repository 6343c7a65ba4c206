//! The pole of the finished end that every running dimension starts at, and the match lines between pages.

use super::elevation::Elevation;
use crate::drawing::lettering::Style;
use crate::drawing::{Dash, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::marks;

/// Draws the pole with its flag, where the end is on this page.
pub fn pole(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    if !e.part.first {
        return;
    }
    let datum = e.facing.near()[0];
    let x = e.view.x(e.facing.datum(e.leg, datum));
    let (top, bottom) = (PaperPoint::new(x, e.lines.pole), PaperPoint::new(x, e.lines.below + 2.0));
    let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
    let facts = vec![("data-datum", datum.words().to_owned())];
    canvas.shape(at, Shape::Line(top, bottom), Paint::pen(pen), "datum", facts);
    marks::flag(canvas, at, top, datum.words(), true);
}

/// Draws the lines at which this page meets the ones before and after it.
pub fn match_lines(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let (low, high) = (e.view.y(e.top) - 6.0, e.view.y_mm(e.floor.lowest(e.part.x0.mm(), e.part.x1.mm())) + 6.0);
    let pen = Pen::SECONDARY.dashed(Dash::PHANTOM);
    let style = Style::body().upright().middle();
    let middle = (e.view.y(e.leg.datums.counter_top) + e.view.y(e.leg.datums.frame_bottom)) / 2.0;
    if !e.part.first && e.page > 0 {
        let x = e.view.x(e.part.x0);
        canvas.line(at, PaperPoint::new(x, low), PaperPoint::new(x, high), pen);
        let text = format!("match line, sheet {}", e.sheet_of(e.page - 1));
        canvas.text(at, PaperPoint::new(x - 2.4, middle), &text, &style);
    }
    if !e.part.last {
        let x = e.view.x(e.part.x1);
        canvas.line(at, PaperPoint::new(x, low), PaperPoint::new(x, high), pen);
        let text = format!("match line, sheet {}", e.sheet_of(e.page + 1));
        canvas.text(at, PaperPoint::new(x + 4.9, middle), &text, &style);
    }
}
