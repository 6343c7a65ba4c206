//! A dimension of a fitting: given once, or published and measured.

use super::parse::{byte_range, options};
use super::text::{self, Text};
use serde::Deserialize;
use serde::de::{Deserializer, Error as _};

/// One length, or the published and the measured one.
#[derive(Clone, Debug)]
pub struct DimensionText {
    /// From the fitting's sheet; a length given once is this.
    pub(crate) published: Option<Text>,
    /// From the fitting in hand.
    pub(crate) measured: Option<Text>,
    /// The whole.
    pub(crate) whole: Text,
}

/// A height that may reach the floor.
#[derive(Clone, Debug)]
pub enum ExtentText {
    /// `to_floor`.
    ToFloor,
    /// This high.
    High(Box<DimensionText>),
}

#[derive(Deserialize)]
#[serde(rename = "dimension", deny_unknown_fields)]
struct Both {
    published: Option<Text>,
    measured: Option<Text>,
}

impl DimensionText {
    /// The value to work with, as the solver takes it: measured before published.
    pub(crate) fn working(&self) -> &Text {
        self.measured.as_ref().or(self.published.as_ref()).unwrap_or(&self.whole)
    }

    fn from_raw<E: serde::de::Error>(raw: &str) -> Result<DimensionText, E> {
        let whole = Text::from_raw(raw).ok_or_else(|| E::custom("this dimension can't be read"))?;
        if !raw.starts_with('(') {
            return Ok(DimensionText { published: Some(whole.clone()), measured: None, whole });
        }
        match options().from_str::<Both>(raw) {
            Ok(both) => Ok(DimensionText { published: both.published, measured: both.measured, whole }),
            Err(error) => {
                let span = byte_range(raw, &error.span);
                if let Some(start) = text::offset_of(raw) {
                    text::note_inner(start + span.start..start + span.end, error.code.clone());
                }
                Err(E::custom(error.code))
            }
        }
    }
}

impl<'de> Deserialize<'de> for DimensionText {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<DimensionText, D::Error> {
        DimensionText::from_raw(text::raw(deserializer)?)
    }
}

impl<'de> Deserialize<'de> for ExtentText {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<ExtentText, D::Error> {
        match text::raw(deserializer)? {
            "to_floor" => Ok(ExtentText::ToFloor),
            raw if raw.starts_with(|c: char| c.is_alphabetic())
                && !raw.starts_with("r\"")
                && !raw.starts_with("r#") =>
            {
                Err(D::Error::custom(format!("`{raw}` is not a height: write `to_floor` or a length in quotes")))
            }
            raw => DimensionText::from_raw(raw).map(|high| ExtentText::High(Box::new(high))),
        }
    }
}
