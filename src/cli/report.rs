//! Problems and findings as a person reads them, and as a machine does.

use crate::findings::{Finding, Place, Problem, Severity};
use crate::rules::{self, Concern};
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use serde::Serialize;

/// How many are shown with their lines; the rest is counted.
const MOST: usize = 100;

/// Problems with the line that each is in; in colour for a terminal.
pub fn problems(problems: &[Problem], colour: bool) -> String {
    let parts = problems.iter().map(|problem| Part {
        level: Level::ERROR,
        rule: None,
        message: &problem.message,
        instead: &problem.instead,
        place: problem.place.as_ref(),
        origin: None,
    });
    render(parts, colour)
}

/// Findings in groups by what they concern, each with the line that it is in and where its demand comes from; in colour for
/// a terminal. The gravest groups come first.
pub fn findings(findings: &[Finding], colour: bool) -> String {
    let mut groups: Vec<(Concern, Vec<&Finding>)> = Concern::ALL.map(|concern| (concern, Vec::new())).to_vec();
    for finding in findings {
        let concern = rules::concern(finding);
        if let Some((_, group)) = groups.iter_mut().find(|(other, _)| *other == concern) {
            group.push(finding);
        }
    }
    groups.sort_by_key(|(_, group)| std::cmp::Reverse(group.iter().map(|finding| finding.severity).max()));
    let mut text = String::new();
    let mut room = MOST;
    for (concern, group) in groups.iter().filter(|(_, group)| !group.is_empty()) {
        let parts = group.iter().take(room).map(|finding| part(finding));
        room = room.saturating_sub(group.len());
        text.push_str(&format!("-- {} --\n\n{}", concern.words(), render(parts, colour)));
    }
    if findings.len() > MOST {
        text.push_str(&format!("and {} more\n", findings.len() - MOST));
    }
    text
}

fn part(finding: &Finding) -> Part<'_> {
    Part {
        level: match finding.severity {
            Severity::Stop => Level::ERROR.with_name("stop"),
            Severity::Warn => Level::WARNING.with_name("warn"),
            Severity::Note => Level::NOTE,
        },
        rule: Some(finding.rule),
        message: &finding.message,
        instead: &finding.instead,
        place: finding.place.as_ref(),
        origin: Some(finding.origin.words()),
    }
}

/// What was drawn, for machines.
#[derive(Clone, Debug, Serialize)]
pub struct Drawn {
    /// The folder.
    pub folder: String,
    /// The files in it.
    pub files: Vec<String>,
}

/// Problems, findings and what was drawn as one JSON text, ending in a line break.
pub fn json(problems: &[Problem], findings: &[Finding], drawn: Option<&Drawn>) -> String {
    let problems = problems.iter().map(|problem| Item {
        severity: "error",
        rule: None,
        concerns: None,
        message: &problem.message,
        instead: &problem.instead,
        place: problem.place.as_ref().map(Spot::new),
        source: None,
    });
    let findings = findings.iter().map(|finding| Item {
        severity: finding.severity.word(),
        rule: Some(finding.rule),
        concerns: Some(rules::concern(finding).words()),
        message: &finding.message,
        instead: &finding.instead,
        place: finding.place.as_ref().map(Spot::new),
        source: Some(finding.origin.words()),
    });
    let report = Report { problems: problems.collect(), findings: findings.collect(), drawn };
    // Only strings and numbers are in it, which always serialise.
    serde_json::to_string_pretty(&report).map_or_else(|_| "{}\n".to_owned(), |text| text + "\n")
}

struct Part<'p> {
    level: Level<'static>,
    rule: Option<&'p str>,
    message: &'p str,
    instead: &'p str,
    place: Option<&'p Place>,
    origin: Option<&'p str>,
}

fn render<'p>(parts: impl ExactSizeIterator<Item = Part<'p>>, colour: bool) -> String {
    let renderer = if colour { Renderer::styled() } else { Renderer::plain() };
    let rest = parts.len().saturating_sub(MOST);
    let mut text = String::new();
    for part in parts.take(MOST) {
        text.push_str(&renderer.render(&[group(&part)]));
        text.push_str("\n\n");
    }
    if rest > 0 {
        text.push_str(&format!("and {rest} more\n"));
    }
    text
}

fn group<'p>(part: &Part<'p>) -> Group<'p> {
    let title = part.level.clone().primary_title(part.message);
    let title = match part.rule {
        Some(rule) => title.id(rule),
        None => title,
    };
    let mut group = Group::with_title(title);
    if let Some(place) = part.place {
        group = group.element(snippet(place));
    }
    if !part.instead.is_empty() {
        group = group.element(Level::HELP.message(part.instead));
    }
    if let Some(origin) = part.origin {
        group = group.element(Level::NOTE.with_name("source").message(origin));
    }
    group
}

/// The lines of a place, with the place marked; only they are handed on, however long the file is.
fn snippet(place: &Place) -> Snippet<'_, annotate_snippets::Annotation<'_>> {
    let text = &place.file.text;
    let start = place.start.min(text.len());
    let first = text.get(..start).and_then(|before| before.rfind('\n')).map_or(0, |at| at + 1);
    // A place of many lines is marked where it begins.
    let last = text.get(start..).and_then(|after| after.find('\n')).map_or(text.len(), |at| start + at);
    let end = place.end.clamp(start, last);
    let line = text.get(first..last).unwrap_or("");
    Snippet::source(line)
        .path(place.file.name.as_str())
        .line_start(place.line_column().0)
        .annotation(AnnotationKind::Primary.span(start - first..end - first))
}

#[derive(Serialize)]
struct Report<'p> {
    problems: Vec<Item<'p>>,
    findings: Vec<Item<'p>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    drawn: Option<&'p Drawn>,
}

#[derive(Serialize)]
struct Item<'p> {
    severity: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    rule: Option<&'p str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    concerns: Option<&'p str>,
    message: &'p str,
    instead: &'p str,
    #[serde(skip_serializing_if = "Option::is_none")]
    place: Option<Spot<'p>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    source: Option<&'p str>,
}

#[derive(Serialize)]
struct Spot<'p> {
    file: &'p str,
    line: usize,
    column: usize,
    start: usize,
    end: usize,
}

impl Spot<'_> {
    fn new(place: &Place) -> Spot<'_> {
        let (line, column) = place.line_column();
        Spot { file: &place.file.name, line, column, start: place.start, end: place.end }
    }
}

#[cfg(test)]
mod tests {
    use super::{json, problems};
    use crate::findings::{Place, Problem, SourceFile};
    use std::sync::Arc;

    fn problem() -> Problem {
        let text = "(\n    depth: 28,\n)\n".to_owned();
        let start = text.find("28").unwrap_or(0);
        let file = Arc::new(SourceFile { name: "run.ron".to_owned(), text });
        Problem::new("`28` has no unit", "write \"28 in\" or \"28 mm\"").at(&Place { file, start, end: start + 2 })
    }

    #[test]
    fn a_problem_shows_its_line_and_the_remedy() {
        let text = problems(&[problem()], false);
        for part in
            ["error: `28` has no unit", "run.ron:2:12", "depth: 28,", "^^", "help: write \"28 in\" or \"28 mm\""]
        {
            assert!(text.contains(part), "{part} is not in\n{text}");
        }
        assert!(!text.contains('\u{1b}'));
        assert!(problems(&[problem()], true).contains('\u{1b}'));
    }

    #[test]
    fn json_has_line_and_column() {
        let value: serde_json::Value = serde_json::from_str(&json(&[problem()], &[], None)).unwrap_or_default();
        assert_eq!(value["problems"][0]["place"]["line"], 2);
        assert_eq!(value["problems"][0]["place"]["column"], 12);
        assert_eq!(value["findings"], serde_json::json!([]));
    }
}
