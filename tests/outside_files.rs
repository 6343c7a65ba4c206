//! The set as PDF, parts as DXF, pictures: read back by programs that share no code with this one.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fs;
use std::path::Path;

use faceline::sheets::templates::{Family, pieces};

mod program;
use program::{checker, faceline, folder, jobs, python, solved};

fn drawn(job: &Path, out: &Path, more: &[&str]) {
    let done = faceline().arg("draw").arg(job).arg("--out").arg(out).args(more).output().expect("the program runs");
    assert!(done.status.code().is_some_and(|code| code < 2), "{}", String::from_utf8_lossy(&done.stderr));
}

/// What an audit of a part has to find: unit, layers, and the area of every closed cut.
fn wanted(outlines: &[f64], inches: bool) -> String {
    let mut loops: Vec<(f64, usize)> = Vec::new();
    for area in outlines {
        match loops.iter_mut().find(|(other, _)| (other - area).abs() <= 0.01) {
            Some((_, count)) => *count += 1,
            None => loops.push((*area, 1)),
        }
    }
    let loops: Vec<serde_json::Value> = loops
        .iter()
        .map(|(area, count)| serde_json::json!({ "layer": "cut", "area_mm2": area, "count": count }))
        .collect();
    let unit = if inches { "in" } else { "mm" };
    serde_json::json!({ "units": unit, "layers": ["cut", "text"], "closed_layers": ["cut", "outline"], "loops": loops, "tol_rel": 0.0 }).to_string()
}

#[test]
fn every_part_for_machines_passes_the_outside_audit_and_has_the_solved_areas() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    for job in jobs() {
        let solved = solved(&job);
        let inches = solved.show.step().nm() != 1_000_000;
        let templates = pieces::all(&solved);
        for form in ["r2000", "r12"] {
            let out = home.path().join(form).join(job.file_stem().expect("a name"));
            drawn(&job, &out, &["--dxf", "--dxf-version", form]);
            let mut seen = 0;
            for (name, _) in folder(&out).iter().filter(|(name, _)| name.ends_with(".dxf")) {
                let slug = name.trim_start_matches("cut-").trim_end_matches(".dxf");
                let of_part = templates.iter().filter(|template| {
                    template.slug == slug
                        || (template.family == Family::Counter && template.slug.starts_with(&format!("{slug}-piece")))
                });
                let areas: Vec<f64> = of_part
                    .flat_map(|template| {
                        template.region.outlines().map(|outline| outline.area().abs()).collect::<Vec<_>>()
                    })
                    .collect();
                assert!(!areas.is_empty(), "{name} is of no part");
                let spec = home.path().join("spec.json");
                fs::write(&spec, wanted(&areas, inches)).expect("written");
                let (fine, said) = checker(&python, "dxf_audit.py", &[out.join(name).as_os_str(), spec.as_os_str()]);
                assert!(fine, "{}, {form}, {name}:\n{said}", job.display());
                assert!(said.contains("\"auditor_fixes\": []"), "{name}: {said}");
                seen += 1;
            }
            let parts = solved.legs.iter().map(|leg| 1 + leg.boards.len()).sum::<usize>();
            assert!(seen > parts, "{}: {seen} files", job.display());
        }
    }
}

/// The areas that the files are held to are the solver's own.
#[test]
fn parts_are_what_the_solver_made() {
    for job in jobs() {
        let solved = solved(&job);
        let area = |family: Family| -> f64 {
            pieces::all(&solved).iter().filter(|t| t.family == family).map(|t| t.region.area()).sum()
        };
        let sum = |each: &dyn Fn(&faceline::solve::Leg) -> f64| solved.legs.iter().map(each).sum::<f64>();
        let counter = sum(&|leg| leg.counter.pieces.iter().map(|piece| piece.region.area()).sum());
        let boards = solved.shop.boards.iter().flatten().map(|board| board.region.area()).sum();
        let substrate = sum(&|leg| leg.substrate.region.area());
        for (family, own) in [(Family::Counter, counter), (Family::Board, boards), (Family::Substrate, substrate)] {
            assert!((area(family) - own).abs() < 0.01, "{}: {:?} {} {own}", job.display(), family, area(family));
        }
    }
}

#[test]
fn the_outside_audit_refuses_spoiled_parts() {
    let Some(python) = python() else { return };
    for entry in fs::read_dir("tests/outside/spoiled/dxf").expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|ending| ending != "dxf") {
            continue;
        }
        let good = path.file_name().is_some_and(|name| name.to_string_lossy().starts_with("good"));
        let (fine, said) =
            checker(&python, "dxf_audit.py", &[path.as_os_str(), path.with_extension("spec.json").as_os_str()]);
        assert_eq!(fine, good, "{}: {said}", path.display());
    }
}

#[test]
fn cutouts_are_the_same_in_svg_pdf_and_dxf() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    for job in jobs() {
        let out = home.path().join(job.file_stem().expect("a name"));
        drawn(&job, &out, &["--dxf"]);
        let (fine, said) = checker(&python, "same_cutouts.py", &[out.as_os_str()]);
        assert!(fine, "{}:\n{said}", job.display());
    }
}

#[test]
fn a_cutout_that_is_moved_in_one_file_is_noticed() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    let (one, other) = (home.path().join("one"), home.path().join("other"));
    drawn(Path::new("tests/worked_example.ron"), &one, &["--dxf"]);
    drawn(Path::new("tests/worked_example.ron"), &other, &["--dxf", "--set", "grill.drop=9 1/64 in"]);
    fs::copy(other.join("cut-board-front-b.dxf"), one.join("cut-board-front-b.dxf")).expect("copied");
    let (fine, said) = checker(&python, "same_cutouts.py", &[one.as_os_str()]);
    assert!(!fine && said.contains("no DXF has the cutout of grill"), "{said}");
}

#[test]
fn the_set_as_one_document_is_read_whole_by_two_readers() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    for job in jobs() {
        let stem = job.file_stem().expect("a name").to_string_lossy().into_owned();
        let out = home.path().join(&stem);
        drawn(&job, &out, &[]);
        let (fine, said) =
            checker(&python, "set_check.py", &[out.join(format!("{stem}.pdf")).as_os_str(), out.as_os_str()]);
        assert!(fine, "{}:\n{said}", job.display());
    }
}

#[test]
fn the_same_job_gives_the_same_bytes_wherever_it_is_drawn() {
    let home = tempfile::tempdir().expect("a folder");
    let (here, there) = (home.path().join("here"), home.path().join("there"));
    let more = ["--dxf", "--png", "--dpi", "60"];
    drawn(Path::new("samples/terrace.ron"), &here, &more);
    let done = faceline()
        .args(["draw", "samples/terrace.ron", "--out"])
        .arg(&there)
        .args(more)
        .env("TZ", "Asia/Tokyo")
        .env("LANG", "de_DE.UTF-8")
        .env("HOME", home.path())
        .output()
        .expect("the program runs");
    assert!(done.status.success());
    let (here, there) = (folder(&here), folder(&there));
    assert!(
        here.keys().any(|name| name.ends_with(".png"))
            && here.contains_key("index.html")
            && here.contains_key("terrace.pdf")
    );
    assert_eq!(here.keys().collect::<Vec<_>>(), there.keys().collect::<Vec<_>>());
    for (name, bytes) in &here {
        assert!(there[name] == *bytes, "{name} differs");
    }
}

#[test]
fn many_jobs_are_drawn_at_once_each_into_its_own_folder() {
    let home = tempfile::tempdir().expect("a folder");
    let out = home.path().join("out");
    let done = faceline()
        .args(["draw", "samples/terrace.ron", "tests/worked_example.ron", "--out"])
        .arg(&out)
        .output()
        .expect("runs");
    assert!(done.status.code().is_some_and(|code| code < 2), "{}", String::from_utf8_lossy(&done.stderr));
    let alone = home.path().join("alone");
    drawn(Path::new("tests/worked_example.ron"), &alone, &[]);
    assert!(folder(&out.join("worked_example")) == folder(&alone), "a job is drawn the same alone and among others");
    assert!(folder(&out.join("terrace")).contains_key("terrace.pdf"));
    // One that can't be read doesn't keep the others from being drawn, and decides the exit status.
    let mixed = home.path().join("mixed");
    let done = faceline()
        .args(["draw", "nowhere.ron", "tests/worked_example.ron", "--out"])
        .arg(&mixed)
        .output()
        .expect("runs");
    assert_eq!(done.status.code(), Some(2));
    assert!(folder(&mixed.join("worked_example")).contains_key("index.html"));
    // Two that would be drawn into one folder are refused before anything is written.
    let same = home.path().join("same");
    let done = faceline()
        .args(["draw", "tests/worked_example.ron", "./tests/worked_example.ron", "--out"])
        .arg(&same)
        .output()
        .expect("runs");
    let said = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.code() == Some(2) && said.contains("would both be drawn into"), "{said}");
    assert!(!same.exists());
    // Progress is for terminals only.
    assert!(!said.contains("drawing sheet"));
}
