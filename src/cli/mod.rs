//! Arguments, files, terminal: the only place that touches the world, and the one that decides exit status.

mod args;
mod check;
mod disk;
mod draw;
mod lists;
mod new;
mod outcome;
mod outputs;
mod parallel;
mod progress;
pub mod report;
mod rule;
mod say;
mod templates;
mod write_set;

use std::ffi::OsString;
use std::io::Write;
use std::process::ExitCode;

use clap::{CommandFactory, Parser};

use args::{Arguments, Command};
use outcome::Outcome;

/// Runs the command line and says how it went: 0 fine, 1 findings that stop, 2 input that can't be read or solved,
/// 3 files that can't be written.
pub fn run(arguments: impl Iterator<Item = OsString>) -> ExitCode {
    let arguments = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => arguments,
        Err(error) => {
            let _ = error.print();
            return ExitCode::from(if error.use_stderr() { Outcome::Unreadable as u8 } else { 0 });
        }
    };
    let outcome = match arguments.command {
        Command::New { file } => new::run(&file),
        Command::Check(job) => check::run(&job),
        Command::Draw(draw) => draw::run(&draw),
        Command::Rule { name } => rule::run(name.as_deref()),
        Command::Templates(asked) => templates::run(&asked),
        Command::Completions { shell } => {
            let mut script = Vec::new();
            clap_complete::generate(shell, &mut Arguments::command(), "faceline", &mut script);
            print(&script)
        }
        Command::Man => {
            let mut page = Vec::new();
            match clap_mangen::Man::new(Arguments::command()).render(&mut page) {
                Ok(()) => print(&page),
                Err(_) => Outcome::Unwritable,
            }
        }
        Command::Licences => print(licences().as_bytes()),
    };
    ExitCode::from(outcome as u8)
}

/// Writes to standard output. A reader that has gone away is not a fault.
fn print(bytes: &[u8]) -> Outcome {
    let mut out = std::io::stdout().lock();
    let _ = out.write_all(bytes).and_then(|()| out.flush());
    Outcome::Fine
}

fn licences() -> String {
    format!(
        "faceline is licensed MIT OR Apache-2.0, at your choice.\n\n\
         The drawings carry a subset of an openly licensed font, renamed as its licence asks:\n\n{}",
        crate::drawing::lettering::LICENCE
    )
}
