//! What a printer was measured to print: written out, or by the name of one that is.

use super::parse::{byte_range, options};
use super::text::{self, Text};
use serde::Deserialize;
use serde::de::{Deserializer, Error, MapAccess, Visitor};
use std::fmt;

/// The two arms of the square card as they came out.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "printer", deny_unknown_fields)]
pub struct PrinterSizes {
    pub(crate) across: Text,
    pub(crate) along: Text,
}

/// The printer that templates are for.
#[derive(Clone, Debug)]
pub enum PrinterText {
    /// One of `paper.printers`, by name.
    Named(Text),
    /// As measured.
    Measured(PrinterSizes),
}

impl<'de> Deserialize<'de> for PrinterText {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<PrinterText, D::Error> {
        let raw = text::raw(deserializer)?;
        if !raw.starts_with('(') {
            let name = Text::from_raw(raw).ok_or_else(|| D::Error::custom("this printer can't be read"))?;
            return Ok(PrinterText::Named(name));
        }
        match options().from_str::<PrinterSizes>(raw) {
            Ok(sizes) => Ok(PrinterText::Measured(sizes)),
            Err(error) => {
                let span = byte_range(raw, &error.span);
                if let Some(start) = text::offset_of(raw) {
                    text::note_inner(start + span.start..start + span.end, error.code.clone());
                }
                Err(D::Error::custom(error.code))
            }
        }
    }
}

/// Printers by name, in the order written.
#[derive(Clone, Debug, Default)]
pub struct PrintersText(pub(crate) Vec<(Text, PrinterSizes)>);

impl<'de> Deserialize<'de> for PrintersText {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<PrintersText, D::Error> {
        deserializer.deserialize_map(PrintersVisitor)
    }
}

struct PrintersVisitor;

impl<'de> Visitor<'de> for PrintersVisitor {
    type Value = PrintersText;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("names with what was measured, as { \"office\": (across: \"149.2 mm\", along: \"150.3 mm\") }")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<PrintersText, A::Error> {
        let mut printers = Vec::new();
        while let Some(printer) = map.next_entry::<Text, PrinterSizes>()? {
            printers.push(printer);
        }
        Ok(PrintersText(printers))
    }
}
