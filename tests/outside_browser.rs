//! The page for the browser, in a real one.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

mod program;
use program::{checker, faceline, folder, python};

/// The browser that `tests/run` installs, or one that is named by FACELINE_CHROMIUM.
fn browser() -> Option<PathBuf> {
    let named = std::env::var_os("FACELINE_CHROMIUM").map(PathBuf::from);
    let usual = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].map(PathBuf::from);
    let found = named.into_iter().chain(usual).find(|path| path.is_file());
    if found.is_none() {
        let required = std::env::var_os("FACELINE_OUTSIDE").is_some_and(|value| value == "required");
        assert!(!required, "there is no Chromium; tests/run installs it");
        eprintln!("LEFT OUT: there is no Chromium; run tests/run");
    }
    found
}

fn open(browser: &Path, home: &Path, page: &Path, arguments: &[&str]) -> Output {
    let done = Command::new(browser)
        .args(["--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--enable-logging=stderr"])
        .arg(format!("--user-data-dir={}", home.join("profile").display()))
        .args(arguments)
        .arg(format!("file://{}", page.display()))
        .output()
        .expect("the browser runs");
    let said = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.success(), "{said}");
    assert!(!said.contains("CONSOLE"), "the browser complains: {said}");
    done
}

#[test]
fn the_page_opens_offline_and_prints_one_sheet_a_page() {
    let Some(browser) = browser() else { return };
    let home = tempfile::tempdir().expect("a folder");
    let out = home.path().join("out");
    let done = faceline().args(["draw", "samples/terrace.ron", "--out"]).arg(&out).output().expect("the program runs");
    assert!(done.status.success());
    let (page, picture, printed) = (out.join("index.html"), home.path().join("page.png"), home.path().join("page.pdf"));
    let files = folder(&out);
    let sheets: Vec<&String> = files.keys().filter(|name| name.ends_with(".svg")).collect();

    let seen = open(&browser, home.path(), &page, &["--dump-dom"]);
    let seen = String::from_utf8_lossy(&seen.stdout);
    assert_eq!(seen.matches("<section class=\"sheet").count(), sheets.len());
    assert_eq!(seen.matches("<svg ").count(), sheets.len());
    for sheet in &sheets {
        let id = sheet.trim_end_matches(".svg");
        assert!(seen.contains(&format!("id=\"{id}\"")) && seen.contains(&format!("href=\"#{id}\"")), "{id}");
    }
    // Nothing comes from elsewhere, and nothing runs.
    assert!(
        !seen.contains("<script")
            && !seen.contains("src=\"http")
            && !seen.contains("@import")
            && !seen.contains("url(http")
    );
    // Every link inside the page leads somewhere.
    for link in seen.split("href=\"#").skip(1).filter_map(|rest| rest.split('"').next()) {
        assert!(seen.contains(&format!("id=\"{link}\"")), "#{link} leads nowhere");
    }

    open(&browser, home.path(), &page, &["--window-size=1400,1800", &format!("--screenshot={}", picture.display())]);
    let reader = png::Decoder::new(std::io::Cursor::new(fs::read(&picture).expect("a picture")));
    let mut reader = reader.read_info().expect("a picture");
    let mut pixels = vec![0; reader.output_buffer_size().expect("a size")];
    let frame = reader.next_frame(&mut pixels).expect("pixels");
    assert_eq!((frame.width, frame.height), (1400, 1800));
    let dark = pixels.chunks_exact(frame.line_size / 1400).filter(|pixel| pixel[..3].iter().all(|v| *v < 96)).count();
    assert!(dark > 5_000, "the page is empty: {dark} dark pixels");

    open(&browser, home.path(), &page, &["--no-pdf-header-footer", &format!("--print-to-pdf={}", printed.display())]);
    let Some(python) = python() else { return };
    let sizes = vec!["420x297"; sheets.len()].join(",");
    let (fine, said) = checker(&python, "browser_check.py", &[printed.as_os_str(), sizes.as_ref()]);
    assert!(fine, "{said}");
}
