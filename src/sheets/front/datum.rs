//! The pole of the finished end that every running dimension starts at, and the match lines between pages.

use super::chain;
use super::elevation::Elevation;
use crate::drawing::lettering::Style;
use crate::drawing::{Dash, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::marks;
use crate::units::Length;

/// Draws the pole with its flag, where the end is on this page.
pub fn pole(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    if !e.part.first {
        return;
    }
    let datum = e.facing.near()[0];
    let x = e.view.x(e.facing.datum(e.leg, datum));
    // Where the frame begins before the finished end, the numbers of the modules stand across its foot.
    let low = if chain::blind(e)[0] > Length::ZERO { e.lines.chain - 4.4 } else { f64::INFINITY };
    let (top, bottom) = (PaperPoint::new(x, e.lines.pole), PaperPoint::new(x, (e.lines.below + 2.0).min(low)));
    let pen = Pen::VISIBLE.accent().dashed(Dash::FINISHED);
    let facts = vec![("data-datum", datum.words().to_owned())];
    canvas.shape(at, Shape::Line(top, bottom), Paint::pen(pen), "datum", facts);
    marks::flag(canvas, at, top, datum.words(), true);
}

/// The ends of this page's match lines: paper x, which way is out, and the page beyond.
fn matches(e: &Elevation<'_>) -> Vec<(f64, f64, usize)> {
    let before = (!e.part.first && e.page > 0).then(|| (e.view.x(e.part.x0), -1.0, e.page - 1));
    let after = (!e.part.last).then(|| (e.view.x(e.part.x1), 1.0, e.page + 1));
    before.into_iter().chain(after).collect()
}

fn match_span(e: &Elevation<'_>) -> (f64, f64) {
    let floor = e.view.y_mm(e.floor.lowest(e.part.x0.mm(), e.part.x1.mm()));
    (e.view.y(e.top) - 6.0, floor + 6.0)
}

/// Draws the lines at which this page meets the ones before and after it.
pub fn match_lines(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let (high, low) = match_span(e);
    for (x, ..) in matches(e) {
        let pen = Pen::SECONDARY.dashed(Dash::PHANTOM);
        canvas.line(at, PaperPoint::new(x, high), PaperPoint::new(x, low), pen);
    }
}

/// Says which sheets the match lines lead to: at their heads or feet, or along them.
pub fn match_words(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    let (high, low) = match_span(e);
    for (x, out, page) in matches(e) {
        let words = format!("match line, sheet {}", e.sheet_of(page));
        let style = if out > 0.0 { Style::body() } else { Style::body().end() };
        let places = [(0.0, high - 1.4), (0.0, low + 4.0), (2.0, high + 2.0), (2.0, low - 1.0)];
        let places = places.map(|(dx, y)| PaperPoint::new(x + out * dx, y));
        if canvas.text_at_first(at, &places, &words, &style).is_none() {
            let place = PaperPoint::new(x + if out > 0.0 { 4.9 } else { -2.4 }, (high + low) / 2.0);
            canvas.text_at_first(at, &[place], &words, &Style::body().upright().middle());
        }
    }
}
