//! `faceline check`: solve, and say what was found.

use std::path::Path;

use super::args::{Changes, Format, JobArguments};
use super::disk::Disk;
use super::outcome::Outcome;
use super::say;
use crate::findings::{Finding, Problem, Severity};
use crate::solve::Solved;
use crate::{model, parameters, rules, sheets, solve};

/// Reads and solves a job; on failure every reason why not.
pub fn solved(job: &Path, changes: &Changes) -> Result<(Solved, Vec<Finding>), Vec<Problem>> {
    let written = model::read(job, &changes.libraries, &Disk)?;
    let given = parameters::resolve(&written, &changes.overrides)?;
    let solved = solve::solve(&given)?;
    let mut findings = rules::check(&solved);
    findings.extend(sheets::letters_lacking(&solved));
    Ok((solved, findings))
}

/// Runs the command.
pub fn run(job: &JobArguments) -> Outcome {
    match solved(&job.job, &job.changes) {
        Ok((_, findings)) => {
            say::print_findings(&findings, job.changes.format, &job.job);
            outcome(&findings)
        }
        Err(problems) => failed(&problems, job.changes.format),
    }
}

/// Says why a job can't be read or solved.
pub fn failed(problems: &[Problem], format: Format) -> Outcome {
    say::print_problems(problems, format);
    Outcome::Unreadable
}

/// How findings alone decide the exit status.
pub fn outcome(findings: &[Finding]) -> Outcome {
    let stopped = findings.iter().any(|finding| finding.severity == Severity::Stop);
    if stopped { Outcome::Stopped } else { Outcome::Fine }
}
