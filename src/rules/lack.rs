//! Inputs that rules lack. A rule that lacks one can't pass; rules that lack the same one say so together.

use super::Rule;
use crate::findings::{Finding, Place, Severity, Subject};

/// An input that a rule would need.
#[derive(Clone, Debug)]
pub struct Lack {
    /// What to write, as the job would name it: `site.overhead`.
    pub input: String,
    /// For what it is needed, as `B1 (grill)`; may be empty.
    pub of: String,
    /// What the finding is about.
    pub subject: Subject,
    /// Where it would be written, or what needs it.
    pub place: Option<Place>,
    /// How much it matters.
    pub severity: Severity,
    /// How to write it.
    pub instead: String,
}

impl Lack {
    /// An input that safety hangs on.
    pub fn of_safety(input: impl Into<String>, subject: Subject, place: Option<&Place>, instead: &str) -> Lack {
        Lack {
            input: input.into(),
            of: String::new(),
            subject,
            place: place.cloned(),
            severity: Severity::Warn,
            instead: instead.to_owned(),
        }
    }

    /// An input that comfort or good practice hangs on.
    pub fn of_practice(input: impl Into<String>, subject: Subject, place: Option<&Place>, instead: &str) -> Lack {
        Lack { severity: Severity::Note, ..Lack::of_safety(input, subject, place, instead) }
    }

    /// Said of something.
    pub fn for_what(self, of: impl Into<String>) -> Lack {
        Lack { of: of.into(), ..self }
    }
}

/// One finding for each input that is lacking, in the order in which rules first ask for it.
pub fn findings(lacks: Vec<(&'static Rule, Lack)>) -> Vec<Finding> {
    let mut inputs: Vec<Vec<(&'static Rule, Lack)>> = Vec::new();
    let mut index: std::collections::HashMap<String, usize> = std::collections::HashMap::new();
    for (rule, lack) in lacks {
        let at = *index.entry(lack.input.clone()).or_insert_with(|| {
            inputs.push(Vec::new());
            inputs.len() - 1
        });
        inputs[at].push((rule, lack));
    }
    inputs.iter().filter_map(|group| told(group)).collect()
}

fn told(group: &[(&'static Rule, Lack)]) -> Option<Finding> {
    /// More things than this are counted.
    const MOST: usize = 4;
    let (first, lack) = group.first()?;
    let mut rules: Vec<&str> = group.iter().map(|(rule, _)| rule.name).collect();
    rules.dedup();
    let mut of: Vec<&str> = group.iter().map(|(_, lack)| lack.of.as_str()).filter(|of| !of.is_empty()).collect();
    of.sort_unstable();
    of.dedup();
    let more = of.len().saturating_sub(MOST);
    of.truncate(MOST);
    let of = match (of.join(", "), more) {
        (of, _) if of.is_empty() => String::new(),
        (of, 0) => format!(" for {of}"),
        (of, more) => format!(" for {of} and {more} more"),
    };
    let severity = group.iter().map(|(_, lack)| lack.severity).max()?;
    let subject =
        if group.iter().all(|(_, other)| other.subject == lack.subject) { lack.subject.clone() } else { Subject::Job };
    Some(Finding {
        rule: first.name,
        severity,
        subject,
        message: format!("`{}` is not given{of}: {} can't be checked", lack.input, rules.join(", ")),
        instead: lack.instead.clone(),
        place: lack.place.clone(),
        origin: first.origin,
    })
}
