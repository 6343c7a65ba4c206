//! Reading jobs, good and bad.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use faceline::findings::Problem;
use faceline::model::{self, Files, JobFile};
use faceline::parameters::given::{Cut, DepthFrom, Floor, Given, Height, HeightFrom, Width};
use faceline::parameters::resolve;
use faceline::units::Length;
use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};

/// Files that a test holds in its hand.
#[derive(Default)]
struct Held {
    files: BTreeMap<PathBuf, Vec<u8>>,
    /// A path that is a link to another.
    links: BTreeMap<PathBuf, PathBuf>,
}

impl Held {
    fn with(mut self, path: &str, bytes: impl Into<Vec<u8>>) -> Held {
        self.files.insert(path.into(), bytes.into());
        self
    }

    fn get(&self, path: &Path) -> io::Result<&Vec<u8>> {
        let path = self.links.get(path).map_or(path, PathBuf::as_path);
        self.files.get(path).ok_or_else(|| io::ErrorKind::NotFound.into())
    }
}

impl Files for Held {
    fn size(&self, path: &Path) -> io::Result<u64> {
        Ok(self.get(path)?.len() as u64)
    }

    fn read(&self, path: &Path, limit: u64) -> io::Result<Vec<u8>> {
        Ok(self.get(path)?.iter().copied().take(limit as usize).collect())
    }

    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        let path = self.links.get(path).map_or(path, PathBuf::as_path);
        if self.files.keys().any(|file| file.starts_with(path)) {
            Ok(path.to_path_buf())
        } else {
            Err(io::ErrorKind::NotFound.into())
        }
    }
}

fn read(files: &Held) -> Result<JobFile, Vec<Problem>> {
    model::read(Path::new("/job/job.ron"), &[PathBuf::from("/shelf")], files)
}

fn solve(files: &Held, set: &[(&str, &str)]) -> Result<Given, Vec<Problem>> {
    let set: Vec<(String, String)> = set.iter().map(|(name, value)| ((*name).into(), (*value).into())).collect();
    resolve(&read(files)?, &set)
}

fn job(text: &str) -> Held {
    Held::default().with("/job/job.ron", text)
}

const EXAMPLE: &str = include_str!("worked_example.ron");
const TERRACE: &str = include_str!("../samples/terrace.ron");

/// The worked example with one stretch of its text replaced.
fn broken(from: &str, to: &str) -> Vec<Problem> {
    assert!(EXAMPLE.contains(from), "the example has no {from}");
    solve(&job(&EXAMPLE.replacen(from, to, 1)), &[]).err().unwrap_or_default()
}

/// The one problem that this change makes: its message, remedy, and the words at its place.
fn one(from: &str, to: &str) -> (String, String, String) {
    let problems = broken(from, to);
    assert_eq!(problems.len(), 1, "{problems:#?}");
    said(&problems[0])
}

fn said(problem: &Problem) -> (String, String, String) {
    let at = problem.place.as_ref().map_or("", |place| &place.file.text[place.start..place.end]);
    (problem.message.clone(), problem.instead.clone(), at.to_owned())
}

fn inches(length: Length) -> f64 {
    length.inches()
}

#[test]
fn the_worked_example_reads_as_written() {
    let given = solve(&job(EXAMPLE), &[]).unwrap();
    assert_eq!(inches(given.frame.depth), 28.0);
    assert_eq!(inches(given.legs[0].faces.front.total()), 2.125);
    assert_eq!(inches(given.legs[0].faces.left.total()), 2.125);
    assert_eq!(given.height, Height::CounterTop(Length::from_inches(36.0)));
    let Cut::Notch { depth, depth_from, drop, drop_from, .. } = &given.fittings[0].cut else { panic!("no notch") };
    assert_eq!((inches(depth.value()), *depth_from), (21.25, DepthFrom::FinishedFace));
    assert_eq!((inches(drop.value()), *drop_from), (9.0, HeightFrom::CounterTop));
    assert!(given.defaults.iter().any(|used| used.name == "frame.tube" && used.value == "1 1/2 in"));
    assert!(!given.defaults.iter().any(|used| used.name == "counter.overhang_front"));
}

#[test]
fn the_terrace_reads_whole() {
    let given = solve(&job(TERRACE), &[]).unwrap_or_else(|problems| panic!("{problems:#?}"));
    assert_eq!(given.fittings.len(), 5);
    assert!(matches!(given.site.floor, Floor::Fall { along, .. } if (along - 0.125 / 12.0).abs() < 1e-15));
    assert_eq!(given.legs[0].modules[2].width, Width::WhatIsLeft);
    let Cut::Opening { drop, width, .. } = &given.fittings[1].cut else { panic!("no opening") };
    assert_eq!(inches(drop.value()), 12.5);
    assert_eq!((inches(width.value()), inches(width.published.unwrap())), (30.0625, 30.0));
}

#[test]
fn the_command_line_puts_other_values_in_place() {
    let drop = |set: &[(&str, &str)]| {
        let given = solve(&job(TERRACE), set).unwrap();
        let Cut::Opening { drop, .. } = &given.fittings[1].cut else { panic!("no opening") };
        inches(drop.value())
    };
    assert_eq!(drop(&[("rail", "4 in")]), 13.5);
    assert_eq!(drop(&[("grill.drop", "10 in")]), 13.0);
    assert_eq!(drop(&[("frame.tube", "2 in")]), 13.0);
    let problems = solve(&job(TERRACE), &[("rial", "4 in")]).unwrap_err();
    let (message, instead, at) = said(&problems[0]);
    assert_eq!((message.as_str(), instead.as_str(), at.as_str()), ("nothing is called `rial`", "write `rail`", "rial"));
}
