//! The files of a job, through whatever the caller lets it see.

use crate::findings::{Problem, SourceFile};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// What reading a job needs of the world. The command line gives the disk; a test, a map.
pub trait Files {
    /// The size in bytes of the file at `path`.
    ///
    /// # Errors
    /// When there is no such file, or it can't be looked at.
    fn size(&self, path: &Path) -> io::Result<u64>;

    /// The bytes of the file at `path`, at most `limit` of them.
    ///
    /// # Errors
    /// When it can't be read.
    fn read(&self, path: &Path, limit: u64) -> io::Result<Vec<u8>>;

    /// The path with every link followed, from the root.
    ///
    /// # Errors
    /// When there is nothing there.
    fn canonical(&self, path: &Path) -> io::Result<PathBuf>;
}

/// The largest file that is read, in bytes. A thousand modules take a tenth of it.
pub const LARGEST_FILE: u64 = 4_000_000;

/// Reads a file as text.
///
/// # Errors
/// When it can't be read, is too large, or isn't text.
pub(super) fn source(path: &Path, files: &dyn Files) -> Result<Arc<SourceFile>, Problem> {
    let name = path.display().to_string();
    let unread = |error: io::Error| Problem::new(format!("`{name}` can't be read: {}", reason(&error)), "");
    let size = files.size(path).map_err(unread)?;
    let too_large = || {
        let megabytes = LARGEST_FILE / 1_000_000;
        Problem::new(format!("`{name}` is too large for a job"), format!("a job's file has {megabytes} MB at most"))
    };
    if size > LARGEST_FILE {
        return Err(too_large());
    }
    let bytes = files.read(path, LARGEST_FILE + 1).map_err(unread)?;
    if bytes.len() as u64 > LARGEST_FILE {
        return Err(too_large());
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        Problem::new(format!("`{name}` is not text: byte {at} is not UTF-8"), "save it as plain UTF-8 text")
    })?;
    if text.contains('\0') {
        return Err(Problem::new(
            format!("`{name}` is not text: it has zero bytes in it"),
            "save it as plain UTF-8 text",
        ));
    }
    let text = text.strip_prefix('\u{feff}').map(str::to_owned).unwrap_or(text);
    Ok(Arc::new(SourceFile { name, text }))
}

/// Why, without the system's own numbering.
pub(super) fn reason(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::NotFound => "there is no such file".to_owned(),
        io::ErrorKind::PermissionDenied => "permission is denied".to_owned(),
        io::ErrorKind::IsADirectory => "it is a folder".to_owned(),
        _ => error.to_string(),
    }
}
