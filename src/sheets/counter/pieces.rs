//! The pieces: a small figure with their diagonals, and a table of sizes, weights and who lifts them.

use super::{Task, cutouts, weight};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{Leg as LegSpace, PaperPoint};
use crate::sheets::canvas::{Canvas, Paint};
use crate::sheets::scale::Scale;
use crate::sheets::shelves::Block;
use crate::sheets::table::{self, Cell, Column, Table};
use crate::sheets::view::View;
use crate::solve::Piece;
use crate::units::{Length, Show, System};

/// White between two pieces of the figure, mm.
const APART: f64 = 5.0;
/// Greatest depth of a piece in the figure, mm.
const DEEP: f64 = 24.0;
/// From the top of the figure to the pieces, mm.
const HEAD: f64 = 7.5;

/// The figure and the table.
pub fn blocks<'a>(task: &'a Task<'_>, most_width: f64, page: f64) -> Vec<Block<'a>> {
    let mut blocks = vec![figure(task, most_width)];
    blocks.extend(cutouts::chunks("Pieces", table(task), task.show, page, false));
    blocks
}

fn figure<'a>(task: &'a Task<'_>, most_width: f64) -> Block<'a> {
    let counter = &task.leg.counter;
    let pieces = &counter.pieces;
    let gaps = APART * pieces.len().saturating_sub(1) as f64;
    let wanted = if pieces.len() > 2 { most_width } else { most_width.min(76.0) };
    let (width, depth) = (counter.extent.width().mm(), counter.extent.height().mm());
    let scale = Scale::fitting((width, depth), ((wanted - gaps).max(10.0), DEEP), Scale(10));
    let figure_width = (width * scale.factor() + gaps).max(50.0);
    let height = HEAD + depth * scale.factor();
    Block {
        width: figure_width,
        height,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw_figure(canvas, task, scale, at)),
    }
}

fn draw_figure(canvas: &mut Canvas, task: &Task<'_>, scale: Scale, at: PaperPoint) {
    let layer = canvas.layer(Canvas::ROOT, "pieces");
    let end = canvas.text(layer, at.moved(0.0, 3.0), "Pieces and diagonals", &Style::body().bold());
    canvas.text(layer, at.moved(end + 3.0, 3.0), &scale.words(), &Style::caption());
    for (index, piece) in task.leg.counter.pieces.iter().enumerate() {
        let corner =
            at.moved((piece.extent.x0 - task.leg.counter.extent.x0).mm() * scale.factor() + APART * index as f64, HEAD);
        draw_piece(canvas, task.show, piece, scale, corner);
    }
}

/// One piece with its top left corner at a place.
fn draw_piece(canvas: &mut Canvas, show: Show, piece: &Piece, scale: Scale, corner: PaperPoint) {
    let (extent, factor) = (piece.extent, scale.factor());
    let origin = corner.moved(-extent.x0.mm() * factor, extent.y1.mm() * factor);
    let name: String = piece.name.to_lowercase().chars().map(|c| if c == ' ' { '-' } else { c }).collect();
    let view: View<LegSpace> = View::open(canvas, &name, scale, origin);
    let facts = view.feature(name, extent.x0, extent.y0, extent.x1, extent.y1);
    let steps = Shape::Steps(view.region(&piece.region));
    canvas.shape(view.layer, steps, Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BEYOND)), "", facts);
    let (a, b) = (view.at(extent.x0, extent.y1), view.at(extent.x1, extent.y0));
    let pen = Pen::FINE.dashed(Dash::HIDDEN);
    canvas.line(view.layer, a, b, pen);
    canvas.line(view.layer, PaperPoint::new(a.x, b.y), PaperPoint::new(b.x, a.y), pen);
    let words = show.text(piece.diagonal);
    let width = lettering::width(&words, BODY, Weight::Regular);
    // In a small piece the number would hide its cutouts; the table has it too.
    if width * 1.6 > b.x - a.x || b.y - a.y < 11.0 {
        return;
    }
    let middle = a.towards(b, 0.5);
    let plate = (middle.moved(-width / 2.0 - 1.0, -2.3), middle.moved(width / 2.0 + 1.0, 2.3));
    canvas.rectangle(view.layer, plate.0, plate.1, Paint::fill(Fill::WHITE));
    canvas.text(view.layer, middle.moved(0.0, 1.25), &words, &Style::body().middle());
}

fn table(task: &Task<'_>) -> Table {
    let (show, counter, weights) = (task.show, &task.leg.counter, &task.solved.shop.weights);
    let both = show.system == System::Both;
    let second = |length: Length| show.second(length).map_or(String::new(), |text| format!(" {text}"));
    let size = |a: Length, b: Length| format!("{}{} \u{d7} {}{}", show.text(a), second(a), show.text(b), second(b));
    let mut rows: Vec<Vec<Cell>> = Vec::new();
    let mut breaks = Vec::new();
    for piece in &counter.pieces {
        rows.push(vec![
            Cell::Bold(piece.name.clone()),
            Cell::Words(size(piece.extent.width(), piece.extent.height())),
            Cell::Figure(piece.diagonal),
            Cell::Words(show.mass(piece.mass)),
            Cell::Words(weight::lift(weights, piece.mass, piece.extent.width().max(piece.extent.height()))),
        ]);
    }
    if let Some(splash) = task.solved.counter.splash {
        breaks.push(rows.len().saturating_sub(1));
        for (name, left, right, mass) in &counter.splashes {
            rows.push(vec![
                Cell::Bold(name.clone()),
                Cell::Words(size(*right - *left, splash.height)),
                Cell::Empty,
                Cell::Words(show.mass(*mass)),
                Cell::Words(weight::lift(weights, *mass, *right - *left)),
            ]);
        }
    }
    let longest = |column: usize, least: f64| {
        let width = |row: &Vec<Cell>| match row.get(column) {
            Some(Cell::Words(text)) => lettering::width(text, BODY, Weight::Regular),
            Some(Cell::Bold(text)) => lettering::width(text, BODY, Weight::SemiBold),
            _ => 0.0,
        };
        rows.iter().map(width).fold(least, f64::max) + 4.0
    };
    let diagonals = if both { table::figures_width(show, counter.extent.width()) + 3.0 } else { 22.0 };
    let columns = vec![
        Column::words(longest(0, 14.0), "piece"),
        Column::words(longest(1, 26.0), "length \u{d7} depth"),
        Column::figures(diagonals, "diagonals"),
        Column::words(longest(3, 14.0), "weight"),
        Column::words(longest(4, 18.0), "lift"),
    ];
    Table { columns, rows, breaks }
}
