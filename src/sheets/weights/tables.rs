//! The weights in figures.

use super::{module_name, reading};
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::flow::fit;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Lift, LiftKind, ModuleWeight, Weights};
use crate::units::{System, converted};

/// The title of the modules' table, with the unit of its columns.
pub fn modules_title(set: &Set<'_>) -> String {
    let unit = if reading(set).system == System::Millimetres { "kg" } else { "lb" };
    format!("Modules dressed, {unit}")
}

/// A mass without its unit.
fn figure(set: &Set<'_>, mass: f64) -> String {
    let mass =
        if reading(set).system == System::Millimetres { mass } else { converted(mass, "kg", "lb").unwrap_or(mass) };
    format!("{mass:.0}")
}

/// Every module, layer by layer.
pub fn modules(set: &Set<'_>, width: f64) -> Table {
    let weights = &set.solved.shop.weights;
    let heads = ["frame", "boards", "finish", "substrate", "counter", "fittings", "together"];
    let cell = |head: &&str| Column::right(lettering::width(head, BODY, Weight::Regular).max(12.0) + 4.0, head);
    let figures: Vec<Column> = heads.iter().map(cell).collect();
    let used: f64 = figures.iter().map(|column| column.width).sum();
    let mut columns = vec![Column::words(fit::rest(width, used, 26.0), "module")];
    columns.extend(figures);
    let cells = |name: String, weight: &ModuleWeight, bold: bool| {
        let own = [weight.frame, weight.boards, weight.finish, weight.substrate, weight.counter, weight.fittings];
        let mut row = vec![if bold { Cell::Bold(name) } else { Cell::Words(name) }];
        row.extend(own.iter().map(|mass| Cell::Words(figure(set, *mass))));
        row.push(Cell::Bold(figure(set, weight.total())));
        row
    };
    let mut sum = ModuleWeight::default();
    let mut rows = Vec::new();
    for (leg, modules) in weights.modules.iter().enumerate() {
        for (index, weight) in modules.iter().enumerate() {
            rows.push(cells(module_name(set, leg, index), weight, false));
            sum.frame += weight.frame;
            sum.boards += weight.boards;
            sum.finish += weight.finish;
            sum.substrate += weight.substrate;
            sum.counter += weight.counter;
            sum.fittings += weight.fittings;
        }
    }
    let breaks = vec![rows.len().saturating_sub(1)];
    rows.push(cells("all modules".to_owned(), &sum, true));
    if weights.trim > 0.0 {
        let mut row = vec![Cell::Words("base trim".to_owned())];
        row.resize(heads.len(), Cell::Empty);
        row.push(Cell::Words(figure(set, weights.trim)));
        rows.push(row);
    }
    Table { columns, rows, breaks }
}

/// What stands on the floor, leg by leg, in both readings: those who answer for a floor work in either.
pub fn floor(set: &Set<'_>, width: f64) -> Table {
    let weights = &set.solved.shop.weights;
    let columns = vec![
        Column::words(fit::rest(width, 30.0 + 34.0 + 26.0 + 26.0, 30.0), "leg"),
        Column::right(30.0, "weight"),
        Column::right(34.0, "on a footprint of"),
        Column::right(26.0, "lb/sq ft"),
        Column::right(26.0, "kg/sq m"),
    ];
    let row = |(index, floor): (usize, &crate::solve::FloorLoad)| {
        let spread = floor.spread();
        let feet = floor.footprint / (0.3048 * 0.3048);
        let print = match set.solved.show.system {
            System::Millimetres => format!("{:.2} sq m", floor.footprint),
            _ => format!("{feet:.1} sq ft"),
        };
        vec![
            Cell::Words(set.solved.legs[index].id.clone()),
            Cell::Words(set.solved.show.mass(floor.mass)),
            Cell::Words(print),
            Cell::Bold(format!("{:.0}", converted(spread, "kg/m2", "lb/ft2").unwrap_or(0.0))),
            Cell::Bold(format!("{spread:.0}")),
        ]
    };
    Table { columns, rows: weights.floors.iter().enumerate().map(row).collect(), breaks: Vec::new() }
}

/// A lift by name, with its leg where there are several.
pub fn lift_name(set: &Set<'_>, lift: &Lift) -> String {
    let marked = matches!(lift.kind, LiftKind::Frame | LiftKind::Fitting);
    match set.solved.legs.get(lift.leg) {
        Some(leg) if set.solved.legs.len() > 1 && !marked => format!("{}, {}", lift.name, leg.id),
        _ => lift.name.clone(),
    }
}

/// What is lifted together, and its kinds.
pub const LIFTS: [(&str, &[LiftKind]); 3] = [
    ("To lift: frames", &[LiftKind::Frame]),
    ("To lift: sheets", &[LiftKind::Sheet]),
    ("To lift: counter and fittings", &[LiftKind::Counter, LiftKind::Splash, LiftKind::Fitting]),
];

/// What is lifted by itself in a leg, of some kinds.
pub fn lifts(set: &Set<'_>, width: f64, leg: usize, kinds: &[LiftKind]) -> Table {
    let weights = &set.solved.shop.weights;
    let columns = vec![
        Column::words(fit::rest(width, 34.0 + 30.0, 40.0), "what"),
        Column::right(34.0, "weight"),
        Column::right(30.0, "people"),
    ];
    let (mut rows, mut breaks) = (Vec::new(), Vec::new());
    let mut before = None;
    for lift in weights.lifts.iter().filter(|lift| lift.leg == leg && kinds.contains(&lift.kind)) {
        if before.is_some_and(|kind| kind != lift.kind) {
            breaks.push(rows.len() - 1);
        }
        before = Some(lift.kind);
        let people = match Weights::crew(weights.lifters(lift)) {
            gear if gear.starts_with(char::is_alphabetic) => gear,
            _ => weights.lifters(lift).to_string(),
        };
        let mass = set.solved.show.mass(lift.mass);
        rows.push(if weights.wants_more_than_two(lift) {
            vec![Cell::Bold(lift.name.clone()), Cell::Bold(mass), Cell::Bold(people)]
        } else {
            vec![Cell::Words(lift.name.clone()), Cell::Words(mass), Cell::Words(people)]
        });
    }
    Table { columns, rows, breaks }
}

/// What has to be known before anything is lifted.
pub fn notes(set: &Set<'_>) -> Vec<(String, String)> {
    let weights = &set.solved.shop.weights;
    let note = |lead: &str, words: String| (lead.to_owned(), words);
    let mass = |mass| set.solved.show.mass(mass);
    let mut notes = vec![
        note(
            "Two people",
            format!(
                "are taken to lift {} between them, {} each; they carry what is longer than 6 ft of sheet or slab, however light. \
                 What is bold wants more, or a cart, a lift, suction cups.",
                mass(weights.two_lift),
                mass(weights.each())
            ),
        ),
        note(
            "Counter",
            "pieces are carried on edge, the long side down, with cutouts stiffened; a strip beside a cutout breaks under its own \
             weight. Gloves and boots; nobody under the load."
                .to_owned(),
        ),
        note(
            "Frames",
            "are lifted with their supports; the order gives them without. A frame tips until it is bolted to its neighbours, a narrow \
             one (under a third of its height wide or deep) at a touch: prop it or bolt it at once, and dress none that stands loose."
                .to_owned(),
        ),
        note(
            "Floor",
            "is the whole weight over the bare frame's footprint; feet press on points. Paving on sand, decks and roofs want a word \
             from someone who answers for them."
                .to_owned(),
        ),
    ];
    if !weights.unknown.is_empty() {
        let marks: Vec<&str> = weights
            .unknown
            .iter()
            .filter_map(|&(leg, index)| set.solved.legs.get(leg)?.fittings.get(index))
            .map(|fitting| fitting.mark.as_str())
            .collect();
        notes.push(note("Not known", format!("is what {} weigh: the sums leave them out.", marks.join(", "))));
    }
    notes
}
