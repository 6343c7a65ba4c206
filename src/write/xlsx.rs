//! Lists as one workbook: a page that says what is in it, then one page a list, its headings kept in sight.
//!
//! Words are written as words, whatever they begin with, numbers as numbers. The date in it is the job's, so that the same
//! job makes the same bytes.

use rust_xlsxwriter::{
    DocProperties, ExcelDateTime, Format, FormatAlign, FormatBorder, Workbook, Worksheet, XlsxError,
};

use crate::drawing::{Grid, GridCell};

/// All that a workbook shows.
pub struct Contents<'a> {
    /// Title of the job.
    pub title: &'a str,
    /// Facts on the first page: a name and a value each.
    pub facts: &'a [(&'a str, &'a str)],
    /// Date of the job, as `2026-03-19`; another form leaves the workbook with a fixed one.
    pub date: &'a str,
    /// The lists.
    pub lists: &'a [Grid],
    /// A last line on the first page.
    pub notice: &'a str,
}

/// The workbook's bytes.
///
/// # Errors
/// What the form can't hold, in words: more than 1,048,575 rows.
pub fn workbook(contents: &Contents<'_>) -> Result<Vec<u8>, String> {
    made(contents).map_err(|error| error.to_string())
}

fn made(contents: &Contents<'_>) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    let properties =
        DocProperties::new().set_title(cut(contents.title)).set_creation_datetime(&created(contents.date)?);
    book.set_properties(&properties);
    let names = names(contents.lists);
    about(book.add_worksheet(), contents, &names)?;
    for (grid, name) in contents.lists.iter().zip(&names) {
        list(book.add_worksheet().set_name(name)?, grid)?;
    }
    book.save_to_buffer()
}

/// The job's date at midnight; a date in another form, or out of the form's range, gives a fixed one.
fn created(date: &str) -> Result<ExcelDateTime, XlsxError> {
    ExcelDateTime::parse_from_str(date.trim()).or_else(|_| ExcelDateTime::from_ymd(2000, 1, 1))
}

fn about(sheet: &mut Worksheet, contents: &Contents<'_>, names: &[String]) -> Result<(), XlsxError> {
    let (bold, plain) = (Format::new().set_bold(), body());
    sheet.set_name(ABOUT)?.set_column_width(0, 26)?.set_column_width(1, 90)?;
    sheet.write_string_with_format(0, 0, cut(contents.title), &Format::new().set_bold().set_font_size(14))?;
    let mut row = 1;
    for (name, value) in contents.facts.iter().filter(|(_, value)| !value.trim().is_empty()) {
        sheet.write_string_with_format(row, 0, *name, &plain)?;
        sheet.write_string_with_format(row, 1, cut(value), &plain)?;
        row += 1;
    }
    row += 1;
    sheet.write_string_with_format(row, 0, "Page", &bold)?;
    sheet.write_string_with_format(row, 1, "What has to be known to read it", &bold)?;
    for (grid, name) in contents.lists.iter().zip(names) {
        row += 1;
        let link = rust_xlsxwriter::Url::new(format!("internal:'{name}'!A1")).set_text(name);
        sheet.write_url(row, 0, link)?;
        sheet.write_string_with_format(row, 1, cut(&grid.notes.join(" ")), &plain)?;
    }
    sheet.write_string_with_format(row + 2, 0, cut(contents.notice), &Format::new())?;
    sheet.set_landscape().set_print_fit_to_pages(1, 0);
    Ok(())
}

fn list(sheet: &mut Worksheet, grid: &Grid) -> Result<(), XlsxError> {
    let head =
        Format::new().set_bold().set_text_wrap().set_align(FormatAlign::Bottom).set_border_bottom(FormatBorder::Thin);
    let plain = body();
    for (column, heading) in (0_u16..).zip(&grid.headings) {
        sheet.write_string_with_format(0, column, cut(heading), &head)?;
        sheet.set_column_width(column, width(grid, usize::from(column)))?;
    }
    for (row, cells) in (1_u32..).zip(&grid.rows) {
        for (column, cell) in (0_u16..).zip(cells) {
            match cell {
                GridCell::Empty => {}
                GridCell::Words(text) => {
                    sheet.write_string_with_format(row, column, cut(text), &plain)?;
                }
                GridCell::Number(value, places) => {
                    let format = body().set_num_format(number_format(*places));
                    sheet.write_number_with_format(row, column, *value, &format)?;
                }
            }
        }
    }
    let last = u16::try_from(grid.headings.len().saturating_sub(1)).unwrap_or(u16::MAX);
    sheet.autofilter(0, 0, u32::try_from(grid.rows.len()).unwrap_or(u32::MAX), last)?;
    sheet.set_freeze_panes(1, 0)?.set_repeat_rows(0, 0)?;
    sheet.set_landscape().set_print_fit_to_pages(1, 0);
    Ok(())
}

fn body() -> Format {
    Format::new().set_text_wrap().set_align(FormatAlign::Top)
}

/// `0`, `0.0`, `0.0000`.
fn number_format(places: u8) -> String {
    if places == 0 { "0".to_owned() } else { format!("0.{}", "0".repeat(usize::from(places))) }
}

/// Width of a column in characters: room for its longest cell, within reason; a heading may take two lines, and has the
/// filter's button beside it.
fn width(grid: &Grid, column: usize) -> f64 {
    let heading = grid.headings.get(column).map_or(0, |heading| heading.chars().count());
    let cells = grid.rows.iter().filter_map(|row| row.get(column)).map(|cell| cell.text().chars().count());
    let longest_word = grid
        .headings
        .get(column)
        .map_or(0, |heading| heading.split(' ').map(|word| word.chars().count()).max().unwrap_or(0));
    let widest = cells.max().unwrap_or(0).max(heading.div_ceil(2)).max(longest_word + 3);
    widest.clamp(6, 60) as f64 + 2.0
}

/// Name of the first page.
const ABOUT: &str = "About";

/// Names of the lists' pages: titles as far as the form lets them be, each once.
fn names(lists: &[Grid]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for grid in lists {
        let plain: String = grid
            .title
            .chars()
            .map(|c| if matches!(c, '[' | ']' | ':' | '*' | '?' | '/' | '\\' | '\'') { ' ' } else { c })
            .collect();
        let base = if plain.trim().is_empty() { "List" } else { plain.trim() };
        let taken = |name: &str| {
            name.eq_ignore_ascii_case(ABOUT) || names.iter().any(|other| other.to_lowercase() == name.to_lowercase())
        };
        // The form has room for 31 characters; three are kept for a number.
        let short: String = base.chars().take(28).collect();
        let whole = if base.chars().count() <= 31 { base } else { short.trim_end() };
        let name = std::iter::once(whole.to_owned())
            .chain((2..100).map(|number| format!("{} {number}", short.trim_end())))
            .find(|name| !taken(name));
        names.push(name.unwrap_or_else(|| whole.to_owned()));
    }
    names
}

/// As much of a text as a cell holds.
fn cut(text: &str) -> String {
    text.chars().filter(|c| !c.is_control() || *c == '\n').take(32_000).collect()
}

#[cfg(test)]
mod tests {
    use super::{Contents, names, workbook};
    use crate::drawing::Grid;

    fn titled(title: &str) -> Grid {
        Grid { title: title.to_owned(), headings: vec!["a".to_owned()], ..Grid::default() }
    }

    #[test]
    fn pages_have_names_that_the_form_allows_each_once() {
        let lists = ["Boards", "boards", "About", "What: has/to be [bought] and where it all goes", ""].map(titled);
        let names = names(&lists);
        assert_eq!(names[..3], ["Boards", "boards 2", "About 2"]);
        assert!(names.iter().all(|name| name.chars().count() <= 31 && !name.contains([':', '/', '[', ']'])));
        let contents = Contents { title: "T", facts: &[], date: "", lists: &lists, notice: "" };
        assert!(workbook(&contents).is_ok());
    }

    #[test]
    fn the_same_lists_make_the_same_bytes() {
        let lists = [titled("Boards")];
        let made = || {
            workbook(&Contents {
                title: "T",
                facts: &[("Client", "C")],
                date: "2026-03-19",
                lists: &lists,
                notice: "n",
            })
        };
        assert_eq!(made(), made());
    }
}
