//! Pages, parts and findings as the files that a folder of sheets holds.

use super::args::{DrawArguments, DxfForm};
use super::progress::Progress;
use super::{lists, parallel};
use crate::drawing::Page;
use crate::findings::{Finding, Problem};
use crate::solve::Solved;
use crate::write::dxf::Version;
use crate::{sheets, write};

/// A file's name and bytes.
pub type Output = (String, Vec<u8>);

/// Every file of a job: each sheet as SVG, the set as PDF, the page for the browser when the set is whole, and pictures
/// and files for machines where they are asked for.
pub fn all(
    stem: &str,
    solved: &Solved,
    findings: &[Finding],
    pages: &[Page],
    asked: &DrawArguments,
    progress: &Progress,
) -> Result<Vec<Output>, Problem> {
    progress.expect(pages.len());
    let sheets = parallel::map(pages, |page| sheet(page, asked, progress));
    let mut files: Vec<Output> = Vec::new();
    for sheet in sheets {
        files.extend(sheet?);
    }
    // A part of the set says which part it is, so that it never takes the place of the whole.
    let part: String = asked.sheets.iter().map(|sheet| format!("-{sheet}")).collect();
    let document = format!("{stem}{part}.pdf");
    files.push((document.clone(), write::pdf::document(&solved.job.title, pages)));
    let lists = lists::files(stem, solved, findings, asked)?;
    if part.is_empty() {
        let page = browser_page(solved, findings, pages, &document, &lists);
        files.push(("index.html".to_owned(), page.into_bytes()));
    }
    files.extend(lists.into_iter().map(|list| list.file));
    if asked.cutting.dxf {
        files.extend(parts(solved, asked.cutting.dxf_version));
    }
    Ok(files)
}

/// One sheet as SVG, and as PNG where that is asked for.
fn sheet(page: &Page, asked: &DrawArguments, progress: &Progress) -> Result<Vec<Output>, Problem> {
    let mut files = vec![(format!("{}.svg", page.name), write::svg::page(page).into_bytes())];
    if asked.png {
        let picture = write::png::page(page, asked.dpi).map_err(|too_large| {
            Problem::new(
                format!("sheet {} at {} dots per inch is too large a picture", page.name, asked.dpi),
                format!("write --dpi {} or less", too_large.finest),
            )
        })?;
        files.push((format!("{}.png", page.name), picture));
    }
    progress.step();
    Ok(files)
}

/// The parts of a run for machines.
pub fn parts(solved: &Solved, form: DxfForm) -> Vec<Output> {
    let version = match form {
        DxfForm::R2000 => Version::R2000,
        DxfForm::R12 => Version::R12,
    };
    let file =
        |part: &crate::drawing::cutting::Cutting| (format!("{}.dxf", part.name), write::dxf::part(part, version));
    sheets::cuttings(solved).iter().map(file).collect()
}

/// The whole set and what was found, for the browser.
fn browser_page(
    solved: &Solved,
    findings: &[Finding],
    pages: &[Page],
    document: &str,
    lists: &[lists::List],
) -> String {
    use write::html::{Contents, Remark, Sheet};
    let drawings: Vec<String> = pages.iter().map(write::svg::inline).collect();
    // A page's title ends with the job's, which the whole page says once.
    let ending = format!(", {}", solved.job.title);
    let sheets: Vec<Sheet<'_>> = pages
        .iter()
        .zip(&drawings)
        .map(|(page, svg)| Sheet {
            id: &page.name,
            title: page.title.strip_suffix(&ending).unwrap_or(&page.title),
            width: page.width,
            height: page.height,
            svg,
            remarks: &page.remarks,
        })
        .collect();
    let remarks: Vec<Remark<'_>> = findings
        .iter()
        .map(|finding| Remark {
            weight: finding.severity.word(),
            message: &finding.message,
            instead: &finding.instead,
            source: finding.origin.words(),
        })
        .collect();
    let facts = lists::facts(solved);
    write::html::page(&Contents {
        title: &solved.job.title,
        facts: &facts.iter().map(|(name, value)| (*name, value.as_str())).collect::<Vec<_>>(),
        document: Some(document),
        lists: &lists.iter().map(|list| (list.title.as_str(), list.file.0.as_str())).collect::<Vec<_>>(),
        style: write::svg::style_sheet(),
        sheets: &sheets,
        remarks: &remarks,
        notice: lists::NOTICE,
    })
}
