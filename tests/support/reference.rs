//! Reference cases: read from `tests/reference`, or from the folder that `FACELINE_REFERENCE` names.

use serde_json::Value;

/// The cases of one topic, as `levelling`.
pub fn cases(topic: &str) -> Vec<Value> {
    let folder = std::env::var("FACELINE_REFERENCE")
        .unwrap_or_else(|_| concat!(env!("CARGO_MANIFEST_DIR"), "/tests/reference").to_owned());
    let path = std::path::Path::new(&folder).join(format!("{topic}.json"));
    let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    let file: Value = serde_json::from_str(&text).expect("reference cases are JSON");
    file["cases"].as_array().expect("a list of cases").clone()
}

/// The name of a case.
pub fn id(case: &Value) -> &str {
    case["id"].as_str().unwrap_or("?")
}

/// A number of a case; `None` when the case doesn't have it.
pub fn number(value: &Value, key: &str) -> Option<f64> {
    value.get(key).and_then(Value::as_f64)
}

/// A list of numbers.
pub fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().map(|all| all.iter().filter_map(Value::as_f64).collect()).unwrap_or_default()
}

/// A list of lists of numbers.
pub fn points(value: &Value) -> Vec<Vec<f64>> {
    value.as_array().map(|all| all.iter().map(numbers).collect()).unwrap_or_default()
}

/// Compares one number with what the case expects under `key`, within the case's tolerance for it. A key that the
/// case doesn't have is not compared. Answers whether it was compared.
pub fn compare(case: &Value, expected: &Value, key: &str, found: f64) -> bool {
    let Some(wanted) = number(expected, key) else { return false };
    close(case, key, wanted, found);
    true
}

/// Compares a list number by number. Answers whether it was compared.
pub fn compare_all(case: &Value, key: &str, found: &[f64]) -> bool {
    let Some(wanted) = case["expected"].get(key) else { return false };
    let wanted = numbers(wanted);
    assert_eq!(wanted.len(), found.len(), "{} {key}", id(case));
    wanted.iter().zip(found).for_each(|(wanted, found)| close(case, key, *wanted, *found));
    true
}

fn close(case: &Value, key: &str, wanted: f64, found: f64) {
    let tol = case["tol"].get(key).unwrap_or(&case["tol"]["*"]);
    let (abs, rel) = (number(tol, "abs").unwrap_or(0.0), number(tol, "rel").unwrap_or(0.0));
    let allowed = abs.max(rel * wanted.abs());
    assert!((wanted - found).abs() <= allowed, "{} {key}: wanted {wanted}, found {found}, within {allowed}", id(case));
}
