//! Running the program and the readers outside of it.
#![allow(dead_code)]

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The program under test, from the project's folder.
pub fn faceline() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_faceline"));
    command.current_dir(env!("CARGO_MANIFEST_DIR"));
    command
}

/// Every job that has to draw: the samples and the worked example.
pub fn jobs() -> Vec<PathBuf> {
    [
        "samples/terrace.ron",
        "samples/island.ron",
        "samples/courtyard.ron",
        "samples/corner.ron",
        "samples/bar.ron",
        "tests/worked_example.ron",
    ]
    .map(PathBuf::from)
    .to_vec()
}

/// The Python that has the independent readers. `tests/run` sets it up and requires it; a bare `cargo test` says that it
/// leaves these checks out.
pub fn python() -> Option<PathBuf> {
    let found = std::env::var_os("FACELINE_PYTHON").map(PathBuf::from).filter(|path| path.is_file());
    if found.is_none() {
        let required = std::env::var_os("FACELINE_OUTSIDE").is_some_and(|value| value == "required");
        assert!(!required, "FACELINE_PYTHON names no Python");
        eprintln!("LEFT OUT: the outside readers are not set up; run tests/run");
    }
    found
}

/// Every file of a folder, by name.
pub fn folder(path: &Path) -> BTreeMap<String, Vec<u8>> {
    fs::read_dir(path)
        .unwrap_or_else(|error| panic!("{}: {error}", path.display()))
        .map(|entry| {
            let entry = entry.expect("an entry");
            (entry.file_name().to_string_lossy().into_owned(), fs::read(entry.path()).expect("a file"))
        })
        .collect()
}

struct Disk;

impl faceline::model::Files for Disk {
    fn size(&self, path: &Path) -> std::io::Result<u64> {
        fs::metadata(path).map(|data| data.len())
    }
    fn read(&self, path: &Path, _limit: u64) -> std::io::Result<Vec<u8>> {
        fs::read(path)
    }
    fn canonical(&self, path: &Path) -> std::io::Result<PathBuf> {
        path.canonicalize()
    }
}

/// A job solved by the library.
pub fn solved(job: &Path) -> faceline::solve::Solved {
    let written = faceline::model::read(job, &[], &Disk).unwrap_or_else(|problems| panic!("{problems:?}"));
    let given = faceline::parameters::resolve(&written, &[]).unwrap_or_else(|problems| panic!("{problems:?}"));
    faceline::solve::solve(&given).unwrap_or_else(|problems| panic!("{problems:?}"))
}

/// Runs one of the outside checkers and says how it went and what it said.
pub fn checker(python: &Path, script: &str, arguments: &[&std::ffi::OsStr]) -> (bool, String) {
    let done = Command::new(python)
        .arg(Path::new("tests/outside").join(script))
        .args(arguments)
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("the checker runs");
    (
        done.status.success(),
        format!("{}{}", String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr)),
    )
}
