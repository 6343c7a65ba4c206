//! The sums that the flange rule states, against reference values: nominal, worst case, root sum of squares, and
//! whether each keeps the least that is asked. Probabilities and Monte Carlo figures are not computed here.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod support;

use faceline::rules::stack::{Term, stack};
use serde_json::Value;
use support::reference::{cases, compare, id, number};

/// A dimension of a case, times a factor.
fn term(dims: &Value, name: &str, factor: f64) -> Term {
    let dim = &dims[name];
    Term {
        factor,
        nominal: number(dim, "n").expect("a nominal value"),
        tolerance: number(dim, "t").expect("a tolerance"),
        count: number(dim, "count").unwrap_or(1.0) as u32,
    }
}

fn held(case: &Value, name: &str, terms: &[Term], least: f64) {
    let expected = &case["expected"][name];
    let sum = stack(terms);
    let (worst, rss) = (sum.nominal - sum.worst, sum.nominal - sum.rss);
    for (key, found) in [
        ("nominal_in", sum.nominal),
        ("worst_case_min_in", worst),
        ("worst_case_max_in", sum.nominal + sum.worst),
        ("rss_min_in", rss),
        ("rss_max_in", sum.nominal + sum.rss),
    ] {
        assert!(compare(case, expected, key, found), "{} {name} {key} is missing", id(case));
    }
    assert_eq!(expected["ok_worst_case"], worst >= least, "{} {name}", id(case));
    assert_eq!(expected["ok_rss"], rss >= least, "{} {name}", id(case));
}

#[test]
fn worst_case_and_root_sum_of_squares() {
    for case in cases("tolerance") {
        let (input, dims) = (&case["input"], &case["input"]["dims"]);
        let least = |key| number(input, key).expect("the least that is asked");
        if input["kind"] == "run" {
            let mut terms = vec![term(dims, "S", 1.0)];
            let others = dims.as_object().expect("dimensions").keys().filter(|name| *name != "S");
            terms.extend(others.map(|name| term(dims, name, -1.0)));
            held(&case, "gap", &terms, least("gap_min_in"));
            continue;
        }
        let (cut, body, flange) = ("C", "B", "F");
        let overlap = least("overlap_min_in");
        held(&case, "play", &[term(dims, cut, 1.0), term(dims, body, -1.0)], least("clearance_min_in"));
        let pushed = [term(dims, flange, 0.5), term(dims, body, 0.5), term(dims, cut, -1.0)];
        held(&case, "overlap_pushed", &pushed, overlap);
        held(&case, "overlap_centred", &[term(dims, flange, 0.5), term(dims, cut, -0.5)], overlap);
    }
}
