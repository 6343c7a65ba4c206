//! A value as it was written, with its place.

use crate::findings::{Place, Problem, SourceFile};
use ron::value::RawValue;
use serde::de::{Deserialize, Deserializer, Error as _};
use std::cell::RefCell;
use std::ops::Range;
use std::sync::Arc;

/// One written value: text in quotes, a bare number, or something that should have been either.
#[derive(Clone, Debug, PartialEq)]
pub struct Text {
    /// What stands between the quotes, or the bare value.
    pub(crate) text: String,
    /// In which form it was written.
    pub(crate) kind: TextKind,
    /// The whole value, quotes and all.
    pub(crate) place: Place,
    /// First byte of `text` in the file, where the file has it letter for letter.
    inner: Option<usize>,
}

/// In which form a value was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum TextKind {
    /// In quotes.
    Quoted,
    /// A bare number.
    Number,
    /// Neither.
    Other,
}

impl Text {
    /// Text that no file has, as a default or a command line argument: the file is the text itself.
    pub(crate) fn made(file_name: &str, line: &str, value: Range<usize>) -> Text {
        let text = line.get(value.clone()).unwrap_or("").to_owned();
        let file = Arc::new(SourceFile { name: file_name.to_owned(), text: line.to_owned() });
        let place = Place { file, start: value.start, end: value.end };
        Text { text, kind: TextKind::Quoted, inner: Some(value.start), place }
    }

    /// Plain words.
    ///
    /// # Errors
    /// When it isn't in quotes.
    pub(crate) fn words(&self) -> Result<&str, Problem> {
        match self.kind {
            TextKind::Quoted => Ok(&self.text),
            TextKind::Number | TextKind::Other => {
                Err(Problem::new("text is expected here, in quotes", self.quoted_hint()).at(&self.place))
            }
        }
    }

    /// The same value in quotes, if that would help.
    fn quoted_hint(&self) -> String {
        if self.text.len() < 40 && !self.text.contains(['"', '\n']) {
            format!("write \"{}\"", self.text)
        } else {
            "write it in quotes".to_owned()
        }
    }

    /// The place of a part of the text, or of the whole where the file escapes it.
    pub(crate) fn part(&self, span: Range<usize>) -> Place {
        let Some(inner) = self.inner else { return self.place.clone() };
        let end = (inner + span.end).min(self.place.end);
        let start = (inner + span.start).min(end);
        if start == end {
            return self.place.clone();
        }
        Place { file: self.place.file.clone(), start, end }
    }

    /// A part of it as a text of its own.
    pub(crate) fn slice(&self, span: Range<usize>) -> Text {
        Text {
            text: self.text.get(span.clone()).unwrap_or("").to_owned(),
            kind: self.kind,
            place: self.part(span.clone()),
            inner: self.inner.map(|inner| inner + span.start),
        }
    }

    /// From the raw words of a file that is being read.
    pub(super) fn from_raw(raw: &str) -> Option<Text> {
        let start = offset_of(raw)?;
        let file = current_file()?;
        let place = Place { file, start, end: start + raw.len() };
        let kind = match raw.as_bytes() {
            [b'"', ..] | [b'r', b'"' | b'#', ..] => TextKind::Quoted,
            [b'0'..=b'9' | b'-' | b'+' | b'.', ..] => TextKind::Number,
            _ => TextKind::Other,
        };
        if kind != TextKind::Quoted {
            return Some(Text { text: raw.to_owned(), kind, inner: Some(start), place });
        }
        let text: String = ron::from_str(raw).ok()?;
        let opening = raw.find('"').map_or(1, |quote| quote + 1);
        let verbatim = raw.get(opening..).is_some_and(|rest| rest.starts_with(&text));
        Some(Text { text, kind, inner: verbatim.then_some(start + opening), place })
    }
}

/// The words of the value that a deserializer stands at, without blanks and comments around them.
pub(super) fn raw<'de, D: Deserializer<'de>>(deserializer: D) -> Result<&'de str, D::Error> {
    Ok(<&'de RawValue>::deserialize(deserializer)?.trim().get_ron())
}

impl<'de> Deserialize<'de> for Text {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Text, D::Error> {
        Text::from_raw(raw(deserializer)?).ok_or_else(|| D::Error::custom("this text can't be read"))
    }
}

/// The file that is being read on this thread. Serde hands a value no way to learn where it stands,
/// so the reader leaves word here and takes it back when it is done.
struct Reading {
    file: Arc<SourceFile>,
    /// Address of the text's first byte: a part's place is the difference of the addresses.
    address: usize,
    length: usize,
    /// The first error inside a value that was read on its own.
    inner: Option<(Range<usize>, ron::Error)>,
}

thread_local! {
    static READING: RefCell<Option<Reading>> = const { RefCell::new(None) };
}

/// Takes the word back, whatever happens.
struct Guard;

impl Drop for Guard {
    fn drop(&mut self) {
        READING.with_borrow_mut(|reading| *reading = None);
    }
}

/// Runs `read` on `text`, which has the layout of `file`, so that every [`Text`] knows its place.
/// Gives back the first error inside a value that was read on its own, too.
pub(super) fn reading<T>(
    file: &Arc<SourceFile>,
    text: &str,
    read: impl FnOnce(&str) -> T,
) -> (T, Option<(Range<usize>, ron::Error)>) {
    let start = Reading { file: file.clone(), address: text.as_ptr() as usize, length: text.len(), inner: None };
    READING.with_borrow_mut(|reading| *reading = Some(start));
    let guard = Guard;
    let value = read(text);
    let inner = READING.with_borrow_mut(|reading| reading.as_mut().and_then(|reading| reading.inner.take()));
    drop(guard);
    (value, inner)
}

/// Where a part of the text that is being read begins.
pub(super) fn offset_of(part: &str) -> Option<usize> {
    READING.with_borrow(|reading| {
        let reading = reading.as_ref()?;
        let offset = (part.as_ptr() as usize).checked_sub(reading.address)?;
        (offset + part.len() <= reading.length).then_some(offset)
    })
}

/// Keeps the first error inside a value that is read on its own.
pub(super) fn note_inner(span: Range<usize>, error: ron::Error) {
    READING.with_borrow_mut(|reading| {
        if let Some(reading) = reading {
            reading.inner.get_or_insert((span, error));
        }
    });
}

fn current_file() -> Option<Arc<SourceFile>> {
    READING.with_borrow(|reading| reading.as_ref().map(|reading| reading.file.clone()))
}
