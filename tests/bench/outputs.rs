//! How long it takes to write what was drawn: the set as PDF and pictures, parts as DXF, every template as tiles and on a roll.
//!
//! `cargo bench --bench outputs` prints one line an output for the first sample: the median of several runs, and the size.

use std::hint::black_box;
use std::io;
use std::path::{Path, PathBuf};
use std::time::Instant;

use faceline::sheets::templates::{self, Setting, Stock, pieces, plan};
use faceline::write::dxf::Version;
use faceline::{model, parameters, rules, sheets, solve, write};

struct Disk;

impl model::Files for Disk {
    fn size(&self, path: &Path) -> io::Result<u64> {
        std::fs::metadata(path).map(|data| data.len())
    }
    fn read(&self, path: &Path, _limit: u64) -> io::Result<Vec<u8>> {
        std::fs::read(path)
    }
    fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
        path.canonicalize()
    }
}

fn main() {
    let read = model::read(Path::new("samples/terrace.ron"), &[], &Disk)
        .and_then(|written| parameters::resolve(&written, &[]));
    let Ok(solved) = read.and_then(|given| solve::solve(&given)) else { return println!("the sample can't be solved") };
    let findings = rules::check(&solved);
    let Ok(pages) = sheets::draw(&solved, &findings, |_| true) else { return println!("the sample can't be drawn") };

    measure(&format!("set of {} sheets to PDF", pages.len()), 9, || write::pdf::document("Bench", &pages).len());
    measure("one sheet to PNG, 150 dpi", 5, || write::png::page(&pages[2], 150).map_or(0, |bytes| bytes.len()));
    measure("one sheet to PNG, 300 dpi", 3, || write::png::page(&pages[2], 300).map_or(0, |bytes| bytes.len()));
    let parts = sheets::cuttings(&solved);
    measure(&format!("{} parts to DXF", parts.len()), 21, || {
        parts.iter().map(|part| write::dxf::part(part, Version::R2000).len()).sum()
    });
    let all = pieces::all(&solved);
    for paper in ["letter", "A3", "roll 36 in"] {
        let Ok(stock) = Stock::named(paper) else { continue };
        let setting = Setting { stock, margin: plan::MARGIN, overlap: plan::OVERLAP, printer: None };
        let mut count = 0;
        let mut draw = || {
            count = 0;
            let each = all.iter().map(|template| {
                let Ok(plan) = templates::plan(template, &setting) else { return 0 };
                count += plan.count();
                templates::pages(&solved, template, &plan, &setting)
                    .map_or(0, |pages| write::pdf::document("Bench", &pages).len())
            });
            each.sum()
        };
        measure(&format!("{} templates, {paper}", all.len()), 3, &mut draw);
        println!("{:<34} {count:>9} pages", "");
    }
}

/// Median time of several runs, and how many bytes came of it.
fn measure(name: &str, runs: usize, mut work: impl FnMut() -> usize) {
    let mut bytes = 0;
    let mut times: Vec<f64> = (0..runs)
        .map(|_| {
            let start = Instant::now();
            bytes = black_box(work());
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    println!("{name:<34} {:>9.2} ms {:>9} bytes", times[times.len() / 2], bytes);
}
