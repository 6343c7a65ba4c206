//! The drawings as files: looked at by readers that share no code with the program.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

mod program;
use program::{faceline, jobs, python};

fn drawn(job: &Path, out: &Path) -> Vec<PathBuf> {
    let done = faceline().arg("draw").arg(job).arg("--out").arg(out).output().expect("the program runs");
    let said = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success(), "{} is not drawn:\n{said}{}", job.display(), String::from_utf8_lossy(&done.stdout));
    let mut sheets: Vec<PathBuf> = fs::read_dir(out)
        .expect("a folder of sheets")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "svg"))
        .collect();
    sheets.sort();
    assert!(!sheets.is_empty(), "{} gives no sheets", job.display());
    sheets
}

#[test]
fn every_sheet_passes_the_outside_check() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    for (index, job) in jobs().iter().enumerate() {
        for sheet in drawn(job, &home.path().join(index.to_string())) {
            let text = fs::read_to_string(&sheet).expect("a sheet");
            let size = |name: &str| {
                let from = text.find(&format!("{name}=\"")).expect("a size") + name.len() + 2;
                text[from..].split("mm\"").next().expect("a size in mm").to_owned()
            };
            let done = Command::new(&python)
                .arg("tests/outside/svg_check.py")
                .arg(&sheet)
                .args(["--font", "src/drawing/font/FacelineSans-Regular.ttf", "--min-text-mm", "2.5", "--sheet"])
                .arg(format!("{}x{}", size(" width"), size(" height")))
                .output()
                .expect("the checker runs");
            let report = String::from_utf8_lossy(&done.stdout);
            assert!(done.status.success(), "{}:\n{report}{}", sheet.display(), String::from_utf8_lossy(&done.stderr));
        }
    }
}

#[test]
fn the_outside_check_refuses_spoiled_drawings() {
    let Some(python) = python() else { return };
    let check = |name: &str| {
        let file = Path::new("tests/outside/spoiled").join(name);
        assert!(file.is_file(), "{name} is missing");
        let done = Command::new(&python)
            .arg("tests/outside/svg_check.py")
            .arg(&file)
            .args(["--font", "src/drawing/font/FacelineSans-Regular.ttf"])
            .output()
            .expect("the checker runs");
        done.status.success()
    };
    assert!(check("good.svg"), "the good drawing must pass, or a refusal proves nothing");
    for name in [
        "bad_chain",
        "bad_feature_size",
        "bad_no_unit",
        "bad_not_wellformed",
        "bad_overlap",
        "bad_text",
        "bad_text_off_sheet",
        "bad_viewbox",
        "bad_witness",
    ] {
        assert!(!check(&format!("{name}.svg")), "{name} must be refused");
    }
}

#[test]
fn every_sheet_is_read_whole_by_an_xml_library_its_numbers_finite_its_words_uncut() {
    let home = tempfile::tempdir().expect("a folder");
    for (index, job) in jobs().iter().enumerate() {
        for sheet in drawn(job, &home.path().join(index.to_string())) {
            let text = fs::read_to_string(&sheet).expect("a sheet");
            let document =
                roxmltree::Document::parse(&text).unwrap_or_else(|error| panic!("{}: {error}", sheet.display()));
            let root = document.root_element();
            assert_eq!(root.tag_name().name(), "svg");
            for node in root.descendants().filter(roxmltree::Node::is_element) {
                for name in ["x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "d", "width", "stroke-width"] {
                    let value = node.attribute(name).unwrap_or("");
                    let odd = value.contains("NaN") || value.contains("inf") || value.contains('e');
                    assert!(!odd, "{}: {name}=\"{value}\"", sheet.display());
                }
            }
            // Only a label, small as it is, may cut the name of the job.
            if !sheet.to_string_lossy().contains("labels") {
                let mut words = root.descendants().filter_map(|node| node.text());
                let cut = words.find(|text| text.contains('\u{2026}'));
                assert_eq!(cut, None, "{}: words are cut short", sheet.display());
            }
            let hairline = root.descendants().filter_map(|n| n.attribute("stroke-width")?.parse::<f64>().ok());
            for width in hairline {
                assert!(width >= 0.13, "{}: a line of {width} mm does not print", sheet.display());
            }
        }
    }
}

#[test]
fn the_bytes_do_not_depend_on_clock_zone_language_home_or_working_folder() {
    let home = tempfile::tempdir().expect("a folder");
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let draw = |name: &str, zone: &str, language: &str, from: &Path| {
        let out = home.path().join(name);
        let done = faceline()
            .current_dir(from)
            .env("TZ", zone)
            .env("LANG", language)
            .env("LC_ALL", language)
            .env("HOME", home.path())
            .arg("draw")
            .arg(root.join("samples/courtyard.ron"))
            .arg("--out")
            .arg(&out)
            .output()
            .expect("the program runs");
        assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
        program::folder(&out)
    };
    let here = draw("one", "UTC", "C", root);
    let there = draw("two", "Pacific/Auckland", "tr_TR.UTF-8", home.path());
    assert!(here.len() > 5);
    assert_eq!(here.keys().collect::<Vec<_>>(), there.keys().collect::<Vec<_>>());
    for (name, bytes) in &here {
        assert!(there[name] == *bytes, "{name} differs");
    }
}

#[test]
fn the_committed_sheets_are_what_the_first_sample_draws() {
    let home = tempfile::tempdir().expect("a folder");
    let out = home.path().join("out");
    drawn(Path::new("samples/terrace.ron"), &out);
    let (fresh, kept) = (program::folder(&out), program::folder(Path::new("out")));
    let again = "run: cargo run -- draw samples/terrace.ron --out out";
    assert_eq!(kept.keys().collect::<Vec<_>>(), fresh.keys().collect::<Vec<_>>(), "out/ is not current; {again}");
    for (name, bytes) in &fresh {
        assert!(kept[name] == *bytes, "out/{name} is not current; {again}");
    }
}
