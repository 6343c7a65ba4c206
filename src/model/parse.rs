//! From RON text to written values, with as many complaints at once as the format allows.

use super::complaint;
use super::erase;
use super::text;
use crate::findings::{Place, Problem, SourceFile};
use ron::error::Span;
use ron::extensions::Extensions;
use serde::de::DeserializeOwned;
use std::ops::Range;
use std::sync::Arc;

/// How deep brackets may nest. A job needs seven levels.
const DEEPEST: usize = 40;
/// How many unknown fields are told of at once.
const MOST_COMPLAINTS: usize = 50;

/// How RON is read here: an optional value is written without `Some(..)`.
pub(super) fn options() -> ron::Options {
    ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME).with_recursion_limit(DEEPEST)
}

/// Reads a file. A field that isn't known is told of and then read past, so that one misspelling
/// doesn't hide the next; a value comes back whenever the rest has the shape.
pub(super) fn parse<T: DeserializeOwned>(file: &Arc<SourceFile>) -> (Option<T>, Vec<Problem>) {
    let mut complaints: Vec<Problem> = Vec::new();
    if file.text.trim().is_empty() {
        let problem = Problem::new("this file is empty", "`faceline new FILE` writes a job to begin from");
        return (None, vec![problem.at(&Place { file: file.clone(), start: 0, end: 0 })]);
    }
    let mut text = file.text.clone();
    let mut misspelt: Vec<&'static str> = Vec::new();
    loop {
        let (result, inner) = text::reading(file, &text, |text| options().from_str::<T>(text));
        let Err(error) = result else { return (result.ok(), complaints) };
        let (span, code) = inner.unwrap_or_else(|| (byte_range(&text, &error.span), error.code));
        let follows = matches!(&code, ron::Error::MissingStructField { field, .. } if misspelt.contains(field));
        if !follows {
            // A point is shown as the letter that stands there.
            let letter = text.get(span.start..).and_then(|rest| rest.chars().next()).map_or(0, char::len_utf8);
            let place = Place { file: file.clone(), start: span.start, end: span.end.max(span.start + letter) };
            complaints.push(complaint::problem(&code, &text).at(&place));
        }
        let past = match &code {
            ron::Error::NoSuchStructField { expected, found, .. } => {
                misspelt.extend(complaint::nearest(found, expected.iter().copied()));
                erase::field(&text, span)
            }
            _ => None,
        };
        match past {
            Some(rest) if complaints.len() < MOST_COMPLAINTS => text = rest,
            _ => return (None, complaints),
        }
    }
}

/// The bytes of a span that is given in lines and columns of characters, both from 1.
pub(super) fn byte_range(text: &str, span: &Span) -> Range<usize> {
    let start = byte_offset(text, span.start.line, span.start.col);
    let end = byte_offset(text, span.end.line, span.end.col).max(start);
    start..end
}

fn byte_offset(text: &str, line: usize, column: usize) -> usize {
    let mut start = 0;
    for _ in 1..line {
        match text.get(start..).and_then(|rest| rest.find('\n')) {
            Some(end) => start += end + 1,
            None => return text.len(),
        }
    }
    let rest = text.get(start..).unwrap_or("");
    rest.char_indices().nth(column.saturating_sub(1)).map_or(text.len(), |(offset, _)| start + offset)
}
