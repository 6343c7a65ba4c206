//! What is said to a person: what was found, where, how bad it is, and what to write instead.

use std::sync::Arc;

/// A file of the job, kept for pointing into.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceFile {
    /// The path as the user gave it, for messages only.
    pub name: String,
    /// The whole text.
    pub text: String,
}

/// A stretch of a source file, in bytes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Place {
    /// The file.
    pub file: Arc<SourceFile>,
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Place {
    /// Line and column of the start, both from 1; the column counts characters.
    pub fn line_column(&self) -> (usize, usize) {
        let before = self.file.text.get(..self.start).unwrap_or(&self.file.text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
        (line, column)
    }
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Know.
    Note,
    /// Decide.
    Warn,
    /// Don't cut.
    Stop,
}

impl Severity {
    /// The word that messages use.
    pub const fn word(self) -> &'static str {
        match self {
            Severity::Note => "note",
            Severity::Warn => "warn",
            Severity::Stop => "stop",
        }
    }
}

/// Where a rule's demand comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// A standard with its clause.
    Standard(&'static str),
    /// A manual, a trade guide or a page that quotes a standard: read there, not in a standard's own text.
    Trade(&'static str),
    /// Common practice, no source.
    CommonPractice,
    /// From memory, to be verified before it is relied on.
    FromMemory,
    /// It follows from geometry alone.
    Geometry,
}

impl Origin {
    /// As words.
    pub const fn words(self) -> &'static str {
        match self {
            Origin::Standard(clause) | Origin::Trade(clause) => clause,
            Origin::CommonPractice => "common practice",
            Origin::FromMemory => "from memory, verify",
            Origin::Geometry => "geometry",
        }
    }
}

/// What a finding is about, so that a sheet can tell whether it is concerned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Subject {
    /// The whole job.
    Job,
    /// A leg, by its index.
    Leg(usize),
    /// A module: leg index, module index.
    Module(usize, usize),
    /// A fitting: leg index, index in that leg's solved list.
    Fitting(usize, usize),
    /// The counter of a leg.
    Counter(usize),
    /// A foot: leg index, foot index.
    Foot(usize, usize),
    /// The gas pipe and what hangs on it.
    Services,
    /// A segment of gas pipe, by its index.
    Segment(usize),
}

impl Subject {
    /// The leg that it is part of; `None` for the whole job.
    pub const fn leg(&self) -> Option<usize> {
        match *self {
            Subject::Job | Subject::Services | Subject::Segment(_) => None,
            Subject::Leg(leg) | Subject::Counter(leg) => Some(leg),
            Subject::Module(leg, _) | Subject::Fitting(leg, _) | Subject::Foot(leg, _) => Some(leg),
        }
    }
}

/// One thing that a rule found.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The rule's name: what it wants, in words joined by hyphens.
    pub rule: &'static str,
    /// How much it matters.
    pub severity: Severity,
    /// What it is about.
    pub subject: Subject,
    /// What is wrong, with the number found and the number wanted.
    pub message: String,
    /// What to write or do instead.
    pub instead: String,
    /// Where in the job's files.
    pub place: Option<Place>,
    /// Where its demand comes from.
    pub origin: Origin,
}

/// Why an input can't be read or solved: one reason of possibly many.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// What is wrong.
    pub message: String,
    /// What to write instead; may be empty.
    pub instead: String,
    /// Where in the job's files.
    pub place: Option<Place>,
}

impl Problem {
    /// A problem with its remedy, place still unknown.
    pub fn new(message: impl Into<String>, instead: impl Into<String>) -> Problem {
        Problem { message: message.into(), instead: instead.into(), place: None }
    }

    /// The same problem, located.
    pub fn at(mut self, place: &Place) -> Problem {
        self.place = Some(place.clone());
        self
    }
}

/// The name that a misspelt one may have meant: the nearest by edits, unless it is too far off.
pub fn nearest<'n>(found: &str, names: impl IntoIterator<Item = &'n str>) -> Option<&'n str> {
    let most = (found.chars().count() / 3).max(1);
    names
        .into_iter()
        .filter(|name| name.chars().count().abs_diff(found.chars().count()) <= most)
        .map(|name| (strsim::damerau_levenshtein(found, name), name))
        .filter(|(edits, _)| *edits <= most)
        .min()
        .map(|(_, name)| name)
}
