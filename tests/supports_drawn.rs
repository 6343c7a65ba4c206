//! Supports on the other sheets: what a section shows of them is where the solved run has them, under its own name.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod program;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use faceline::solve::{Face, Plane, Solved, Support, SupportRole};

/// The pages of one kind of sheet of a job, by file name.
fn pages(job: &Path, sheet: &str) -> BTreeMap<String, String> {
    let out = tempfile::tempdir().expect("a folder");
    let done = program::faceline()
        .arg("draw")
        .arg(job)
        .args(["--sheet", sheet, "--out"])
        .arg(out.path())
        .output()
        .expect("it runs");
    assert!(matches!(done.status.code(), Some(0 | 1)), "{}: {}", job.display(), String::from_utf8_lossy(&done.stderr));
    program::folder(out.path())
        .into_iter()
        .filter(|(name, _)| name.ends_with(".svg"))
        .map(|(name, bytes)| (name, String::from_utf8(bytes).expect("text")))
        .collect()
}

/// Marks of the supports that a page shows, each with its box in the view, mm.
fn shown(page: &str) -> BTreeMap<String, [f64; 4]> {
    let mut all = BTreeMap::new();
    for part in page.split('<').filter(|part| part.contains("data-feature=\"support ")) {
        let value = |name: &str| part.split(&format!("{name}=\"")).nth(1).and_then(|rest| rest.split('"').next());
        let mark = value("data-feature").unwrap().trim_start_matches("support ").to_owned();
        let corners: Vec<f64> =
            value("data-bbox-mm").expect("a box").split(',').map(|number| number.parse().expect("a number")).collect();
        all.insert(mark, corners.try_into().expect("four"));
    }
    all
}

fn marked<'s>(solved: &'s Solved, mark: &str) -> &'s Support {
    solved.shop.supports.all().find(|one| one.mark == mark).unwrap_or_else(|| panic!("nothing is marked {mark}"))
}

#[test]
fn a_section_shows_supports_where_they_are_and_none_that_it_cuts_is_left_out() {
    let mut seen = 0;
    for job in program::jobs() {
        let solved = program::solved(&job);
        let pages = pages(&job, "section");
        for (index, leg) in solved.legs.iter().enumerate() {
            for fitting in leg.fittings.iter().filter(|one| one.face == Face::Front) {
                let Some(_) = fitting.cutout(Plane::Counter) else { continue };
                let ending = format!("-{}.svg", fitting.mark.to_lowercase());
                let Some((name, page)) = pages.iter().find(|(name, _)| name.ends_with(&ending)) else { continue };
                let (of, u) = (format!("{}, {name}", job.display()), fitting.centre());
                let shown = shown(page);
                for (mark, found) in &shown {
                    let support = marked(&solved, mark);
                    if support.leg != index {
                        continue; // A leg behind counts its depths from its own face.
                    }
                    let (v, z) = (support.body.v, support.body.z);
                    let meant = [v.0.mm(), z.0.mm(), v.1.mm(), z.1.mm()];
                    assert!(
                        meant.iter().zip(found).all(|(a, b)| (a - b).abs() < 1e-3),
                        "{of}: {mark} is drawn at {found:?} and lies at {meant:?}"
                    );
                    let bracket = support.role == SupportRole::Bracket;
                    assert!(bracket || support.module == fitting.module, "{of}: {mark} is of another module");
                    seen += 1;
                }
                let members = solved.shop.supports.members.iter().filter(|one| one.leg == index);
                for cut in members.filter(|one| one.body.u.0 < u && u < one.body.u.1 && one.module == fitting.module) {
                    assert!(shown.contains_key(&cut.mark), "{of}: {} is cut and not drawn", cut.mark);
                    let words = format!(">{} {}<", cut.role.words(), cut.mark);
                    assert!(page.contains(&words), "{of}: {} is cut and has no name", cut.mark);
                }
            }
        }
    }
    assert!(seen >= 12, "the samples show supports in their sections: {seen}");
}

/// Marks that a page carries as `data-support`.
fn drawn(page: &str) -> BTreeSet<String> {
    let marks = page.split("data-support=\"").skip(1).filter_map(|rest| rest.split('"').next());
    marks.map(str::to_owned).collect()
}

#[test]
fn the_plan_shows_every_support_that_is_added_and_says_how_to_read_it() {
    for job in program::jobs() {
        let solved = program::solved(&job);
        let pages = pages(&job, "plan");
        let shown: BTreeSet<String> = pages.values().flat_map(|page| drawn(page)).collect();
        let members = &solved.shop.supports.members;
        for support in members {
            assert!(shown.contains(&support.mark), "{}: {} is not on the plan", job.display(), support.mark);
        }
        for mark in &shown {
            assert_ne!(marked(&solved, mark).role, SupportRole::Backing, "{}: {mark}", job.display());
        }
        let said = pages.values().any(|page| page.contains(">Fine dashes<"));
        assert_eq!(said, !members.is_empty(), "{}: how to read the fine dashes", job.display());
    }
}

#[test]
fn the_substrate_shows_what_is_added_right_under_it() {
    let mut seen = 0;
    for job in program::jobs() {
        let solved = program::solved(&job);
        let shown: BTreeSet<String> = pages(&job, "substrate").values().flat_map(|page| drawn(page)).collect();
        let touches = |one: &&Support| {
            let top = solved.legs[one.leg].datums.frame_top;
            one.body.z.1 == top || one.body.z.0 == top
        };
        let meant: BTreeSet<String> =
            solved.shop.supports.members.iter().filter(touches).map(|one| one.mark.clone()).collect();
        assert_eq!(shown, meant, "{}", job.display());
        seen += meant.len();
    }
    assert!(seen >= 5, "{seen}");
}
