//! What the plan lists beside the drawing: the set's sheets, the job, marks, landings, services, what was assumed.

use crate::findings::Severity;
use crate::sheets::flow::{Flow, fit};
use crate::sheets::schedules::{assumed, feet, titled};
use crate::sheets::set::{Kind, Set};
use crate::sheets::table::{Cell, Column, Table, figures_width};
use crate::solve::Face;
use crate::units::Length;

use super::landing;

/// Height of paper that the list of sheets takes, mm.
pub fn index_height(set: &Set<'_>) -> f64 {
    let table = sheets(set, 100.0);
    table.height(table.rows.len()) + 7.0
}

/// Adds all lists to a flow; `without_fan` are the legs whose depths the drawing had no room for.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, without_fan: &[usize]) {
    flow.table("Sheets of this set", 1, &|width| sheets(set, width));
    job(flow, set);
    for leg in 0..set.solved.legs.len() {
        flow.table(&titled(set, leg, "Marks"), 1, &|width| marks(set, leg, width));
        landings(flow, set, leg);
        if without_fan.contains(&leg) {
            let title = titled(set, leg, "Depths");
            flow.table(&title, 1, &|_| super::levels::table(&set.solved.legs[leg], set.solved.show));
        }
        feet::services(flow, set, leg);
    }
    findings(flow, set);
    flow.notes("To read this plan", &reading(set));
    revisions(flow, set);
    flow.table_if_room("Assumed, not given", &|_| assumed::table(set));
}

fn sheets(set: &Set<'_>, width: f64) -> Table {
    let columns = vec![
        Column::words(13.0, "sheet"),
        Column::words(fit::rest(width, 13.0 + 36.0, 45.0), "title"),
        Column::words(36.0, "for"),
    ];
    let row = |kind: &Kind| {
        let first = set.number(*kind).unwrap_or(0);
        let count = set.page_count(*kind);
        let number = if count > 1 { format!("{first}\u{2013}{}", first + count - 1) } else { first.to_string() };
        let (title, reader) = titles(set, *kind);
        vec![Cell::Bold(number), Cell::Words(title), Cell::Grey(reader.to_owned())]
    };
    Table { columns, rows: set.kinds.iter().map(row).collect(), breaks: Vec::new() }
}

/// A sheet's title in the index, and whom it is for.
fn titles(set: &Set<'_>, kind: Kind) -> (String, &'static str) {
    let several = set.solved.legs.len() > 1;
    let of_leg = |title: &str, leg: usize| if several { format!("{title}, leg {}", leg + 1) } else { title.to_owned() };
    let of_face = |title: &str, leg: usize, face: Face| {
        let title = if face == Face::Back { format!("{title}, back") } else { title.to_owned() };
        of_leg(&title, leg)
    };
    match kind {
        Kind::Client(leg, face) => (of_face("Client elevation", leg, face), "client"),
        Kind::Axonometric => ("The whole run in projection".to_owned(), "client"),
        Kind::Plan => ("Plan".to_owned(), "all"),
        Kind::Front(leg, Face::Back) => (of_leg("Back elevation", leg), "builder"),
        Kind::Front(leg, _) => (of_leg("Front elevation", leg), "builder"),
        Kind::Ends(leg) => (of_leg("End elevations", leg), "builder"),
        Kind::Section(leg, index) => {
            let fitting = set.solved.legs.get(leg).and_then(|leg| leg.fittings.get(index));
            let what = fitting.map_or(String::new(), |fitting| format!(" at {} {}", fitting.mark, fitting.name));
            let letter = set.section_letter(kind).unwrap_or_default();
            (format!("Section {letter}\u{2013}{letter}{what}"), "builder, fabricator")
        }
        Kind::Substrate(leg) => (of_leg("Substrate template", leg), "builder"),
        Kind::Boards(leg) => (of_leg("Board templates", leg), "builder"),
        Kind::Counter(leg) => (of_leg("Counter sheet", leg), "fabricator"),
        Kind::Supports => ("Supports".to_owned(), "frame maker, builder"),
        Kind::Levelling => ("Levelling".to_owned(), "builder"),
        Kind::Cutting => ("Cutting".to_owned(), "builder"),
        Kind::Trim => ("Base trim".to_owned(), "builder"),
        Kind::Permit => ("Permit sheet".to_owned(), "inspector, gas fitter"),
        Kind::Schedules => ("Schedules".to_owned(), "all"),
        Kind::Materials => ("Materials".to_owned(), "builder, suppliers"),
        Kind::Weights => ("Weights".to_owned(), "builder"),
        Kind::MeasureTwice => ("Measure twice".to_owned(), "builder"),
        Kind::Sequence => ("Sequence of the work".to_owned(), "builder, trades"),
        Kind::Orders => ("Orders".to_owned(), "suppliers"),
        Kind::Labels => ("Labels".to_owned(), "builder"),
    }
}

fn job(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let job = &set.solved.job;
    let facts = [
        ("Job", &job.title),
        ("Client", &job.client),
        ("Address", &job.address),
        ("Number", &job.number),
        ("Drawn by", &job.drawn_by),
        ("Date", &job.date),
    ];
    let mut facts: Vec<(String, String)> = facts
        .iter()
        .filter(|(_, text)| !text.trim().is_empty())
        .map(|(lead, text)| ((*lead).to_owned(), (*text).clone()))
        .collect();
    // One revision is told here; several have a table.
    if let [only] = job.revisions.as_slice() {
        facts.push(("Revision".to_owned(), format!("{}, {}: {}", only.mark, only.date, only.note)));
    }
    flow.notes("The job", &facts);
}

fn marks(set: &Set<'_>, leg: usize, width: f64) -> Table {
    let columns = vec![
        Column::words(12.0, "mark"),
        Column::words(fit::rest(width, 12.0 + 36.0, 36.0), "fitting"),
        Column::words(36.0, "set into"),
    ];
    let row = |fitting: &crate::solve::Fitting| {
        let into = crate::sheets::schedules::set_into(fitting).to_owned();
        vec![Cell::Bold(fitting.mark.clone()), Cell::Words(fitting.name.clone()), Cell::Words(into)]
    };
    Table { columns, rows: set.solved.legs[leg].fittings.iter().map(row).collect(), breaks: Vec::new() }
}

fn landings(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, it) = (set.solved.show, &set.solved.legs[leg]);
    let build = |_: f64| {
        let figures = figures_width(show, Length::from_mm(9999.0)).max(17.0);
        let columns = vec![
            Column::words(12.0, "mark"),
            Column::figures(figures, "left of it"),
            Column::figures(figures, "right of it"),
            Column::figures(figures, "behind it"),
        ];
        let rows = it.fittings.iter().filter(|fitting| landing::wants(fitting)).map(|fitting| {
            let (left, right, behind) = landing::beside(it, fitting);
            let mut row = vec![Cell::Bold(fitting.mark.clone())];
            row.extend([left, right, behind].map(Cell::Figure));
            row
        });
        let rows = rows.collect();
        Table { columns, rows, breaks: Vec::new() }
    };
    flow.table(&titled(set, leg, "Clear counter"), 1, &build);
}

fn findings(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let numbered = set.findings.iter().enumerate().filter(|(_, finding)| finding.severity != Severity::Note);
    let notes: Vec<(String, String)> = numbered
        .map(|(index, finding)| (format!("{} {}", index + 1, finding.severity.word()), finding.message.clone()))
        .collect();
    flow.notes("What the check found", &notes);
}

fn reading(set: &Set<'_>) -> Vec<(String, String)> {
    let note = |lead: &str, text: &str| (lead.to_owned(), text.to_owned());
    let mut notes = vec![
        note("Counter", "the strong outline, cut over the run. Substrate not shown."),
        note(
            "Grey dashes",
            "bare frames under the counter; small circles are their feet, numbered as in the schedule.",
        ),
        note("Dash, two dots", "bodies of the fittings, where they are known."),
        note("Left, right", "as the cook sees them, standing before the finished face."),
    ];
    let own: Vec<&str> = set.solved.shop.supports.members.iter().map(|one| one.mark.as_str()).collect();
    if let (Some(first), Some(sheet)) = (own.first(), set.number(Kind::Supports)) {
        let text =
            format!("tinted: supports under the counter, their marks from {first} on; sheet {sheet} has their places.");
        notes.push(note("Fine dashes", &text));
    }
    if let (false, Some(sheet)) = (set.solved.defaults.is_empty(), set.number(Kind::Schedules)) {
        let text = format!("values that the job does not give are in the schedules, from sheet {sheet} on.");
        notes.push(note("Assumed", &text));
    }
    if set.solved.legs.iter().any(|leg| !leg.stubs.is_empty()) {
        notes.push(note("Services", "where pipes and cables come up: licensed trades and local code decide."));
    }
    if set.solved.legs.iter().flat_map(|leg| &leg.fittings).any(|fitting| fitting.heat.is_some()) {
        notes.push(note(
            "Caution",
            "clearances to what burns are those of the fitting\u{2019}s manual; this plan does not check them.",
        ));
    }
    notes
}

fn revisions(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    if set.solved.job.revisions.len() < 2 {
        return;
    }
    let build = |width: f64| {
        let columns = vec![
            Column::words(10.0, "rev"),
            Column::words(24.0, "date"),
            Column::words(fit::rest(width, 34.0, 40.0), "what changed"),
        ];
        let rows = set.solved.job.revisions.iter().flat_map(|revision| {
            let cells = vec![
                Cell::Bold(revision.mark.clone()),
                Cell::Words(revision.date.clone()),
                Cell::Words(revision.note.clone()),
            ];
            fit::lines(&columns, cells)
        });
        Table { rows: rows.collect(), columns: columns.clone(), breaks: Vec::new() }
    };
    flow.table("Revisions", 1, &build);
}
