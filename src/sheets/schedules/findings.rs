//! What the check found, by the numbers that the marks on the sheets carry; and the cautions.

use crate::findings::{Severity, Subject};
use crate::sheets::flow::{Flow, fit};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Face, Service, Solved};

/// The faces of a leg as people say them.
pub const FACES: [(Face, &str); 4] =
    [(Face::Front, "front"), (Face::Left, "left end"), (Face::Right, "right end"), (Face::Back, "back")];

/// Adds the findings; a check without any says so.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    if set.findings.is_empty() {
        let nothing = ("Nothing".to_owned(), "no rule found anything that this drawing can tell.".to_owned());
        flow.notes("What the check found", &[nothing]);
        return;
    }
    let build = |width: f64| {
        let fixed = 10.0 + 16.0 + 30.0;
        let columns = vec![
            Column::words(10.0, "no."),
            Column::words(16.0, "severity"),
            Column::words(30.0, "about"),
            Column::words(fit::rest(width, fixed, 80.0), "what was found, and what to do instead"),
        ];
        let (mut rows, mut breaks) = (Vec::new(), Vec::new());
        for (index, finding) in set.findings.iter().enumerate() {
            let word = match finding.severity {
                Severity::Stop => Cell::Bold("stop".to_owned()),
                other => Cell::words(other.word()),
            };
            let about = Cell::Words(about(set.solved, &finding.subject));
            let number = Cell::Bold((index + 1).to_string());
            rows.extend(fit::lines(&columns, vec![number, word, about, Cell::Words(finding.message.clone())]));
            let more = format!("{} ({})", finding.instead, finding.origin.words());
            if !finding.instead.is_empty() {
                let further = vec![Cell::Continued, Cell::Empty, Cell::Empty, Cell::Grey(format!("Instead: {more}"))];
                rows.extend(fit::lines(&columns, further));
            }
            breaks.push(rows.len() - 1);
        }
        Table { columns, rows, breaks }
    };
    flow.table("What the check found", 3, &build);
}

/// What a finding is about, in a few words.
pub fn about(solved: &Solved, subject: &Subject) -> String {
    let legs = &solved.legs;
    let leg_words = |leg: usize| if legs.len() > 1 { format!(", leg {}", leg + 1) } else { String::new() };
    match *subject {
        Subject::Job => "the job".to_owned(),
        Subject::Services => "gas pipe".to_owned(),
        Subject::Segment(index) => {
            let segment = solved.services.as_ref().and_then(|services| services.pipe.get(index));
            segment.map_or(String::new(), |segment| format!("gas pipe {}", segment.id))
        }
        Subject::Leg(leg) => format!("leg {}", leg + 1),
        Subject::Counter(leg) => format!("counter{}", leg_words(leg)),
        Subject::Foot(leg, foot) => format!("foot {}", solved.foot_tag(leg, foot)),
        Subject::Module(leg, module) => {
            let id = legs.get(leg).and_then(|leg| leg.modules.get(module)).map_or("", |module| module.id.as_str());
            format!("module {id}{}", leg_words(leg))
        }
        Subject::Fitting(leg, index) => {
            let found = legs.get(leg).and_then(|leg| leg.fittings.get(index));
            found.map_or(String::new(), |fitting| format!("{} {}", fitting.mark, fitting.name))
        }
    }
}

/// Adds what can hurt someone, and who decides.
pub fn cautions(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let legs = &set.solved.legs;
    let has = |service: Service| legs.iter().any(|leg| leg.stubs.iter().any(|stub| stub.service == service));
    let hot = legs.iter().flat_map(|leg| &leg.fittings).any(|fitting| fitting.heat.is_some());
    let note = |lead: &str, text: &str| (lead.to_owned(), text.to_owned());
    let mut notes = vec![note(
        "Who decides",
        "local code, each fitting\u{2019}s manual and listing, and the licensed trades; this list never overrules them.",
    )];
    if hot || has(Service::Gas) {
        notes.push(note(
            "Gas",
            "connection, shut-off, vents and pressure test by a licensed gas fitter; keep the vents open.",
        ));
    }
    if hot {
        notes.push(note("Heat", "keep the clearances to anything that burns that the fitting\u{2019}s manual asks for, above and behind too."));
    }
    if has(Service::Power) {
        notes.push(note("Power", "outdoor circuits need ground-fault protection; by a licensed electrician."));
    }
    if has(Service::Water) || has(Service::Drain) {
        notes.push(note(
            "Water",
            "backflow protection, frost draining and the drain\u{2019}s connection as local code asks.",
        ));
    }
    notes.push(note("Lifting", "weights are worked out, not weighed; plan the lift before the counter is delivered."));
    notes.push(note("Dust", "cutting board, stone and concrete frees silica dust: cut wet, wear a fitted mask."));
    flow.notes("Cautions", &notes);
}
