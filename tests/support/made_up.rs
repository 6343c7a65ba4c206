//! Jobs that are made up as text, read and solved by the library as the program would.

use faceline::findings::Problem;
use faceline::solve::Solved;
use faceline::{model, parameters, solve};
use std::collections::BTreeMap;
use std::io;
use std::path::{Path, PathBuf};

/// A small generator of its own, so that a seed gives the same job on any machine (splitmix64).
pub struct Dice(pub u64);

impl Dice {
    /// One of so many sides, from nothing on.
    pub fn roll(&mut self, sides: u64) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        (z ^ (z >> 31)) % sides
    }

    /// Whole sixteenths between two whole numbers.
    pub fn sixteenths(&mut self, from: u64, to: u64) -> f64 {
        (from * 16 + self.roll((to - from) * 16)) as f64 / 16.0
    }

    /// The same of an inch, as text.
    pub fn inches(&mut self, from: u64, to: u64) -> String {
        let sixteenths = from * 16 + self.roll((to - from) * 16);
        format!("{} {}/16 in", sixteenths / 16, sixteenths % 16)
    }

    /// One of some words.
    pub fn of<'a>(&mut self, options: &[&'a str]) -> &'a str {
        options[self.roll(options.len() as u64) as usize]
    }
}

/// Files in memory.
struct Memory(BTreeMap<PathBuf, Vec<u8>>);

impl model::Files for Memory {
    fn size(&self, path: &Path) -> io::Result<u64> {
        self.0.get(path).map(|bytes| bytes.len() as u64).ok_or_else(|| io::ErrorKind::NotFound.into())
    }
    fn read(&self, path: &Path, _limit: u64) -> io::Result<Vec<u8>> {
        self.0.get(path).cloned().ok_or_else(|| io::ErrorKind::NotFound.into())
    }
    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        Ok(path.to_path_buf())
    }
}

/// A job of this text, solved, or what is wrong with it.
pub fn solved(text: String) -> Result<Solved, String> {
    let path = PathBuf::from("job.ron");
    solved_of(&path, &Memory(BTreeMap::from([(path.clone(), text.into_bytes())])))
}

/// A sample with the libraries that it names, solved.
pub fn sample(name: &str) -> Solved {
    let path = PathBuf::from(format!("samples/{name}.ron"));
    let libraries = std::fs::read_dir("samples/library").unwrap().map(|entry| entry.unwrap().path());
    let all = libraries.chain([path.clone()]).map(|path| (path.clone(), std::fs::read(path).unwrap()));
    solved_of(&path, &Memory(all.collect())).unwrap()
}

fn solved_of(path: &Path, files: &Memory) -> Result<Solved, String> {
    let said = |problems: Vec<Problem>| problems.iter().map(|p| p.message.clone()).collect::<Vec<_>>().join("\n");
    let written = model::read(path, &[], files).map_err(said)?;
    let given = parameters::resolve(&written, &[]).map_err(said)?;
    solve::solve(&given).map_err(said)
}
