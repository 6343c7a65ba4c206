//! The libraries that a job names, and those that they name.

use super::files::{self, Files};
use super::fitting::LibraryFile;
use super::{JobFile, Text, parse};
use crate::findings::Problem;
use std::path::{Component, Path, PathBuf};

/// How many library files one job may read.
const MOST_LIBRARIES: usize = 64;

/// Reads every library into the job; what is wrong with one is kept among the job's complaints.
pub(super) fn load(job: &mut JobFile, path: &Path, folders: &[PathBuf], files: &dyn Files) {
    let home = path.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    job.files_read.push(path.to_path_buf());
    let mut shelf = Shelf { home, folders, files, open: Vec::new(), done: Vec::new(), job };
    let named = std::mem::take(&mut shelf.job.libraries);
    for library in &named {
        shelf.read(library, home);
    }
    shelf.job.libraries = named;
}

struct Shelf<'s> {
    home: &'s Path,
    folders: &'s [PathBuf],
    files: &'s dyn Files,
    /// Libraries that are being read, outermost first: canonical path and the name as written.
    open: Vec<(PathBuf, String)>,
    done: Vec<PathBuf>,
    job: &'s mut JobFile,
}

impl Shelf<'_> {
    /// Reads one library and what it names. Depth is bounded by [`MOST_LIBRARIES`].
    fn read(&mut self, named: &Text, beside: &Path) {
        if let Err(problem) = self.try_read(named, beside) {
            self.job.library_missing = true;
            self.job.complaints.push(problem.at(&named.place));
        }
    }

    fn try_read(&mut self, named: &Text, beside: &Path) -> Result<(), Problem> {
        let written = named.words()?;
        let (path, canonical) = self.find(written, beside)?;
        if let Some(first) = self.open.iter().position(|(open, _)| *open == canonical) {
            let mut members: Vec<&str> = self.open.iter().skip(first).map(|(_, name)| name.as_str()).collect();
            members.push(written);
            return Err(Problem::new(
                format!("libraries name each other in a loop: {}", members.join(" -> ")),
                "take one of these names out",
            ));
        }
        if self.done.contains(&canonical) {
            return Ok(());
        }
        if self.done.len() + self.open.len() >= MOST_LIBRARIES {
            return Err(Problem::new(
                format!("more than {MOST_LIBRARIES} libraries"),
                "put fittings together in fewer files",
            ));
        }
        let source = files::source(&path, self.files)?;
        self.job.files_read.push(path.clone());
        let (library, complaints) = parse::parse::<LibraryFile>(&source);
        self.job.library_missing |= library.is_none();
        self.job.complaints.extend(complaints);
        if let Some(library) = library {
            self.open.push((canonical.clone(), written.to_owned()));
            let folder = path.parent().unwrap_or(Path::new("")).to_path_buf();
            for further in &library.libraries {
                self.read(further, &folder);
            }
            self.open.pop();
            self.job.library_fittings.extend(library.fittings);
        }
        self.done.push(canonical);
        Ok(())
    }

    /// The library's path and the same with links followed, once it is known to lie in an allowed folder.
    fn find(&self, written: &str, beside: &Path) -> Result<(PathBuf, PathBuf), Problem> {
        let relative = Path::new(written);
        if written.is_empty()
            || relative.components().any(|part| matches!(part, Component::RootDir | Component::Prefix(_)))
        {
            return Err(Problem::new(
                "a library is named by a path from the job's folder",
                "write it as \"library/burners.ron\"",
            ));
        }
        let mut tried = Vec::new();
        let mut outside = false;
        for folder in std::iter::once(beside).chain(self.folders.iter().map(PathBuf::as_path)) {
            let path = tidy(&folder.join(relative));
            if !self.roots().any(|root| lies_in(&path, &tidy(root))) {
                outside = true;
                continue;
            }
            match self.files.canonical(&path) {
                Ok(canonical) if self.allowed(&canonical) => return Ok((path, canonical)),
                Ok(_) => outside = true,
                Err(error) => tried.push(format!("`{}` ({})", path.display(), files::reason(&error))),
            }
        }
        if outside {
            Err(Problem::new(
                format!("the library `{written}` lies outside the job's folder"),
                "keep libraries in the job's folder, or pass their folder with --library",
            ))
        } else {
            Err(Problem::new(
                format!("the library `{written}` is not found; tried {}", tried.join(", ")),
                "write the path from the job's own folder",
            ))
        }
    }

    fn roots(&self) -> impl Iterator<Item = &Path> {
        std::iter::once(self.home).chain(self.folders.iter().map(PathBuf::as_path))
    }

    /// Whether a path, links followed, lies in an allowed folder, links followed.
    fn allowed(&self, canonical: &Path) -> bool {
        self.roots().any(|root| self.files.canonical(root).is_ok_and(|root| canonical.starts_with(root)))
    }
}

/// Whether a tidy path lies in a tidy folder by its words alone.
fn lies_in(path: &Path, folder: &Path) -> bool {
    path.strip_prefix(folder).is_ok_and(|rest| !rest.components().any(|part| part == Component::ParentDir))
}

/// The path without `.`, and with `..` taken back where a folder stands before it.
fn tidy(path: &Path) -> PathBuf {
    let mut tidy = PathBuf::new();
    for part in path.components() {
        match part {
            Component::CurDir => {}
            Component::ParentDir if matches!(tidy.components().next_back(), Some(Component::Normal(_))) => {
                tidy.pop();
            }
            other => tidy.push(other),
        }
    }
    tidy
}
