//! A list as a text file with commas: RFC 4180, UTF-8 without a byte order mark, lines ended by CR LF, words in quotes,
//! numbers bare with a full stop for their point.
//!
//! Words that a spreadsheet would take for a formula get an apostrophe before them, which such programs read as "this is
//! text". The names of a job are words; no number of ours is changed by it. Whoever reads the file with a program of their
//! own takes one apostrophe away where one of `= + - @` (or a tab, or a line's end) follows it.

use crate::drawing::{Grid, GridCell};

/// The file's contents.
pub fn list(grid: &Grid) -> Vec<u8> {
    let mut writer = csv::WriterBuilder::new()
        .terminator(csv::Terminator::CRLF)
        .quote_style(csv::QuoteStyle::NonNumeric)
        .from_writer(Vec::new());
    // Writing to memory fails only where rows differ in length, which a grid's don't.
    let headings = writer.write_record(grid.headings.iter().map(|heading| as_text(heading)));
    let rows = grid.rows.iter().try_for_each(|row| writer.write_record(row.iter().map(cell)));
    debug_assert!(headings.is_ok() && rows.is_ok());
    writer.into_inner().unwrap_or_default()
}

fn cell(cell: &GridCell) -> String {
    match cell {
        GridCell::Words(text) => as_text(text),
        GridCell::Empty | GridCell::Number(..) => cell.text(),
    }
}

/// Words that no program takes for a formula: what starts one is `=`, `+`, `-`, `@` and their wide forms, also after white
/// space or a control character, which some programs skip.
fn as_text(text: &str) -> String {
    let first =
        text.trim_start_matches(|c: char| c.is_whitespace() || c.is_control() || c == '\u{feff}').chars().next();
    let starts = matches!(first, Some('=' | '+' | '-' | '@' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}'));
    let skipped = text.starts_with(['\t', '\r', '\n']);
    if starts || skipped { format!("'{text}") } else { text.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::list;
    use crate::drawing::{Grid, GridCell};

    fn written(cells: Vec<GridCell>) -> String {
        let headings = cells.iter().map(|_| "a".to_owned()).collect();
        String::from_utf8(list(&Grid { headings, rows: vec![cells], ..Grid::default() })).expect("UTF-8")
    }

    fn words(text: &str) -> GridCell {
        GridCell::Words(text.to_owned())
    }

    #[test]
    fn quotes_commas_and_line_ends_stay_inside_their_cell() {
        let text = written(vec![words("a \"b\", c\r\nd"), GridCell::Number(-0.5, 2), GridCell::Empty]);
        assert_eq!(text, "\"a\",\"a\",\"a\"\r\n\"a \"\"b\"\", c\r\nd\",-0.50,\"\"\r\n");
    }

    #[test]
    fn what_a_job_says_is_never_a_formula_and_a_negative_number_stays_one() {
        for name in ["=1+1", "+1", "-1", "@a", "\t=1", " =1", "\u{ff1d}1", "\rx"] {
            let text = written(vec![words(name)]);
            assert!(text.contains(&format!("\"'{name}\"")), "{name:?}: {text}");
        }
        assert!(written(vec![words("\u{2212}1/2 in")]).contains("\"\u{2212}1/2 in\""));
        assert!(written(vec![words("D-1")]).contains("\"D-1\""));
        assert!(written(vec![GridCell::Number(-3.0, 1), words("b")]).contains("-3.0,\"b\""));
    }
}
