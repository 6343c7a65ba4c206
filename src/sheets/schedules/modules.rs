//! Modules: width, place, and why each is as wide as it is.

use super::columns::{datum, lengths, titled};
use crate::sheets::flow::{Flow, fit};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Datum, Module, ModuleKind};

/// Adds the schedule of a leg.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let build = |width: f64| {
        let (at, wide) = (datum(show, "left edge from", Datum::FinishedLeftEnd), lengths(show, "width"));
        let fixed = 16.0 + 34.0 + at.width + wide.width;
        let why = Column::words(fit::rest(width, fixed, 40.0), "how its width was found");
        let columns = vec![Column::words(16.0, "module"), Column::words(34.0, "for"), wide, at, why];
        let rows = leg.modules.iter().flat_map(|module| {
            let cells = vec![
                Cell::Bold(module.id.clone()),
                Cell::Words(module_words(module)),
                Cell::Figure(module.width()),
                Cell::Finished(leg.datums.from(Datum::FinishedLeftEnd, module.left)),
                Cell::Words(module.why.clone()),
            ];
            fit::lines(&columns, cells)
        });
        Table { rows: rows.collect(), columns: columns.clone(), breaks: Vec::new() }
    };
    flow.table(&titled(set, leg_index, "Modules"), 1, &build);
}

/// What a module is for: its name and its kind, as far as it is no plain one.
pub fn module_words(module: &Module) -> String {
    let kind = match module.kind {
        ModuleKind::Base => return module.name.clone(),
        ModuleKind::OpenBay => "open bay",
        ModuleKind::Filler => "filler",
        ModuleKind::Corner => "corner",
    };
    if module.name.is_empty() || module.name == kind { kind.to_owned() } else { format!("{}, {kind}", module.name) }
}
