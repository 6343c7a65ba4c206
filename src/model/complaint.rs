//! RON's errors in a builder's words.

use crate::findings::Problem;
use ron::Error;

/// What is wrong, and what to write instead; the place is the caller's.
pub(super) fn problem(error: &Error, text: &str) -> Problem {
    match error {
        Error::NoSuchStructField { expected, found, outer } => {
            Problem::new(format!("`{found}` is not a field{}", of(outer)), choice(found, expected, "its fields are"))
        }
        Error::NoSuchEnumVariant { expected, found, outer } => Problem::new(
            format!("`{found}` is not one of the choices{}", for_(outer)),
            choice(found, expected, "choose from"),
        ),
        Error::MissingStructField { field, outer } => Problem::new(
            format!("`{field}` is missing{}", from(outer)),
            format!("add `{field}: …` before this bracket"),
        ),
        Error::DuplicateStructField { field, outer } => {
            Problem::new(format!("`{field}` is given twice{}", in_(outer)), "keep one of them")
        }
        Error::ExceededRecursionLimit => {
            Problem::new("brackets are nested too deep here", "a job nests seven levels at most")
        }
        Error::ExpectedComma => Problem::new("a comma is missing before this", "write `,` between two fields or items"),
        Error::ExpectedStringEnd => Problem::new("this text has no closing quote", "close it with `\"`"),
        Error::UnclosedBlockComment => Problem::new("this comment is never closed", "close it with `*/`"),
        Error::ExpectedStructLikeEnd => Problem::new("a closing `)` or a comma is expected here", ""),
        Error::ExpectedArrayEnd => Problem::new("a closing `]` or a comma is expected here", ""),
        Error::ExpectedMapEnd => Problem::new("a closing `}` or a comma is expected here", ""),
        Error::ExpectedArray => Problem::new("a list is expected here", "write it in `[` and `]`"),
        Error::ExpectedMap => Problem::new("names with values are expected here", "write `{ \"name\": \"value\" }`"),
        Error::ExpectedBoolean => Problem::new("yes or no is expected here", "write `true` or `false`"),
        Error::ExpectedMapColon => Problem::new("a colon is expected here", "write `name: value`"),
        Error::TrailingCharacters => Problem::new("the job ends before this", "remove what follows its last bracket"),
        Error::ExpectedStructLike | Error::ExpectedNamedStructLike(_) => Problem::new(
            "fields in `(` and `)` are expected here",
            if balanced(text) {
                "write `( name: value, … )`"
            } else {
                "brackets are not closed: look for a missing `)`"
            },
        ),
        Error::Eof => Problem::new("the file ends in the middle of something", "look for a bracket that is not closed"),
        Error::ExpectedDifferentStructName { expected, found } => Problem::new(
            format!("`{found}` does not belong before this bracket"),
            format!("leave it out: this is the {expected}"),
        ),
        other => Problem::new(lower_first(&other.to_string()), ""),
    }
}

/// The candidate that a misspelt name may have meant.
pub(super) fn nearest<'n>(found: &str, names: impl Iterator<Item = &'n str>) -> Option<&'n str> {
    crate::findings::nearest(found, names)
}

fn choice(found: &str, expected: &[&str], lead: &str) -> String {
    match nearest(found, expected.iter().copied()) {
        Some(name) => format!("write `{name}`"),
        None if expected.is_empty() => "remove it".to_owned(),
        None => format!("{lead} {}", expected.join(", ")),
    }
}

fn of(outer: &Option<String>) -> String {
    outer.as_ref().map_or_else(String::new, |name| format!(" of `{name}`"))
}

fn for_(outer: &Option<String>) -> String {
    outer.as_ref().map_or_else(String::new, |name| format!(" for `{name}`"))
}

fn from(outer: &Option<String>) -> String {
    outer.as_ref().map_or_else(String::new, |name| format!(" from `{name}`"))
}

fn in_(outer: &Option<String>) -> String {
    outer.as_ref().map_or_else(String::new, |name| format!(" in `{name}`"))
}

fn balanced(text: &str) -> bool {
    text.matches('(').count() == text.matches(')').count()
}

fn lower_first(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}
