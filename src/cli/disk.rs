//! The real files, for the reader of jobs.

use std::fs::File;
use std::io::{self, Read};
use std::path::{Path, PathBuf};

use crate::model::Files;

/// The disk.
pub struct Disk;

impl Files for Disk {
    fn size(&self, path: &Path) -> io::Result<u64> {
        let facts = std::fs::metadata(path)?;
        if facts.is_dir() { Err(io::ErrorKind::IsADirectory.into()) } else { Ok(facts.len()) }
    }

    fn read(&self, path: &Path, limit: u64) -> io::Result<Vec<u8>> {
        let mut bytes = Vec::new();
        File::open(path)?.take(limit).read_to_end(&mut bytes)?;
        Ok(bytes)
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        // An empty path is the folder that the program runs in.
        if path.as_os_str().is_empty() { Path::new(".").canonicalize() } else { path.canonicalize() }
    }
}
