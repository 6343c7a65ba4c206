//! A ledge along a leg's back.

use super::{OverhangText, Text};
use serde::Deserialize;

/// A strip of counter behind a leg and over it, on frames of its own as wide as the leg's.
#[derive(Debug, Deserialize)]
#[serde(rename = "ledge", deny_unknown_fields)]
pub struct LedgeText {
    /// From the leg's counter top to the ledge's.
    pub(crate) above: Text,
    /// Of its bare frame.
    pub(crate) depth: Option<Text>,
    #[serde(default)]
    pub(crate) overhang: OverhangText,
}
