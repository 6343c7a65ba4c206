//! A job as one self-contained page: every sheet inline, a contents list, what was found with links to the sheets that it
//! is on. It works from a file, offline, by keyboard, read aloud, and prints one sheet a page. It has no script.

use super::numbers::coordinate;

/// One sheet.
pub struct Sheet<'a> {
    /// Its name in links: letters, figures, hyphens.
    pub id: &'a str,
    /// Its title.
    pub title: &'a str,
    /// Width of its paper, mm.
    pub width: f64,
    /// Height of its paper, mm.
    pub height: f64,
    /// Its drawing, an `<svg>` element.
    pub svg: &'a str,
    /// Numbers, from 1, of the remarks that are on it.
    pub remarks: &'a [usize],
}

/// Something that was found.
pub struct Remark<'a> {
    /// How much it matters, one word.
    pub weight: &'a str,
    /// What was found.
    pub message: &'a str,
    /// What to do.
    pub instead: &'a str,
    /// Where the demand comes from.
    pub source: &'a str,
}

/// All that a page shows.
pub struct Contents<'a> {
    /// Title of the job.
    pub title: &'a str,
    /// Facts under the title: a name and a value each.
    pub facts: &'a [(&'a str, &'a str)],
    /// A file beside the page that holds the same sheets for printing, if there is one.
    pub document: Option<&'a str>,
    /// Style rules that the drawings need: the carried font.
    pub style: &'a str,
    /// Files of lists beside the page: what each holds, and its name.
    pub lists: &'a [(&'a str, &'a str)],
    /// The sheets in order.
    pub sheets: &'a [Sheet<'a>],
    /// The remarks in order of their numbers.
    pub remarks: &'a [Remark<'a>],
    /// A last line.
    pub notice: &'a str,
}

/// The page.
pub fn page(contents: &Contents<'_>) -> String {
    let title = escaped(contents.title);
    let mut out = String::with_capacity(contents.sheets.iter().map(|sheet| sheet.svg.len()).sum::<usize>() + 16_384);
    out.push_str("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    out.push_str("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n");
    out.push_str("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:\">\n");
    out.push_str(&format!(
        "<title>{title}</title>\n<style>{}{LOOK}{}</style>\n</head>\n<body>\n",
        contents.style,
        paper(contents.sheets)
    ));
    out.push_str("<a class=\"skip\" href=\"#sheets\">Skip to the sheets</a>\n<header>\n");
    out.push_str(&format!("<h1>{title}</h1>\n<dl class=\"facts\">"));
    for (name, value) in contents.facts.iter().filter(|(_, value)| !value.trim().is_empty()) {
        out.push_str(&format!("<div><dt>{}</dt><dd>{}</dd></div>", escaped(name), escaped(value)));
    }
    out.push_str("</dl>\n");
    if let Some(document) = contents.document {
        let link = escaped(&link(document));
        out.push_str(&format!("<p><a href=\"{link}\">All sheets as one PDF</a>, to print at 100&nbsp;%.</p>\n"));
    }
    if !contents.lists.is_empty() {
        let to = |(title, file): &(&str, &str)| format!("<a href=\"{}\">{}</a>", escaped(&link(file)), escaped(title));
        let links: Vec<String> = contents.lists.iter().map(to).collect();
        out.push_str(&format!("<p>Lists as files: {}.</p>\n", links.join(", ")));
    }
    out.push_str("</header>\n");
    out.push_str(&remarks(contents));
    out.push_str("<nav aria-label=\"Sheets\">\n<h2>Sheets</h2>\n<ol>\n");
    for sheet in contents.sheets {
        out.push_str(&format!("<li><a href=\"#{}\">{}</a></li>\n", escaped(sheet.id), escaped(sheet.title)));
    }
    out.push_str("</ol>\n</nav>\n<main id=\"sheets\" tabindex=\"-1\">\n");
    for (index, sheet) in contents.sheets.iter().enumerate() {
        out.push_str(&section(contents.sheets, index, sheet));
    }
    out.push_str(&format!("</main>\n<footer><p>{}</p></footer>\n</body>\n</html>\n", escaped(contents.notice)));
    out
}

fn remarks(contents: &Contents<'_>) -> String {
    let mut out = String::from("<section aria-labelledby=\"found\" class=\"found\">\n<h2 id=\"found\">Findings</h2>\n");
    if contents.remarks.is_empty() {
        out.push_str("<p>Nothing was found.</p>\n</section>\n");
        return out;
    }
    out.push_str("<ol>\n");
    for (index, remark) in contents.remarks.iter().enumerate() {
        let number = index + 1;
        out.push_str(&format!(
            "<li id=\"finding-{number}\" class=\"{weight}\"><strong>{weight}</strong> {} <span class=\"instead\">{}</span> <span class=\"source\">Source: {}.</span>",
            escaped(&sentence(remark.message)),
            escaped(&sentence(remark.instead)),
            escaped(remark.source),
            weight = escaped(remark.weight),
        ));
        let on: Vec<String> = contents
            .sheets
            .iter()
            .enumerate()
            .filter(|(_, sheet)| sheet.remarks.contains(&number))
            .map(|(index, sheet)| {
                let (place, title) = (index + 1, escaped(sheet.title));
                format!(
                    "<a href=\"#{}\" title=\"{title}\" aria-label=\"Sheet {place}, {title}\">{place}</a>",
                    escaped(sheet.id)
                )
            })
            .collect();
        if !on.is_empty() {
            let sheets = if on.len() == 1 { "sheet" } else { "sheets" };
            out.push_str(&format!("<br><span class=\"on\">On {sheets} {}</span>", on.join(", ")));
        }
        out.push_str("</li>\n");
    }
    out.push_str("</ol>\n</section>\n");
    out
}

/// With a capital and a full stop.
fn sentence(words: &str) -> String {
    let mut letters = words.trim().chars();
    let Some(first) = letters.next() else { return String::new() };
    let stop = if words.trim_end().ends_with(['.', '?', '!']) { "" } else { "." };
    format!("{}{}{stop}", first.to_uppercase(), letters.as_str())
}

fn section(sheets: &[Sheet<'_>], index: usize, sheet: &Sheet<'_>) -> String {
    let id = escaped(sheet.id);
    let mut out = format!(
        "<section class=\"sheet {}\" id=\"{id}\" aria-labelledby=\"{id}-title\" tabindex=\"-1\">\n<h2 id=\"{id}-title\">{} {}</h2>\n",
        size_name(sheet),
        index + 1,
        escaped(sheet.title)
    );
    out.push_str("<p class=\"moves\">");
    if let Some(before) = index.checked_sub(1).and_then(|index| sheets.get(index)) {
        out.push_str(&format!(
            "<a rel=\"prev\" href=\"#{}\">Previous: {}</a> ",
            escaped(before.id),
            escaped(before.title)
        ));
    }
    if let Some(after) = sheets.get(index + 1) {
        out.push_str(&format!("<a rel=\"next\" href=\"#{}\">Next: {}</a> ", escaped(after.id), escaped(after.title)));
    }
    out.push_str("<a href=\"#found\">Findings</a></p>\n");
    out.push_str(&format!(
        "<figure role=\"group\" aria-labelledby=\"{id}-title\">{}</figure>\n</section>\n",
        sheet.svg
    ));
    out
}

/// Class of a sheet's size.
fn size_name(sheet: &Sheet<'_>) -> String {
    format!("p{}x{}", (sheet.width * 10.0).round(), (sheet.height * 10.0).round())
}

/// A named page for each size of paper, so that a sheet prints at its true size.
fn paper(sheets: &[Sheet<'_>]) -> String {
    let mut rules = String::new();
    let mut known: Vec<String> = Vec::new();
    for sheet in sheets {
        let name = size_name(sheet);
        if known.contains(&name) {
            continue;
        }
        let (width, height) = (coordinate(sheet.width), coordinate(sheet.height));
        rules.push_str(&format!(
            "@page {name}{{size:{width}mm {height}mm;margin:0}}@media print{{.{name}{{page:{name}}}.{name} svg{{width:{width}mm;height:{height}mm}}}}"
        ));
        known.push(name);
    }
    rules
}

/// Screen and print.
const LOOK: &str = "\
:root{color-scheme:light}\
*{box-sizing:border-box}\
body{margin:0 auto;max-width:110rem;padding:1.5rem;font:1rem/1.5 'Faceline Sans',system-ui,sans-serif;color:#1a1a1a;background:#f2f1ee}\
h1{font-size:2rem;line-height:1.2;margin:0 0 .75rem}h2{font-size:1.25rem;margin:0 0 .5rem}\
a{color:#1b4b7a}a:focus-visible,[tabindex]:focus-visible{outline:3px solid #1b4b7a;outline-offset:2px}\
main:focus,section:focus{outline-offset:4px}\
.skip{position:absolute;left:-100rem}.skip:focus{left:1rem;top:1rem;background:#fff;padding:.5rem}\
.facts{display:flex;flex-wrap:wrap;gap:.25rem 2rem;margin:0 0 1rem}.facts dt{color:#595959;font-size:.85rem}.facts dd{margin:0}\
nav,.found{background:#fff;border:1px solid #d0cec8;padding:1rem 1.25rem;margin:0 0 1.5rem}\
nav ol{columns:18rem;margin:0;padding-left:1.75rem}.found ol{margin:0;padding-left:1.75rem}.found li{margin:0 0 .6rem}\
.found strong{display:inline-block;padding:0 .4rem;border:1px solid #1a1a1a;font-size:.85rem}.stop strong{background:#1a1a1a;color:#fff}\
.instead{font-weight:600}.source{color:#595959}.on{font-size:.95rem}\
.sheet{margin:0 0 2.5rem;scroll-margin-top:1rem}.moves{display:flex;flex-wrap:wrap;gap:0 1.5rem;margin:0 0 .5rem}\
figure{margin:0;background:#fff;box-shadow:0 1px 5px #0004}figure svg{display:block;width:100%;height:auto}\
footer{color:#595959}\
@media print{body{margin:0;padding:0;max-width:none;background:none}header,nav,footer,.found,.skip,.moves,.sheet h2{display:none}\
.sheet{margin:0;break-before:page;break-inside:avoid}.sheet:first-child{break-before:auto}figure{box-shadow:none}}";

/// A file's name as a link: what isn't plain is written in percent.
fn link(name: &str) -> String {
    name.bytes()
        .map(|b| match b {
            b'a'..=b'z' | b'A'..=b'Z' | b'0'..=b'9' | b'-' | b'_' | b'.' => char::from(b).to_string(),
            b => format!("%{b:02X}"),
        })
        .collect()
}

fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{Contents, Remark, Sheet, page};

    #[test]
    fn what_a_job_says_cannot_become_markup_and_findings_lead_to_their_sheets() {
        let sheet =
            Sheet { id: "01-plan", title: "Plan <b>", width: 420.0, height: 297.0, svg: "<svg></svg>", remarks: &[1] };
        let remark = Remark { weight: "stop", message: "too \"deep\"", instead: "less", source: "geometry" };
        let html = page(&Contents {
            title: "A & <script>",
            facts: &[("Client", "O'Neil"), ("Site", "")],
            document: Some("a job #1.pdf"),
            lists: &[("All <lists>", "a job.xlsx")],
            style: "",
            sheets: &[sheet],
            remarks: &[remark],
            notice: "",
        });
        assert!(!html.contains("<script") && html.contains("A &amp; &lt;script&gt;") && html.contains("O&#39;Neil"));
        assert!(html.contains("href=\"a%20job%20%231.pdf\""));
        assert!(html.contains(
            "On sheet <a href=\"#01-plan\" title=\"Plan &lt;b&gt;\" aria-label=\"Sheet 1, Plan &lt;b&gt;\">1</a>"
        ));
        assert!(html.contains("Too &quot;deep&quot;.") && html.contains("Less."));
        assert!(html.contains("@page p4200x2970{size:420mm 297mm;margin:0}"));
        assert!(!html.contains("<dt>Site"));
        assert!(html.contains("Lists as files: <a href=\"a%20job.xlsx\">All &lt;lists&gt;</a>."));
    }
}
