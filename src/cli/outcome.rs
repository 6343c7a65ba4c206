//! How a command ended, as its exit status.

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Fine, perhaps with findings that don't stop.
    Fine = 0,
    /// Findings that stop: don't cut.
    Stopped = 1,
    /// Input that can't be read or solved.
    Unreadable = 2,
    /// Files that can't be written.
    Unwritable = 3,
}
