//! The house plan: an arrow between rooms points only up the list, and some rooms never meet.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// The rooms from the top of the house down.
const ROOMS: [&str; 11] =
    ["units", "geometry", "findings", "model", "parameters", "solve", "rules", "drawing", "sheets", "write", "cli"];

/// Arrows that would point up the list and are still not wanted: (from, to, why).
const CLOSED: &[(&str, &str, &str)] = &[
    ("solve", "model", "the solver reads plain values, never what was written"),
    ("rules", "model", "rules read only the solved run"),
    ("rules", "parameters", "rules read only the solved run"),
    ("drawing", "model", "a page knows nothing of kitchens"),
    ("drawing", "parameters", "a page knows nothing of kitchens"),
    ("drawing", "solve", "a page knows nothing of kitchens"),
    ("drawing", "rules", "a page knows nothing of kitchens"),
    ("sheets", "model", "sheets never read the model"),
    ("sheets", "parameters", "sheets never read the model"),
    ("sheets", "rules", "sheets are given findings, they don't make them"),
    ("write", "model", "writers never hear of a kitchen"),
    ("write", "parameters", "writers never hear of a kitchen"),
    ("write", "solve", "writers never hear of a kitchen"),
    ("write", "rules", "writers never hear of a kitchen"),
    ("write", "sheets", "writers never hear of a kitchen"),
    ("geometry", "findings", "geometry says nothing to people"),
];

fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("a folder of sources") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
}

/// Rooms that a source names as `crate::room`, comments and tests left out, braces after `crate::` opened.
fn rooms_named(text: &str) -> Vec<String> {
    let code = text.split("#[cfg(test)]").next().unwrap_or("");
    let code: String = code.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n");
    let mut named = Vec::new();
    for (at, _) in code.match_indices("crate::") {
        let rest = &code[at + "crate::".len()..];
        if let Some(list) = rest.strip_prefix('{') {
            let list = list.split("};").next().unwrap_or("");
            let mut depth = 0;
            let mut word = String::new();
            for c in list.chars().chain([',']) {
                match c {
                    '{' => depth += 1,
                    '}' => depth -= 1,
                    ',' if depth == 0 => {
                        named.push(word.trim().split("::").next().unwrap_or("").trim().to_owned());
                        word.clear();
                    }
                    c if depth == 0 => word.push(c),
                    _ => {}
                }
            }
        } else {
            named.push(rest.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect());
        }
    }
    named.retain(|room| ROOMS.contains(&room.as_str()));
    named
}

/// Every arrow, with a file that draws it.
fn arrows() -> BTreeMap<(String, String), PathBuf> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut arrows = BTreeMap::new();
    for room in ROOMS {
        let mut files = Vec::new();
        sources(&root.join(room), &mut files);
        assert!(!files.is_empty(), "the room `{room}` is empty");
        for file in files {
            for other in rooms_named(&fs::read_to_string(&file).expect("a source")) {
                if other != room {
                    arrows.entry((room.to_owned(), other)).or_insert_with(|| file.clone());
                }
            }
        }
    }
    arrows
}

#[test]
fn arrows_point_only_up_the_list() {
    let place = |room: &str| ROOMS.iter().position(|other| *other == room).expect("a room");
    for ((from, to), file) in arrows() {
        assert!(place(&to) < place(&from), "{} makes `{from}` depend on `{to}`, which stands below it", file.display());
    }
}

#[test]
fn closed_doors_stay_closed() {
    let arrows = arrows();
    for (from, to, why) in CLOSED {
        if let Some(file) = arrows.get(&((*from).to_owned(), (*to).to_owned())) {
            panic!("{} lets `{from}` see `{to}`: {why}", file.display());
        }
    }
}

#[test]
fn the_check_sees_arrows_of_every_form() {
    let text = "use crate::units::Length;\nuse crate::{model, solve::{self, Leg}};\n// crate::cli\nfn f() { crate::write::svg() }";
    assert_eq!(rooms_named(text), ["units", "model", "solve", "write"]);
}

#[test]
fn only_the_command_line_touches_the_world() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for room in ROOMS.iter().filter(|room| **room != "cli") {
        let mut files = Vec::new();
        sources(&root.join(room), &mut files);
        for file in files {
            let text = fs::read_to_string(&file).expect("a source");
            let code = text.split("#[cfg(test)]").next().unwrap_or("");
            for word in ["std::fs", "std::env", "std::process", "SystemTime", "Instant::now", "println!", "std::net"] {
                let named = code.lines().any(|line| line.contains(word) && !line.trim_start().starts_with("//"));
                assert!(!named, "{} uses {word}", file.display());
            }
        }
    }
}

#[test]
fn model_is_the_only_room_that_knows_ron() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for room in ROOMS.iter().filter(|room| **room != "model") {
        let mut files = Vec::new();
        sources(&root.join(room), &mut files);
        for file in files {
            let text = fs::read_to_string(&file).expect("a source");
            let named = text.lines().any(|line| line.contains("ron::") && !line.trim_start().starts_with("//"));
            assert!(!named, "{} knows RON", file.display());
        }
    }
}
