//! What the user wrote, nothing worked out, every value with its place. The only part that knows RON.
//!
//! A job is read by [`read`]; what it means is worked out by `parameters`.

mod build_up;
mod complaint;
mod corner;
mod counter;
mod dimension;
mod erase;
mod files;
mod fitting;
mod job;
mod ledge;
mod libraries;
mod notch;
mod parse;
mod printer;
mod run;
mod services;
mod site;
mod stock;
mod supports;
mod survey;
mod text;
mod trim;
mod waits;

pub use files::{Files, LARGEST_FILE};
pub use job::JobFile;

pub(crate) use build_up::*;
pub(crate) use corner::*;
pub(crate) use counter::*;
pub(crate) use dimension::*;
pub(crate) use fitting::*;
pub(crate) use job::*;
pub(crate) use ledge::*;
pub(crate) use notch::*;
pub(crate) use printer::*;
pub(crate) use run::*;
pub(crate) use services::*;
pub(crate) use site::*;
pub(crate) use stock::*;
pub(crate) use supports::*;
pub(crate) use survey::*;
pub(crate) use text::{Text, TextKind};
pub(crate) use trim::*;
pub(crate) use waits::*;

use crate::findings::Problem;
use std::path::{Path, PathBuf};

/// Reads a job and the libraries that it names.
///
/// What can be said of a job that still has a shape is kept inside it, so that `parameters` can
/// report it together with what it finds itself.
///
/// # Errors
/// When the job's file can't be read, or is not a job at all.
pub fn read(path: &Path, library_folders: &[PathBuf], files: &dyn Files) -> Result<JobFile, Vec<Problem>> {
    let source = files::source(path, files).map_err(|problem| vec![problem])?;
    let (job, complaints) = parse::parse::<JobFile>(&source);
    let Some(mut job) = job else { return Err(complaints) };
    job.complaints = complaints;
    libraries::load(&mut job, path, library_folders, files);
    Ok(job)
}
