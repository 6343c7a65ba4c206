//! Working out one written value after the other, keeping every problem.

use super::defaults;
use super::given::DefaultUsed;
use super::names::Names;
use crate::findings::{Place, Problem};
use crate::model::{Text, TextKind};
use crate::units::{Dimension, Length, Quantity};
use std::collections::HashSet;

/// The longest length that a job may hold.
const LONGEST: Length = Length::from_nm(1_000_000_000_000);

/// Which signs a value may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sign {
    /// Any.
    Any,
    /// Zero or more.
    NotNegative,
    /// More than zero.
    Positive,
}

/// What works out a job's values.
#[derive(Debug, Default)]
pub(super) struct Reader {
    pub(super) names: Names,
    pub(super) overridden: HashSet<String>,
    pub(super) problems: Vec<Problem>,
    pub(super) defaults: Vec<DefaultUsed>,
    /// Names of the defaults that are recorded.
    pub(super) recorded: HashSet<String>,
}

impl Reader {
    /// Keeps a problem.
    pub(super) fn tell(&mut self, message: impl Into<String>, instead: impl Into<String>, place: &Place) {
        self.problems.push(Problem::new(message, instead).at(place));
    }

    /// The length called `name`, or the default of that name.
    pub(super) fn length(&mut self, name: &str, written: Option<&Text>, sign: Sign) -> Length {
        self.length_or(name, name, written, sign)
    }

    /// The length called `name`, or the default called `default`; zero after a problem.
    pub(super) fn length_or(&mut self, name: &str, default: &str, written: Option<&Text>, sign: Sign) -> Length {
        let text = self.text(name, default, written);
        text.and_then(|text| self.length_of(&text, sign)).unwrap_or(Length::ZERO)
    }

    /// The length called `name`, if it is written or overridden.
    pub(super) fn length_if(&mut self, name: &str, written: Option<&Text>, sign: Sign) -> Option<Length> {
        let text = self.override_of(name).or_else(|| written.cloned())?;
        self.length_of(&text, sign)
    }

    /// Any other quantity called `name`, in SI units, or the default called `default`.
    pub(super) fn quantity_or(
        &mut self,
        name: &str,
        default: &str,
        written: Option<&Text>,
        dimension: Dimension,
    ) -> f64 {
        let text = self.text(name, default, written);
        text.and_then(|text| self.si_of(&text, dimension, Sign::NotNegative)).unwrap_or(0.0)
    }

    /// Any other quantity called `name`, in SI units, if it is written or overridden.
    pub(super) fn quantity_if(&mut self, name: &str, written: Option<&Text>, dimension: Dimension) -> Option<f64> {
        let text = self.override_of(name).or_else(|| written.cloned())?;
        self.si_of(&text, dimension, Sign::NotNegative)
    }

    /// The value of a text in SI units; a problem is kept.
    pub(super) fn si_of(&mut self, text: &Text, dimension: Dimension, sign: Sign) -> Option<f64> {
        self.checked(text, dimension, sign).map(Quantity::si)
    }

    /// The value of a text with its dimension; a problem is kept.
    pub(super) fn quantity_of(&mut self, text: &Text, dimension: Dimension, sign: Sign) -> Option<Quantity> {
        self.checked(text, dimension, sign)
    }

    /// A text's length; a problem is kept.
    pub(super) fn length_of(&mut self, text: &Text, sign: Sign) -> Option<Length> {
        let value = self.checked(text, Dimension::LENGTH, sign)?;
        if value.value.abs() > LONGEST.nm() as f64 {
            self.tell("this length is more than a kilometre", "check its unit", &text.place);
            return None;
        }
        value.as_length()
    }

    /// Words, or empty ones where nothing is written.
    pub(super) fn words(&mut self, written: Option<&Text>, otherwise: &str) -> String {
        match written.map(Text::words) {
            None => otherwise.to_owned(),
            Some(Ok(words)) => words.to_owned(),
            Some(Err(problem)) => {
                self.problems.push(problem);
                otherwise.to_owned()
            }
        }
    }

    /// What the command line put in this name's place.
    pub(super) fn override_of(&self, name: &str) -> Option<Text> {
        self.overridden.contains(name).then(|| self.names.written(name).cloned()).flatten()
    }

    /// Records a default that is used, once.
    pub(super) fn record(&mut self, name: &str, value: &str, origin: &'static str) {
        if self.recorded.insert(name.to_owned()) {
            self.defaults.push(DefaultUsed { name: name.to_owned(), value: value.to_owned(), origin });
        }
    }

    /// Override, written text, or default, whichever comes first.
    fn text(&mut self, name: &str, default: &str, written: Option<&Text>) -> Option<Text> {
        if let Some(text) = self.override_of(name).or_else(|| written.cloned()) {
            return Some(text);
        }
        let default = defaults::default(default)?;
        self.record(name, default.value, default.origin);
        Some(Text::made("default", default.value, 0..default.value.len()))
    }

    fn checked(&mut self, text: &Text, dimension: Dimension, sign: Sign) -> Option<Quantity> {
        let value = self.names.value(text)?;
        if value.dimension != dimension {
            self.wrong_dimension(text, value.dimension, dimension);
            return None;
        }
        let wrong = match sign {
            Sign::Any => false,
            Sign::NotNegative => value.value < 0.0,
            Sign::Positive => value.value <= 0.0,
        };
        if wrong {
            let words = dimension.words().trim_start_matches("a ").trim_start_matches("an ");
            let (is, must) = if value.value < 0.0 { ("negative", "not be") } else { ("zero", "be more than that") };
            self.tell(
                format!("this {words} is {is} and must {must}"),
                format!("write it as {}", dimension.example()),
                &text.place,
            );
            return None;
        }
        Some(value)
    }

    fn wrong_dimension(&mut self, text: &Text, found: Dimension, wanted: Dimension) {
        let written = text.text.trim();
        let figures = written.chars().all(|c| c.is_ascii_digit() || matches!(c, ' ' | '.' | '/' | '-'));
        let plain = figures || text.kind == TextKind::Number;
        let (message, instead) = if found == Dimension::NUMBER && plain && wanted == Dimension::LENGTH {
            (
                format!("`{written}` has no unit: it is a plain number"),
                format!("write \"{written} in\" or \"{written} mm\""),
            )
        } else if found == Dimension::NUMBER && plain {
            (format!("`{written}` has no unit: it is a plain number"), format!("write it as {}", wanted.example()))
        } else {
            let message = format!("`{written}` is {}, and {} is wanted here", found.words(), wanted.words());
            (message, format!("write it as {}", wanted.example()))
        };
        self.tell(message, instead, &text.place);
    }
}
