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

/// What every bound has that isn't open.
#[derive(Clone, Copy, Debug)]
pub(crate) struct BoundParts<'b> {
    /// The kind as written.
    pub(crate) kind: &'static str,
    pub(crate) name: Option<&'b Text>,
    pub(crate) gap: &'b Text,
    pub(crate) height: Option<&'b Text>,
    pub(crate) width: Option<&'b Text>,
    pub(crate) lean: Option<&'b Text>,
}

impl BoundText {
    /// What a bound has that isn't open.
    pub(crate) fn parts(&self) -> Option<BoundParts<'_>> {
        let (kind, (name, gap, height, width, lean)) = match self {
            BoundText::Open => return None,
            BoundText::Wall { name, gap, height, width, lean } => ("wall", (name, gap, height, width, lean)),
            BoundText::Pier { name, gap, height, width, lean } => ("pier", (name, gap, height, width, lean)),
            BoundText::Post { name, gap, height, width, lean } => ("post", (name, gap, height, width, lean)),
        };
        Some(BoundParts {
            kind,
            name: name.as_ref(),
            gap,
            height: height.as_ref(),
            width: width.as_ref(),
            lean: lean.as_ref(),
        })
    }
}
