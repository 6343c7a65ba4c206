//! Notches in the counter's outline that no fitting makes.

use super::{FaceText, Text};
use serde::Deserialize;

/// A notch: round a surveyed post, or as measured.
#[derive(Debug, Deserialize)]
#[serde(rename = "notch", rename_all = "snake_case", deny_unknown_fields)]
pub enum NotchText {
    /// Round a post of the survey, out of the edge that the post stands in.
    RoundPost { post: Text, leg: Option<Text>, clearance: Option<Text>, radius: Option<Text> },
    /// Out of an edge. `along` is to its nearer side, from the finished left end, or from the finished face where the
    /// edge is an end; `depth` from the counter's edge.
    OutOf {
        edge: FaceText,
        leg: Option<Text>,
        along: Text,
        width: Text,
        depth: Text,
        radius: Option<Text>,
        name: Option<Text>,
    },
}
