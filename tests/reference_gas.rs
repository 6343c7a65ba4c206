//! Gas pipe against independent values, published tables and published worked examples.
//!
//! `tests/reference/gas.json` has values of an independent program; `gas_published.json` has what codes print, each with the
//! table or clause that it was read in.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::HashMap;
use std::fs;

use faceline::parameters::given::{Bends, PipeSize, Segment};
use faceline::solve::services::equation::{self, Gas};
use faceline::solve::services::sizing::{self, Demand};
use faceline::units::Length;
use serde_json::Value;

/// A file of `tests/reference`, or of the folder that `FACELINE_REFERENCE` names.
fn json(name: &str) -> Option<Value> {
    let folder = std::env::var("FACELINE_REFERENCE").unwrap_or_else(|_| "tests/reference".to_owned());
    let text = fs::read_to_string(format!("{folder}/{name}")).ok()?;
    Some(serde_json::from_str(&text).expect("reference values are JSON"))
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value} is a number"))
}

fn size(word: &str) -> PipeSize {
    let words = word.replace('-', " ");
    let found = PipeSize::ALL.into_iter().find(|size| size.words() == format!("{words} in"));
    found.unwrap_or_else(|| panic!("{word} is a size"))
}

fn gas(value: &Value) -> Gas {
    if value.as_str() == Some("propane") { Gas::Propane } else { Gas::Natural }
}

fn bends(value: &Value) -> Bends {
    let count = |name: &str| value.get(name).and_then(Value::as_u64).unwrap_or(0) as u16;
    Bends { elbows: count("elbow90"), elbows_45: count("elbow45"), tees: count("tee_branch"), bends_180: 0 }
}

fn near(found: f64, wanted: f64, share: f64, what: &str) {
    assert!((found - wanted).abs() <= wanted.abs() * share, "{what}: {found}, {wanted} is wanted");
}

fn segment(id: &str, from: &str, to: &str, feet: f64) -> Segment {
    Segment {
        id: id.to_owned(),
        from: from.to_owned(),
        to: to.to_owned(),
        length: Length::from_inches(feet * 12.0),
        bends: Bends::default(),
        installed: None,
        place: None,
    }
}

#[test]
fn reference_cases_come_out() {
    let Some(data) = json("gas.json") else { return };
    for case in data["cases"].as_array().expect("cases") {
        let (input, expected) = (&case["input"], &case["expected"]);
        let id = case["id"].as_str().unwrap_or("");
        let share = number(&case["tol"]["*"]["rel"]);
        let excluded =
            |size: &str| input["exclude_sizes"].as_array().is_some_and(|all| all.iter().any(|one| one == size));
        match case["kind"].as_str() {
            Some("capacity") => {
                let found = equation::capacity(
                    gas(&input["gas"]),
                    size(input["size"].as_str().unwrap_or("")),
                    number(&input["length_ft"]),
                    number(&input["drop_inwc"]),
                );
                near(found, number(&expected["capacity_cfh"]), share, id);
                near(gas(&input["gas"]).cr(), number(&expected["cr"]), share, id);
            }
            Some("single") => single(id, input, expected, share),
            Some("tree") => tree(id, input, expected, share, excluded("3/8")),
            other => panic!("{id} is of an unknown kind, {other:?}"),
        }
    }
}

fn single(id: &str, input: &Value, expected: &Value, share: f64) {
    let gas = gas(&input["gas"]);
    let flow = number(&input["demand_btu_h"]) / number(&input["heating_value_btu_ft3"]);
    near(flow, number(&expected["demand_cfh"]), share, id);
    let drop = number(&input["drop_inwc"]);
    for (word, wanted) in expected["by_size"].as_object().expect("sizes") {
        let size = size(word);
        let length = number(&input["pipe_length_ft"]) + equation::equivalent(size, &bends(&input["fittings"]));
        near(length, number(&wanted["equivalent_length_ft"]), share, id);
        let capacity = equation::capacity(gas, size, length, drop);
        near(capacity, number(&wanted["capacity_cfh"]), share, id);
        near(equation::drop(gas, size, length, flow), number(&wanted["drop_at_demand_inwc"]), share * 2.0, id);
        assert_eq!(capacity >= flow, wanted["ok"].as_bool().unwrap_or(false), "{id}, {word}");
    }
    // The smallest size by the program's own sizing: one segment, its own fittings.
    let mut pipe = segment("1", "source", "appliance", number(&input["pipe_length_ft"]));
    pipe.bends = bends(&input["fittings"]);
    let loads = HashMap::from([("appliance", number(&input["demand_btu_h"]))]);
    let all = input["exclude_sizes"].as_array().is_none_or(|sizes| sizes.is_empty());
    let demand = Demand {
        gas,
        heating_value: number(&input["heating_value_btu_ft3"]),
        drop,
        smallest: if all { PipeSize::ThreeEighths } else { PipeSize::Half },
        allowance: 0.0,
        loads: &loads,
    };
    let pipe = [pipe];
    let paths = sizing::paths(&pipe, &["appliance"]).expect("a sound tree");
    let found = sizing::size(&pipe, &paths, &demand).segments[0].size;
    match expected["smallest_size"].as_str() {
        Some(word) => assert_eq!(found, Some(size(word)), "{id}"),
        // The cases end at 1 1/4 in; larger pipe may carry what none of theirs does.
        None => assert!(found.is_none_or(|size| size > PipeSize::OneAndQuarter), "{id}: {found:?}"),
    }
}

fn tree(id: &str, input: &Value, expected: &Value, share: f64, from_half: bool) {
    let sections = input["sections"].as_array().expect("sections");
    let word = |section: &Value, name: &str| section[name].as_str().unwrap_or("").to_owned();
    let pipe: Vec<Segment> = sections
        .iter()
        .map(|s| segment(&word(s, "id"), &word(s, "from"), &word(s, "to"), number(&s["length_ft"])))
        .collect();
    let ends: Vec<(String, f64)> =
        sections.iter().filter_map(|s| s["load_btu_h"].as_f64().map(|load| (word(s, "to"), load))).collect();
    let loads: HashMap<&str, f64> = ends.iter().map(|(name, load)| (name.as_str(), *load)).collect();
    let names: Vec<&str> = ends.iter().map(|(name, _)| name.as_str()).collect();
    let paths = sizing::paths(&pipe, &names).expect("a sound tree");
    let demand = Demand {
        gas: gas(&input["gas"]),
        heating_value: number(&input["heating_value_btu_ft3"]),
        drop: number(&input["drop_inwc"]),
        smallest: if from_half { PipeSize::Half } else { PipeSize::ThreeEighths },
        allowance: number(&input["fitting_allowance"]) - 1.0,
        loads: &loads,
    };
    let sized = sizing::size(&pipe, &paths, &demand);
    near(sized.longest, number(&expected["longest_length_ft"]), share, id);
    for (segment, found) in pipe.iter().zip(&sized.segments) {
        let wanted = &expected["sections"][&segment.id];
        near(found.load, number(&wanted["load_btu_h"]), 1e-9, id);
        near(found.flow, number(&wanted["flow_cfh"]), share, id);
        assert_eq!(found.size, Some(size(wanted["size"].as_str().unwrap_or(""))), "{id}, section {}", segment.id);
    }
}

#[test]
fn printed_tables_come_out_within_a_printed_figure() {
    let Some(data) = json("gas_published.json") else { return };
    let mut count = 0;
    for table in data["tables"].as_array().expect("tables") {
        let unit = table["kbtu_per_cfh"].as_f64().unwrap_or(1.0);
        for (length, row) in table["rows"].as_object().expect("rows") {
            for (word, printed) in table["sizes"].as_array().expect("sizes").iter().zip(row.as_array().expect("a row"))
            {
                let (length, printed) = (length.parse().expect("a length"), number(printed));
                let word = word.as_str().unwrap_or("");
                let found =
                    equation::capacity(gas(&table["gas"]), size(word), length, number(&table["drop_inwc"])) * unit;
                // Half a unit of the last printed figure and half a percent. The rows of table A.3.4 follow the
                // square root of the drop and not the equation's 0.541: they part by up to 3 % away from its row of 0.5.
                let share = if table["source"] == "A.3.4" { 0.03 } else { 0.005 };
                let off = 0.5 + printed * share;
                assert!(
                    (found - printed).abs() <= off,
                    "{} {word} at {length} ft: {found}, printed {printed}",
                    table["source"]
                );
                count += 1;
            }
        }
    }
    assert!(count > 100, "{count}");
}

#[test]
fn propane_rows_past_sixty_feet_are_not_followed() {
    let Some(data) = json("gas_published.json") else { return };
    let suspect = &data["suspect"];
    for (length, row) in suspect["rows"].as_object().expect("rows") {
        for (word, printed) in suspect["sizes"].as_array().expect("sizes").iter().zip(row.as_array().expect("a row")) {
            let length: f64 = length.parse().expect("a length");
            let found = equation::capacity(Gas::Propane, size(word.as_str().unwrap_or("")), length, 0.5) * 2.488564;
            let over = number(printed) / found - 1.0;
            assert!((0.05..0.13).contains(&over), "{word} at {length} ft: printed {over} over the equation");
        }
    }
    // A grill of 92 500 Btu/h on 100 ft of 1/2 in: the table lets it pass, the code's own equation doesn't.
    assert!(number(&suspect["rows"]["100"][0]) > 92.5);
    assert!(equation::capacity(Gas::Propane, PipeSize::Half, 100.0, 0.5) * 2.5 < 92.5);
}

#[test]
fn fittings_are_as_long_as_printed() {
    let Some(data) = json("gas_published.json") else { return };
    for (word, lengths) in data["fittings_ft"].as_object().expect("sizes") {
        let one = |name: usize| Bends {
            elbows_45: u16::from(name == 0),
            elbows: u16::from(name == 1),
            bends_180: u16::from(name == 2),
            tees: u16::from(name == 3),
        };
        for (index, printed) in lengths.as_array().expect("lengths").iter().enumerate() {
            let found = equation::equivalent(size(word), &one(index));
            assert!(
                (found - number(printed)).abs() < 0.012 + found * 0.008,
                "{word}, fitting {index}: {found}, printed {printed}"
            );
        }
    }
}

#[test]
fn published_examples_come_out() {
    let Some(data) = json("gas_published.json") else { return };
    for example in data["examples"].as_array().expect("examples") {
        let smallest = size(example["smallest"].as_str().unwrap_or(""));
        for section in example["sections"].as_array().expect("sections") {
            let flow = number(&section["cfh"]);
            let fits = |size: &PipeSize| {
                let (length, drop) = (number(&example["longest_ft"]), number(&example["drop_inwc"]));
                equation::capacity(Gas::Natural, *size, length, drop) >= flow
            };
            let found = PipeSize::ALL.into_iter().filter(|size| *size >= smallest).find(fits);
            assert_eq!(
                found,
                Some(size(section["size"].as_str().unwrap_or(""))),
                "example {}: {section}",
                example["id"]
            );
        }
    }
    let drop = &data["drop"];
    let flow = equation::capacity(Gas::Natural, PipeSize::One, 100.0, 0.2);
    assert!((equation::drop(Gas::Natural, PipeSize::One, 10.0, flow) - number(&drop["one_inch"])).abs() < 1e-3);
    let lost = equation::drop(Gas::Natural, PipeSize::ThreeQuarters, 10.0, 110.0);
    // The example draws a straight line between two columns of the table.
    assert!((lost - number(&drop["three_quarters"])).abs() < 3e-3, "{lost}");
}

/// Example A whole: the published tree with lengths that make its longest run 60 ft, sized by the longest-length method.
#[test]
fn a_published_tree_is_sized_as_published() {
    let pipe = [
        segment("3", "meter", "j1", 15.0),
        segment("D", "j1", "D", 10.0),
        segment("2", "j1", "j2", 10.0),
        segment("C", "j2", "C", 15.0),
        segment("1", "j2", "j3", 20.0),
        segment("B", "j3", "B", 10.0),
        segment("A", "j3", "A", 15.0),
    ];
    let loads = HashMap::from([("A", 32.0e3), ("B", 3.0e3), ("C", 59.0e3), ("D", 136.0e3)]);
    let demand = Demand {
        gas: Gas::Natural,
        heating_value: 1000.0,
        drop: 0.5,
        smallest: PipeSize::Half,
        allowance: 0.0,
        loads: &loads,
    };
    let paths = sizing::paths(&pipe, &["A", "B", "C", "D"]).expect("a sound tree");
    let sized = sizing::size(&pipe, &paths, &demand);
    assert!((sized.longest - 60.0).abs() < 1e-9);
    let words: Vec<&str> = sized.segments.iter().map(|s| s.size.map_or("", PipeSize::words)).collect();
    assert_eq!(words, ["1 in", "3/4 in", "3/4 in", "1/2 in", "1/2 in", "1/2 in", "1/2 in"]);
    let flows: Vec<f64> = sized.segments.iter().map(|s| s.flow.round()).collect();
    assert_eq!(flows, [230.0, 136.0, 94.0, 59.0, 35.0, 3.0, 32.0]);
}
