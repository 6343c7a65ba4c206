//! Entry: arguments in, exit status out.

use std::process::ExitCode;

fn main() -> ExitCode {
    faceline::cli::run(std::env::args_os())
}
