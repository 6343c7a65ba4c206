//! Feet and their heights, and where the services come up.

use super::columns::{datum, or_none, short, titled};
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Datum, Service, Stub};

/// Adds the schedule of a leg's feet.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let build = |_: f64| {
        let columns = vec![
            Column::words(12.0, "foot"),
            Column::words(18.0, "module"),
            datum(show, "from", Datum::FinishedLeftEnd),
            datum(show, "from", Datum::FinishedFace),
            short(show, "floor below\nits high point"),
            short(show, "set to,\nfloor to frame"),
        ];
        let mut breaks = Vec::new();
        let rows = leg.feet.iter().enumerate().map(|(index, foot)| {
            if leg.feet.get(index + 1).is_none_or(|next| next.module != foot.module) {
                breaks.push(index);
            }
            let module = leg.modules.get(foot.module).map_or(String::new(), |module| module.id.clone());
            vec![
                Cell::words(set.solved.foot_tag(leg_index, index).to_string()),
                Cell::Words(module),
                Cell::Finished(foot.u),
                Cell::Finished(foot.v),
                or_none(-foot.ground),
                Cell::Key(foot.height),
            ]
        });
        let rows = rows.collect();
        Table { columns, rows, breaks }
    };
    flow.table(&titled(set, leg_index, "Adjustable feet"), 1, &build);
}

/// Adds the services that come up in a leg, with the letters that stand for them on the plan.
pub fn services(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let build = |_: f64| {
        let columns = vec![
            Column::words(8.0, ""),
            Column::words(18.0, "service"),
            datum(show, "comes up, from", Datum::FinishedLeftEnd),
            datum(show, "", Datum::FinishedFace),
        ];
        let row = |stub: &Stub| {
            let (letter, words) = service_words(stub.service);
            vec![Cell::Bold(letter.to_owned()), Cell::words(words), Cell::Finished(stub.u), Cell::Finished(stub.v)]
        };
        Table { columns, rows: leg.stubs.iter().map(row).collect(), breaks: Vec::new() }
    };
    flow.table(&titled(set, leg_index, "Services"), 2, &build);
}

/// A service's letter on the plan and its name.
pub const fn service_words(service: Service) -> (&'static str, &'static str) {
    match service {
        Service::Gas => ("G", "gas"),
        Service::Power => ("P", "power"),
        Service::Water => ("W", "water"),
        Service::Drain => ("D", "drain"),
    }
}
