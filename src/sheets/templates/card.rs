//! The square card: a cross of 6 in and 150 mm both ways, to find out what a printer makes of true lengths.

use super::bars;
use super::plan::Setting;
use super::stock::Stock;
use super::tile::NOTE;
use crate::drawing::lettering::{SHEET_TITLE, Style};
use crate::drawing::{Page, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::Canvas;
use crate::sheets::notes;

/// The card on the setting's paper. It is never corrected: it is what corrections come from.
pub fn page(title: &str, setting: &Setting) -> Page {
    let (width, height) = match &setting.stock {
        Stock::Sheet { short, long, .. } => (*short, *long),
        Stock::Roll { width, .. } => (*width, 280.0),
    };
    let mut canvas = Canvas::new(width, height);
    let layer = canvas.layer(Canvas::ROOT, "card");
    let left = ((width - 175.0) / 2.0).max(setting.margin + 2.0);
    let top = setting.margin + 12.0;
    let at = |x: f64, y: f64| PaperPoint::new(left + x, top + y);
    canvas.text(layer, at(0.0, 0.0), "Square card", &Style::body().bold().sized(SHEET_TITLE));
    canvas.text(
        layer,
        at(48.0, 0.0),
        &format!("{title}, {}, drawn without correction", setting.stock.name()),
        &Style::caption(),
    );

    // The bars cross at right angles near one corner, so that a square laid into them tells whether the paper ran straight.
    let zero = at(15.0, 178.0);
    let pen = Pen::FINE.coloured(NOTE);
    canvas.line(layer, zero.moved(-8.0, -6.0), zero.moved(163.0, -6.0), pen);
    canvas.line(layer, zero.moved(-2.0, -166.0), zero.moved(-2.0, -1.0), pen);
    bars::draw(&mut canvas, layer, at(21.0, 184.5), bars::SIZES[0], false);
    bars::draw(&mut canvas, layer, at(28.0, 165.0), bars::SIZES[0], true);
    canvas.text(layer, at(90.0, 176.0), "across", &Style::body().bold().middle());
    canvas.text(layer, at(48.0, 90.0), "along", &Style::body().bold().middle().upright());

    let steps = [
        ("Print", "Print this page at 100 % (actual size). Switch off anything that fits the page to the paper."),
        (
            "Measure",
            "Measure both bars from end to end with a steel rule: across, the level one; along, the upright one.",
        ),
        (
            "Write",
            "Put what you measured into the job, as: paper: (printer: (across: \"149.2 mm\", along: \"150.3 mm\"))",
        ),
        ("Inches", "A measurement in inches is of the 6 in bar, one in millimetres of the 150 mm bar."),
        ("Square", "Lay a square along the two fine lines. If they are not square, the paper ran askew: print again."),
    ];
    let notes: Vec<(String, String)> =
        steps.iter().map(|(lead, words)| ((*lead).to_owned(), (*words).to_owned())).collect();
    notes::list(&mut canvas, layer, at(62.0, 30.0), &notes, (width - left - 62.0 - setting.margin - 4.0).min(112.0));
    canvas.finish("square-card", "Square card")
}
