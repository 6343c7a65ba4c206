//! `faceline draw`: the set of sheets as files.

use std::path::PathBuf;

use super::args::DrawArguments;
use super::outcome::Outcome;
use super::{check, say, write_set};
use crate::findings::Problem;
use crate::sheets::{self, Unplaced};
use crate::write;

/// Runs the command.
pub fn run(arguments: &DrawArguments) -> Outcome {
    let job = &arguments.job;
    let (solved, findings) = match check::solved(job) {
        Ok(found) => found,
        Err(problems) => return check::failed(&problems, job.format),
    };
    let wanted = |kind: sheets::Kind| arguments.sheets.is_empty() || arguments.sheets.iter().any(|s| s == kind.word());
    let pages = match sheets::draw(&solved, &findings, wanted) {
        Ok(pages) => pages,
        Err(unplaced) => {
            let problems: Vec<Problem> = unplaced.iter().map(crowded).collect();
            return check::failed(&problems, job.format);
        }
    };
    let whole = arguments.sheets.is_empty();
    let files: Vec<(String, Vec<u8>)> =
        pages.iter().map(|page| (format!("{}.svg", page.name), write::svg::page(page).into_bytes())).collect();
    let mut files = files;
    files.push((document_name(arguments), write::pdf::document(&solved.job.title, &pages)));
    let folder = arguments.out.clone().unwrap_or_else(|| default_folder(arguments));
    match write_set::replace(&folder, &files, whole) {
        Ok(()) => {
            say::print_drawn(&findings, &folder, &files, job.format, &job.job);
            check::outcome(&findings)
        }
        Err(problem) => {
            say::print_problems(&[problem], job.format);
            Outcome::Unwritable
        }
    }
}

/// Named after the job's file, beside where the command runs.
fn default_folder(arguments: &DrawArguments) -> PathBuf {
    let stem = arguments.job.job.file_stem().unwrap_or_else(|| std::ffi::OsStr::new("job"));
    let mut name = stem.to_owned();
    name.push("-sheets");
    PathBuf::from(name)
}

/// The set as one document, named after the job's file; a part of the set says which part it is, so that it never takes
/// the place of the whole.
fn document_name(arguments: &DrawArguments) -> String {
    let stem = arguments.job.job.file_stem().map_or_else(|| "job".into(), |stem| stem.to_string_lossy());
    let part: String = arguments.sheets.iter().map(|sheet| format!("-{sheet}")).collect();
    format!("{stem}{part}.pdf")
}

/// A sheet whose lettering can't be placed is a problem that says which.
fn crowded(sheet: &Unplaced) -> Problem {
    let some: Vec<&str> = sheet.what.iter().take(3).map(String::as_str).collect();
    let more = sheet.what.len().saturating_sub(3);
    let more = if more > 0 { format!(", and {more} more") } else { String::new() };
    Problem::new(
        format!("sheet {} can't be lettered without an overlap: {}{more}", sheet.sheet, some.join("; ")),
        "choose a larger paper (paper.size), or draw the other sheets with --sheet",
    )
}
