//! Every list of a job as files: text with commas, and one workbook.

use super::args::DrawArguments;
use super::outputs::Output;
use crate::drawing::Grid;
use crate::findings::{Finding, Problem};
use crate::solve::Solved;
use crate::{sheets, write};

/// A last line of pages and workbooks.
pub const NOTICE: &str = "The drawings don't replace local code, the appliances' manuals or licensed trades.";

/// A file of lists.
pub struct List {
    /// What it holds, for a link.
    pub title: String,
    /// The file.
    pub file: Output,
}

/// The files that are asked for: the workbook first.
pub fn files(stem: &str, solved: &Solved, findings: &[Finding], asked: &DrawArguments) -> Result<Vec<List>, Problem> {
    if !asked.csv && !asked.xlsx {
        return Ok(Vec::new());
    }
    let grids: Vec<Grid> = sheets::listings(solved, findings).iter().map(|listing| listing.grid(solved.show)).collect();
    let mut files = Vec::new();
    if asked.xlsx {
        let file = (format!("{stem}.xlsx"), workbook(solved, &grids)?);
        files.push(List { title: "All lists as one workbook".to_owned(), file });
    }
    if asked.csv {
        files.extend(grids.iter().map(|grid| List {
            title: grid.title.clone(),
            file: (format!("list-{}.csv", grid.name), write::csv::list(grid)),
        }));
    }
    Ok(files)
}

fn workbook(solved: &Solved, lists: &[Grid]) -> Result<Vec<u8>, Problem> {
    let facts = facts(solved);
    let contents = write::xlsx::Contents {
        title: &solved.job.title,
        facts: &facts.iter().map(|(name, value)| (*name, value.as_str())).collect::<Vec<_>>(),
        date: &solved.job.date,
        lists,
        notice: NOTICE,
    };
    write::xlsx::workbook(&contents).map_err(|why| {
        Problem::new(format!("the lists don't go into one workbook: {why}"), "write --csv in place of --xlsx")
    })
}

/// What a job says of itself.
pub fn facts(solved: &Solved) -> Vec<(&'static str, String)> {
    let job = &solved.job;
    let revision =
        job.revisions.last().map(|revision| format!("{}, {}", revision.mark, revision.note)).unwrap_or_default();
    vec![
        ("Client", job.client.clone()),
        ("Site", job.address.clone()),
        ("Number", job.number.clone()),
        ("Revision", revision),
        ("Date", job.date.clone()),
        ("Drawn by", job.drawn_by.clone()),
    ]
}
