//! Full-size templates as they come out of a printer: measured and put together by programs that share no code with
//! this one.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fs;
use std::path::{Path, PathBuf};

mod program;
use program::{checker, faceline, folder, jobs, python};

/// A printer that prints 150 mm as 149.2 mm across and 150.3 mm along the paper.
const PRINTER: &str = "printer: (across: \"149.2 mm\", along: \"150.3 mm\"), ";
const FACTORS: &str = "0.994666666667,1.002";

fn templates(job: &Path, paper: &str, out: &Path) {
    let done = faceline()
        .arg("templates")
        .arg(job)
        .args(["--paper", paper, "--out"])
        .arg(out)
        .output()
        .expect("the program runs");
    let said = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.code().is_some_and(|code| code < 2), "{} on {paper}:\n{said}", job.display());
}

/// The job with a word in its paper, beside its libraries.
fn with_paper(job: &Path, words: &str, home: &Path) -> PathBuf {
    let text = fs::read_to_string(job).expect("a job");
    let changed = if text.contains("paper: (") {
        text.replacen("paper: (", &format!("paper: ({words}"), 1)
    } else {
        let end = text.rfind(')').expect("an end");
        format!("{}    paper: ({words}),\n)", &text[..end])
    };
    let library = job.parent().expect("a folder").join("library");
    if library.is_dir() {
        let _ = fs::create_dir(home.join("library"));
        for (name, bytes) in folder(&library) {
            fs::write(home.join("library").join(name), bytes).expect("written");
        }
    }
    let path = home.join(job.file_name().expect("a name"));
    fs::write(&path, changed).expect("written");
    path
}

fn check(python: &Path, tiles: &Path, whole: &Path, more: &[&str]) -> (bool, String) {
    let mut arguments = vec![tiles.as_os_str(), whole.as_os_str()];
    arguments.extend(more.iter().map(std::ffi::OsStr::new));
    checker(python, "templates_check.py", &arguments)
}

#[test]
fn tiles_of_every_sample_go_together_to_the_whole() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    for job in jobs() {
        let name = job.file_stem().expect("a name");
        let whole = home.path().join("roll").join(name);
        templates(&job, "roll 42 in", &whole);
        for paper in ["letter", "A4", "tabloid"] {
            let out = home.path().join(paper).join(name);
            templates(&job, paper, &out);
            let (fine, said) = check(&python, &out, &whole, &[]);
            assert!(fine, "{} on {paper}:\n{said}", job.display());
        }
        // The roll against itself: its bars and its paper.
        let (fine, said) = check(&python, &whole, &whole, &[]);
        assert!(fine, "{} on a roll:\n{said}", job.display());
    }
}

#[test]
fn a_corrected_template_is_true_on_the_printer_that_it_is_for() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    for job in jobs() {
        let name = job.file_stem().expect("a name");
        let whole = home.path().join("whole").join(name);
        templates(&job, "roll 42 in", &whole);
        let corrected = with_paper(&job, PRINTER, home.path());
        for paper in ["letter", "A4", "tabloid", "roll 42 in"] {
            let out = home.path().join(paper).join(name);
            templates(&corrected, paper, &out);
            let (fine, said) = check(&python, &out, &whole, &["--printer", FACTORS]);
            assert!(fine, "{} on {paper}:\n{said}", job.display());
        }
    }
}

#[test]
fn a_page_that_is_printed_at_99_per_cent_is_refused() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    let job = Path::new("tests/worked_example.ron");
    let (out, whole) = (home.path().join("tiles"), home.path().join("whole"));
    templates(job, "letter", &out);
    templates(job, "roll 42 in", &whole);
    let one = ["--only", "board-left-end"];
    assert!(check(&python, &out, &whole, &one).0, "a true printer passes, or a refusal proves nothing");
    for (factors, what) in [("0.99,0.99", "along x"), ("1,0.995", "along y"), ("1.0005,1", "along x")] {
        let (fine, said) = check(&python, &out, &whole, &[&one[..], &["--printer", factors]].concat());
        assert!(!fine && said.contains("measures a bar") && said.contains(what), "{factors}: {said}");
    }
    // A template that is corrected for one printer is wrong on a true one.
    let corrected = with_paper(job, PRINTER, home.path());
    templates(&corrected, "letter", &out);
    let (fine, said) = check(&python, &out, &whole, &one);
    assert!(!fine, "{said}");
}

#[test]
fn the_outside_readers_refuse_spoiled_pages() {
    let Some(python) = python() else { return };
    let spoiled = Path::new("tests/outside/spoiled/pdf");
    for entry in fs::read_dir(spoiled).expect("a folder") {
        let path = entry.expect("an entry").path();
        let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
        if path.extension().is_none_or(|ending| ending != "pdf") || name == "full" {
            continue;
        }
        let measured =
            checker(&python, "pdf_measure.py", &[path.as_os_str(), path.with_extension("spec.json").as_os_str()]).0;
        let stitched = checker(&python, "pdf_stitch.py", &[path.with_extension("stitch.json").as_os_str()]).0;
        assert_eq!(
            measured && stitched,
            name.starts_with("good"),
            "{name}: measured {measured}, put together {stitched}"
        );
    }
}

#[test]
fn the_square_card_is_true_and_never_corrected() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    let corrected = with_paper(Path::new("tests/worked_example.ron"), PRINTER, home.path());
    let out = home.path().join("out");
    templates(&corrected, "A4", &out);
    let spec = home.path().join("spec.json");
    for (axis, length, words) in [("x", 152.4, "6 in"), ("y", 150.0, "150 mm")] {
        let bar = serde_json::json!({ "length_mm": length, "axis": axis, "near_text": words });
        let wanted = serde_json::json!({ "pages": [{ "page": 1, "mediabox_mm": [210.0, 297.0], "scale_bar": bar }] });
        fs::write(&spec, wanted.to_string()).expect("written");
        let (fine, said) =
            checker(&python, "pdf_measure.py", &[out.join("square-card.pdf").as_os_str(), spec.as_os_str()]);
        assert!(fine, "{axis}: {said}");
    }
}

/// What is said about paper that can't be used, and that nothing is written then.
#[test]
fn paper_that_cannot_be_used_is_explained_and_nothing_is_written() {
    let home = tempfile::tempdir().expect("a folder");
    let out = home.path().join("out");
    let cases: [(&[&str], &str, &str); 9] = [
        (&["--paper", "leter"], "`leter` is no paper for templates", "write \"letter\""),
        (&["--paper", "roll"], "is not the size of a roll", "roll 24 in"),
        (&["--paper", "A4", "--margin", "90 mm"], "leave no room on A4", "--margin"),
        (&["--paper", "A4", "--margin", "wide"], "`wide` is not a length for --margin", "6 mm"),
        (&["--paper", "roll 24 in x 40 in"], "would take a page of", "a seam or a joint"),
        (&["--paper", "roll 12 in"], "is wider than a roll 12 in both ways round", "tiles (as --paper letter)"),
        (&["--part", "countr"], "no part is called `countr`", "counter"),
        (&["--from-back", "lid"], "no part is called `lid`", "counter"),
        (&["--printer", "office"], "`office` is not one of the job's paper.printers", "the job names none"),
    ];
    for (arguments, message, instead) in cases {
        let done = faceline()
            .args(["templates", "tests/worked_example.ron"])
            .args(arguments)
            .arg("--out")
            .arg(&out)
            .output()
            .expect("runs");
        let said = String::from_utf8_lossy(&done.stderr);
        assert_eq!(done.status.code(), Some(2), "{arguments:?}: {said}");
        assert!(said.contains(message) && said.contains(instead), "{arguments:?}: {said}");
        assert!(!out.exists(), "{arguments:?} wrote something");
    }
}

#[test]
fn a_printer_that_is_off_by_more_than_three_per_cent_is_refused_with_the_likely_cause() {
    let home = tempfile::tempdir().expect("a folder");
    let job = Path::new("tests/worked_example.ron");
    for (words, wanted) in [
        ("printer: (across: \"145.4 mm\", along: \"150 mm\"), ", "fitted to the paper"),
        ("printer: (across: \"6 7/32 in\", along: \"6 in\"), ", "fitted to the paper"),
        ("printer: (across: \"5 kg\", along: \"150 mm\"), ", "a length is wanted here"),
        ("printer: (across: \"150\", along: \"150 mm\"), ", "has no unit"),
        ("printer: \"office\", ", "is not one of paper.printers"),
    ] {
        let job = with_paper(job, words, home.path());
        let done = faceline().arg("templates").arg(&job).output().expect("runs");
        let said = String::from_utf8_lossy(&done.stderr);
        assert!(done.status.code() == Some(2) && said.contains(wanted), "{words}: {said}");
    }
    let named = with_paper(
        job,
        "printer: \"office\", printers: {\"office\": (across: \"6 1/32 in\", along: \"6 in\")}, ",
        home.path(),
    );
    templates(&named, "letter", &home.path().join("named"));
}

#[test]
fn a_part_marked_from_the_back_is_the_mirror_image() {
    let home = tempfile::tempdir().expect("a folder");
    let out = home.path().join("out");
    let done = faceline()
        .args(["templates", "tests/worked_example.ron", "--from-back", "counter", "--part", "counter", "--out"])
        .arg(&out)
        .output()
        .expect("runs");
    assert_eq!(done.status.code(), Some(0), "{}", String::from_utf8_lossy(&done.stderr));
    let list: serde_json::Value =
        serde_json::from_slice(&fs::read(out.join("templates.json")).expect("a list")).expect("JSON");
    assert_eq!(list["templates"][0]["mirrored"], true);
    assert_eq!(list["templates"].as_array().map(Vec::len), Some(1));
}
