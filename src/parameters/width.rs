//! A module's width: fixed, a range, or what is left.

use super::given::Width;
use super::reader::{Reader, Sign};
use crate::model::{Text, TextKind};
use std::ops::Range;

/// What is left when the others have theirs.
const REST: &str = "what is left";

/// Why an expression can't use this width, when it is only known after layout.
pub(super) fn later(text: &Text) -> Option<String> {
    if text.text.trim() == REST {
        Some("it is what is left, known only once the run is laid out".to_owned())
    } else if bounds(&text.text).is_some() {
        Some("it is a range, known only once the run is laid out".to_owned())
    } else {
        None
    }
}

/// Works out a width; after a problem, zero.
pub(super) fn read(name: &str, written: &Text, reader: &mut Reader) -> Width {
    let text = reader.override_of(name).unwrap_or_else(|| written.clone());
    if text.kind == TextKind::Quoted && text.text.trim() == REST {
        return Width::WhatIsLeft;
    }
    let Some((least, most)) = bounds(&text.text) else {
        return Width::Fixed(reader.length_of(&text, Sign::Positive).unwrap_or_default());
    };
    let least = reader.length_of(&text.slice(least), Sign::Positive);
    let most = reader.length_of(&text.slice(most), Sign::Positive);
    match (least, most) {
        (Some(least), Some(most)) if least > most => {
            reader.tell("this range begins above its end", "write the lesser width first", &text.place);
            Width::Range(most, least)
        }
        (Some(least), Some(most)) => Width::Range(least, most),
        _ => Width::WhatIsLeft,
    }
}

/// The two sides of ` to `, in bytes.
fn bounds(text: &str) -> Option<(Range<usize>, Range<usize>)> {
    let at = text.find(" to ")?;
    Some((0..at, at + 4..text.len()))
}
