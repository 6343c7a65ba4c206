//! How far a long piece of work has come: one line on a terminal, nothing anywhere else.

use std::io::{IsTerminal, Write};
use std::sync::Mutex;
use std::time::{Duration, Instant};

/// Work shorter than this is not spoken of.
const PATIENCE: Duration = Duration::from_millis(500);
/// From one word to the next.
const PAUSE: Duration = Duration::from_millis(100);

/// A counter of work done.
pub struct Progress {
    state: Option<Mutex<State>>,
    what: String,
}

struct State {
    next: Instant,
    done: usize,
    total: usize,
    shown: bool,
}

impl Progress {
    /// Begins to count; `what` is said of it, as `drawing`.
    pub fn new(what: &str) -> Progress {
        let terminal = std::io::stderr().is_terminal();
        let state = State { next: Instant::now() + PATIENCE, done: 0, total: 0, shown: false };
        Progress { state: terminal.then(|| Mutex::new(state)), what: what.to_owned() }
    }

    /// So much more is to be done.
    pub fn expect(&self, more: usize) {
        if let Some(Ok(mut state)) = self.state.as_ref().map(Mutex::lock) {
            state.total += more;
        }
    }

    /// One more is done.
    pub fn step(&self) {
        let Some(Ok(mut state)) = self.state.as_ref().map(Mutex::lock) else { return };
        state.done += 1;
        let now = Instant::now();
        if now >= state.next {
            state.next = now + PAUSE;
            state.shown = true;
            let _ = write!(std::io::stderr(), "\r\x1b[K{} {} of {}", self.what, state.done, state.total);
        }
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        if let Some(Ok(state)) = self.state.as_ref().map(Mutex::lock)
            && state.shown
        {
            let _ = write!(std::io::stderr(), "\r\x1b[K");
        }
    }
}
