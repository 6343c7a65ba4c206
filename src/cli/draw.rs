//! `faceline draw`: the set of sheets as files, for one job or many.

use std::path::{Path, PathBuf};

use super::args::DrawArguments;
use super::outcome::Outcome;
use super::progress::Progress;
use super::{check, outputs, parallel, say, write_set};
use crate::findings::{Finding, Problem};
use crate::sheets::{self, Unplaced};

/// How the drawing of one job ended.
enum Ended {
    Drawn { findings: Vec<Finding>, names: Vec<String> },
    Unreadable(Vec<Problem>),
    Unwritable(Problem),
}

/// Runs the command. Several jobs are drawn side by side and answered in order; the worst decides the exit status.
pub fn run(arguments: &DrawArguments) -> Outcome {
    let jobs: Vec<(&Path, PathBuf)> =
        arguments.jobs.iter().map(|job| (job.as_path(), folder(job, arguments))).collect();
    let format = arguments.changes.format;
    if let Some(problem) = shared_folder(&jobs) {
        say::print_problems(&[problem], format);
        return Outcome::Unreadable;
    }
    let progress = Progress::new("drawing sheet");
    let ended = parallel::map(&jobs, |(job, folder)| one(job, folder, arguments, &progress));
    drop(progress);
    let mut worst = Outcome::Fine;
    for ((job, folder), ended) in jobs.iter().zip(ended) {
        let outcome = match ended {
            Ended::Drawn { findings, names } => {
                say::print_drawn(&findings, folder, &names, format, job);
                check::outcome(&findings)
            }
            Ended::Unreadable(problems) => check::failed(&problems, format),
            Ended::Unwritable(problem) => {
                say::print_problems(&[problem], format);
                Outcome::Unwritable
            }
        };
        if outcome as u8 > worst as u8 {
            worst = outcome;
        }
    }
    worst
}

fn one(job: &Path, folder: &Path, arguments: &DrawArguments, progress: &Progress) -> Ended {
    let (solved, findings) = match check::solved(job, &arguments.changes) {
        Ok(found) => found,
        Err(problems) => return Ended::Unreadable(problems),
    };
    let whole = arguments.sheets.is_empty();
    let wanted = |kind: sheets::Kind| whole || arguments.sheets.iter().any(|s| s == kind.word());
    let pages = match sheets::draw(&solved, &findings, wanted) {
        Ok(pages) => pages,
        Err(unplaced) => return Ended::Unreadable(unplaced.iter().map(crowded).collect()),
    };
    let files = match outputs::all(&stem(job), &solved, &findings, &pages, arguments, progress) {
        Ok(files) => files,
        Err(problem) => return Ended::Unreadable(vec![problem]),
    };
    match write_set::replace(folder, &files, whole, write_set::SHEETS) {
        Ok(()) => Ended::Drawn { findings, names: files.into_iter().map(|(name, _)| name).collect() },
        Err(problem) => Ended::Unwritable(problem),
    }
}

/// A job's name: its file's without the ending.
pub fn stem(job: &Path) -> String {
    job.file_stem().map_or_else(|| "job".to_owned(), |stem| stem.to_string_lossy().into_owned())
}

/// Where a job's sheets go: beside where the command runs, or into the folder asked for; several jobs each into their own
/// in it.
fn folder(job: &Path, arguments: &DrawArguments) -> PathBuf {
    match &arguments.out {
        Some(out) if arguments.jobs.len() == 1 => out.clone(),
        Some(out) => out.join(stem(job)),
        None => PathBuf::from(format!("{}-sheets", stem(job))),
    }
}

/// Two jobs that would be drawn into one folder.
fn shared_folder(jobs: &[(&Path, PathBuf)]) -> Option<Problem> {
    let (index, (job, folder)) =
        jobs.iter().enumerate().find(|(index, (_, folder))| jobs[..*index].iter().any(|(_, other)| other == folder))?;
    let other = jobs[..index].iter().find(|(_, other)| other == folder)?;
    Some(Problem::new(
        format!("`{}` and `{}` would both be drawn into `{}`", other.0.display(), job.display(), folder.display()),
        "draw them one at a time, each with its own --out",
    ))
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
