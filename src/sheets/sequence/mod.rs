//! The sequence of the work: a chart of what can be done when and what has to be waited for, then each step with its why,
//! then where it can hurt.

mod chart;
mod layout;

use super::flow::{Flow, Heads, fit};
use super::frame::Area;
use super::set::{Kind, Set};
use super::table::{Cell, Column, Table};
use crate::drawing::Page;
use crate::solve::Step;

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let steps = &set.solved.shop.sequence;
    let heads = Heads {
        title: "Sequence of the work".to_owned(),
        document: "Work plan".to_owned(),
        scale: "\u{2013}".to_owned(),
    };
    let views = chart::pages(set, steps).into_iter().map(|canvas| (canvas, Vec::<Area>::new(), "\u{2013}".to_owned()));
    let mut flow = Flow::beside(set, kind, heads, views.collect());
    flow.table("Step by step", 1, &|width| table(steps, width));
    flow.notes("Where it can hurt", &cautions(steps));
    flow.finish()
}

/// Each step: what is done, why it comes now, what is waited for.
fn table(steps: &[Step], width: f64) -> Table {
    let columns = vec![
        Column::words(9.0, "no."),
        Column::words(fit::rest(width, 9.0 + 24.0 + 26.0, 80.0), "what is done, and why it comes now"),
        Column::words(24.0, "who"),
        Column::words(26.0, "after"),
    ];
    let (mut rows, mut breaks) = (Vec::new(), Vec::new());
    for (index, step) in steps.iter().enumerate() {
        let number = Cell::Bold((index + 1).to_string());
        let what =
            vec![number, Cell::Words(step.what.clone()), Cell::words(step.who.words()), Cell::Words(after(step))];
        rows.extend(fit::lines(&columns, what));
        let mut why = format!("Why: {}", sentence(&step.why));
        if let Some(hours) = step.wait {
            why.push_str(&format!(" Then wait {} ({}; the data sheet decides).", layout::time(hours), step.origin));
        } else if step.origin != "common practice" {
            why.push_str(&format!(" ({}.)", capital(&step.origin)));
        }
        let further = vec![Cell::Continued, Cell::Grey(why), Cell::Empty, Cell::Empty];
        rows.extend(fit::lines(&columns, further).into_iter().map(|mut row| {
            row[0] = Cell::Continued;
            row
        }));
        breaks.push(rows.len() - 1);
    }
    Table { columns, rows, breaks: Vec::new() }
}

/// The numbers of the steps before one.
fn after(step: &Step) -> String {
    let numbers: Vec<String> = step.after.iter().map(|before| (before + 1).to_string()).collect();
    if numbers.is_empty() { "\u{2013}".to_owned() } else { numbers.join(", ") }
}

fn sentence(words: &str) -> String {
    format!("{}.", words.trim_end_matches('.'))
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or(String::new(), |first| format!("{}{}", first.to_uppercase(), letters.as_str()))
}

/// Each caution once, with the steps that it goes for.
fn cautions(steps: &[Step]) -> Vec<(String, String)> {
    let mut told: Vec<(&str, Vec<String>)> = Vec::new();
    for (index, step) in steps.iter().enumerate() {
        let Some(caution) = step.caution else { continue };
        match told.iter_mut().find(|(text, _)| *text == caution) {
            Some((_, numbers)) => numbers.push((index + 1).to_string()),
            None => told.push((caution, vec![(index + 1).to_string()])),
        }
    }
    let mut notes: Vec<(String, String)> = told
        .into_iter()
        .map(|(text, numbers)| {
            let (lead, rest) = text.split_once(": ").unwrap_or(("Caution", text));
            let (lead, rest) = if lead.len() > 12 { ("Caution", text) } else { (lead, rest) };
            let word = if numbers.len() == 1 { "step" } else { "steps" };
            (lead.to_owned(), format!("{} ({word} {})", rest, numbers.join(", ")))
        })
        .collect();
    notes.push((
        "All of it".to_owned(),
        "is common practice and no instruction: local code, the appliances\u{2019} manuals and licensed trades come first.".to_owned(),
    ));
    notes
}
