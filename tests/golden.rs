//! Small cases, one issue each: `tests/golden/<case>.ron` and the sheet that it draws beside it.
//!
//! The first line of a case says which sheet: `// sheet: section`. To accept a change, look at the pictures and run
//! `FACELINE_ACCEPT=1 cargo test --test golden`.

use std::fs;
use std::path::{Path, PathBuf};

mod program;
use program::faceline;

fn cases() -> Vec<PathBuf> {
    let mut cases: Vec<PathBuf> = fs::read_dir("tests/golden")
        .expect("a folder of cases")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
        .collect();
    cases.sort();
    cases
}

/// The one page that a case draws.
fn page(case: &Path) -> String {
    let text = fs::read_to_string(case).expect("a case");
    let first = text.lines().next().unwrap_or("");
    let sheet = first.strip_prefix("// sheet: ").unwrap_or_else(|| panic!("{} names no sheet", case.display()));
    let out = tempfile::tempdir().expect("a folder");
    let done =
        faceline().arg("draw").arg(case).args(["--sheet", sheet, "--out"]).arg(out.path()).output().expect("it runs");
    let said = format!("{}{}", String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
    assert!(matches!(done.status.code(), Some(0 | 1)), "{}:\n{said}", case.display());
    let pages = program::folder(out.path());
    let (_, bytes) = pages.iter().find(|(name, _)| name.ends_with(".svg")).expect("a page");
    String::from_utf8(bytes.clone()).expect("text")
}

#[test]
fn each_case_draws_what_was_looked_at_and_accepted() {
    let cases = cases();
    assert!(cases.len() >= 6, "the cases are gone");
    let accept = std::env::var_os("FACELINE_ACCEPT").is_some();
    let mut changed = Vec::new();
    for case in cases {
        let kept = case.with_extension("svg");
        let drawn = page(&case);
        if accept {
            fs::write(&kept, &drawn).expect("written");
        } else if fs::read_to_string(&kept).unwrap_or_default() != drawn {
            changed.push(kept.display().to_string());
        }
    }
    assert!(
        changed.is_empty(),
        "these draw otherwise than accepted; look at them, then FACELINE_ACCEPT=1: {changed:#?}"
    );
}
