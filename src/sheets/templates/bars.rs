//! Scale bars in inches and millimetres side by side: what tells whether a page was printed true.

use super::tile::{FINE, NOTE};
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::view::number;

/// Inches, millimetres, and millimetres from figure to figure.
pub type Size = (u32, u32, u32);

/// From the longest down: where a page is too full for one, the next is tried.
pub const SIZES: [Size; 5] = [(6, 150, 50), (4, 100, 50), (3, 75, 25), (2, 50, 25), (1, 25, 25)];

/// Height of a row and its distance from the middle line, mm.
const OUTER: f64 = 2.3;
const INNER: f64 = 0.35;

/// Box of a bar with its figures: left, above, right and below of its zero, mm.
pub fn reach(size: Size, upright: bool) -> [f64; 4] {
    let length = f64::from(size.0) * 25.4;
    if upright { [12.5, length + 3.0, 15.5, 3.0] } else { [2.5, 7.4, length + 8.0, 7.4] }
}

/// Draws a bar with its zero at a place, to the right or upwards.
pub fn draw(canvas: &mut Canvas, at: Layer, zero: PaperPoint, size: Size, upright: bool) {
    let (inches, millimetres, step) = size;
    let spot = |along: f64, off: f64| if upright { zero.moved(off, -along) } else { zero.moved(along, off) };
    let pen = Pen::FINE.coloured(NOTE);
    let block = |canvas: &mut Canvas, from: f64, to: f64, off: (f64, f64), dark: bool| {
        let fill = if dark { Fill::ink(NOTE) } else { Fill::WHITE };
        canvas.rectangle(at, spot(from, off.0), spot(to, off.1), Paint::both(pen, fill));
    };
    for inch in 0..inches {
        let from = f64::from(inch) * 25.4;
        block(canvas, from, from + 25.4, (-OUTER, -INNER), inch % 2 == 0);
    }
    for quarter in 1..4 {
        let along = f64::from(quarter) * 6.35;
        canvas.line(at, spot(along, -OUTER + 0.1), spot(along, -INNER - 0.1), Pen::FINE.coloured(Colour::WHITE));
    }
    for ten in 0..millimetres.div_ceil(10) {
        let (from, to) = (f64::from(ten) * 10.0, (f64::from(ten + 1) * 10.0).min(f64::from(millimetres)));
        block(canvas, from, to, (INNER, OUTER), ten % 2 == 0);
    }
    let figure = |canvas: &mut Canvas, along: f64, off: f64, words: &str| {
        canvas.line(at, spot(along, off), spot(along, off + 0.6 * off.signum()), FINE);
        let place = spot(along, off + 1.5 * off.signum());
        let (place, style) = match (upright, off < 0.0) {
            (true, true) => (place.moved(0.0, 1.25), Style::body().end()),
            (true, false) => (place.moved(0.0, 1.25), Style::body()),
            (false, true) => (place, Style::body().middle()),
            (false, false) => (place.moved(0.0, 2.5), Style::body().middle()),
        };
        canvas.text(at, place, words, &style);
    };
    for inch in 0..=inches {
        let words = if inch == inches { format!("{inch} in") } else { inch.to_string() };
        figure(canvas, f64::from(inch) * 25.4, -OUTER, &words);
    }
    for mark in (0..=millimetres).step_by(step as usize) {
        let words = if mark == millimetres { format!("{mark} mm") } else { mark.to_string() };
        figure(canvas, f64::from(mark), OUTER, &words);
    }
    for (off, length) in [(-INNER, f64::from(inches) * 25.4), (INNER, f64::from(millimetres))] {
        let facts = vec![("data-role", "scalebar".to_owned()), ("data-length-mm", number(length, 4))];
        canvas.shape(at, Shape::Line(spot(0.0, off), spot(length, off)), Paint::pen(pen), "", facts);
    }
}

/// What a bar must measure.
pub fn sentence(size: Size) -> String {
    format!(
        "The bars must measure {} in and {} mm, both ways. If they don\u{2019}t, print again at 100 %.",
        size.0, size.1
    )
}
