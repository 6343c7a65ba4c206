//! What is printed, for people or for machines.

use std::path::Path;

use super::args::Format;
use crate::findings::{Finding, Place, Problem};

fn place(place: Option<&Place>) -> String {
    place.map_or_else(String::new, |place| {
        let (line, column) = place.line_column();
        format!("{}:{line}:{column}: ", place.file.name)
    })
}

/// Prints findings of a check.
pub fn print_findings(findings: &[Finding], _format: Format, _job: &Path) {
    for finding in findings {
        println!("{}{}: {} [{}]\n  = instead: {}", place(finding.place.as_ref()), finding.severity.word(), finding.message, finding.rule, finding.instead);
    }
}

/// Prints problems.
pub fn print_problems(problems: &[Problem], _format: Format) {
    for problem in problems {
        eprintln!("{}error: {}\n  = instead: {}", place(problem.place.as_ref()), problem.message, problem.instead);
    }
}

/// Prints what was drawn.
pub fn print_drawn(findings: &[Finding], folder: &Path, files: &[(String, Vec<u8>)], format: Format, job: &Path) {
    print_findings(findings, format, job);
    println!("{} sheets in {}", files.len(), folder.display());
}
