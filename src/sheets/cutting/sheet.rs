//! One stock sheet as it lies, to scale: its pieces, its cuts in their order, what is kept.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::scale::Scale;
use crate::sheets::set::Set;
use crate::sheets::shelves::Block;
use crate::sheets::title_block;
use crate::solve::{Placed, StockSheet};
use crate::units::{Length, Show};

/// Room beside a sheet for the numbers of its cuts, mm.
pub const ASIDE: f64 = 10.0;
/// Under the heading and its line of words, mm.
const HEADING: f64 = 13.0;
/// Under the sheet, for the numbers of its cuts, mm.
const UNDER: f64 = 5.0;

/// The sheet with its heading.
pub fn block<'a>(set: &'a Set<'_>, index: usize, scale: Scale) -> Block<'a> {
    let sheet = &set.solved.shop.cutting.sheets[index];
    let size = (sheet.size.1.mm() * scale.factor(), sheet.size.0.mm() * scale.factor());
    let (title, under) = heading(set, index);
    let words = title_block::heading_width(&title, &scale.words());
    let under_width = lettering::width(&under, BODY, Weight::Regular);
    Block {
        width: (size.0 + ASIDE).max(words).max(under_width),
        height: HEADING + size.1 + UNDER,
        right: false,
        scale: Some(scale),
        draw: Box::new(move |canvas, at| draw(canvas, set, index, scale, at)),
    }
}

fn heading(set: &Set<'_>, index: usize) -> (String, String) {
    let (cutting, show) = (&set.solved.shop.cutting, set.solved.show);
    let sheet = &cutting.sheets[index];
    let material = cutting.materials.get(sheet.material);
    let of = material.map_or(String::new(), |material| format!("{} {}", material.name, show.prose(material.thickness)));
    let of = title_block::shortened(&of, 70.0, &Style::body().bold().sized(lettering::TITLE));
    let from = match &sheet.offcut {
        Some(offcut) => title_block::shortened(&format!("from {offcut}"), 60.0, &Style::body()),
        None => "a new sheet".to_owned(),
    };
    let size = format!("{} \u{d7} {}", show.prose(sheet.size.0), show.prose(sheet.size.1));
    let whole = sheet.size.0.mm() * sheet.size.1.mm();
    let used: f64 = sheet.placed.iter().map(|placed| area(set, placed)).sum();
    (format!("{}  {of}", super::name(set, index)), format!("{from}, {size}, {:.0} % used", 100.0 * used / whole))
}

/// A piece's sides on the sheet, along its length and along its width.
fn sides(set: &Set<'_>, placed: &Placed) -> Option<(Length, Length)> {
    let (wide, high) = set.solved.shop.pieces.get(placed.piece)?.blank;
    Some(if placed.turned { (high, wide) } else { (wide, high) })
}

fn area(set: &Set<'_>, placed: &Placed) -> f64 {
    sides(set, placed).map_or(0.0, |(w, h)| w.mm() * h.mm())
}

fn draw(canvas: &mut Canvas, set: &Set<'_>, index: usize, scale: Scale, corner: PaperPoint) {
    let sheet = &set.solved.shop.cutting.sheets[index];
    let (title, under) = heading(set, index);
    title_block::heading(canvas, corner.x, corner.y + 3.5, &title, &scale.words());
    let layer = canvas.layer(Canvas::ROOT, "stock-sheet");
    canvas.text(layer, PaperPoint::new(corner.x, corner.y + 8.8), &under, &Style::caption());
    let s = scale.factor();
    let (left, base) = (corner.x + ASIDE / 2.0, corner.y + HEADING + sheet.size.0.mm() * s);
    let at = |x: Length, y: Length| PaperPoint::new(left + x.mm() * s, base - y.mm() * s);
    canvas.rectangle(layer, at(Length::ZERO, Length::ZERO), at(sheet.size.1, sheet.size.0), Paint::pen(Pen::VISIBLE));
    for &(x, y, w, h) in &sheet.kept {
        let paint = Paint::pen(Pen::DIMENSION.dashed(Dash::HIDDEN));
        canvas.rectangle(layer, at(x, y), at(x + w, y + h), paint);
    }
    for placed in &sheet.placed {
        let Some((w, h)) = sides(set, placed) else { continue };
        let (x, y) = placed.at;
        let paint = Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BOARD));
        canvas.rectangle(layer, at(x, y), at(x + w, y + h), paint);
    }
    for cut in &sheet.cuts {
        canvas.line(layer, at(cut.from.0, cut.from.1), at(cut.to.0, cut.to.1), Pen::DIMENSION);
    }
    words(canvas, layer, set, sheet, &at);
    for (number, cut) in sheet.cuts.iter().enumerate() {
        let (from, to) = (at(cut.from.0, cut.from.1), at(cut.to.0, cut.to.1));
        let upright = (from.x - to.x).abs() < 1e-9;
        let text = format!("{}", number + 1);
        let half = lettering::width(&text, BODY, Weight::Regular) / 2.0;
        // Outside the sheet where the cut begins or ends at its edge, else beside its ends.
        let mut places = Vec::new();
        if upright {
            places.push(PaperPoint::new(from.x, from.y + 3.6));
            places.push(PaperPoint::new(to.x, to.y - 1.1));
            places.extend([0.15, 0.5, 0.85].iter().flat_map(|part| {
                let y = from.y + (to.y - from.y) * part + 1.25;
                [1.0, -1.0].map(|side| PaperPoint::new(from.x + side * (half + 0.9), y))
            }));
        } else {
            places.push(PaperPoint::new(from.x - half - 1.0, from.y + 1.25));
            places.push(PaperPoint::new(to.x + half + 1.0, to.y + 1.25));
            places.extend([0.15, 0.5, 0.85].iter().flat_map(|part| {
                let x = from.x + (to.x - from.x) * part;
                [-0.9, 3.4].map(|down| PaperPoint::new(x, from.y + down))
            }));
        }
        canvas.text_at_first(layer, &places, &text, &Style::caption().middle());
    }
}

type At<'a> = &'a dyn Fn(Length, Length) -> PaperPoint;

/// Marks and sizes on the pieces, and on what is kept.
fn words(canvas: &mut Canvas, layer: Layer, set: &Set<'_>, sheet: &StockSheet, at: At<'_>) {
    let show = set.solved.show;
    for placed in &sheet.placed {
        let (Some((w, h)), Some(piece)) = (sides(set, placed), set.solved.shop.pieces.get(placed.piece)) else {
            continue;
        };
        let (low, high) = (at(placed.at.0, placed.at.1), at(placed.at.0 + w, placed.at.1 + h));
        let size = size(show, piece.blank);
        named(canvas, layer, (low, high), &piece.mark, &size);
    }
    for &(x, y, w, h) in &sheet.kept {
        let words = size(show, (w.min(h), w.max(h)));
        named(canvas, layer, (at(x, y), at(x + w, y + h)), "keep", &words);
    }
}

fn size(show: Show, (w, h): (Length, Length)) -> String {
    format!("{} \u{d7} {}", show.text(w), show.text(h))
}

/// A mark over a size, level or upright, in the middle of a box; the mark alone where only that has room.
fn named(canvas: &mut Canvas, layer: Layer, (low, high): (PaperPoint, PaperPoint), mark: &str, size: &str) {
    let middle = PaperPoint::new((low.x + high.x) / 2.0, (low.y + high.y) / 2.0);
    let (wide, tall) = ((high.x - low.x).abs() - 1.6, (high.y - low.y).abs() - 1.6);
    let (bold, plain) = (Style::body().bold().middle(), Style::body().middle());
    let mark_width = lettering::width(mark, BODY, Weight::SemiBold);
    let both = mark_width.max(lettering::width(size, BODY, Weight::Regular));
    let (one, two) = (2.6, 7.0);
    // In a narrow strip letters that reach under the line need white too.
    let bases = [1.25, 1.1, 1.0, 0.9, 0.8];
    if both <= wide && two <= tall {
        canvas.text(layer, middle.moved(0.0, -0.9), mark, &bold);
        canvas.text(layer, middle.moved(0.0, 3.4), size, &plain);
    } else if both <= tall && two <= wide {
        canvas.text(layer, middle.moved(-0.9, 0.0), mark, &bold.upright());
        canvas.text(layer, middle.moved(3.4, 0.0), size, &plain.upright());
    } else if mark_width <= wide && one <= tall {
        canvas.text_at_first(layer, &bases.map(|base| middle.moved(0.0, base)), mark, &bold);
    } else if mark_width <= tall && one <= wide {
        canvas.text_at_first(layer, &bases.map(|base| middle.moved(base, 0.0)), mark, &bold.upright());
    }
}
