//! The title block: the data fields of ISO 7200, 180 mm wide, in one form on every sheet.

use super::canvas::{Canvas, Paint};
use super::frame;
use crate::drawing::lettering::{self, SHEET_TITLE, Style, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;

/// Width of the block, mm.
pub const WIDTH: f64 = 180.0;
/// Height of the block, mm.
pub const HEIGHT: f64 = 36.0;

/// What the block says.
#[derive(Clone, Debug, Default)]
pub struct TitleBlock {
    /// Legal owner.
    pub owner: String,
    /// Creator.
    pub drawn_by: String,
    /// Approving person.
    pub approved_by: String,
    /// Document status.
    pub status: String,
    /// Title of the sheet.
    pub title: String,
    /// Job, leg, part.
    pub subtitle: String,
    /// Document type.
    pub kind: String,
    /// Identification number.
    pub number: String,
    /// Scale or scales.
    pub scale: String,
    /// Units.
    pub units: String,
    /// Paper size.
    pub paper: String,
    /// Revision mark.
    pub revision: String,
    /// Date of issue.
    pub date: String,
    /// Sheet, as `4 / 13`.
    pub sheet: String,
}

/// Top left corner of the block on a sheet.
pub fn corner(canvas: &Canvas) -> PaperPoint {
    let border = frame::border(canvas);
    PaperPoint::new(border.right - WIDTH, border.bottom - HEIGHT)
}

/// Draws the block in the lower right corner of the border.
pub fn draw(canvas: &mut Canvas, block: &TitleBlock) {
    let layer = canvas.layer(Canvas::ROOT, "title-block");
    let corner = corner(canvas);
    let at = |x: f64, y: f64| corner.moved(x, y);
    canvas.rectangle(layer, at(0.0, 0.0), at(WIDTH, HEIGHT), Paint::fill(crate::drawing::Fill::WHITE));
    canvas.polyline(layer, &[at(0.0, HEIGHT), at(0.0, 0.0), at(WIDTH, 0.0)], false, Paint::pen(Pen::CUT));
    let rules = [
        (0.0, 9.0, WIDTH, 9.0),
        (0.0, 27.0, WIDTH, 27.0),
        (122.0, 18.0, WIDTH, 18.0),
        (62.0, 0.0, 62.0, 9.0),
        (94.0, 0.0, 94.0, 9.0),
        (128.0, 0.0, 128.0, 9.0),
        (122.0, 9.0, 122.0, 27.0),
        (44.0, 27.0, 44.0, HEIGHT),
        (82.0, 27.0, 82.0, HEIGHT),
        (100.0, 27.0, 100.0, HEIGHT),
        (112.0, 27.0, 112.0, HEIGHT),
        (137.0, 27.0, 137.0, HEIGHT),
        (150.0, 27.0, 150.0, HEIGHT),
    ];
    for (x0, y0, x1, y1) in rules {
        canvas.line(layer, at(x0, y0), at(x1, y1), Pen::SECONDARY);
    }
    let bold = Style::body().bold();
    let fields: [(f64, f64, f64, &str, &str, &Style); 13] = [
        (0.0, 0.0, 62.0, "Owner", &block.owner, &Style::body()),
        (62.0, 0.0, 32.0, "Drawn by", &block.drawn_by, &Style::body()),
        (94.0, 0.0, 34.0, "Approved by", &block.approved_by, &Style::body()),
        (128.0, 0.0, 52.0, "Status", &block.status, &Style::body()),
        (122.0, 9.0, 58.0, "Document type", &block.kind, &Style::body()),
        (122.0, 18.0, 58.0, "Identification number", &block.number, &bold),
        (0.0, 27.0, 44.0, "Scale", &block.scale, &bold),
        (44.0, 27.0, 38.0, "Dimensions", &block.units, &Style::body()),
        (82.0, 27.0, 18.0, "Paper", &block.paper, &Style::body()),
        (100.0, 27.0, 12.0, "Rev", &block.revision, &Style::body()),
        (112.0, 27.0, 25.0, "Date of issue", &block.date, &Style::body()),
        (137.0, 27.0, 13.0, "Lang", "en", &Style::body()),
        (150.0, 27.0, 30.0, "Sheet", &block.sheet, &Style::body()),
    ];
    for (x, y, width, caption, value, style) in fields {
        canvas.text(layer, at(x + 1.8, y + 3.45), caption, &Style::caption());
        let value = shortened(value, width - 3.0, style);
        canvas.text(layer, at(x + 1.8, y + 7.45), &value, style);
    }
    canvas.text(layer, at(1.8, 12.45), "Title", &Style::caption());
    let title = Style::body().bold().sized(SHEET_TITLE);
    let shown = shortened(&block.title, 118.0, &title);
    canvas.text(layer, at(1.8, 19.6), &shown, &title);
    let shown = shortened(&block.subtitle, 118.0, &Style::body());
    canvas.text(layer, at(1.8, 25.0), &shown, &Style::body());
}

/// A text cut to a width with an ellipsis; line breaks become spaces.
pub fn shortened(text: &str, width: f64, style: &Style) -> String {
    let clean: String = text.chars().map(|c| if c.is_whitespace() && c != '\u{2009}' { ' ' } else { c }).collect();
    if lettering::width(&clean, style.height, style.weight) <= width {
        return clean;
    }
    let mut short: Vec<char> = clean.chars().collect();
    while short.pop().is_some() {
        let candidate = format!("{}\u{2026}", short.iter().collect::<String>().trim_end());
        if lettering::width(&candidate, style.height, style.weight) <= width {
            return candidate;
        }
    }
    String::new()
}

/// Heading of a view: its title in semi-bold and its scale beside it, baseline at (x, y). Returns the right end.
pub fn heading(canvas: &mut Canvas, x: f64, y: f64, title: &str, scale: &str) -> f64 {
    let layer = canvas.layer(Canvas::ROOT, "heading");
    let bold = Style::body().bold().sized(lettering::TITLE);
    let width = canvas.text(layer, PaperPoint::new(x, y), title, &bold);
    if scale.is_empty() {
        return x + width;
    }
    let plain = Style::body().sized(lettering::TITLE).coloured(Colour::INK);
    let after = x + width + 5.0;
    after + canvas.text(layer, PaperPoint::new(after, y), scale, &plain)
}

/// Width of a heading, mm.
pub fn heading_width(title: &str, scale: &str) -> f64 {
    let title = lettering::width(title, lettering::TITLE, Weight::SemiBold);
    if scale.is_empty() { title } else { title + 5.0 + lettering::width(scale, lettering::TITLE, Weight::Regular) }
}
