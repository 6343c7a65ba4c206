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
    ["samples/terrace.ron", "samples/island.ron", "samples/courtyard.ron", "tests/worked_example.ron"].map(PathBuf::from).to_vec()
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
