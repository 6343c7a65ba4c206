//! What can be typed. Validates only; what it means is worked out by the commands.

use std::path::PathBuf;

use clap::builder::PossibleValuesParser;
use clap::{Args, Parser, Subcommand, ValueEnum};

use crate::sheets::Kind;

/// Dimensioned drawings for outdoor kitchens that are built in place, every cut located from the finished face.
#[derive(Debug, Parser)]
#[command(
    name = "faceline",
    version,
    about,
    after_help = "Examples:\n  \
        faceline new patio.ron                 start a job\n  \
        faceline check patio.ron               say what is wrong with it\n  \
        faceline draw patio.ron --out sheets   draw the whole set\n  \
        faceline draw patio.ron --sheet section --set overhang='1 1/4 in'\n\n\
        Exit status: 0 fine, 1 findings that stop, 2 input that can't be read or solved, 3 files that can't be written.\n\
        The drawings don't replace local code, the appliances' manuals or licensed trades."
)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Write a commented job to start from. Never overwrites a file.
    New {
        /// The file to make.
        file: PathBuf,
    },
    /// Solve a job and say what was found. Writes no files.
    Check(JobArguments),
    /// Draw a job's sheets as SVG.
    Draw(DrawArguments),
    /// Print a completion script for a shell.
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
    /// Print the manual page (roff).
    Man,
    /// Print the licences of what the program carries.
    Licences,
}

/// A job and what the command line changes in it.
#[derive(Debug, Args)]
pub struct JobArguments {
    /// The job's file (RON).
    pub job: PathBuf,
    /// Put a value in place of a named parameter's; may be repeated.
    #[arg(long = "set", value_name = "NAME=VALUE", value_parser = assignment)]
    pub overrides: Vec<(String, String)>,
    /// A folder that the job's libraries may also come from; may be repeated.
    #[arg(long = "library", value_name = "DIR")]
    pub libraries: Vec<PathBuf>,
    /// How to say what was found.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    pub format: Format,
}

/// What to draw and where to.
#[derive(Debug, Args)]
pub struct DrawArguments {
    /// The job.
    #[command(flatten)]
    pub job: JobArguments,
    /// Folder for the sheets, made if need be; by default it is named after the job's file.
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Draw only sheets of this kind; may be repeated.
    #[arg(long = "sheet", value_name = "NAME", value_parser = PossibleValuesParser::new(Kind::WORDS))]
    pub sheets: Vec<String>,
}

/// How findings are printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For people.
    Text,
    /// For machines: one JSON object.
    Json,
}

/// `name=value`, the name not empty.
fn assignment(text: &str) -> Result<(String, String), String> {
    match text.split_once('=') {
        Some((name, value)) if !name.trim().is_empty() && !value.trim().is_empty() => {
            Ok((name.trim().to_owned(), value.trim().to_owned()))
        }
        _ => Err("write it as name=value, as --set overhang='1 1/4 in'".to_owned()),
    }
}
