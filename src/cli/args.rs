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
        faceline rule                          list what a job is checked for\n  \
        faceline draw patio.ron --sheet section --set overhang='1 1/4 in'\n  \
        faceline draw patio.ron --dxf --png    and files for machines, and pictures\n  \
        faceline draw patio.ron --csv --xlsx   and every list for a spreadsheet\n  \
        faceline templates patio.ron --paper 'roll 24 in'\n\n\
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
    /// Draw a job's sheets: SVG, one PDF, one page for the browser.
    Draw(DrawArguments),
    /// List the rules that a job is checked by, or explain one with its source and its limits.
    Rule {
        /// The rule's name.
        name: Option<String>,
    },
    /// Draw every part at full size, on tiles or on a roll, as PDF.
    Templates(TemplateArguments),
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
    /// What is changed.
    #[command(flatten)]
    pub changes: Changes,
}

/// What the command line changes in a job, and how it is answered.
#[derive(Debug, Args)]
pub struct Changes {
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
    /// The jobs' files (RON); several are drawn side by side.
    #[arg(required = true, value_name = "JOB")]
    pub jobs: Vec<PathBuf>,
    /// What is changed.
    #[command(flatten)]
    pub changes: Changes,
    /// Folder for the sheets, made if need be; by default it is named after the job's file. Several jobs have a folder
    /// each in it.
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Draw only sheets of this kind; may be repeated.
    #[arg(long = "sheet", value_name = "NAME", value_parser = PossibleValuesParser::new(Kind::WORDS))]
    pub sheets: Vec<String>,
    /// Draw each sheet as PNG too.
    #[arg(long)]
    pub png: bool,
    /// Dots per inch of PNG pictures.
    #[arg(long, value_name = "N", default_value_t = 150, value_parser = clap::value_parser!(u32).range(20..=2400), requires = "png")]
    pub dpi: u32,
    /// Write every list as a text file with commas too (RFC 4180, UTF-8).
    #[arg(long)]
    pub csv: bool,
    /// Write all lists as one workbook for a spreadsheet too.
    #[arg(long)]
    pub xlsx: bool,
    /// Files for machines.
    #[command(flatten)]
    pub cutting: Cutting,
}

/// Which templates to draw, on what, and where to.
#[derive(Debug, Args)]
pub struct TemplateArguments {
    /// The job.
    #[command(flatten)]
    pub job: JobArguments,
    /// Folder for the templates, made if need be; by default it is named after the job's file.
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Paper: letter, legal, tabloid, A4, A3, A2, A1, ANSI C or D, ARCH B to D, or a roll, as "roll 24 in". By default what
    /// the job says (paper.templates), else letter, or A4 for jobs in millimetres.
    #[arg(long, value_name = "PAPER")]
    pub paper: Option<String>,
    /// Edge of the paper that the printer can't reach, as "6 mm"; by default 1/4 in.
    #[arg(long, value_name = "LENGTH")]
    pub margin: Option<String>,
    /// How far tiles lie over each other, as "12 mm"; by default 1/2 in.
    #[arg(long, value_name = "LENGTH")]
    pub overlap: Option<String>,
    /// Correct for this one of the job's printers (paper.printers); "none" for none.
    #[arg(long, value_name = "NAME")]
    pub printer: Option<String>,
    /// Draw only parts of this name or kind (counter, substrate, board, card); may be repeated.
    #[arg(long = "part", value_name = "NAME")]
    pub parts: Vec<String>,
    /// Mirror parts of this name or kind, to be marked from the back; may be repeated.
    #[arg(long = "from-back", value_name = "NAME")]
    pub from_back: Vec<String>,
    /// Files for machines.
    #[command(flatten)]
    pub cutting: Cutting,
}

/// Files for machines that cut.
#[derive(Debug, Args)]
pub struct Cutting {
    /// Write the counter, each board and each piece of substrate as DXF too, at full size.
    #[arg(long)]
    pub dxf: bool,
    /// Form of the DXF files.
    #[arg(long, value_enum, default_value_t = DxfForm::R2000, requires = "dxf")]
    pub dxf_version: DxfForm,
}

/// Form of a DXF file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum DxfForm {
    /// For current programs.
    R2000,
    /// For old machines.
    R12,
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
