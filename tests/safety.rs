//! What a user meets of the rules: the list, one at length, groups of findings, the permit sheet, and samples without noise.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fs;
use std::path::Path;

use faceline::rules;
use serde_json::Value;

mod program;
use program::faceline;

fn said(arguments: &[&str]) -> (Option<i32>, String, String) {
    let done = faceline().args(arguments).output().expect("it runs");
    let words = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (done.status.code(), words(&done.stdout), words(&done.stderr))
}

#[test]
fn the_rules_are_listed_one_a_line_name_first() {
    let (status, list, _) = said(&["rule"]);
    assert_eq!(status, Some(0));
    let mut names: Vec<&str> = list.lines().map(|line| line.split_whitespace().next().unwrap_or("")).collect();
    names.sort_unstable();
    let mut wanted: Vec<&str> = rules::ALL.iter().map(|rule| rule.name).collect();
    wanted.sort_unstable();
    assert_eq!(names, wanted);
}

#[test]
fn a_rule_is_explained_with_its_source_and_its_limits() {
    for rule in rules::ALL {
        let (status, text, _) = said(&["rule", rule.name]);
        assert_eq!(status, Some(0), "{}", rule.name);
        let joined = text.split_whitespace().collect::<Vec<_>>().join(" ");
        for part in [rule.about, rule.why, rule.instead, rule.origin.words()] {
            let part = part.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(joined.contains(&part), "{} doesn't say {part:?}:\n{text}", rule.name);
        }
        for limit in rule.limits {
            assert!(text.contains(&rule.limit_name(limit)), "{}:\n{text}", rule.name);
        }
        assert!(text.contains("It never replaces local code"));
    }
    let (status, _, error) = said(&["rule", "gas-pipe-caries-its-load"]);
    assert_eq!(status, Some(2));
    assert!(error.contains("faceline rule gas-pipe-carries-its-load"), "{error}");
}

#[test]
fn findings_are_told_in_groups_by_what_they_concern() {
    let home = tempfile::tempdir().expect("a folder");
    let job = home.path().join("job.ron");
    let text = fs::read_to_string("samples/terrace.ron").expect("a sample");
    let text = text.replace("installed: \"3/4 in\"", "installed: \"1/2 in\"").replace("overhead: open,", "");
    fs::write(&job, text.replace("aisle: \"7 ft\"", "aisle: \"3 ft\"")).expect("written");
    let (status, out, _) = said(&["check", &job.display().to_string()]);
    assert_eq!(status, Some(1), "{out}");
    let at = |words: &str| out.find(words).unwrap_or_else(|| panic!("{words} is not in\n{out}"));
    assert!(at("-- Gas --") < at("stop[gas-pipe-carries-its-load]: segment 1 is 1/2 in pipe, which carries"));
    assert!(at("stop[gas-pipe-carries-its-load]") < at("-- Heat and clearance --"));
    assert!(
        at("-- Heat and clearance --") < at("`site.overhead` is not given for B1 (grill): nothing-that-burns-overhead")
    );
    assert!(at("-- Landing, reach, height --") < at("warn[aisle-wide-enough]: the aisle is 36 in wide"));
}

/// A finding that nobody would act on is a defect: what the samples give is listed here, and nothing else.
#[test]
fn the_samples_give_only_what_a_reader_would_act_on() {
    let expected: [(&str, &[&str]); 3] =
        [("terrace", &[]), ("island", &[]), ("courtyard", &["published-agrees-with-measured"])];
    for (sample, wanted) in expected {
        let (status, out, _) = said(&["check", &format!("samples/{sample}.ron"), "--format", "json"]);
        assert_eq!(status, Some(0), "{out}");
        let report: Value = serde_json::from_str(&out).expect("JSON");
        let found: Vec<&str> = report["findings"]
            .as_array()
            .expect("findings")
            .iter()
            // Both say that a sample's fittings are not there to be measured.
            .filter(|finding| finding["rule"] != "cutout-was-measured")
            .filter(|finding| finding["rule"] != "order-rests-on-measured-lengths")
            .map(|finding| finding["rule"].as_str().unwrap_or(""))
            .collect();
        assert_eq!(found, wanted, "{sample}: {out}");
    }
}

/// The text of a job's permit sheet, all pages.
fn permit(job: &Path) -> String {
    let out = tempfile::tempdir().expect("a folder");
    let done =
        faceline().arg("draw").arg(job).args(["--sheet", "permit", "--out"]).arg(out.path()).output().expect("it runs");
    assert!(matches!(done.status.code(), Some(0 | 1)), "{}", String::from_utf8_lossy(&done.stderr));
    let mut text = String::new();
    for entry in fs::read_dir(out.path()).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.extension().is_some_and(|ending| ending == "svg") {
            let svg = fs::read_to_string(&path).expect("a sheet");
            let document = roxmltree::Document::parse(&svg).expect("XML");
            let texts = document.descendants().filter(|node| node.has_tag_name("text"));
            for node in texts {
                text.extend(node.descendants().filter_map(|inner| inner.text().filter(|_| inner.is_text())));
                text.push('\n');
            }
        }
    }
    text
}

#[test]
fn the_permit_sheet_has_what_an_inspector_asks_for() {
    let text = permit(Path::new("samples/terrace.ron"));
    for part in [
        "129000 Btu/h",
        "regulator to tee",
        "26 sq in",
        "135 lb",
        "Rows 80 and 100 ft",
        "Distances to what burns",
        "Needs a licensed person\u{2019}s signature",
        "leak",
        "sealant",
    ] {
        assert!(text.contains(part), "{part} is not in\n{text}");
    }
    let text = permit(Path::new("samples/island.ron"));
    assert!(text.contains("pier-between-openings.one_hinge") && text.contains("recessed pulls"), "{text}");
}
