//! Tables: rules across only, headings grey, lengths lined up on their unit digit.

use super::canvas::{Canvas, Layer, Paint};
use super::marks;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::units::{Length, Show, System};

/// Height of a row, mm.
pub const ROW: f64 = 5.2;
/// Height of a line of headings, mm.
pub const HEAD: f64 = 4.4;

/// How a column stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Align {
    /// Words, from the left.
    Left,
    /// Words or plain numbers, to the right.
    Right,
    /// Lengths: unit digits line up, fractions hang to the right.
    Figures,
}

/// One column.
#[derive(Clone, Debug)]
pub struct Column {
    /// Its width, mm.
    pub width: f64,
    /// Heading, one or two lines.
    pub heading: Vec<String>,
    /// How it stands.
    pub align: Align,
    /// It is from a finished face: heading in the accent with a small flag.
    pub finished: bool,
    /// Its heading is set in as far as flagged words are.
    pub indented: bool,
}

impl Column {
    /// A column of words.
    pub fn words(width: f64, heading: &str) -> Column {
        Column {
            width,
            heading: heading.split('\n').map(str::to_owned).collect(),
            align: Align::Left,
            finished: false,
            indented: false,
        }
    }
    /// A column of lengths.
    pub fn figures(width: f64, heading: &str) -> Column {
        Column { align: Align::Figures, ..Column::words(width, heading) }
    }
    /// A column set to the right.
    pub fn right(width: f64, heading: &str) -> Column {
        Column { align: Align::Right, ..Column::words(width, heading) }
    }
    /// Holds flagged words: its heading is set in like them.
    pub fn indented(self) -> Column {
        Column { indented: true, ..self }
    }
    /// From a finished face.
    pub fn from_finished(self) -> Column {
        Column { finished: true, ..self }
    }
}

/// One cell.
#[derive(Clone, Debug, Default)]
pub enum Cell {
    /// Nothing.
    #[default]
    Empty,
    /// Words.
    Words(String),
    /// Words in semi-bold.
    Bold(String),
    /// Words in caption grey.
    Grey(String),
    /// A length.
    Figure(Length),
    /// A length that is cut or measured to: semi-bold.
    Key(Length),
    /// A length from a finished face: accent, semi-bold.
    Finished(Length),
    /// Words that mean a finished face: accent, semi-bold, a small flag before them.
    Flagged(String),
    /// Words among flagged ones: set in as far as those.
    Indented(String),
    /// A tinted field to write in.
    Blank,
    /// A small open box to tick.
    Tick,
    /// As the first cell of a row: the row goes on with the words of the row above, so that no rule parts them.
    Continued,
    /// The same with what is left of that row's first words, semi-bold or not.
    Further(String, bool),
}

impl Cell {
    /// Words.
    pub fn words(text: impl Into<String>) -> Cell {
        Cell::Words(text.into())
    }
}

/// A table.
#[derive(Clone, Debug)]
pub struct Table {
    /// Columns.
    pub columns: Vec<Column>,
    /// Rows of cells.
    pub rows: Vec<Vec<Cell>>,
    /// Indices of rows that a group ends with: a black rule under them.
    pub breaks: Vec<usize>,
}

impl Table {
    /// Its width, mm.
    pub fn width(&self) -> f64 {
        self.columns.iter().map(|column| column.width).sum()
    }

    /// Its height with headings and so many rows, mm.
    pub fn height(&self, rows: usize) -> f64 {
        self.head_height() + rows as f64 * ROW
    }

    fn head_height(&self) -> f64 {
        let lines = self.columns.iter().map(|column| column.heading.len()).max().unwrap_or(1);
        lines as f64 * HEAD + 1.7
    }

    /// Draws it with its top left corner at `corner` and returns the paper y of its last rule.
    pub fn draw(&self, canvas: &mut Canvas, at: Layer, corner: PaperPoint, show: Show) -> f64 {
        self.draw_rows(canvas, at, corner, show, 0, self.rows.len())
    }

    /// Draws rows `from..to` under the headings.
    pub fn draw_rows(
        &self,
        canvas: &mut Canvas,
        at: Layer,
        corner: PaperPoint,
        show: Show,
        from: usize,
        to: usize,
    ) -> f64 {
        let mut x = corner.x;
        let lines = self.columns.iter().map(|column| column.heading.len()).max().unwrap_or(1);
        for column in &self.columns {
            self.draw_heading(canvas, at, column, x, corner.y, lines);
            x += column.width;
        }
        let rule = corner.y + self.head_height();
        let right = corner.x + self.width();
        canvas.line(at, PaperPoint::new(corner.x, rule), PaperPoint::new(right, rule), Pen::SECONDARY);
        let mut y = rule;
        for (index, row) in self.rows.iter().enumerate().take(to).skip(from) {
            let mut x = corner.x;
            for (column, cell) in self.columns.iter().zip(row) {
                draw_cell(canvas, at, column, cell, x, y + ROW - 1.6, show);
                x += column.width;
            }
            y += ROW;
            let last = index + 1 == to;
            if !last && self.goes_on(index + 1) {
                continue;
            }
            let pen = match (last, self.breaks.contains(&index)) {
                (true, _) => Pen::SECONDARY,
                (_, true) => Pen::FINE,
                _ => Pen::FINE.coloured(Colour::GREY_RULE),
            };
            canvas.line(at, PaperPoint::new(corner.x, y), PaperPoint::new(right, y), pen);
        }
        y
    }

    /// Whether a row goes on with the words of the one above it.
    pub fn goes_on(&self, row: usize) -> bool {
        matches!(self.rows.get(row).and_then(|cells| cells.first()), Some(Cell::Continued | Cell::Further(..)))
    }

    fn draw_heading(&self, canvas: &mut Canvas, at: Layer, column: &Column, x: f64, top: f64, lines: usize) {
        let blank = lines - column.heading.len();
        for (index, line) in column.heading.iter().enumerate().filter(|(_, line)| !line.is_empty()) {
            let y = top + (blank + index + 1) as f64 * HEAD - 0.9;
            let last = index + 1 == column.heading.len();
            let mut style = Style::caption();
            if column.finished && last {
                style = style.bold().coloured(Colour::ACCENT);
                marks::flaglet(canvas, at, PaperPoint::new(x, y));
                canvas.text(at, PaperPoint::new(x + 3.6, y), line, &style);
                continue;
            }
            let (place, style) = match column.align {
                Align::Right => (x + column.width - 2.0, style.end()),
                _ if column.indented => (x + 3.6, style),
                _ => (x, style),
            };
            canvas.text(at, PaperPoint::new(place, y), line, &style);
        }
    }
}

/// Where the unit digit of a length ends inside its column, mm from the column's left: room for three figures of
/// inches, or five of millimetres.
const fn units(show: Show) -> f64 {
    match show.system {
        System::Inches | System::Both => 7.5,
        System::Millimetres => 11.5,
    }
}

fn draw_cell(canvas: &mut Canvas, at: Layer, column: &Column, cell: &Cell, x: f64, y: f64, show: Show) {
    let place = PaperPoint::new;
    let words = |canvas: &mut Canvas, text: &str, style: Style| {
        let room = column.width - 1.2;
        let shown = super::title_block::shortened(text, room, &style);
        match column.align {
            Align::Right => canvas.text(at, place(x + column.width - 2.0, y), &shown, &style.end()),
            _ => canvas.text(at, place(x, y), &shown, &style),
        };
    };
    match cell {
        Cell::Empty | Cell::Continued => {}
        Cell::Words(text) => words(canvas, text, Style::body()),
        Cell::Bold(text) => words(canvas, text, Style::body().bold()),
        Cell::Grey(text) => words(canvas, text, Style::caption()),
        Cell::Further(text, true) => words(canvas, text, Style::body().bold()),
        Cell::Further(text, false) => words(canvas, text, Style::body()),
        Cell::Flagged(text) => {
            marks::flaglet(canvas, at, place(x, y));
            canvas.text(at, place(x + 3.6, y), text, &Style::body().bold().coloured(Colour::ACCENT));
        }
        Cell::Figure(length) => figure(canvas, at, x + units(show), y, *length, &Style::body(), show),
        Cell::Key(length) => figure(canvas, at, x + units(show), y, *length, &Style::body().bold(), show),
        Cell::Finished(length) => {
            let style = Style::body().bold().coloured(Colour::ACCENT);
            figure(canvas, at, x + units(show), y, *length, &style, show);
        }
        Cell::Tick => {
            canvas.rectangle(at, place(x + 0.2, y - 2.7), place(x + 3.2, y + 0.3), Paint::pen(Pen::DIMENSION));
        }
        Cell::Indented(text) => {
            canvas.text(at, place(x + 3.6, y), text, &Style::body());
        }
        Cell::Blank => {
            let (a, b) = (place(x, y + 1.0 - ROW + 1.0), place(x + column.width - 3.0, y + 1.2));
            canvas.rectangle(at, a, b, Paint::fill(Fill::tint(Colour::TINT_BOARD)));
        }
    }
}

/// A length whose unit digit ends at x: fractions hang to the right, whole numbers line up.
pub fn figure(canvas: &mut Canvas, at: Layer, x: f64, y: f64, length: Length, style: &Style, show: Show) {
    let text = show.text(length);
    let whole: String = text.chars().take_while(|c| c.is_ascii_digit() || *c == '\u{2212}').collect();
    // A bare fraction hangs to the right of the units, its sign to their left.
    let sign: String = whole.chars().filter(|c| !c.is_ascii_digit()).collect();
    let whole = if text[whole.len()..].starts_with('\u{2044}') { sign } else { whole };
    let left = x - lettering::width(&whole, style.height, style.weight);
    let width = canvas.text(at, PaperPoint::new(left, y), &text, style);
    if let Some(second) = show.second(length) {
        let after = PaperPoint::new(left + width + 1.0, y);
        canvas.text(at, after, &second, &Style::caption());
    }
}

/// Width that a column of lengths needs for this greatest length, mm.
pub fn figures_width(show: Show, greatest: Length) -> f64 {
    let second = show.second(greatest).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
    let after = if show.system == System::Millimetres { 3.0 } else { 9.0 };
    units(show) + after + second
}
