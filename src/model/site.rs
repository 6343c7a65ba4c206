//! What is there before the run: bounds, floor, services.

use super::{SurveyText, Text};
use serde::Deserialize;

/// The site.
#[derive(Debug, Default, Deserialize)]
#[serde(rename = "site", deny_unknown_fields)]
pub struct SiteText {
    pub(crate) left: Option<BoundText>,
    pub(crate) right: Option<BoundText>,
    pub(crate) back: Option<BoundText>,
    /// A length, or `as surveyed`; of every leg that has none of its own.
    pub(crate) room: Option<Text>,
    pub(crate) floor: Option<FloorText>,
    #[serde(default)]
    pub(crate) stubs: Vec<StubText>,
    pub(crate) paving: Option<Text>,
    pub(crate) overhead: Option<OverheadText>,
    #[serde(default)]
    pub(crate) combustibles: Vec<CombustibleText>,
    /// Clear floor before the run.
    pub(crate) aisle: Option<Text>,
    /// What the floor carries, where it is no ground: a deck, a roof.
    pub(crate) carries: Option<Text>,
    #[serde(default)]
    pub(crate) people: Vec<PersonText>,
    #[serde(default)]
    pub(crate) accessible: bool,
    pub(crate) sun: Option<bool>,
    #[serde(default)]
    pub(crate) drains: Vec<DrainText>,
    #[serde(default)]
    pub(crate) survey: SurveyText,
}

/// What stands at an end, or behind.
#[derive(Clone, Debug, Deserialize)]
#[serde(rename = "bound", rename_all = "snake_case", deny_unknown_fields)]
pub enum BoundText {
    Open,
    Wall {
        name: Option<Text>,
        gap: Text,
        height: Option<Text>,
        width: Option<Text>,
        lean: Option<Text>,
        combustible: Option<bool>,
    },
    Pier {
        name: Option<Text>,
        gap: Text,
        height: Option<Text>,
        width: Option<Text>,
        lean: Option<Text>,
        combustible: Option<bool>,
    },
    Post {
        name: Option<Text>,
        gap: Text,
        height: Option<Text>,
        width: Option<Text>,
        lean: Option<Text>,
        combustible: Option<bool>,
    },
}

/// The floor's surface.
#[derive(Debug, Deserialize)]
#[serde(rename = "floor", rename_all = "snake_case", deny_unknown_fields)]
pub enum FloorText {
    Level,
    Fall {
        along: Option<Text>,
        across: Option<Text>,
    },
    /// The best plane through measured heights.
    Spots(Vec<SpotText>),
    /// The facets between them.
    ThroughSpots(Vec<SpotText>),
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
    /// Over the floor.
    pub(crate) height: Option<Text>,
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
    pub(crate) combustible: Option<bool>,
}

impl BoundText {
    /// What a bound has that isn't open.
    pub(crate) fn parts(&self) -> Option<BoundParts<'_>> {
        let (kind, (name, gap, height, width, lean), combustible) = match self {
            BoundText::Open => return None,
            BoundText::Wall { name, gap, height, width, lean, combustible } => {
                ("wall", (name, gap, height, width, lean), *combustible)
            }
            BoundText::Pier { name, gap, height, width, lean, combustible } => {
                ("pier", (name, gap, height, width, lean), *combustible)
            }
            BoundText::Post { name, gap, height, width, lean, combustible } => {
                ("post", (name, gap, height, width, lean), *combustible)
            }
        };
        Some(BoundParts {
            kind,
            name: name.as_ref(),
            gap,
            height: height.as_ref(),
            width: width.as_ref(),
            lean: lean.as_ref(),
            combustible,
        })
    }
}

/// What is above the run.
#[derive(Debug, Deserialize)]
#[serde(rename = "overhead", rename_all = "snake_case", deny_unknown_fields)]
pub enum OverheadText {
    Open,
    Roof {
        name: Option<Text>,
        height: Text,
        combustible: Option<bool>,
        #[serde(default)]
        hood: bool,
    },
}

/// A thing that burns near the run.
#[derive(Debug, Deserialize)]
#[serde(rename = "combustible", deny_unknown_fields)]
pub struct CombustibleText {
    pub(crate) name: Text,
    pub(crate) leg: Option<Text>,
    pub(crate) side: super::FaceText,
    /// From the finished end, or the finished back.
    pub(crate) distance: Text,
}

/// Someone who works at the run.
#[derive(Debug, Deserialize)]
#[serde(rename = "person", deny_unknown_fields)]
pub struct PersonText {
    pub(crate) name: Text,
    pub(crate) stature: Option<Text>,
    #[serde(default)]
    pub(crate) seated: bool,
}

/// A gully or floor drain.
#[derive(Debug, Deserialize)]
#[serde(rename = "drain", deny_unknown_fields)]
pub struct DrainText {
    pub(crate) leg: Option<Text>,
    pub(crate) along: Text,
    pub(crate) depth: Text,
}
