//! Paper by its name.

use super::given::{Paper, Printer};
use super::reader::{Reader, Sign};
use crate::findings;
use crate::model::{PaperText, PrinterSizes, PrinterText, Text};
use crate::units::Length;

/// Name, long side and short side in mm. A sizes: ISO 216. ANSI and ARCH sizes: ANSI/ASME Y14.1,
/// whole and half inches.
const SIZES: [(&str, f64, f64); 12] = [
    ("A4", 297.0, 210.0),
    ("A3", 420.0, 297.0),
    ("A2", 594.0, 420.0),
    ("A1", 841.0, 594.0),
    ("ANSI A", 11.0 * 25.4, 8.5 * 25.4),
    ("ANSI B", 17.0 * 25.4, 11.0 * 25.4),
    ("ANSI C", 22.0 * 25.4, 17.0 * 25.4),
    ("ANSI D", 34.0 * 25.4, 22.0 * 25.4),
    ("ARCH A", 12.0 * 25.4, 9.0 * 25.4),
    ("ARCH B", 18.0 * 25.4, 12.0 * 25.4),
    ("ARCH C", 24.0 * 25.4, 18.0 * 25.4),
    ("ARCH D", 36.0 * 25.4, 24.0 * 25.4),
];

/// The paper, A3 unless the job says otherwise.
pub(super) fn read(paper: &PaperText, reader: &mut Reader) -> Paper {
    let name = reader.words(paper.size.as_ref(), "A3");
    let place = paper.size.as_ref().map(|size| size.place.clone());
    let found = SIZES.iter().find(|(known, _, _)| known.eq_ignore_ascii_case(name.trim()));
    if let (None, Some(place)) = (found, &place) {
        let names = || SIZES.iter().map(|(known, _, _)| *known);
        let instead = findings::nearest(&name.to_uppercase(), names()).map_or_else(
            || format!("choose from {}", names().collect::<Vec<_>>().join(", ")),
            |meant| format!("write \"{meant}\""),
        );
        reader.tell(format!("`{name}` is not a paper size"), instead, place);
    }
    let (name, width, height) = *found.unwrap_or(&SIZES[1]);
    let printers: Vec<Printer> =
        paper.printers.0.iter().map(|(name, sizes)| printer(reader.words(Some(name), ""), sizes, reader)).collect();
    let printer = paper.printer.as_ref().and_then(|written| match written {
        PrinterText::Measured(sizes) => Some(printer(String::new(), sizes, reader)),
        PrinterText::Named(name) => named(name, &printers, reader),
    });
    Paper {
        name: name.to_owned(),
        width,
        height,
        place,
        templates: paper.templates.as_ref().map(|written| reader.words(Some(written), "")),
        margin: reader.length_if("paper.margin", paper.margin.as_ref(), Sign::NotNegative),
        overlap: reader.length_if("paper.overlap", paper.overlap.as_ref(), Sign::NotNegative),
        printer,
        printers,
    }
}

/// How far a printer may be off before something else is to blame.
const MOST: f64 = 0.03;

/// A printer from what it made of the square card's arms.
fn printer(name: String, sizes: &PrinterSizes, reader: &mut Reader) -> Printer {
    Printer { name, across: factor(&sizes.across, reader), along: factor(&sizes.along, reader) }
}

/// Printed over true: a length in inches is of the card's 6 in, any other of its 150 mm. 1 after a problem.
fn factor(written: &Text, reader: &mut Reader) -> f64 {
    let Some(length) = reader.length_of(written, Sign::Positive) else { return 1.0 };
    let inches = written.text.contains(['\u{2033}', '"'])
        || written.text.split(|c: char| !c.is_alphabetic()).any(|word| matches!(word, "in" | "ft"));
    let (arm, words) = if inches { (Length::from_inches(6.0), "6 in") } else { (Length::from_mm(150.0), "150 mm") };
    let factor = length.mm() / arm.mm();
    if (factor - 1.0).abs() > MOST {
        reader.tell(
            format!("a printer that makes {} of {words} is off by {:.1} %; more than 3 % comes from a page that was fitted to the paper, not from the printer", written.text.trim(), (factor - 1.0).abs() * 100.0),
            "print the square card again at 100 % (actual size, not fit to page) and measure both arms anew",
            &written.place,
        );
        return 1.0;
    }
    factor
}

/// The printer of a name.
fn named(name: &Text, printers: &[Printer], reader: &mut Reader) -> Option<Printer> {
    let wanted = reader.words(Some(name), "");
    let found = printers.iter().find(|printer| printer.name == wanted).cloned();
    if found.is_none() && !wanted.is_empty() {
        let names = || printers.iter().map(|printer| printer.name.as_str());
        let instead = match findings::nearest(&wanted, names()) {
            Some(meant) => format!("write \"{meant}\""),
            None if printers.is_empty() => {
                "add it to paper.printers, as { \"office\": (across: \"149.2 mm\", along: \"150.3 mm\") }".to_owned()
            }
            None => format!("choose from {}", names().collect::<Vec<_>>().join(", ")),
        };
        reader.tell(format!("`{wanted}` is not one of paper.printers"), instead, &name.place);
    }
    found
}
