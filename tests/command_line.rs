//! The command line as a user meets it: what it says, what it leaves behind, how it ends.

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

mod program;
use program::{faceline, folder};

fn sample() -> String {
    fs::read_to_string("samples/terrace.ron").expect("the sample")
}

fn run(command: &mut Command) -> (i32, String, String) {
    let Output { status, stdout, stderr } = command.output().expect("the program runs");
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let (out, err) = (text(&stdout), text(&stderr));
    assert!(!err.contains("panicked"), "{err}");
    (status.code().expect("an exit status"), out, err)
}

/// Checks a job with these bytes: status, and everything said.
fn check(bytes: &[u8]) -> (i32, String) {
    let home = tempfile::tempdir().expect("a folder");
    let job = home.path().join("job.ron");
    fs::write(&job, bytes).expect("written");
    let (status, out, err) = run(faceline().arg("check").arg(&job));
    (status, out + &err)
}

/// The sample with one stretch of text put in another's place.
fn changed(from: &str, to: &str) -> (i32, String) {
    let text = sample();
    assert!(text.contains(from), "the sample no longer has {from:?}");
    check(text.replacen(from, to, 1).as_bytes())
}

fn assert_says(said: &(i32, String), status: i32, words: &[&str]) {
    assert_eq!(said.0, status, "{}", said.1);
    for word in words {
        assert!(said.1.contains(word), "{word:?} is not in:\n{}", said.1);
    }
}

#[test]
fn a_new_job_solves_and_is_never_overwritten() {
    let home = tempfile::tempdir().expect("a folder");
    let job = home.path().join("patio.ron");
    let (status, ..) = run(faceline().arg("new").arg(&job));
    assert_eq!(status, 0);
    let (status, out, err) = run(faceline().arg("draw").arg(&job).arg("--out").arg(home.path().join("sheets")));
    assert_eq!(status, 0, "{out}{err}");
    fs::write(&job, "mine").expect("written");
    let (status, _, err) = run(faceline().arg("new").arg(&job));
    assert_eq!(status, 3);
    assert!(err.contains("there already"), "{err}");
    assert_eq!(fs::read_to_string(&job).expect("there"), "mine");
}

#[test]
fn findings_that_do_not_stop_end_in_zero_and_those_that_stop_in_one() {
    let (status, said) = check(sample().as_bytes());
    assert_eq!(status, 0, "{said}");
    // The notch made wider than its module.
    let said = changed("width: \"31 1/4 in\"", "width: \"44 in\"");
    assert_says(&said, 1, &["stop", "grill"]);
}

#[test]
fn with_a_finding_that_stops_the_sheets_are_drawn_and_stamped() {
    let home = tempfile::tempdir().expect("a folder");
    let job = home.path().join("job.ron");
    fs::write(&job, sample().replacen("width: \"31 1/4 in\"", "width: \"37 1/2 in\"", 1)).expect("written");
    let out = home.path().join("sheets");
    let (status, said, err) = run(faceline().arg("draw").arg(&job).arg("--out").arg(&out));
    assert_eq!(status, 1, "{said}{err}");
    let sheets = folder(&out);
    let front = sheets.iter().find(|(name, _)| name.contains("front-elevation")).expect("a front elevation");
    assert!(String::from_utf8_lossy(front.1).contains("NOT FOR CUTTING"));
}

#[test]
fn bad_files_get_a_message() {
    assert_says(&check(b""), 2, &["error"]);
    assert_says(&check(&[0xff, 0xfe, 0, 1, 2]), 2, &["error", "not text"]);
    assert_says(&check(&vec![b' '; 50_000_000]), 2, &["error", "too large"]);
    assert_says(&check("(".repeat(100_000).as_bytes()), 2, &["error"]);
    assert_says(&check("[".repeat(100_000).as_bytes()), 2, &["error"]);
    let (status, _, err) = run(faceline().args(["check", "no/such/job.ron"]));
    assert_eq!(status, 2);
    assert!(err.contains("no such file"), "{err}");
    let (status, ..) = run(faceline().args(["check", "samples"]));
    assert_eq!(status, 2);
}

#[test]
fn bad_values_get_place_cause_and_remedy() {
    assert_says(&changed("depth: \"26 in\"", "deptth: \"26 in\""), 2, &["deptth", "depth", "job.ron:"]);
    assert_says(&changed("thickness: \"1 1/4 in\"", "thickness: \"1 1/4\""), 2, &["plain number", " in"]);
    assert_says(&changed("thickness: \"1 1/4 in\"", "thickness: \"1 1/4 lb\""), 2, &["lb"]);
    assert_says(&changed("width: \"20 in\"", "width: \"-20 in\""), 2, &["-20 in"]);
    assert_says(&changed("width: \"20 in\"", "width: \"0 in\""), 2, &["0 in"]);
    assert_says(&changed("width: \"20 in\"", "width: \"1e300 in\""), 2, &["1e300"]);
    assert_says(&changed("width: \"20 in\"", "width: \"nan in\""), 2, &["nan"]);
    assert_says(&changed("id: \"C\"", "id: \"B\""), 2, &["B"]);
    assert_says(&changed("in: \"C\"", "in: \"Q\""), 2, &["Q"]);
    assert_says(&changed("\"4 1/2 in\"", "\"rail + front_top\""), 2, &["front_top"]);
    assert_says(&changed("\"4 1/2 in\"", "\"4 1/2 in / (rail - rail) * 1 in\""), 2, &["zero"]);
    assert_says(&changed("grill.drop + rail", "gril.drop + rail"), 2, &["gril", "grill"]);
    assert_says(&changed("room: \"9 ft\"", "room: \"5 ft\""), 2, &["what is left"]);
    assert_says(&changed("left: open", "left: opne"), 2, &["opne", "open"]);
}

#[test]
fn all_errors_come_at_once() {
    let text = sample()
        .replacen("thickness: \"1 1/4 in\"", "thickness: \"1 1/4\"", 1)
        .replacen("width: \"20 in\"", "width: \"-20 in\"", 1)
        .replacen("in: \"C\"", "in: \"Q\"", 1);
    let (status, said) = check(text.as_bytes());
    assert_eq!(status, 2);
    assert!(said.matches("error").count() >= 3, "{said}");
}

#[test]
fn overrides_reach_the_drawing_and_unknown_ones_are_refused() {
    let (status, _, err) = run(faceline().args(["check", "samples/terrace.ron", "--set", "rial=3 in"]));
    assert_eq!(status, 2);
    assert!(err.contains("rial") && err.contains("rail"), "{err}");
    let (status, ..) = run(faceline().args(["check", "samples/terrace.ron", "--set", "front_top=5 in"]));
    assert_eq!(status, 0);
    let (status, ..) = run(faceline().args(["check", "samples/terrace.ron", "--set", "front_top"]));
    assert_eq!(status, 2);
}

#[test]
fn a_hostile_title_neither_breaks_a_sheet_nor_leaves_the_folder() {
    let home = tempfile::tempdir().expect("a folder");
    let job = home.path().join("job.ron");
    let title = r#"title: "<&\"'/../../x\n]]>--\u{1}\u{7f}Ω 台""#;
    fs::write(&job, sample().replacen("title: \"Orchard Steps kitchen\"", title, 1)).expect("written");
    let out = home.path().join("sheets");
    let (status, said, err) = run(faceline().arg("draw").arg(&job).arg("--out").arg(&out));
    assert_eq!(status, 0, "{said}{err}");
    assert!((said + &err).contains("font lacks"));
    for (name, bytes) in folder(&out) {
        if name.ends_with(".svg") {
            roxmltree::Document::parse(&String::from_utf8(bytes).expect("text")).expect("well formed");
        }
    }
    assert_eq!(fs::read_dir(home.path()).expect("there").count(), 2);
}

#[test]
fn a_folder_that_cannot_be_written_is_said_so_and_nothing_is_lost() {
    let home = tempfile::tempdir().expect("a folder");
    let file = home.path().join("taken");
    fs::write(&file, "mine").expect("written");
    let (status, _, err) = run(faceline().args(["draw", "samples/terrace.ron", "--out"]).arg(&file));
    assert_eq!(status, 3);
    assert!(err.contains("not a folder"), "{err}");
    assert_eq!(fs::read_to_string(&file).expect("there"), "mine");
    let (status, _, err) = run(faceline().args(["draw", "samples/terrace.ron", "--out"]).arg(file.join("below")));
    assert_eq!(status, 3, "{err}");
    let (status, ..) = run(faceline().args(["draw", "samples/terrace.ron", "--out", "/proc/nothing/here"]));
    assert_eq!(status, 3);
}

#[test]
fn a_job_that_fails_costs_no_file_of_the_last_set() {
    let home = tempfile::tempdir().expect("a folder");
    let (job, out) = (home.path().join("job.ron"), home.path().join("sheets"));
    fs::write(&job, sample()).expect("written");
    assert_eq!(run(faceline().arg("draw").arg(&job).arg("--out").arg(&out)).0, 0);
    let before = folder(&out);
    fs::write(&job, "(").expect("written");
    assert_eq!(run(faceline().arg("draw").arg(&job).arg("--out").arg(&out)).0, 2);
    assert_eq!(folder(&out), before);
}

#[test]
fn json_is_one_object_for_good_and_for_bad_jobs() {
    for (job, status) in [("samples/terrace.ron", 0), ("Cargo.toml", 2)] {
        let (found, out, _) = run(faceline().args(["check", job, "--format", "json"]));
        assert_eq!(found, status);
        let value: serde_json::Value = serde_json::from_str(&out).expect("one JSON object");
        assert!(value.is_object(), "{out}");
    }
}

#[test]
fn no_colour_reaches_a_pipe() {
    let (_, out, err) = run(faceline().args(["check", "no/such/job.ron"]).env("TERM", "xterm-256color"));
    assert!(!(out + &err).contains('\u{1b}'));
}

#[test]
fn help_completions_manual_and_licences_are_there() {
    for (arguments, word) in [
        (&["--help"][..], "Examples"),
        (&["draw", "--help"], "--sheet"),
        (&["completions", "bash"], "faceline"),
        (&["man"], ".TH"),
        (&["licences"], "SIL OPEN FONT LICENSE"),
    ] {
        let (status, out, _) = run(faceline().args(arguments));
        assert_eq!(status, 0);
        assert!(out.contains(word), "{arguments:?}");
    }
    assert_eq!(run(faceline().arg("frobnicate")).0, 2);
    assert!(Path::new("src/drawing/font/OFL.txt").is_file());
}

#[test]
fn one_kind_of_sheet_may_be_drawn_alone_under_the_number_it_has_in_the_set() {
    let home = tempfile::tempdir().expect("a folder");
    let (whole, part) = (home.path().join("whole"), home.path().join("part"));
    assert_eq!(run(faceline().args(["draw", "samples/terrace.ron", "--out"]).arg(&whole)).0, 0);
    assert_eq!(run(faceline().args(["draw", "samples/terrace.ron", "--sheet", "counter", "--out"]).arg(&part)).0, 0);
    let (whole, part) = (folder(&whole), folder(&part));
    let sheets: Vec<&String> = part.keys().filter(|name| name.ends_with(".svg")).collect();
    assert!(!sheets.is_empty());
    for name in sheets {
        assert_eq!(part[name], whole[name], "{name}");
    }
}

/// Draws a sample with one stretch of text put in another's place, its library beside it: status, what is said, sheets.
fn broken(sample: &str, from: &str, to: &str) -> (i32, String, usize) {
    let home = tempfile::tempdir().expect("a folder");
    fs::create_dir(home.path().join("library")).expect("made");
    for (name, bytes) in folder(Path::new("samples/library")) {
        fs::write(home.path().join("library").join(name), bytes).expect("written");
    }
    let text = fs::read_to_string(format!("samples/{sample}.ron")).expect("a sample");
    assert!(text.contains(from), "{sample} no longer has {from:?}");
    let (job, out) = (home.path().join("job.ron"), home.path().join("sheets"));
    fs::write(&job, text.replacen(from, to, 1)).expect("written");
    let (status, said, err) = run(faceline().arg("draw").arg(&job).arg("--out").arg(&out));
    let sheets = if out.is_dir() { folder(&out).keys().filter(|name| name.ends_with(".svg")).count() } else { 0 };
    (status, said + &err, sheets)
}

#[test]
fn the_island_broken_on_purpose_says_what_and_draws_only_what_can_be_solved() {
    // A sink that reaches past its module: stopped, and drawn so that it can be seen.
    let (status, said, sheets) = broken("island", "width: \"420 mm\"", "width: \"640 mm\"");
    assert!(status == 1 && said.contains("sink") && sheets > 5, "{status} {sheets} {said}");
    // A length times a length is no length.
    let (status, said, sheets) =
        broken("island", "\"front_doors.cutout_width\"", "\"front_doors.cutout_width * P.width\"");
    assert!(status == 2 && said.contains("length") && sheets == 0, "{status} {sheets} {said}");
}

#[test]
fn the_courtyard_broken_on_purpose_says_what_and_draws_nothing_without_its_library() {
    let (status, said, sheets) = broken("courtyard", "library/fronts.ron", "library/frnts.ron");
    assert!(status == 2 && said.contains("frnts.ron") && sheets == 0, "{status} {sheets} {said}");
    let (status, said, sheets) = broken("courtyard", "from: \"door_17\"", "from: \"door_71\"");
    assert!(
        status == 2 && said.contains("door_71") && said.contains("door_17") && sheets == 0,
        "{status} {sheets} {said}"
    );
    // A range that can't be: nothing lies between.
    let (status, said, _) = broken("courtyard", "\"16 in to 20 in\"", "\"20 in to 16 in\"");
    assert!(status == 2 && said.contains("20 in"), "{status} {said}");
}
