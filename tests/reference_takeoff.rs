//! Counts and volumes against independent values (`takeoff.json`: exact rationals, confirmed by pint), through the
//! functions that a run's quantities go through.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::solve::takeoff;
use faceline::units::{Exact, Length, converted, exact};
use serde_json::Value;
use support::reference::{cases, compare, id, number, numbers};

fn inches(value: &Value, key: &str) -> Length {
    Length::from_inches(number(value, key).unwrap_or_else(|| panic!("{key}")))
}

/// A number of a case as it is written there.
fn decimal(value: &Value) -> Exact {
    Exact::decimal(&value.to_string()).unwrap_or_else(|| panic!("{value}"))
}

fn amount(value: &Value, unit: &str) -> Exact {
    decimal(value) * exact::scale(unit).unwrap()
}

fn percent(value: &Value) -> Exact {
    decimal(value) / Exact::whole(100)
}

fn told(amount: &Exact, unit: &str) -> f64 {
    amount.per(&exact::scale(unit).unwrap())
}

fn quantity(part: &Value) -> i128 {
    part.get("qty").and_then(Value::as_i64).map_or(1, i128::from)
}

fn whole(case: &Value, key: &str, found: u64) {
    assert_eq!(case["expected"][key].as_u64(), Some(found), "{} {key}", id(case));
}

fn slab(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let volume = takeoff::layers(&amount(&input["area_in2"], "in2"), &[inches(input, "thickness_in")]);
    let waste = percent(&input["waste_pct"]);
    for (key, unit) in [("volume_ft3", "ft3"), ("volume_yd3", "yd3"), ("volume_m3", "m3")] {
        assert!(compare(case, expected, key, told(&volume, unit)));
    }
    compare(case, expected, "volume_with_waste_ft3", told(&takeoff::with_waste(&volume, &waste), "ft3"));
    let pounds = told(&volume, "ft3") * number(input, "density_lb_ft3").unwrap();
    compare(case, expected, "weight_lb", pounds);
    // The run's own way: mm3 and kg/m3.
    let density = converted(number(input, "density_lb_ft3").unwrap(), "lb/ft3", "kg/m3").unwrap();
    compare(case, expected, "weight_kg", faceline::solve::counter::mass(told(&volume, "m3") * 1e9, density));
    for (bag, yielded) in input["bag_yield_ft3"].as_object().unwrap() {
        let count = takeoff::units(&volume, &waste, &amount(yielded, "ft3"));
        assert_eq!(expected["bags"][bag].as_u64(), Some(count), "{} {bag}", id(case));
    }
}

fn cover(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let sum = |key: &str| -> Exact {
        let all = input[key].as_array().unwrap();
        all.iter()
            .map(|part| takeoff::rectangle(inches(part, "w_in"), inches(part, "h_in")) * Exact::whole(quantity(part)))
            .sum()
    };
    let net = sum("faces") - sum("openings");
    let waste = percent(&input["waste_pct"]);
    compare(case, expected, "net_area_ft2", told(&net, "ft2"));
    compare(case, expected, "net_area_m2", told(&net, "m2"));
    compare(case, expected, "area_to_buy_ft2", told(&takeoff::with_waste(&net, &waste), "ft2"));
    whole(case, "units", takeoff::units(&net, &waste, &amount(&input["coverage_ft2_per_unit"], "ft2")));
}

fn paint(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let area = amount(&input["area_ft2"], "ft2");
    let volume = takeoff::coats(&area, &decimal(&input["coats"]), &amount(&input["coverage_ft2_per_gal"], "ft2/gal"));
    compare(case, expected, "gallons", told(&volume, "gal"));
    compare(case, expected, "litres", told(&volume, "litres"));
    let cans = takeoff::cans(&volume, &exact::scale("qt").unwrap());
    whole(case, "quarts_to_buy", cans.quarts);
    whole(case, "gallon_cans", cans.gallon_cans);
    whole(case, "quart_cans", cans.quart_cans);
}

fn stucco(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let coats: Vec<Length> = numbers(&input["coat_thickness_in"]).into_iter().map(Length::from_inches).collect();
    let volume = takeoff::layers(&amount(&input["area_ft2"], "ft2"), &coats);
    let waste = percent(&input["waste_pct"]);
    compare(case, expected, "volume_ft3", told(&volume, "ft3"));
    compare(case, expected, "volume_with_waste_ft3", told(&takeoff::with_waste(&volume, &waste), "ft3"));
    whole(case, "bags", takeoff::units(&volume, &waste, &amount(&input["bag_yield_ft3"], "ft3")));
}

fn steel(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let cuts = input["cuts"].as_array().unwrap();
    let total: Exact = cuts.iter().map(|cut| Exact::length(inches(cut, "len_in")) * Exact::whole(quantity(cut))).sum();
    whole(case, "pieces", cuts.iter().map(|cut| quantity(cut) as u64).sum());
    compare(case, expected, "total_ft", told(&total, "ft"));
    compare(case, expected, "total_m", told(&total, "m"));
    let pounds = told(&total, "ft") * number(input, "lb_per_ft").unwrap();
    compare(case, expected, "weight_lb", pounds);
    compare(case, expected, "weight_kg", converted(pounds, "lb", "kg").unwrap());
    let stick = Exact::length(inches(input, "stick_in"));
    whole(case, "sticks_by_length_only", takeoff::units(&total, &Exact::zero(), &stick));
}

fn screws(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let (edge, spacing) = (inches(input, "edge_in"), inches(input, "max_spacing_in"));
    let mut total = 0;
    for (panel, wanted) in input["panels"].as_array().unwrap().iter().zip(expected["panels"].as_array().unwrap()) {
        let lines = panel["stud_lines"].as_u64().unwrap();
        let count = takeoff::screws(inches(panel, "h_in"), edge, spacing) * lines * quantity(panel) as u64;
        assert_eq!(wanted["screws"].as_u64(), Some(count), "{} {}", id(case), panel["id"]);
        total += count;
    }
    whole(case, "total", total);
    let spare = percent(&input["spare_pct"]);
    whole(case, "boxes", takeoff::units(&Exact::whole(i128::from(total)), &spare, &decimal(&input["per_box"])));
}

fn vents(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    let vents: Vec<_> = input["vents"]
        .as_array()
        .unwrap()
        .iter()
        .map(|vent| (inches(vent, "w_in"), inches(vent, "h_in"), decimal(&vent["free_ratio"]), quantity(vent) as u64))
        .collect();
    let free = takeoff::free_area(&vents);
    compare(case, expected, "free_area_in2", told(&free, "in2"));
    compare(case, expected, "free_area_cm2", told(&free, "cm2"));
    assert_eq!(expected["ok"].as_bool(), Some(free >= amount(&input["need_in2"], "in2")), "{}", id(case));
}

fn convert(case: &Value) {
    let (input, expected) = (&case["input"], &case["expected"]);
    // The reference's names of units in ours.
    let ours = |key: &str| match input[key].as_str().unwrap() {
        "Btu/hour" => "Btu/h",
        "inH2O" => "in wc",
        "pascal" => "Pa",
        "lb/foot**3" => "lb/ft3",
        "kg/m**3" => "kg/m3",
        "force_pound*inch" => "lbf in",
        "newton*meter" => "N m",
        other => ["kW", "inch", "mm"].into_iter().find(|unit| *unit == other).unwrap_or_else(|| panic!("{other}")),
    };
    let found = converted(number(input, "value").unwrap(), ours("from"), ours("to"));
    assert!(compare(case, expected, "result", found.unwrap_or_else(|| panic!("{}", id(case)))));
}

#[test]
fn every_case_of_the_takeoff_reference_comes_out() {
    let all = cases("takeoff");
    for case in &all {
        match case["kind"].as_str().unwrap() {
            "slab" => slab(case),
            "cover" => cover(case),
            "paint" => paint(case),
            "stucco" => stucco(case),
            "steel" => steel(case),
            "screws" => screws(case),
            "vents" => vents(case),
            "convert" => convert(case),
            other => panic!("{}: nothing compares a {other}", id(case)),
        }
    }
    assert!(all.len() >= 15, "{}", all.len());
}

/// Trade facts, section 5: 0.45 ft3 of mortar, a bag of 50 lb, cover 43, 58 and 86 ft2 at 1/8, 3/32 and 1/16 in.
#[test]
fn a_bag_of_mortar_covers_what_its_volume_allows() {
    let bag = Exact::read("0.45 ft3").unwrap();
    for (thick, feet) in [(8, 43.0), (6, 58.0), (4, 86.0)] {
        let per_foot = takeoff::layers(&Exact::read("1 ft2").unwrap(), &[Length::from_sixty_fourths(thick)]);
        let covers = (bag.clone() / per_foot).to_f64();
        assert!((covers - feet).abs() < 0.7, "{covers}");
    }
}
