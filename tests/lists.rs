//! Lists as files: what they hold is what the sheets show, read back by readers that share no code with the program.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::BTreeMap;
use std::fs;
use std::io::Cursor;
use std::path::Path;

use calamine::{Data, Reader, Xlsx};
use faceline::drawing::{Grid, GridCell, Group, Item, Page, Value};
use faceline::solve::Solved;
use faceline::units::Length;
use faceline::{rules, sheets, write};

mod program;
use program::{checker, faceline, folder, jobs, python, solved};

fn grids(solved: &Solved) -> Vec<Grid> {
    let findings = rules::check(solved);
    sheets::listings(solved, &findings).iter().map(|listing| listing.grid(solved.show)).collect()
}

fn workbook(lists: &[Grid]) -> Vec<u8> {
    let contents =
        write::xlsx::Contents { title: "=T", facts: &[("Client", "=1+1")], date: "2026-03-19", lists, notice: "" };
    write::xlsx::workbook(&contents).expect("a workbook")
}

/// calamine reads the workbook's cells as the lists have them.
#[test]
fn the_workbook_holds_the_lists_as_another_reader_sees_it() {
    for job in jobs() {
        let lists = grids(&solved(&job));
        let mut book: Xlsx<_> = Xlsx::new(Cursor::new(workbook(&lists))).expect("a workbook");
        let names = book.sheet_names();
        assert_eq!(names.len(), lists.len() + 1, "{}", job.display());
        for (grid, name) in lists.iter().zip(&names[1..]) {
            let page = book.worksheet_range(name).expect("a page");
            assert_eq!(page.height(), grid.rows.len() + 1, "{} {name}", job.display());
            for (column, heading) in grid.headings.iter().enumerate() {
                assert_eq!(page.get((0, column)), Some(&Data::String(heading.clone())), "{name}");
            }
            for (row, cells) in grid.rows.iter().enumerate() {
                for (column, cell) in cells.iter().enumerate() {
                    let read = page.get((row + 1, column)).unwrap_or(&Data::Empty);
                    let same = match (cell, read) {
                        (GridCell::Empty, Data::Empty) => true,
                        (GridCell::Words(words), Data::String(text)) => words == text,
                        (GridCell::Number(value, _), Data::Float(number)) => value == number,
                        (GridCell::Number(value, _), Data::Int(number)) => *value == *number as f64,
                        _ => false,
                    };
                    assert!(same, "{} {name}, row {row}, column {column}: {cell:?}, read as {read:?}", job.display());
                }
            }
        }
    }
}

/// Python's csv module and openpyxl read what the program writes, and find the two alike.
#[test]
fn text_files_and_workbook_agree_by_outside_readers() {
    let Some(python) = python() else { return };
    let home = tempfile::tempdir().expect("a folder");
    for job in jobs() {
        let stem = job.file_stem().expect("a name").to_string_lossy().into_owned();
        let out = home.path().join(&stem);
        let drawn =
            faceline().arg("draw").arg(&job).args(["--csv", "--xlsx", "--out"]).arg(&out).output().expect("runs");
        assert!(drawn.status.code().is_some_and(|code| code < 2), "{}", String::from_utf8_lossy(&drawn.stderr));
        let book = format!("{stem}.xlsx");
        let (fine, said) = checker(&python, "lists_check.py", &[out.as_os_str(), book.as_ref()]);
        assert!(fine, "{}: {said}", job.display());
        // The page for the browser leads to each of them.
        let page = fs::read_to_string(out.join("index.html")).expect("a page");
        for name in folder(&out).keys().filter(|name| name.ends_with(".csv") || name.ends_with(".xlsx")) {
            assert!(page.contains(&format!("href=\"{name}\"")), "{name} is not linked");
        }
    }
}

#[test]
fn lists_come_and_go_with_the_set_and_are_the_same_bytes_each_time() {
    let home = tempfile::tempdir().expect("a folder");
    let draw = |out: &Path, more: &[&str]| {
        let done =
            faceline().args(["draw", "samples/terrace.ron"]).args(more).arg("--out").arg(out).output().expect("runs");
        assert!(done.status.code().is_some_and(|code| code < 2), "{}", String::from_utf8_lossy(&done.stderr));
        folder(out).into_iter().filter(|(name, _)| name.ends_with(".csv") || name.ends_with(".xlsx")).collect()
    };
    let (one, two) = (home.path().join("one"), home.path().join("two"));
    let first: BTreeMap<String, Vec<u8>> = draw(&one, &["--csv", "--xlsx"]);
    assert!(first.len() > 5 && first.contains_key("terrace.xlsx"));
    assert_eq!(first, draw(&two, &["--csv", "--xlsx"]));
    let last: BTreeMap<String, Vec<u8>> = draw(&one, &[]);
    assert!(last.is_empty(), "lists of the last set are left: {:?}", last.keys());
}

/// A job whose names begin like formulas. A spreadsheet that opens either file must not work anything out.
#[test]
fn no_name_of_a_job_becomes_a_formula() {
    let home = tempfile::tempdir().expect("a folder");
    let text = fs::read_to_string("samples/terrace.ron").expect("a sample");
    let job = home.path().join("sly.ron");
    let sly = text
        .replace("name: \"drawer stack\"", "name: \"=2+3\"")
        .replace("name: \"waste pull-out\"", "name: \"@sum(1)\"")
        .replace("name: \"low vent\"", "name: \"-1 low vent\"")
        .replace("name: \"access doors\"", "name: \"+1, \\\"doors\\\"\"");
    assert_ne!(sly, text);
    fs::write(&job, sly).expect("written");
    let solved = solved(&job);
    let lists = grids(&solved);
    let fittings = lists.iter().find(|grid| grid.name == "fittings").expect("fittings");
    let names: Vec<String> = fittings.rows.iter().map(|row| row[2].text()).collect();
    for name in ["=2+3", "@sum(1)", "-1 low vent", "+1, \"doors\""] {
        assert!(names.iter().any(|other| other == name), "{name} is not among {names:?}");
    }
    for grid in &lists {
        let text = String::from_utf8(write::csv::list(grid)).expect("UTF-8");
        for sign in ['=', '+', '-', '@'] {
            let bare = [format!("\"{sign}"), format!(",{sign}\""), format!("\n{sign}\"")];
            assert!(
                !bare.iter().any(|start| text.contains(start.as_str())),
                "{}: a cell starts with {sign}",
                grid.name
            );
        }
    }
    let mut book: Xlsx<_> = Xlsx::new(Cursor::new(workbook(&lists))).expect("a workbook");
    for name in book.sheet_names() {
        let formulas = book.worksheet_formula(&name).expect("a page");
        assert!(formulas.cells().all(|(_, _, formula)| formula.is_empty()), "{name} has a formula");
    }
    if let Some(python) = python() {
        let out = home.path().join("out");
        let drawn =
            faceline().arg("draw").arg(&job).args(["--csv", "--xlsx", "--out"]).arg(&out).output().expect("runs");
        assert!(drawn.status.code().is_some_and(|code| code < 2), "{}", String::from_utf8_lossy(&drawn.stderr));
        let (fine, said) = checker(&python, "lists_check.py", &[out.as_os_str(), "sly.xlsx".as_ref()]);
        assert!(fine, "{said}");
    }
}

/// The texts of pages, line by line: what stands on one baseline, from the left.
fn lines(pages: &[Page]) -> Vec<Vec<String>> {
    let mut lines: BTreeMap<(usize, i64), Vec<(f64, String)>> = BTreeMap::new();
    fn walk(group: &Group, page: usize, lines: &mut BTreeMap<(usize, i64), Vec<(f64, String)>>) {
        for item in &group.items {
            match item {
                Item::Group(inner) => walk(inner, page, lines),
                Item::Text(text) => {
                    let words = text.runs.iter().map(|run| run.text.as_str()).collect::<String>();
                    lines.entry((page, (text.at.y * 100.0).round() as i64)).or_default().push((text.at.x, words));
                }
                Item::Path(_) => {}
            }
        }
    }
    for (index, page) in pages.iter().enumerate() {
        walk(&page.root, index, &mut lines);
    }
    let sorted = |mut line: Vec<(f64, String)>| {
        line.sort_by(|a, b| a.0.total_cmp(&b.0));
        line.into_iter().map(|(_, words)| words).collect()
    };
    lines.into_values().map(sorted).collect()
}

/// Whether words stand in this order on one line.
fn stands(lines: &[Vec<String>], words: &[String]) -> bool {
    lines.iter().any(|line| {
        let mut rest = line.iter();
        words.iter().all(|word| rest.any(|other| other == word))
    })
}

/// Rows of lists whose columns stand beside each other on the schedules too: list, columns by index, how many rows of
/// the list make one line of the sheet.
const SHOWN: &[(&str, &[usize])] =
    &[("modules", &[1, 3]), ("boards", &[1, 3, 4, 5]), ("feet", &[2, 3, 4, 6]), ("cutouts", &[4])];

#[test]
fn lists_show_the_lengths_that_the_schedules_show() {
    let mut held = 0;
    for job in jobs() {
        let solved = solved(&job);
        let findings = rules::check(&solved);
        let pages = sheets::draw(&solved, &findings, |kind| kind.word() == "schedules").expect("sheets");
        let lines = lines(&pages);
        let shown = |value: &Value| match value {
            Value::Length(length) => solved.show.text(*length),
            Value::Words(words) => words.clone(),
            Value::Count(count) => count.to_string(),
            _ => String::new(),
        };
        let lists = sheets::listings(&solved, &findings);
        for (name, columns) in SHOWN {
            let list = lists.iter().find(|list| list.name == *name).expect("a list");
            for row in &list.rows {
                let words: Vec<String> = columns.iter().map(|&column| shown(&row[column])).collect();
                assert!(stands(&lines, &words), "{}, {name}: no line of the schedules says {words:?}", job.display());
                held += usize::from(!words.is_empty());
            }
        }
        // Each edge of a cutout is one line on the sheet, from four datums; the list has a row for each of them.
        let located = lists.iter().find(|list| list.name == "located").expect("a list");
        for rows in located.rows.chunks(4) {
            let words: Vec<String> =
                std::iter::once(shown(&rows[0][3])).chain(rows.iter().map(|row| shown(&row[6]))).collect();
            assert!(stands(&lines, &words), "{}: no line of the schedules says {words:?}", job.display());
            held += 1;
        }
    }
    assert!(held > 300, "{held}");
}

/// What a spreadsheet adds up is what the run measures: the widths of the modules, between the frame's ends.
#[test]
fn a_column_of_lengths_adds_up() {
    let solved = solved(Path::new("samples/terrace.ron"));
    let lists = grids(&solved);
    let modules = lists.iter().find(|grid| grid.name == "modules").expect("modules");
    let width = modules.headings.iter().position(|heading| heading == "width, in").expect("a column");
    let sum: f64 = modules
        .rows
        .iter()
        .map(|row| match row[width] {
            GridCell::Number(value, 4) => value,
            ref other => panic!("{other:?}"),
        })
        .sum();
    let datums = &solved.legs[0].datums;
    let frame: Length = datums.frame_right - datums.frame_left;
    assert!((sum - frame.inches()).abs() < 1e-9, "{sum} in, the frame is {} in", frame.inches());
}
