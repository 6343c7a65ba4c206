//! What has to be bought: a list to shop by, how each count was worked out, and the figures that it was worked out with.

mod how;
mod list;

use super::flow::{Flow, Heads};
use super::set::{Kind, Set};
use super::table::{Cell, Column, Table};
use crate::drawing::Page;
use crate::drawing::lettering::{self, BODY, Weight};

/// Draws its pages.
pub fn draw(set: &Set<'_>, kind: Kind) -> Vec<Page> {
    let heads =
        Heads { title: "Materials".to_owned(), document: "Material list".to_owned(), scale: "\u{2013}".to_owned() };
    let mut flow = Flow::new(set, kind, heads);
    flow.table("To buy", 1, &|width| list::table(set, width));
    flow.notes("Before you order", &notes(set));
    flow.table("How each count was worked out", 1, &|width| how::table(set, width));
    let own = |name: &str| !is_of_weights(name);
    flow.table("Figures taken, not given", 1, &|width| figures(set, width, &own));
    flow.finish()
}

/// What has to be known before anything is ordered.
fn notes(set: &Set<'_>) -> Vec<(String, String)> {
    let note = |lead: &str, words: &str| (lead.to_owned(), words.to_owned());
    let mut notes = vec![
        note(
            "Coverage",
            "is that of common bags and boxes. Read what yours say and write it in the job under `materials`, as \
             \"mortar.yield\": \"0.45 ft3\".",
        ),
        note("Counts", "are rounded up once, after waste; a container that is full to the brim is not bought twice."),
        note("Not here", "are fittings, gas pipe and wiring: those are for the schedules and the permit sheet."),
    ];
    if set.solved.shop.quantities.iter().any(|line| line.name.contains("mortar") || line.name.contains("concrete")) {
        notes.push(note(
            "Mind",
            "that wet mortar and concrete burn skin and eyes, and that their dust harms lungs. Gloves, glasses and a fitting mask; mix \
             outdoors; read the bag.",
        ));
    }
    notes
}

/// Whether a figure is one that the sheet of weights states.
pub fn is_of_weights(name: &str) -> bool {
    name.starts_with("materials.density.") || name.starts_with("materials.lift.")
}

/// The figures that the job doesn't give and that are wanted, those of one thing and one origin together.
pub fn figures(set: &Set<'_>, width: f64, wanted: &dyn Fn(&str) -> bool) -> Table {
    let mut groups: Vec<(&str, &str, Vec<String>)> = Vec::new();
    for it in set.solved.shop.figures.iter().filter(|it| wanted(&it.name)) {
        let name = it.name.strip_prefix("materials.").unwrap_or(&it.name);
        let (thing, figure) = name.split_once('.').unwrap_or((name, ""));
        let told = format!("{figure} {}", it.value);
        match groups.iter_mut().find(|(other, origin, _)| (*other, *origin) == (thing, it.origin)) {
            Some(group) => group.2.push(told),
            None => groups.push((thing, it.origin, vec![told])),
        }
    }
    // Things in their order, origins of one thing under one another.
    let mut things: Vec<&str> = groups.iter().map(|group| group.0).collect();
    things.dedup();
    groups.sort_by_key(|group| things.iter().position(|thing| *thing == group.0));
    let first = wide(things.iter().copied(), "of", Weight::Regular);
    let rest = (width - first).max(80.0);
    let columns =
        vec![Column::words(first, "of"), Column::words(rest * 0.52, "taken as"), Column::words(rest * 0.48, "from")];
    let mut before = "";
    let rows = groups
        .iter()
        .flat_map(|(thing, origin, told)| {
            let key = if *thing == before { Cell::Empty } else { Cell::words(*thing) };
            before = thing;
            let cells = vec![key, Cell::Words(told.join(", ")), Cell::Grey((*origin).to_owned())];
            super::flow::fit::lines(&columns, cells)
        })
        .collect();
    Table { columns, rows, breaks: Vec::new() }
}

/// Width of a column for the widest of some words, mm.
fn wide<'w>(words: impl Iterator<Item = &'w str>, heading: &'w str, weight: Weight) -> f64 {
    words.chain([heading]).map(|word| lettering::width(word, BODY, weight)).fold(0.0, f64::max) + 4.0
}
