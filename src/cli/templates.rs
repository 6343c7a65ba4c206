//! `faceline templates`: every part at full size.

use std::path::PathBuf;

use serde_json::{Value, json};

use super::args::TemplateArguments;
use super::draw::stem;
use super::outcome::Outcome;
use super::outputs::{self, Output};
use super::progress::Progress;
use super::{check, parallel, say, write_set};
use crate::findings::Problem;
use crate::sheets::templates::{self, Plan, Setting, Stock, Template, pieces, plan};
use crate::solve::Solved;
use crate::units::reading::quantity;
use crate::write;

/// A template spread over paper.
type Planned<'t> = (&'t Template, Plan);

/// Runs the command.
pub fn run(asked: &TemplateArguments) -> Outcome {
    let (job, format) = (&asked.job.job, asked.job.changes.format);
    let (solved, findings) = match check::solved(job, &asked.job.changes) {
        Ok(found) => found,
        Err(problems) => return check::failed(&problems, format),
    };
    let files = match files(asked, &solved) {
        Ok(files) => files,
        Err(problems) => return check::failed(&problems, format),
    };
    let folder = asked.out.clone().unwrap_or_else(|| PathBuf::from(format!("{}-templates", stem(job))));
    let whole = asked.parts.is_empty();
    match write_set::replace(&folder, &files, whole, write_set::TEMPLATES) {
        Ok(()) => {
            let names: Vec<String> = files.into_iter().map(|(name, _)| name).collect();
            say::print_drawn(&findings, &folder, &names, format, job);
            check::outcome(&findings)
        }
        Err(problem) => {
            say::print_problems(&[problem], format);
            Outcome::Unwritable
        }
    }
}

/// A PDF for each template, the square card, what is where on which page, and files for machines.
fn files(asked: &TemplateArguments, solved: &Solved) -> Result<Vec<Output>, Vec<Problem>> {
    let setting = setting(asked, solved).map_err(|problem| vec![problem])?;
    let wanted = wanted(asked, solved).map_err(|problem| vec![problem])?;
    let (planned, problems) = planned(&wanted, &setting);
    if !problems.is_empty() {
        return Err(problems);
    }
    let progress = Progress::new("drawing template");
    progress.expect(planned.len());
    let drawn = parallel::map(&planned, |(template, plan)| {
        let pages = templates::pages(solved, template, plan, &setting);
        progress.step();
        let title = format!("{}, {}", template.name, solved.job.title);
        pages.map(|pages| (format!("{}.pdf", template.slug), write::pdf::document(&title, &pages)))
    });
    drop(progress);
    let (mut files, mut problems) = (Vec::new(), Vec::new());
    for result in drawn {
        match result {
            Ok(file) => files.push(file),
            Err(unplaced) => problems.extend(unplaced.iter().map(|sheet| {
                let what = sheet.what.first().cloned().unwrap_or_default();
                Problem::new(
                    format!("{} can't be lettered without an overlap: {what}", sheet.sheet),
                    "choose other paper with --paper",
                )
            })),
        }
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    let card = templates::square_card(&solved.job.title, &setting);
    files.push(("square-card.pdf".to_owned(), write::pdf::document("Square card", &[card])));
    files.push(("templates.json".to_owned(), list(&planned, &setting)));
    if asked.cutting.dxf {
        files.extend(outputs::parts(solved, asked.cutting.dxf_version));
    }
    Ok(files)
}

/// Paper, margins and printer: the command line before the job.
fn setting(asked: &TemplateArguments, solved: &Solved) -> Result<Setting, Problem> {
    let paper = &solved.paper;
    let stock = match asked.paper.as_ref().or(paper.templates.as_ref()) {
        Some(name) => Stock::named(name)
            .map_err(|problem| Problem { place: paper.place.clone().filter(|_| asked.paper.is_none()), ..problem })?,
        None => Stock::usual(solved.show.system),
    };
    let length = |option: &str,
                  written: Option<&String>,
                  job: Option<crate::units::Length>,
                  usual: f64|
     -> Result<f64, Problem> {
        let Some(written) = written else { return Ok(job.map_or(usual, crate::units::Length::mm)) };
        let read = quantity(written)
            .ok()
            .and_then(crate::units::Quantity::as_length)
            .filter(|length| *length >= crate::units::Length::ZERO);
        read.map(crate::units::Length::mm).ok_or_else(|| {
            Problem::new(format!("`{written}` is not a length for {option}"), format!("write it as {option} \"6 mm\""))
        })
    };
    let printer = match asked.printer.as_deref() {
        None => paper.printer.clone(),
        Some("none") => None,
        Some(name) => Some(paper.printers.iter().find(|printer| printer.name == name).cloned().ok_or_else(|| {
            let names: Vec<&str> = paper.printers.iter().map(|printer| printer.name.as_str()).collect();
            let known = if names.is_empty() {
                "the job names none".to_owned()
            } else {
                format!("choose from {}", names.join(", "))
            };
            Problem::new(format!("`{name}` is not one of the job's paper.printers"), known)
        })?),
    };
    Ok(Setting {
        stock,
        margin: length("--margin", asked.margin.as_ref(), paper.margin, plan::MARGIN)?,
        overlap: length("--overlap", asked.overlap.as_ref(), paper.overlap, plan::OVERLAP)?,
        printer,
    })
}

/// The templates asked for, those to be marked from the back turned over.
fn wanted(asked: &TemplateArguments, solved: &Solved) -> Result<Vec<Template>, Problem> {
    let all = pieces::all(solved);
    let is = |template: &Template, word: &str| {
        let word = pieces::slug(word);
        template.family.word() == word || template.slug == word || template.slug.ends_with(&format!("-{word}"))
    };
    for word in asked.parts.iter().chain(&asked.from_back) {
        if !all.iter().any(|template| is(template, word)) {
            let names: Vec<&str> = all.iter().map(|template| template.slug.as_str()).collect();
            return Err(Problem::new(
                format!("no part is called `{word}`"),
                format!("choose from counter, substrate, board, card, {}", names.join(", ")),
            ));
        }
    }
    let any = |template: &Template, words: &[String]| words.iter().any(|word| is(template, word));
    let chosen = all.into_iter().filter(|template| asked.parts.is_empty() || any(template, &asked.parts));
    Ok(chosen
        .map(|template| {
            if !any(&template, &asked.from_back) {
                return template;
            }
            let (x0, _, x1, _) = template.bounds();
            template.turned_over(x0 + x1)
        })
        .collect())
}

/// Every plan, or every reason why there is none.
fn planned<'t>(wanted: &'t [Template], setting: &Setting) -> (Vec<Planned<'t>>, Vec<Problem>) {
    let (mut planned, mut problems) = (Vec::new(), Vec::new());
    for template in wanted {
        match templates::plan(template, setting) {
            Ok(plan) => planned.push((template, plan)),
            Err(problem) if problems.contains(&problem) => {}
            Err(problem) => problems.push(problem),
        }
    }
    (planned, problems)
}

/// What is where on which page, for whoever checks that the pages fit together. Millimetres as printed, from a page's
/// lower left corner.
fn list(planned: &[Planned<'_>], setting: &Setting) -> Vec<u8> {
    let rounded = |value: f64| (value * 1e6).round() / 1e6;
    let tile = |plan: &Plan, (page, (column, row)): (usize, (usize, usize))| -> Value {
        let (left, top, right, bottom) = plan.layout.ink;
        let (window, height) = (plan.window(column, row), plan.layout.paper.1);
        json!({
            "page": page + 1, "row": row + 1, "column": column + 1,
            "clip_mm": ([left, height - bottom, right, height - top].map(rounded)),
            "origin_mm": ([window.x0, window.y0].map(rounded)),
        })
    };
    let templates: Vec<Value> = planned
        .iter()
        .map(|(template, plan)| {
            let tiles: Vec<Value> = plan.tiles().into_iter().enumerate().map(|entry| tile(plan, entry)).collect();
            json!({
                "name": template.name, "pdf": format!("{}.pdf", template.slug), "mirrored": template.mirrored,
                "page_mm": ([plan.layout.paper.0, plan.layout.paper.1].map(rounded)),
                "drawn_larger_by": ([plan.layout.stretch.0, plan.layout.stretch.1].map(rounded)),
                "printer_across": if plan.layout.upright { "x" } else { "y" },
                "columns": plan.columns, "rows": plan.rows, "overlap_mm": if plan.roll { 0.0 } else { rounded(setting.overlap) },
                "tiles": tiles,
            })
        })
        .collect();
    let list = json!({ "paper": setting.stock.name(), "margin_mm": rounded(setting.margin), "templates": templates });
    // Only strings and finite numbers are in it, which always serialise.
    serde_json::to_string_pretty(&list).map_or_else(|_| Vec::new(), |text| (text + "\n").into_bytes())
}
