//! What is there before the run: bounds, floor, services.

use super::Text;
use serde::Deserialize;

/// The site.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "site", deny_unknown_fields)]
pub struct SiteText {
    pub(crate) left: Option<BoundText>,
    pub(crate) right: Option<BoundText>,
    pub(crate) back: Option<BoundText>,
    pub(crate) room: Option<Text>,
    pub(crate) floor: Option<FloorText>,
    #[serde(default)]
    pub(crate) stubs: Vec<StubText>,
    pub(crate) paving: Option<Text>,
}

/// What stands at an end, or behind.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "bound", rename_all = "snake_case", deny_unknown_fields)]
pub enum BoundText {
    Open,
    Wall { name: Option<Text>, gap: Text, height: Option<Text>, width: Option<Text>, lean: Option<Text> },
    Pier { name: Option<Text>, gap: Text, height: Option<Text>, width: Option<Text>, lean: Option<Text> },
    Post { name: Option<Text>, gap: Text, height: Option<Text>, width: Option<Text>, lean: Option<Text> },
}

/// The floor's surface.
#[derive(Debug, Deserialize)]
#[serde(rename = "floor", rename_all = "snake_case", deny_unknown_fields)]
pub enum FloorText {
    Level,
    Fall { along: Option<Text>, across: Option<Text> },
    Spots(Vec<SpotText>),
}

/// One measured height.
#[derive(Debug, Deserialize)]
#[serde(rename = "spot", deny_unknown_fields)]
pub struct SpotText {
    pub(crate) along: Text,
    pub(crate) depth: Text,
    pub(crate) height: Text,
}

/// A service that comes up.
#[derive(Debug, Deserialize)]
#[serde(rename = "stub", deny_unknown_fields)]
pub struct StubText {
    pub(crate) service: ServiceText,
    pub(crate) leg: Option<Text>,
    pub(crate) along: Text,
    pub(crate) depth: Text,
}

/// What a stub carries.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "service", rename_all = "snake_case")]
pub enum ServiceText {
    Gas,
    Power,
    Water,
    Drain,
}
