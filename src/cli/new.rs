//! `faceline new`: a commented job to start from.

use std::fs::OpenOptions;
use std::io::{ErrorKind, Write};
use std::path::Path;

use super::outcome::Outcome;

/// The starter job. It solves, and its comments teach.
pub const STARTER: &str = include_str!("starter.ron");

/// Writes the starter to a file that isn't there yet.
pub fn run(file: &Path) -> Outcome {
    let shown = file.display();
    let made = OpenOptions::new().write(true).create_new(true).open(file);
    let written = made.and_then(|mut made| {
        let written = made.write_all(STARTER.as_bytes());
        if written.is_err() {
            let _ = std::fs::remove_file(file);
        }
        written
    });
    match written {
        Ok(()) => {
            println!("{shown} is ready. Next: faceline check {shown}, then faceline draw {shown}");
            Outcome::Fine
        }
        Err(error) if error.kind() == ErrorKind::AlreadyExists => {
            eprintln!("error: `{shown}` is there already and is left as it is\n  = instead: give another name");
            Outcome::Unwritable
        }
        Err(error) => {
            eprintln!(
                "error: `{shown}` can't be written: {error}\n  = instead: choose a folder that exists and that you may write to"
            );
            Outcome::Unwritable
        }
    }
}
