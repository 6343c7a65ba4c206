//! Edge tags: a plate with a pointer on the edge; in it the edge cut through, its kind, and its fact.

use super::pictogram::{self, Pictogram};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};

/// Height of a tag, mm.
pub const HEIGHT: f64 = 9.2;
/// Length of its pointer, mm.
const POINTER: f64 = 1.6;
/// Width of a tag that has only the edge cut through, and its height, mm.
const SMALL: (f64, f64) = (9.4, 7.0);

/// What a tag says.
#[derive(Clone, Debug, PartialEq)]
pub struct Tag {
    /// The edge cut through.
    pub pictogram: Pictogram,
    /// Kind of edge.
    pub word: String,
    /// Its overhang, joint or cover.
    pub fact: String,
    /// The fact is from a finished face.
    pub finished: bool,
}

/// The side of the tag that looks at its edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Looks {
    /// Up the sheet: the tag lies below the edge.
    Up,
    /// Down the sheet.
    Down,
    /// To the left.
    Left,
    /// To the right.
    Right,
}

/// A tag's own axes on the sheet: level, or turned so that it reads from the right.
#[derive(Clone, Copy, Debug)]
pub struct Frame {
    origin: PaperPoint,
    upright: bool,
}

impl Frame {
    /// A point of the tag, mm from its top left corner as it is read.
    pub fn at(self, x: f64, y: f64) -> PaperPoint {
        if self.upright { self.origin.moved(y, -x) } else { self.origin.moved(x, y) }
    }
}

/// How a tag is put.
#[derive(Clone, Copy, Debug)]
pub struct Stand {
    /// The point of the edge.
    pub edge: PaperPoint,
    /// The side that looks at it.
    pub looks: Looks,
    /// Reads from the right.
    pub upright: bool,
    /// Without words.
    pub small: bool,
}

impl Tag {
    /// Its width and height as it is read, mm.
    pub fn size(&self, small: bool) -> (f64, f64) {
        if small {
            return SMALL;
        }
        let word = lettering::width(&self.word, BODY, Weight::SemiBold);
        let weight = if self.finished { Weight::SemiBold } else { Weight::Regular };
        (9.4 + word.max(lettering::width(&self.fact, BODY, weight)) + 3.2, HEIGHT)
    }

    /// The plate's box on the sheet: left, top, right, bottom.
    pub fn plate(&self, stand: Stand) -> (f64, f64, f64, f64) {
        let (w, h) = self.size(stand.small);
        let (w, h) = if stand.upright { (h, w) } else { (w, h) };
        let PaperPoint { x, y, .. } = stand.edge;
        let (left, top) = match stand.looks {
            Looks::Up => (x - w / 2.0, y + POINTER),
            Looks::Down => (x - w / 2.0, y - POINTER - h),
            Looks::Left => (x + POINTER, y - h / 2.0),
            Looks::Right => (x - POINTER - w, y - h / 2.0),
        };
        (left, top, left + w, top + h)
    }

    /// Whether it would lie on white.
    pub fn is_free(&self, canvas: &Canvas, stand: Stand) -> bool {
        let (left, top, right, bottom) = self.plate(stand);
        let border = crate::sheets::frame::border(canvas);
        let inside = left > border.left + 1.0 && right < border.right - 1.0 && top > border.top + 1.0;
        inside && canvas.is_box_free(left - 0.7, top - 0.7, right + 0.7, bottom + 0.7)
    }

    /// Draws it.
    pub fn draw(&self, canvas: &mut Canvas, at: Layer, stand: Stand) {
        let (left, top, right, bottom) = self.plate(stand);
        let (a, b) = (PaperPoint::new(left, top), PaperPoint::new(right, bottom));
        canvas.rectangle(at, a, b, Paint::both(Pen::SECONDARY, Fill::WHITE));
        let tip = |dx: f64, dy: f64| stand.edge.moved(dx, dy);
        let (q, p, n) = (1.3, POINTER, 0.25);
        let pointer = match stand.looks {
            Looks::Up => [tip(-q, p), tip(q, p), tip(0.0, n)],
            Looks::Down => [tip(-q, -p), tip(q, -p), tip(0.0, -n)],
            Looks::Left => [tip(p, -q), tip(p, q), tip(n, 0.0)],
            Looks::Right => [tip(-p, -q), tip(-p, q), tip(-n, 0.0)],
        };
        canvas.polyline(at, &pointer, true, Paint::fill(Fill::ink(Colour::INK)));
        let origin = if stand.upright { PaperPoint::new(left, bottom) } else { a };
        self.inside(canvas, at, Frame { origin, upright: stand.upright }, stand.small);
    }

    /// Draws it as a row of a legend, without plate or pointer, its top left corner at a place.
    pub fn draw_row(&self, canvas: &mut Canvas, at: Layer, corner: PaperPoint) {
        pictogram::draw(canvas, at, Frame { origin: corner, upright: false }, (4.8, 3.5), self.pictogram);
        let width = canvas.text(at, corner.moved(11.0, 4.75), &self.word, &Style::body().bold());
        canvas.text(at, corner.moved(12.5 + width, 4.75), &self.fact, &self.fact_style());
    }

    fn fact_style(&self) -> Style {
        if self.finished { Style::body().bold().coloured(Colour::ACCENT) } else { Style::body() }
    }

    fn inside(&self, canvas: &mut Canvas, at: Layer, frame: Frame, small: bool) {
        if small {
            pictogram::draw(canvas, at, frame, (SMALL.0 / 2.0, SMALL.1 / 2.0), self.pictogram);
            return;
        }
        canvas.line(at, frame.at(9.4, 0.9), frame.at(9.4, HEIGHT - 0.9), Pen::FINE.coloured(Colour::GREY_LINE));
        pictogram::draw(canvas, at, frame, (4.8, HEIGHT / 2.0), self.pictogram);
        let turned = |style: Style| if frame.upright { style.upright() } else { style };
        canvas.text(at, frame.at(11.0, 3.85), &self.word, &turned(Style::body().bold()));
        canvas.text(at, frame.at(11.0, 7.7), &self.fact, &turned(self.fact_style()));
    }
}
