//! The pieces of a joined counter, small, with two diagonals each, and their table.

use super::joined::{Joined, Shown};
use super::lists::wide;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{Leg as LegSpace, PaperPoint};
use crate::sheets::canvas::{Canvas, Paint};
use crate::sheets::counter::{cutouts, weight};
use crate::sheets::scale::Scale;
use crate::sheets::shelves::Block;
use crate::sheets::table::{Cell, Column, Table};
use crate::sheets::view::View;
use crate::solve::Plane;
use crate::units::Length;

/// White between two pieces of the figure, mm.
const APART: f64 = 8.0;
/// From the top of the figure to the pieces, mm.
const HEAD: f64 = 7.5;
/// Half of the plate that a diagonal's number stands on, mm.
const PLATE: (f64, f64) = (1.5, 2.0);
/// Under the pieces, for their names, mm.
const FOOT: f64 = 5.0;

/// The figure and the table.
pub fn blocks<'a>(sheet: &'a Joined<'a>, most_width: f64, page: f64) -> Vec<Block<'a>> {
    let mut blocks = Vec::new();
    blocks.push(figure(sheet, most_width.min(142.0)));
    let title = if sheet.plane == Plane::Counter { "Pieces" } else { "Sheets" };
    blocks.extend(cutouts::chunks(title, table(sheet), sheet.set.solved.show, page, false));
    blocks
}

/// A piece's box in its leg's coordinates, mm.
fn bounds(piece: &Shown<'_>) -> (f64, f64, f64, f64) {
    piece.region.outer.bounds()
}

fn figure<'a>(sheet: &'a Joined<'a>, most: f64) -> Block<'a> {
    let pieces = sheet.pieces();
    let sizes: Vec<(f64, f64)> = pieces.iter().map(bounds).map(|(x0, y0, x1, y1)| (x1 - x0, y1 - y0)).collect();
    let (wide, deep) = (sizes.iter().map(|s| s.0).sum::<f64>(), sizes.iter().map(|s| s.1).fold(0.0, f64::max));
    let gaps = APART * (pieces.len().saturating_sub(1)) as f64;
    let names: Vec<f64> = pieces.iter().map(|piece| lettering::width(&piece.name, BODY, Weight::Regular)).collect();
    // A small piece takes the width of its name.
    let taken = |scale: &Scale| {
        sizes.iter().zip(&names).map(|(size, name)| (size.0 * scale.factor()).max(*name)).sum::<f64>() + gaps
    };
    let scale = Scale::fitting((wide, deep), ((most - gaps).max(20.0), 36.0), Scale(10));
    Block {
        width: taken(&scale).max(50.0),
        height: HEAD + deep * scale.factor() + FOOT,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw(canvas, sheet, scale, at)),
    }
}

fn draw(canvas: &mut Canvas, sheet: &Joined<'_>, scale: Scale, at: PaperPoint) {
    let layer = canvas.layer(Canvas::ROOT, "pieces");
    let end = canvas.text(
        layer,
        at.moved(0.0, 3.0),
        if sheet.plane == Plane::Counter { "Pieces and diagonals" } else { "Sheets and diagonals" },
        &Style::body().bold(),
    );
    canvas.text(layer, at.moved(end + 3.0, 3.0), &scale.words(), &Style::caption());
    let mut x = at.x;
    for piece in sheet.pieces() {
        let (x0, y0, x1, y1) = bounds(&piece);
        let factor = scale.factor();
        let origin = PaperPoint::new(x - x0 * factor, at.y + HEAD + y1 * factor);
        let name: String = piece.name.to_lowercase().replace(' ', "-");
        let view: View<LegSpace> = View::open(canvas, &name, scale, origin);
        let paint = Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BEYOND));
        canvas.shape(view.layer, Shape::Steps(view.region(piece.region)), paint, "", Vec::new());
        let found = diagonals(&piece);
        let lines: Vec<[PaperPoint; 2]> =
            found.iter().map(|(a, b, _)| [view.at(a.0, a.1), view.at(b.0, b.1)]).collect();
        let low = at.y + HEAD + (y1 - y0) * factor + 4.0;
        canvas.text(layer, PaperPoint::new(x, low), &piece.name, &Style::caption());
        // Before the lines, which they stand on.
        let numbers: Vec<Option<PaperPoint>> = match (y1 - y0) * factor > 9.0 {
            true => (0..lines.len()).map(|index| number_on(canvas, &lines, index)).collect(),
            false => Vec::new(),
        };
        for [a, b] in &lines {
            canvas.line(view.layer, *a, *b, Pen::FINE.dashed(Dash::HIDDEN));
        }
        for (index, middle) in numbers.into_iter().enumerate() {
            let Some(middle) = middle else { continue };
            let corners = (middle.moved(-PLATE.0, -PLATE.1), middle.moved(PLATE.0, PLATE.1));
            canvas.rectangle(view.layer, corners.0, corners.1, Paint::fill(Fill::WHITE));
            canvas.text(view.layer, middle.moved(0.0, 1.25), &(index + 1).to_string(), &Style::body().middle());
        }
        x += ((x1 - x0) * factor).max(lettering::width(&piece.name, BODY, Weight::Regular)) + APART;
    }
}

/// Where on its diagonal a number's plate stands: off the piece's outline, off all lettering and off the other diagonal.
/// `None` where there is no such place; the table has the length.
fn number_on(canvas: &Canvas, lines: &[[PaperPoint; 2]], index: usize) -> Option<PaperPoint> {
    let [a, b] = *lines.get(index)?;
    let (wide, high) = (PLATE.0 + 0.5, PLATE.1 + 0.5);
    let shares = [0.28, 0.3, 0.35, 0.22, 0.4, 0.7, 0.65, 0.75, 0.6, 0.15, 0.85];
    shares.into_iter().map(|share| a.towards(b, share)).find(|p| {
        let crossed = lines.iter().enumerate().filter(|(other, _)| *other != index).any(|(_, [c, d])| {
            let count = (c.distance(*d) / 0.25).ceil().max(1.0);
            (0..=count as usize)
                .map(|k| c.towards(*d, k as f64 / count))
                .any(|q| (q.x - p.x).abs() < wide && (q.y - p.y).abs() < high)
        });
        !crossed && canvas.is_box_free(p.x - wide, p.y - high, p.x + wide, p.y + high)
    })
}

/// A point in exact lengths.
type Spot = (Length, Length);

/// The two longest lines between corners of a piece that share no corner and are no edge.
fn diagonals(piece: &Shown<'_>) -> Vec<(Spot, Spot, Length)> {
    let corners: Vec<Spot> = piece.edges.iter().map(|edge| edge.from).collect();
    let count = corners.len();
    let mut pairs: Vec<(usize, usize, f64)> = Vec::new();
    for i in 0..count {
        for j in i + 2..count {
            if i == 0 && j + 1 == count {
                continue;
            }
            let (a, b) = (corners[i], corners[j]);
            pairs.push((i, j, (a.0 - b.0).mm().hypot((a.1 - b.1).mm())));
        }
    }
    pairs.sort_by(|a, b| b.2.total_cmp(&a.2));
    let first = pairs.first().copied();
    let apart = |p: &&(usize, usize, f64)| first.is_some_and(|(i, j, _)| p.0 != i && p.0 != j && p.1 != i && p.1 != j);
    let second = pairs.iter().find(apart).copied();
    let spot = |(i, j, far): (usize, usize, f64)| (corners[i], corners[j], Length::from_mm(far));
    first.into_iter().chain(second).map(spot).collect()
}

fn table(sheet: &Joined<'_>) -> Table {
    let (set, solved) = (sheet.set, sheet.set.solved);
    let counter = sheet.plane == Plane::Counter;
    let mut columns = vec![
        Column::words(if counter { 18.0 } else { 24.0 }, if counter { "piece" } else { "sheet" }),
        Column::words(30.0, if counter { "on legs" } else { "on leg" }),
        Column::figures(wide(set), "length"),
        Column::figures(wide(set), "depth"),
        Column::figures(wide(set).max(19.0), "diagonal 1"),
        Column::figures(wide(set).max(19.0), "diagonal 2"),
    ];
    if counter {
        columns.push(Column::words(22.0, "weight"));
        columns.push(Column::words(22.0, "lift"));
    }
    let on = |index: usize, piece: &Shown<'_>| -> String {
        let legs = match (counter, sheet.slab.pieces.get(index)) {
            (true, Some((_, _, legs))) => legs.clone(),
            _ => vec![piece.leg],
        };
        legs.iter().map(|leg| solved.legs[*leg].id.as_str()).collect::<Vec<_>>().join(", ")
    };
    let rows = sheet.pieces().into_iter().enumerate().map(|(index, piece)| {
        let (x0, y0, x1, y1) = bounds(&piece);
        let found = diagonals(&piece);
        let diagonal = |k: usize| found.get(k).map_or(Cell::Empty, |one| Cell::Figure(one.2));
        let mut row = vec![
            Cell::Bold(piece.name.clone()),
            Cell::Words(on(index, &piece)),
            Cell::Key(Length::from_mm(x1 - x0)),
            Cell::Key(Length::from_mm(y1 - y0)),
            diagonal(0),
            diagonal(1),
        ];
        if let Some(mass) = piece.mass.filter(|_| counter) {
            row.push(Cell::Words(solved.show.mass(mass)));
            row.push(Cell::Words(weight::lift(&solved.shop.weights, mass, Length::from_mm((x1 - x0).max(y1 - y0)))));
        }
        row
    });
    Table { columns, rows: rows.collect(), breaks: Vec::new() }
}
