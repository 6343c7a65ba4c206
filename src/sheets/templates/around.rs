//! Round a tile: where it is trimmed, what it is glued to, and the marks that line up with its neighbours'.

use super::piece::Template;
use super::tile::{FINE, NOTE, Sheet};
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Dash, Fill, Pen, Step};
use crate::geometry::{PaperPoint, Within};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;

/// Radius of a match mark, mm.
const MARK: f64 = 3.2;
/// Glue strips.
const GLUE: Colour = Colour(0xee, 0xee, 0xec);
/// Dashes of a trim line.
const TRIM: Dash = Dash(&[5.0, 1.6]);

/// A side of a tile.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    Left,
    Right,
    Bottom,
    Top,
}

const SIDES: [Side; 4] = [Side::Left, Side::Right, Side::Bottom, Side::Top];

/// A match mark on a side.
pub struct Match {
    centre: PaperPoint,
    side: Side,
    letter: &'static str,
}

/// The tile on a side of this one, if it is printed: column and row.
fn neighbour(sheet: &Sheet<'_>, side: Side) -> Option<(usize, usize)> {
    let (column, row) = sheet.place;
    let (column, row) = match side {
        Side::Left => (column.checked_sub(1)?, row),
        Side::Right => (column + 1, row),
        Side::Bottom => (column, row.checked_sub(1)?),
        Side::Top => (column, row + 1),
    };
    sheet.plan.is_printed(Some(column), Some(row)).then_some((column, row))
}

/// The strips that stay on at the right and at the top and go under the neighbours.
pub fn glue_strips(sheet: &mut Sheet<'_>) {
    let layer = sheet.canvas.layer(Canvas::ROOT, "glue-strips");
    let (ink, trim) = (sheet.ink(), sheet.area(&sheet.trim.clone()));
    let mut strip = |a: (f64, f64), b: (f64, f64)| {
        let paint = Paint::fill(Fill::tint(GLUE));
        sheet.canvas.rectangle(layer, PaperPoint::new(a.0, a.1), PaperPoint::new(b.0, b.1), paint);
    };
    strip((trim.right, ink.top), (ink.right, trim.bottom));
    strip((trim.left, ink.top), (trim.right, trim.top));
}

/// Trim lines, and match marks on those that have a neighbour. Their letters come later, with [`words`].
pub fn trim_lines(sheet: &mut Sheet<'_>) -> Vec<Match> {
    let layer = sheet.canvas.layer(Canvas::ROOT, "trim");
    let (ink, trim) = (sheet.ink(), sheet.area(&sheet.trim.clone()));
    let pen = Pen::DIMENSION.coloured(Colour::GREY_TEXT).dashed(TRIM);
    let p = PaperPoint::new;
    for (a, b) in [
        (p(trim.left, ink.top), p(trim.left, ink.bottom)),
        (p(trim.right, ink.top), p(trim.right, ink.bottom)),
        (p(ink.left, trim.top), p(ink.right, trim.top)),
        (p(ink.left, trim.bottom), p(ink.right, trim.bottom)),
    ] {
        sheet.canvas.line(layer, a, b, pen);
    }
    let layer = sheet.canvas.layer(Canvas::ROOT, "match-marks");
    let sides = SIDES.into_iter().filter(|side| neighbour(sheet, *side).is_some());
    let marks: Vec<Match> = sides.flat_map(|side| matches(sheet, side)).collect();
    for found in &marks {
        mark(&mut sheet.canvas, layer, found.centre);
    }
    marks
}

/// What lies beyond each trim line, and the letters of the match marks.
pub fn words(sheet: &mut Sheet<'_>, marks: &[Match]) {
    let layer = sheet.canvas.layer(Canvas::ROOT, "edges");
    let (ink, trim) = (sheet.ink(), sheet.area(&sheet.trim.clone()));
    for found in marks {
        let beside = match found.side {
            Side::Left => [(6.0, 1.25), (5.0, -4.0), (5.0, 6.5)],
            Side::Right => [(-6.0, 1.25), (-5.0, -4.0), (-5.0, 6.5)],
            Side::Bottom => [(0.0, -6.0), (6.0, -4.0), (-6.0, -4.0)],
            Side::Top => [(0.0, 8.6), (6.0, 6.5), (-6.0, 6.5)],
        };
        let style = Style::body().bold();
        let style = match found.side {
            Side::Left => style,
            Side::Right => style.end(),
            Side::Bottom | Side::Top => style.middle(),
        };
        let places = beside.map(|(dx, dy)| found.centre.moved(dx, dy));
        sheet.canvas.text_at_first(layer, &places, found.letter, &style);
    }
    for side in SIDES {
        let words = match (side, neighbour(sheet, side)) {
            (Side::Left | Side::Bottom, Some((column, row))) => {
                format!("trim on this line, lay over tile {}-{}", row + 1, column + 1)
            }
            (Side::Right | Side::Top, Some((column, row))) => format!("glue under tile {}-{}", row + 1, column + 1),
            (_, None) => "no tile beyond this line".to_owned(),
        };
        edge_words(sheet, layer, side, &words, &ink, &trim);
    }
}

/// Words in the overlap along a side, at the first place along it that is white.
fn edge_words(sheet: &mut Sheet<'_>, layer: Layer, side: Side, words: &str, ink: &Area, trim: &Area) {
    let upright = matches!(side, Side::Left | Side::Right);
    let style = Style::caption().middle();
    let style = if upright { style.upright() } else { style };
    let shares = [0.5, 0.38, 0.62, 0.26, 0.74, 0.16, 0.84];
    let places: Vec<PaperPoint> = shares
        .iter()
        .map(|share| {
            let (x, y) = (trim.left + trim.width() * share, trim.top + trim.height() * share);
            match side {
                Side::Left => PaperPoint::new((ink.left + trim.left) / 2.0 + 1.05, y),
                Side::Right => PaperPoint::new((ink.right + trim.right) / 2.0 + 1.05, y),
                Side::Bottom => PaperPoint::new(x, (ink.bottom + trim.bottom) / 2.0 + 1.05),
                Side::Top => PaperPoint::new(x, (ink.top + trim.top) / 2.0 + 1.05),
            }
        })
        .collect();
    sheet.canvas.text_at_first(layer, &places, words, &style);
}

/// Two marks on a side, where both tiles that share it have white.
fn matches(sheet: &Sheet<'_>, side: Side) -> Vec<Match> {
    let trim = sheet.trim;
    let upright = matches!(side, Side::Left | Side::Right);
    let (low, high) = if upright { (trim.y0, trim.y1) } else { (trim.x0, trim.x1) };
    let fixed = match side {
        Side::Left => trim.x0,
        Side::Right => trim.x1,
        Side::Bottom => trim.y0,
        Side::Top => trim.y1,
    };
    let letters = if upright { [("a", true), ("b", false)] } else { [("c", false), ("d", true)] };
    let found = letters.into_iter().filter_map(|(letter, from_high)| {
        let insets = [38.0, 30.0, 46.0, 22.0, 54.0, 62.0, 16.0];
        let along = |inset: f64| if from_high { high - inset } else { low + inset };
        let at = |inset: f64| if upright { (fixed, along(inset)) } else { (along(inset), fixed) };
        let fits = |inset: &&f64| **inset < (high - low) / 2.0 - 5.0 && is_white(sheet.template, at(**inset), 6.0);
        let (x, y) = insets.iter().find(fits).map(|inset| at(*inset))?;
        Some(Match { centre: sheet.at(x, y), side, letter })
    });
    found.collect()
}

/// Whether nothing of the part runs near a point: asked of the part and not of the page, so that both tiles agree.
fn is_white(template: &Template, (x, y): (f64, f64), near: f64) -> bool {
    let outlines = template.region.outlines().chain(template.flanges.iter().map(|(outline, _)| outline));
    let clear =
        outlines.into_iter().all(|outline| outline.within(x - near, y - near, x + near, y + near) == Within::Nothing);
    clear && template.lines.iter().all(|line| ((if line.upright { x } else { y }) - line.at).abs() > near)
}

/// A circle with two black quarters and a cross.
fn mark(canvas: &mut Canvas, layer: Layer, centre: PaperPoint) {
    canvas.circle(layer, centre, MARK, Paint::both(Pen::DIMENSION.coloured(NOTE), Fill::WHITE));
    for (from, to) in [((MARK, 0.0), (0.0, MARK)), ((-MARK, 0.0), (0.0, -MARK))] {
        let steps = vec![
            Step::Move(centre),
            Step::Line(centre.moved(from.0, from.1)),
            Step::Arc { radius: MARK, large: false, clockwise: true, to: centre.moved(to.0, to.1) },
            Step::Close,
        ];
        canvas.steps(layer, steps, Paint::fill(Fill::ink(NOTE)));
    }
    let arm = MARK + 1.4;
    canvas.line(layer, centre.moved(-arm, 0.0), centre.moved(arm, 0.0), FINE);
    canvas.line(layer, centre.moved(0.0, -arm), centre.moved(0.0, arm), FINE);
}
