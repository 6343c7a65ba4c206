//! How long things dry or harden before the next step.

use super::Text;
use serde::Deserialize;

/// Waits, each a time.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "waits", deny_unknown_fields)]
pub struct WaitsText {
    pub(crate) joint_mortar: Option<Text>,
    pub(crate) skim_coat: Option<Text>,
    pub(crate) veneer: Option<Text>,
    pub(crate) tile: Option<Text>,
    pub(crate) grout: Option<Text>,
    pub(crate) concrete: Option<Text>,
    pub(crate) sealer: Option<Text>,
    pub(crate) sealant: Option<Text>,
}
