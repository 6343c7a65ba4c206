//! What is printed, for people or for machines. Colour only on a terminal.

use std::io::{IsTerminal, Write};
use std::path::Path;

use super::args::Format;
use super::report::{self, Drawn};
use crate::findings::{Finding, Problem, Severity};

/// Prints findings of a check.
pub fn print_findings(findings: &[Finding], format: Format, job: &Path) {
    match format {
        Format::Text => {
            let colour = std::io::stdout().is_terminal();
            out(&format!("{}{}: {}\n", report::findings(findings, colour), job.display(), counted(findings)));
        }
        Format::Json => out(&report::json(&[], findings, None)),
    }
}

/// Prints problems.
pub fn print_problems(problems: &[Problem], format: Format) {
    match format {
        Format::Text => {
            let colour = std::io::stderr().is_terminal();
            let _ = std::io::stderr().write_all(report::problems(problems, colour).as_bytes());
        }
        Format::Json => out(&report::json(problems, &[], None)),
    }
}

/// Prints what was drawn: the sheets are counted, other files are named as long as they are few.
pub fn print_drawn(findings: &[Finding], folder: &Path, names: &[String], format: Format, job: &Path) {
    match format {
        Format::Text => {
            print_findings(findings, format, job);
            let count = |ending: &str| names.iter().filter(|name| name.ends_with(ending)).count();
            let counted = |ending: &str, one: &str, many: &str| match count(ending) {
                0 => None,
                1 => Some(format!("1 {one}")),
                n => Some(format!("{n} {many}")),
            };
            let others = |ending: &str, many: &str| match count(ending) {
                0 => None,
                1 => names.iter().find(|name| name.ends_with(ending)).cloned(),
                n => Some(format!("{n} {many}")),
            };
            let parts: Vec<String> = [
                counted(".svg", "sheet", "sheets"),
                others(".pdf", "PDF files"),
                others(".html", "web pages"),
                counted(".png", "picture", "pictures"),
                counted(".dxf", "DXF file", "DXF files"),
                others(".xlsx", "workbooks"),
                counted(".csv", "list", "lists"),
            ]
            .into_iter()
            .flatten()
            .collect();
            out(&format!("{} in {}\n", parts.join(", "), folder.display()));
        }
        Format::Json => {
            let drawn = Drawn { folder: folder.display().to_string(), files: names.to_vec() };
            out(&report::json(&[], findings, Some(&drawn)));
        }
    }
}

/// `2 stop, 1 warn, 4 note`, or that nothing was found.
fn counted(findings: &[Finding]) -> String {
    let parts: Vec<String> = [Severity::Stop, Severity::Warn, Severity::Note]
        .into_iter()
        .map(|severity| (severity, findings.iter().filter(|finding| finding.severity == severity).count()))
        .filter(|(_, count)| *count > 0)
        .map(|(severity, count)| format!("{count} {}", severity.word()))
        .collect();
    if parts.is_empty() { "nothing found".to_owned() } else { parts.join(", ") }
}

/// Writes to standard output. A reader that has gone away is not a fault.
fn out(text: &str) {
    let mut stdout = std::io::stdout().lock();
    let _ = stdout.write_all(text.as_bytes()).and_then(|()| stdout.flush());
}
