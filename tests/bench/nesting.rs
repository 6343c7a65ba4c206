//! How long it takes to lay pieces on sheets and lengths on bars: every case of `tests/reference/nesting.json`, cut from edge
//! to edge and any way, beside the counts that are proven.
//!
//! `cargo bench --bench nesting` prints one line a case: the median of several runs, in milliseconds.

use std::hint::black_box;
use std::time::Instant;

use faceline::solve::nesting::{Bought, Part, Request, Way, bars, sheets};
use faceline::units::Length;
use serde_json::Value;

/// Runs of one case.
const RUNS: usize = 5;

fn inches(value: &Value) -> Length {
    Length::from_inches(value.as_f64().unwrap_or(0.0))
}

fn list<'v>(value: &'v Value, name: &str) -> impl Iterator<Item = &'v Value> {
    value[name].as_array().into_iter().flatten()
}

/// What a case asks for, each part as often as it is wanted.
fn request(input: &Value, way: Way) -> Request {
    let part = |part: &Value| {
        let turns = part.get("rotate").and_then(Value::as_bool).unwrap_or(true);
        let size = (inches(&part["w_in"]), inches(&part["h_in"]));
        vec![Part { size, turns }; part["qty"].as_u64().unwrap_or(0) as usize]
    };
    Request {
        parts: list(input, "parts").flat_map(part).collect(),
        offcuts: Vec::new(),
        bought: vec![Bought { size: (inches(&input["sheet_w_in"]), inches(&input["sheet_h_in"])) }],
        kerf: inches(&input["kerf_in"]),
        way,
        keep: Length::from_inches(6.0),
    }
}

/// The middle one of several runs, ms, and what came out.
fn median(run: impl Fn() -> usize) -> (f64, usize) {
    let mut times = Vec::new();
    let mut found = 0;
    for _ in 0..RUNS {
        let start = Instant::now();
        found = black_box(run());
        times.push(start.elapsed().as_secs_f64() * 1e3);
    }
    times.sort_by(f64::total_cmp);
    (times[RUNS / 2], found)
}

fn main() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference/nesting.json");
    let text = std::fs::read_to_string(path).unwrap_or_default();
    let all: Value = serde_json::from_str(&text).unwrap_or(Value::Null);
    let mut worst = 0.0_f64;
    for case in list(&all, "cases") {
        let (id, input, expected) = (case["id"].as_str().unwrap_or(""), &case["input"], &case["expected"]);
        if case["kind"] == "1d" {
            let lengths: Vec<Length> = list(input, "cuts")
                .flat_map(|cut| vec![inches(&cut["len_in"]); cut["qty"].as_u64().unwrap_or(0) as usize])
                .collect();
            let stock = [inches(&input["stock_in"])];
            let (kerf, trim) = (inches(&input["kerf_in"]), inches(&input["end_trim_in"]));
            let (ms, found) = median(|| bars(&stock, kerf, trim, &lengths).map_or(0, |bars| bars.len()));
            worst = worst.max(ms);
            println!("{id:10} bars          {found:3} of {:3}  {ms:9.2} ms", expected["best_known_bars"]);
            continue;
        }
        for (way, word, best) in [
            (Way::EdgeToEdge, "edge to edge", &expected["best_known_guillotine_sheets"]),
            (Way::Any, "any cuts", &expected["best_known_sheets"]),
        ] {
            let request = request(input, way);
            let (ms, found) = median(|| sheets(&request).map_or(0, |layout| layout.sheets.len()));
            worst = worst.max(ms);
            println!("{id:10} {word:12}  {found:3} of {best:3}  {ms:9.2} ms");
        }
    }
    println!("slowest {worst:.2} ms");
}
