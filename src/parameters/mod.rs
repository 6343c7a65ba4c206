//! From what was written to plain values: names, arithmetic, overrides, defaults.

mod build_up;
mod corner;
mod defaults;
mod evaluate;
mod expression;
mod fitted;
mod fittings;
pub mod given;
mod index;
mod job;
mod ledge;
mod materials;
mod names;
mod notch;
mod paper;
mod parts;
mod properties;
mod reader;
mod run;
mod services;
mod site;
mod stock;
mod supports;
mod survey;
mod trim;
mod waits;
mod width;

pub use given::Given;

use crate::findings::Problem;
use crate::model::{FloorText, JobFile};
use crate::units::System;
use reader::Reader;
use std::collections::HashMap;

/// Names with the expressions that the command line puts in their place.
pub type Overrides = Vec<(String, String)>;

/// Works out every value of a job: parameters, arithmetic, overrides, defaults.
///
/// # Errors
/// Every reason why the job can't be worked out, in the order of the file, those that were met while
/// reading included.
pub fn resolve(written: &JobFile, overrides: &[(String, String)]) -> Result<Given, Vec<Problem>> {
    let mut reader = Reader { problems: written.complaints.clone(), ..Reader::default() };
    let fitted = fitted::all(written, &mut reader);
    properties::register(written, &fitted, overrides, &mut reader);
    reader.names.work_out_all();
    let job = job::read(&written.job, &mut reader);
    let site = site::read(written, &mut reader);
    let frame = parts::frame(&written.frame, matches!(written.site.floor, Some(FloorText::Spots(_))), &mut reader);
    let counter = parts::counter(written, &mut reader);
    let substrate = parts::substrate(&written.substrate, &mut reader);
    let height = parts::height(&written.height, &mut reader);
    let sheets = (&counter, &substrate);
    let metric = job.units == System::Millimetres;
    let trim = written.trim.as_ref().map(|trim| trim::read(trim, &frame, height, sheets, metric, &mut reader));
    let supports = supports::read(&written.supports, &frame, &counter, &mut reader);
    let materials = materials::read(&written.materials, &mut reader);
    let mut given = Given {
        job,
        site,
        frame,
        counter,
        substrate,
        height,
        trim,
        supports,
        legs: run::legs(written, height, &mut reader),
        joints: corner::joints(written, &mut reader),
        fittings: fittings::read(written, &fitted, &mut reader),
        services: services::read(written, &fitted, &mut reader),
        laying: stock::laying(&written.boards, &mut reader),
        stock: stock::read(&written.stock, &mut reader),
        materials,
        limits: services::limits(&written.limits, &mut reader),
        tolerances: parts::tolerances(&written.tolerances, &mut reader),
        waits: given::Waits::new(),
        paper: paper::read(&written.paper, &mut reader),
        defaults: Vec::new(),
    };
    given.waits = waits::read(&written.waits, &given, &mut reader);
    given.defaults = std::mem::take(&mut reader.defaults);
    let problems = in_order(reader);
    if problems.is_empty() { Ok(given) } else { Err(problems) }
}

/// The problems, each once, by file and place; those without a place first.
fn in_order(reader: Reader) -> Vec<Problem> {
    let mut problems: Vec<Problem> = reader.problems.into_iter().chain(reader.names.problems).collect();
    let mut files: HashMap<String, usize> = HashMap::new();
    for place in problems.iter().filter_map(|problem| problem.place.as_ref()) {
        let next = files.len();
        files.entry(place.file.name.clone()).or_insert(next);
    }
    problems.sort_by_cached_key(|problem| {
        let place = problem.place.as_ref().map(|place| (files.get(&place.file.name).copied(), place.start, place.end));
        (place, problem.message.clone())
    });
    problems.dedup();
    problems
}
