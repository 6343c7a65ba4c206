//! What full-size templates are printed on: sheets of a standard size, or a roll.

use crate::findings::{Problem, nearest};
use crate::units::reading::quantity;
use crate::units::{Dimension, Length, System};

/// Paper for templates.
#[derive(Clone, Debug, PartialEq)]
pub enum Stock {
    /// Sheets, to be tiled.
    Sheet {
        /// Its name.
        name: &'static str,
        /// Short side, mm.
        short: f64,
        /// Long side, mm.
        long: f64,
    },
    /// A roll: one page, as long as the part.
    Roll {
        /// Its name as written.
        name: String,
        /// Across, mm.
        width: f64,
        /// Longest page that it gives, mm.
        longest: f64,
    },
}

/// Name, short side, long side, mm (ANSI/ASME Y14.1 and ISO 216).
const SHEETS: [(&str, f64, f64); 12] = [
    ("letter", 215.9, 279.4),
    ("legal", 215.9, 355.6),
    ("tabloid", 279.4, 431.8),
    ("A4", 210.0, 297.0),
    ("A3", 297.0, 420.0),
    ("A2", 420.0, 594.0),
    ("A1", 594.0, 841.0),
    ("ANSI C", 431.8, 558.8),
    ("ANSI D", 558.8, 863.6),
    ("ARCH B", 304.8, 457.2),
    ("ARCH C", 457.2, 609.6),
    ("ARCH D", 609.6, 914.4),
];

/// Longest page of a roll, mm: a PDF page has at most 14 400 points (ISO 32000-1, annex C).
pub const LONGEST: f64 = 200.0 * 25.4;

impl Stock {
    /// The paper of a name, as `letter`, `A3`, `roll 24 in`, `roll 914 mm x 5 m`.
    ///
    /// # Errors
    /// When there is no such paper.
    pub fn named(name: &str) -> Result<Stock, Problem> {
        let written = name.trim();
        if let Some(size) = written.strip_prefix("roll").or_else(|| written.strip_prefix("Roll")) {
            return roll(written, size);
        }
        let known = SHEETS.iter().find(|(known, _, _)| known.eq_ignore_ascii_case(written));
        let &(name, short, long) = known.ok_or_else(|| {
            let names = || SHEETS.iter().map(|(known, _, _)| *known);
            let instead = match names()
                .find(|known| nearest(&written.to_lowercase(), [known.to_lowercase().as_str()]).is_some())
            {
                Some(meant) => format!("write \"{meant}\""),
                None => format!(
                    "choose from {}, or a roll by its width, as \"roll 24 in\"",
                    names().collect::<Vec<_>>().join(", ")
                ),
            };
            Problem::new(format!("`{written}` is no paper for templates"), instead)
        })?;
        Ok(Stock::Sheet { name, short, long })
    }

    /// What a job is printed on that says nothing.
    pub fn usual(system: System) -> Stock {
        let (name, short, long) = if system == System::Millimetres { SHEETS[3] } else { SHEETS[0] };
        Stock::Sheet { name, short, long }
    }

    /// Its name.
    pub fn name(&self) -> &str {
        match self {
            Stock::Sheet { name, .. } => name,
            Stock::Roll { name, .. } => name,
        }
    }
}

fn roll(written: &str, size: &str) -> Result<Stock, Problem> {
    let wrong = |message: String| {
        Problem::new(message, "write its width, as \"roll 24 in\", \"roll 914 mm\" or \"roll 36 in x 50 ft\"")
    };
    let length = |text: &str| -> Result<f64, Problem> {
        let read = quantity(text.trim()).ok().filter(|found| found.dimension == Dimension::LENGTH);
        let length = read.and_then(|found| found.as_length()).filter(|length| *length > Length::ZERO);
        length.map(Length::mm).ok_or_else(|| wrong(format!("`{}` is not the size of a roll", text.trim())))
    };
    let (width, longest) = match size.split_once(['x', '×']) {
        Some((width, long)) => (length(width)?, length(long)?),
        None => (length(size)?, LONGEST),
    };
    if !(200.0..=2000.0).contains(&width) {
        return Err(wrong(format!("`{written}` is not a width that rolls have")));
    }
    Ok(Stock::Roll { name: written.to_owned(), width, longest: longest.min(LONGEST) })
}

#[cfg(test)]
mod tests {
    use super::Stock;

    #[test]
    fn papers_are_known_by_name_and_rolls_by_width() {
        assert!(matches!(Stock::named("a4"), Ok(Stock::Sheet { name: "A4", .. })));
        let roll = Stock::named("roll 24 in").expect("a roll");
        assert!(
            matches!(roll, Stock::Roll { width, longest, .. } if (width - 609.6).abs() < 1e-9 && longest == 5080.0)
        );
        assert!(matches!(Stock::named("roll 914 mm x 3 m"), Ok(Stock::Roll { longest, .. }) if longest == 3000.0));
        assert_eq!(Stock::named("leter").expect_err("no such").instead, "write \"letter\"");
        for bad in ["", "roll", "roll 24", "roll 3 kg", "roll 1 in", "roll -24 in"] {
            Stock::named(bad).expect_err(bad);
        }
    }
}
