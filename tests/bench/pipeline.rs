//! How long it takes to read, solve, check, draw and write a job of 1, 10, 100, 200 and 1,000 modules, and the first sample.
//! Solving includes the shop's share: pieces, cutting, quantities, orders, sequence; lists are the comma files and the workbook.
//!
//! `cargo bench --bench pipeline` prints one line a job: the median of several runs, in milliseconds; then what reading,
//! solving and checking 200 and 2,000 modules take, a heavy grill in each: ten times the run should take some ten times as long.

use std::collections::BTreeMap;
use std::hint::black_box;
use std::io;
use std::path::{Path, PathBuf};
use std::time::Instant;

use faceline::{model, parameters, rules, sheets, solve, write};

/// Files in memory, so that no disk is timed.
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

/// A run of so many modules, a drawer stack in each and a grill in the first. Invented.
fn job(modules: usize) -> String {
    written(modules, |index| index == 0)
}

/// The same with a grill in the modules that are asked for.
fn written(modules: usize, has_grill: impl Fn(usize) -> bool) -> String {
    let mut text = String::from(
        r#"(
    job: (title: "Bench", client: "", address: "", number: "1", owner: "", drawn_by: "", date: "2026-01-01", units: inches),
    site: (left: open, right: open, back: open, floor: level, paving: "slabs"),
    frame: (depth: "26 in", tube: "1 1/2 in", feet: (shortest: "1 in", longest: "4 in", inset: "2 in")),
    build_up: (
        board: (name: "cement board", thickness: "1/2 in"),
        finish: skim_coat(name: "skim coat", thickness: "1/8 in", spread: "1/16 in"),
        front: clad, left: clad, right: clad, back: boarded,
    ),
    substrate: (name: "plywood", thickness: "3/4 in", edge: flush_with_board),
    counter: (material: concrete, name: "concrete", thickness: "1 1/2 in",
        overhang: (front: "1 in", left: "1 in", right: "1 in", back: "1 in"), corner_radius: "1/2 in"),
    height: counter_top("36 in"),
    legs: [(id: "bench", modules: [
"#,
    );
    for index in 0..modules {
        text.push_str(&format!("(id: \"M{index}\", width: \"{} in\"),\n", if has_grill(index) { 40 } else { 20 }));
    }
    text.push_str("])],\nfittings: [\n");
    for index in 0..modules {
        text.push_str(&if has_grill(index) {
            format!(
                r#"(id: "grill{index}", name: "grill", look: grill, in: "M{index}", across: centred, weight: "110 lb",
            cut: notch(width: "31 in", depth: from_finished_face("21 in"), drop: from_counter_top("9 1/2 in"), radius: "3/8 in"),
            flange: (left: "5/8 in", right: "5/8 in", back: "7/8 in")),
"#
            )
        } else {
            format!(
                "(id: \"d{index}\", name: \"drawers\", look: drawers(3), in: \"M{index}\", across: centred,
            cut: opening(width: \"15 in\", height: \"20 in\", drop: from_counter_top(\"5 in\"))),\n"
            )
        });
    }
    text.push_str("],\npaper: (size: \"A3\"),\n)\n");
    text
}

fn main() {
    println!(
        "{:<22} {:>8} {:>8} {:>8} {:>9} {:>8} {:>8} {:>9} {:>7}",
        "job", "read", "solve", "check", "draw", "write", "lists", "whole ms", "sheets"
    );
    let only: Option<usize> = std::env::args().nth(1).and_then(|text| text.parse().ok());
    if let Some(modules) = only {
        return measure(&format!("{modules} modules"), job(modules), 1);
    }
    let sample = std::fs::read_to_string("samples/terrace.ron").unwrap_or_default();
    measure("samples/terrace.ron", sample, 15);
    for (modules, runs) in [(1, 15), (10, 11), (100, 5), (200, 3), (1000, 3)] {
        measure(&format!("{modules} modules"), job(modules), runs);
    }
    for modules in [200, 2000] {
        solving(&format!("{modules} heavy modules"), written(modules, |_| true));
    }
}

/// Reading, solving and checking alone.
fn solving(name: &str, text: String) {
    let path = PathBuf::from("job.ron");
    let files = Memory(BTreeMap::from([(path.clone(), text.into_bytes())]));
    let mut times = Vec::new();
    for _ in 0..3 {
        let start = Instant::now();
        let solved = model::read(&path, &[], &files)
            .and_then(|written| parameters::resolve(&written, &[]))
            .and_then(|given| solve::solve(&given));
        match solved {
            Ok(solved) => black_box(rules::check(&solved).len()),
            Err(problems) => return println!("{name:<22} can't be solved: {}", problems[0].message),
        };
        times.push(start.elapsed().as_secs_f64() * 1e3);
    }
    times.sort_by(f64::total_cmp);
    println!("{name:<22} read, solved and checked in {:.1} ms", times[times.len() / 2]);
}

fn measure(name: &str, text: String, runs: usize) {
    let path = PathBuf::from("job.ron");
    let files = Memory(BTreeMap::from([(path.clone(), text.into_bytes())]));
    let mut times: Vec<[f64; 7]> = Vec::new();
    let mut count = 0;
    for _ in 0..runs {
        let start = Instant::now();
        let given = match model::read(&path, &[], &files).and_then(|written| parameters::resolve(&written, &[])) {
            Ok(given) => given,
            Err(problems) => return println!("{name:<22} can't be read: {}", problems[0].message),
        };
        let read = start.elapsed();
        let solved = match solve::solve(&given) {
            Ok(solved) => solved,
            Err(problems) => return println!("{name:<22} can't be solved: {}", problems[0].message),
        };
        let solved_at = start.elapsed();
        let findings = rules::check(&solved);
        let checked = start.elapsed();
        let pages = match sheets::draw(&solved, &findings, |_| true) {
            Ok(pages) => pages,
            Err(unplaced) => {
                return println!("{name:<22} can't be lettered: {} {}", unplaced[0].sheet, unplaced[0].what[0]);
            }
        };
        let drawn = start.elapsed();
        for page in &pages {
            black_box(write::svg::page(page));
        }
        let written = start.elapsed();
        let lists: Vec<_> =
            sheets::listings(&solved, &findings).iter().map(|listing| listing.grid(solved.show)).collect();
        for list in &lists {
            black_box(write::csv::list(list));
        }
        let book = write::xlsx::Contents { title: "Bench", facts: &[], date: "2026-01-01", lists: &lists, notice: "" };
        let _ = black_box(write::xlsx::workbook(&book));
        let whole = start.elapsed();
        count = pages.len();
        let ms = |a: std::time::Duration, b: std::time::Duration| (b - a).as_secs_f64() * 1e3;
        let zero = std::time::Duration::ZERO;
        times.push([
            ms(zero, read),
            ms(read, solved_at),
            ms(solved_at, checked),
            ms(checked, drawn),
            ms(drawn, written),
            ms(written, whole),
            ms(zero, whole),
        ]);
    }
    let median = |k: usize| {
        let mut column: Vec<f64> = times.iter().map(|row| row[k]).collect();
        column.sort_by(f64::total_cmp);
        column[column.len() / 2]
    };
    println!(
        "{name:<22} {:>8.2} {:>8.2} {:>8.2} {:>9.2} {:>8.2} {:>8.2} {:>9.2} {count:>7}",
        median(0),
        median(1),
        median(2),
        median(3),
        median(4),
        median(5),
        median(6)
    );
}
