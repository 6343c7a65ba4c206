//! What a tile says of itself: its name, the job, the part, and where on the part it lies.

use super::piece::{LineKind, Template};
use super::plan::{Plan, Setting};
use super::tile::NOTE;
use crate::drawing::lettering::{self, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint, through};
use crate::sheets::title_block::shortened;
use crate::solve::Solved;
use crate::units::Length;

/// Width of the block, mm.
pub const WIDTH: f64 = 94.0;
/// Height of the tile's name, mm.
const NAME: f64 = 7.0;
/// From row to row, mm.
const ROW: f64 = 6.0;
/// Where values start, mm.
const VALUE: f64 = 29.0;

/// A tile's label.
pub struct Label {
    /// Its name, as `Tile 1-4`.
    pub name: String,
    /// Two lines beside the name.
    pub beside: [String; 2],
    /// Captions and values.
    pub rows: Vec<(&'static str, String, bool)>,
}

impl Label {
    /// What a tile of a template says.
    pub fn new(
        solved: &Solved,
        template: &Template,
        plan: &Plan,
        setting: &Setting,
        column: usize,
        row: usize,
    ) -> Label {
        let job = &solved.job;
        let joined = |parts: Vec<String>| {
            parts.into_iter().filter(|part| !part.trim().is_empty()).collect::<Vec<_>>().join(", ")
        };
        let revision = job.revisions.last().map(|revision| format!("rev {}", revision.mark)).unwrap_or_default();
        let length = |mm: f64| solved.show.text(Length::from_mm(mm));
        let side = if template.mirrored { format!("mirrored: not {}", template.side) } else { template.side.clone() };
        let scale = match &setting.printer {
            None => "1:1, print at 100 %".to_owned(),
            Some(printer) => {
                let name = if printer.name.is_empty() { "this printer".to_owned() } else { printer.name.clone() };
                format!("1:1 on {name}, print at 100 %")
            }
        };
        let mut rows = vec![
            ("Job", joined(vec![job.title.clone(), job.number.clone()]), false),
            ("Template", template.name.clone(), true),
            ("Material", template.material.clone(), false),
            ("Side", side, true),
            ("Drawing", joined(vec![revision, job.date.clone()]), false),
            ("Scale", scale, false),
        ];
        if let Some(printer) = &setting.printer {
            rows.push((
                "Corrected",
                format!("across {:.4}, along {:.4}", 1.0 / printer.across, 1.0 / printer.along),
                false,
            ));
        }
        let overlap = if plan.roll { String::new() } else { format!(", overlap {}", length(setting.overlap)) };
        rows.push(("Paper", format!("{}, margin {}{overlap}", setting.stock.name(), length(setting.margin)), false));
        rows.push(("Before cutting", template.check.clone(), false));
        let (name, beside) = if plan.roll {
            ("Full size".to_owned(), ["one page".to_owned(), "of a roll".to_owned()])
        } else {
            let towards = &template.below;
            let beside = [
                format!("row {} of {} from the {towards},", row + 1, plan.rows),
                format!("column {} of {} from the left", column + 1, plan.columns),
            ];
            (format!("Tile {}-{}", row + 1, column + 1), beside)
        };
        Label { name, beside, rows }
    }

    /// Its height with so many rows, mm.
    pub fn height(rows: usize) -> f64 {
        NAME + 3.0 + rows as f64 * ROW + 1.0
    }

    /// Draws it with its top left corner here, its first rows only where room is short.
    pub fn draw(&self, canvas: &mut Canvas, at: Layer, corner: PaperPoint, rows: usize) {
        let name = Style::body().bold().sized(NAME);
        let width = canvas.text(at, corner.moved(0.0, NAME), &self.name, &name);
        for (index, words) in self.beside.iter().enumerate() {
            canvas.text(at, corner.moved(width + 5.0, NAME - 4.4 + 4.4 * index as f64), words, &Style::caption());
        }
        let mut y = corner.y + NAME + 3.0;
        let rule = |canvas: &mut Canvas, y: f64, pen: Pen| {
            canvas.line(at, PaperPoint::new(corner.x, y), PaperPoint::new(corner.x + WIDTH, y), pen);
        };
        rule(canvas, y, Pen::SECONDARY.coloured(NOTE));
        for (caption, value, strong) in self.chosen(rows) {
            canvas.text(at, PaperPoint::new(corner.x, y + 4.2), caption, &Style::caption());
            let style = if *strong { Style::body().bold() } else { Style::body() };
            let value = shortened(value, WIDTH - VALUE, &style);
            canvas.text(at, PaperPoint::new(corner.x + VALUE, y + 4.2), &value, &style);
            y += ROW;
            rule(canvas, y, Pen::FINE.coloured(Colour::GREY_RULE));
        }
    }

    /// The rows that stay when not all fit: the part, its side, the scale, the check.
    fn chosen(&self, rows: usize) -> impl Iterator<Item = &(&'static str, String, bool)> {
        const ORDER: [&str; 9] =
            ["Template", "Side", "Scale", "Corrected", "Before cutting", "Job", "Drawing", "Material", "Paper"];
        let rank = |caption: &str| ORDER.iter().position(|known| *known == caption).unwrap_or(ORDER.len());
        let mut ranks: Vec<usize> = self.rows.iter().map(|row| rank(row.0)).collect();
        ranks.sort_unstable();
        let last = ranks.get(rows.saturating_sub(1)).copied().unwrap_or(usize::MAX);
        self.rows.iter().filter(move |row| rank(row.0) <= last)
    }
}

/// The map of the whole with one tile shaded.
pub struct Map {
    scale: f64,
    /// Its size with its figures and words, mm.
    pub size: (f64, f64),
}

/// Room for figures at the left of and above a map, and for words below, mm.
const FIGURES: f64 = 5.0;
/// Below, mm.
const WORDS: f64 = 6.0;

impl Map {
    /// The map of a plan, at most this wide and high, mm.
    pub fn new(plan: &Plan, width: f64, height: f64) -> Map {
        let (w, h) = (plan.pitch.0 * plan.columns as f64, plan.pitch.1 * plan.rows as f64);
        let scale = ((width - FIGURES) / w).min((height - FIGURES - WORDS) / h);
        Map { scale, size: ((w * scale + FIGURES).max(82.0), h * scale + FIGURES + WORDS) }
    }

    /// Draws it with its top left corner here.
    pub fn draw(
        &self,
        canvas: &mut Canvas,
        at: Layer,
        corner: PaperPoint,
        template: &Template,
        plan: &Plan,
        (column, row): (usize, usize),
    ) {
        let (left, bottom) = (corner.x + FIGURES, corner.y + self.size.1 - WORDS);
        let spot = |x: f64, y: f64| {
            PaperPoint::new(left + (x - plan.origin.0) * self.scale, bottom - (y - plan.origin.1) * self.scale)
        };
        let trim = plan.trim(column, row);
        let (a, b) = (spot(trim.x0, trim.y0), spot(trim.x1, trim.y1));
        canvas.rectangle(at, a, b, Paint::fill(Fill::tint(Colour::GREY_RULE)));
        let grid = Pen::new(0.13).coloured(Colour::GREY_RULE);
        let (end_x, end_y) =
            (plan.origin.0 + plan.pitch.0 * plan.columns as f64, plan.origin.1 + plan.pitch.1 * plan.rows as f64);
        for k in 0..=plan.columns {
            let x = plan.origin.0 + plan.pitch.0 * k as f64;
            canvas.line(at, spot(x, plan.origin.1), spot(x, end_y), grid);
        }
        for k in 0..=plan.rows {
            let y = plan.origin.1 + plan.pitch.1 * k as f64;
            canvas.line(at, spot(plan.origin.0, y), spot(end_x, y), grid);
        }
        let pen = Pen::DIMENSION.coloured(NOTE);
        for outline in template.region.outlines() {
            let points: Vec<PaperPoint> = outline.flattened(1.0).into_iter().map(|(x, y)| spot(x, y)).collect();
            canvas.steps(at, through(&points, true), Paint::pen(pen));
        }
        for line in template.lines.iter().filter(|line| line.kind == LineKind::Finished) {
            let (from, to) = if line.upright {
                (spot(line.at, plan.origin.1), spot(line.at, end_y))
            } else {
                (spot(plan.origin.0, line.at), spot(end_x, line.at))
            };
            canvas.line(at, from, to, Pen::DIMENSION.accent().dashed(Dash(&[2.2, 0.9])));
        }
        canvas.rectangle(at, a, b, Paint::pen(Pen::VISIBLE.coloured(NOTE)));
        self.figures(canvas, at, plan, (column, row), &spot);
        let sheets =
            if plan.count() == 1 { "1 tile".to_owned() } else { format!("{} tiles, this one shaded", plan.count()) };
        canvas.text(at, PaperPoint::new(left, bottom + 4.6), &sheets, &Style::caption());
        let words = format!("{} below", template.below);
        let place = PaperPoint::new(corner.x + self.size.0, bottom + 4.6);
        canvas.text(at, place, &words, &Style::body().end());
        let arrow = place.x - lettering::width(&words, lettering::BODY, Weight::Regular) - 2.5;
        canvas.line(
            at,
            PaperPoint::new(arrow, bottom + 1.4),
            PaperPoint::new(arrow, bottom + 3.5),
            Pen::SECONDARY.coloured(NOTE),
        );
        canvas.arrow(at, PaperPoint::new(arrow, bottom + 5.2), 90.0, NOTE);
    }

    /// Numbers of columns and rows, all where they fit, else those of this tile.
    fn figures(
        &self,
        canvas: &mut Canvas,
        at: Layer,
        plan: &Plan,
        (column, row): (usize, usize),
        spot: &dyn Fn(f64, f64) -> PaperPoint,
    ) {
        let style = |own: bool| if own { Style::body().bold() } else { Style::caption() };
        let top = plan.origin.1 + plan.pitch.1 * plan.rows as f64;
        let wide = lettering::width("00", lettering::BODY, Weight::SemiBold) + 0.8;
        for k in (0..plan.columns).filter(|k| plan.pitch.0 * self.scale > wide || *k == column) {
            let place = spot(plan.origin.0 + plan.pitch.0 * (k as f64 + 0.5), top).moved(0.0, -1.3);
            canvas.text(at, place, &(k + 1).to_string(), &style(k == column).middle());
        }
        for k in (0..plan.rows).filter(|k| plan.pitch.1 * self.scale > 3.6 || *k == row) {
            let place = spot(plan.origin.0, plan.origin.1 + plan.pitch.1 * (k as f64 + 0.5)).moved(-1.3, 1.25);
            canvas.text(at, place, &(k + 1).to_string(), &style(k == row).end());
        }
    }
}
