//! Where the sections are cut: thick strokes over the counter and under the floor, an arrow the way they look.

use super::elevation::Elevation;
use crate::drawing::lettering::{self, BODY, Style, TITLE, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::set::Kind;
use crate::solve::{Face, Plane};

/// Length of the thick stroke, mm.
const STROKE: f64 = 5.2;

/// Draws the marks of every section through this page's modules.
pub fn draw(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for (index, fitting) in e.leg.fittings.iter().enumerate() {
        let kind = Kind::Section(e.leg_index, index);
        let (Some(letter), Some(sheet)) = (e.set.section_letter(kind), e.set.number(kind)) else { continue };
        let behind = fitting.face == Face::Back;
        if !e.part.has(fitting) || behind != e.is_behind() {
            continue;
        }
        let Some(cutout) = fitting.cutout(Plane::Counter) else { continue };
        let (x0, x1) = e.facing.span(cutout.extent.x0, cutout.extent.x1);
        mark(canvas, at, e, (e.view.x(x0), e.view.x(x1)), &letter, &format!("sheet {sheet}"));
    }
}

fn mark(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, (from, to): (f64, f64), letter: &str, sheet: &str) {
    let wanted = from + (to - from) * 0.68;
    let count = (to - from - 2.0).max(0.0).floor() as i32;
    let mut places: Vec<f64> = (0..=count).map(|k| from + 1.0 + f64::from(k)).collect();
    places.push(wanted);
    places.sort_by(|a, b| (a - wanted).abs().total_cmp(&(b - wanted).abs()));
    // Both marks stand on one line; where they can't both say the sheet, the lower one need not.
    for (upper_sheet, lower_sheet) in [(true, true), (true, false), (false, false)] {
        let found = places.iter().copied().find(|&x| {
            is_free(canvas, e, x, true, letter, upper_sheet.then_some(sheet))
                && is_free(canvas, e, x, false, letter, lower_sheet.then_some(sheet))
        });
        if let Some(x) = found {
            stroke(canvas, at, e, x, true, letter, upper_sheet.then_some(sheet));
            stroke(canvas, at, e, x, false, letter, lower_sheet.then_some(sheet));
            return;
        }
    }
    if let Some(x) = places.into_iter().find(|&x| is_free(canvas, e, x, true, letter, Some(sheet))) {
        stroke(canvas, at, e, x, true, letter, Some(sheet));
    }
}

/// Paper y of the end of the stroke that is nearest to the run, and which way it goes on from there.
fn start(e: &Elevation<'_>, x: f64, upper: bool) -> (f64, f64) {
    let model = (x - e.view.origin.x) / e.view.scale.factor();
    if upper { (e.view.y(e.top) - 2.2, -1.0) } else { (e.view.y_mm(e.floor.height(model)) + 3.6, 1.0) }
}

fn words_width(letter: &str, sheet: Option<&str>) -> f64 {
    let letter = lettering::width(letter, TITLE, Weight::SemiBold);
    1.8 + letter + sheet.map_or(0.0, |sheet| 2.2 + lettering::width(sheet, BODY, Weight::Regular))
}

fn is_free(canvas: &Canvas, e: &Elevation<'_>, x: f64, upper: bool, letter: &str, sheet: Option<&str>) -> bool {
    let (y, out) = start(e, x, upper);
    let (a, b) = (y.min(y + out * STROKE), y.max(y + out * STROKE));
    let (left, right) =
        if e.is_behind() { (2.0, 8.0 + words_width(letter, sheet)) } else { (8.0, 1.0 + words_width(letter, sheet)) };
    canvas.is_box_free(x - left, a - 0.6, x + right, b + 0.6)
}

fn stroke(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>, x: f64, upper: bool, letter: &str, sheet: Option<&str>) {
    let (y, out) = start(e, x, upper);
    let p = PaperPoint::new;
    canvas.line(at, p(x, y), p(x, y + out * STROKE), Pen::CUT);
    // Sections look to the cook's left, so that depth runs to the right in them.
    let look = if e.is_behind() { 1.0 } else { -1.0 };
    let end = y + out * (STROKE - 0.35);
    canvas.line(at, p(x, end), p(x + look * 4.5, end), Pen::SECONDARY);
    canvas.arrow_sized(at, p(x + look * 7.0, end), if look > 0.0 { 0.0 } else { 180.0 }, Colour::INK, 3.2, 1.3);
    let text = if look > 0.0 { x + 8.2 } else { x + 1.8 };
    let baseline = if upper { end + 3.4 } else { end + 0.1 };
    let width = canvas.text(at, p(text, baseline), letter, &Style::body().bold().sized(TITLE));
    if let Some(sheet) = sheet {
        canvas.text(at, p(text + width + 2.2, baseline), sheet, &Style::caption());
    }
}
