//! What the run is fed with: fuel, pipe, shutoffs, cylinders; and limits of rules that the job sets itself.

use super::Text;
use serde::Deserialize;
use serde::de::{Deserializer, MapAccess, Visitor};
use std::fmt;

/// Fuel gas from its source to the appliances.
#[derive(Debug, Deserialize)]
#[serde(rename = "services", deny_unknown_fields)]
pub struct ServicesText {
    pub(crate) fuel: Option<FuelText>,
    /// Pressure at the source.
    pub(crate) supply: Option<Text>,
    /// Pressure that may be lost from the source to the farthest appliance.
    pub(crate) drop: Option<Text>,
    pub(crate) heating_value: Option<Text>,
    /// Smallest pipe to use.
    pub(crate) smallest: Option<Text>,
    /// A share to add to every length in place of counted fittings.
    pub(crate) allowance: Option<Text>,
    #[serde(default)]
    pub(crate) pipe: Vec<SegmentText>,
    #[serde(default)]
    pub(crate) loads: Vec<LoadText>,
    #[serde(default)]
    pub(crate) connections: Vec<ConnectionText>,
    #[serde(default)]
    pub(crate) cylinders: Vec<CylinderText>,
}

/// Which gas.
#[derive(Clone, Copy, Debug, Deserialize)]
#[serde(rename = "fuel", rename_all = "snake_case")]
pub enum FuelText {
    NaturalGas,
    Propane,
    Convertible,
    /// Only of a fitting: it burns no gas.
    Electric,
    /// Only of a fitting: charcoal, wood, pellets.
    Solid,
}

/// A length of pipe between two points; a point that bears a fitting's or a load's id is that appliance.
#[derive(Debug, Deserialize)]
#[serde(rename = "segment", deny_unknown_fields)]
pub struct SegmentText {
    pub(crate) id: Text,
    pub(crate) from: Text,
    pub(crate) to: Text,
    pub(crate) length: Text,
    #[serde(default)]
    pub(crate) elbows: u16,
    #[serde(default)]
    pub(crate) elbows_45: u16,
    #[serde(default)]
    pub(crate) tees: u16,
    #[serde(default)]
    pub(crate) bends_180: u16,
    pub(crate) installed: Option<Text>,
}

/// An appliance on the same pipe that is no fitting of the run.
#[derive(Debug, Deserialize)]
#[serde(rename = "load", deny_unknown_fields)]
pub struct LoadText {
    pub(crate) id: Text,
    pub(crate) name: Option<Text>,
    pub(crate) heat: Text,
}

/// How one fitting hangs on the pipe.
#[derive(Debug, Deserialize)]
#[serde(rename = "connection", deny_unknown_fields)]
pub struct ConnectionText {
    pub(crate) fitting: Text,
    pub(crate) shutoff: Option<PointText>,
    /// Length of the connector past the shutoff.
    pub(crate) connector: Option<Text>,
    /// Size of connector and inlet, where smaller than the pipe.
    pub(crate) inlet: Option<Text>,
    /// What the connector's maker rates it for.
    pub(crate) rated: Option<Text>,
}

/// A point in a leg.
#[derive(Debug, Deserialize)]
#[serde(rename = "point", deny_unknown_fields)]
pub struct PointText {
    pub(crate) along: Text,
    pub(crate) depth: Text,
    pub(crate) height: Text,
}

/// Propane cylinders in a module.
#[derive(Debug, Deserialize)]
#[serde(rename = "cylinder", deny_unknown_fields)]
pub struct CylinderText {
    #[serde(rename = "in")]
    pub(crate) module: Text,
    /// Fuel in one cylinder.
    pub(crate) holds: Text,
    pub(crate) count: Option<u8>,
    /// A tight wall parts the bay from its neighbours.
    pub(crate) partition: Option<bool>,
}

/// Limits by the rule's name, in the order written.
#[derive(Debug, Default)]
pub struct LimitsText(pub(crate) Vec<(Text, LimitText)>);

/// A limit that the job sets, and why.
#[derive(Debug, Deserialize)]
#[serde(rename = "limit", deny_unknown_fields)]
pub struct LimitText {
    pub(crate) value: Text,
    pub(crate) because: Text,
}

impl<'de> Deserialize<'de> for LimitsText {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<LimitsText, D::Error> {
        deserializer.deserialize_map(LimitsVisitor)
    }
}

struct LimitsVisitor;

impl<'de> Visitor<'de> for LimitsVisitor {
    type Value = LimitsText;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("limits, as { \"aisle-wide-enough\": (value: \"44 in\", because: \"one cook\") }")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<LimitsText, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = map.next_entry::<Text, LimitText>()? {
            entries.push(entry);
        }
        Ok(LimitsText(entries))
    }
}
