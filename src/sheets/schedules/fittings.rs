//! Fittings: what each is, where it sits, its cutout, flange, body, weight and heat.

use super::columns::{lengths, or_none, short, titled};
use crate::sheets::flow::Flow;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Face, Fitting, FittingKind, OpeningSort, Plane};
use crate::units::System;

/// Adds the schedules of a leg's fittings.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let both = show.system == System::Both;
    let build = |_: f64| {
        let columns = vec![
            Column::words(12.0, "mark"),
            Column::words(34.0, "fitting"),
            Column::words(32.0, "set into"),
            Column::words(14.0, "module"),
            Column::words(30.0, "located\nfrom"),
            Column::right(if both { 29.0 } else { 20.0 }, "weight"),
            Column::right(if both { 42.0 } else { 25.0 }, "heat"),
        ];
        let row = |fitting: &Fitting| {
            let module = leg.modules.get(fitting.module).map_or(String::new(), |module| module.id.clone());
            let or_unknown = |value: Option<String>| value.map_or(Cell::Grey("not given".to_owned()), Cell::Words);
            vec![
                Cell::Bold(fitting.mark.clone()),
                Cell::Words(fitting.name.clone()),
                Cell::Words(set_into(fitting).to_owned()),
                Cell::Words(module),
                Cell::Words(fitting.given_from.clone()),
                or_unknown(fitting.mass.map(|mass| show.mass(mass))),
                fitting.heat.map_or(Cell::Empty, |heat| Cell::Words(show.heat(heat))),
            ]
        };
        Table { columns, rows: leg.fittings.iter().map(row).collect(), breaks: Vec::new() }
    };
    flow.table(&titled(set, leg_index, "Fittings"), 1, &build);
    bodies(flow, set, leg_index);
}

fn bodies(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let build = |_: f64| {
        let columns = vec![
            Column::words(12.0, "mark"),
            short(show, "flange laps\nleft"),
            short(show, "\nright"),
            short(show, "back\nor top"),
            short(show, "front or\nbottom"),
            lengths(show, "body\nwidth"),
            lengths(show, "\ndepth"),
            lengths(show, "\nheight"),
            short(show, "clear\nround it"),
        ];
        let row = |fitting: &Fitting| {
            let lap = fitting.flange;
            let mut cells = vec![Cell::Bold(fitting.mark.clone())];
            cells.extend([lap.left, lap.right, lap.far, lap.near].map(or_none));
            match fitting.body {
                Some(body) => cells.extend([body.u, body.v, body.z].map(|(low, high)| Cell::Figure(high - low))),
                None => cells.extend([Cell::Grey("not given".to_owned()), Cell::Empty, Cell::Empty]),
            }
            cells.push(or_none(fitting.clearance));
            cells
        };
        Table { columns, rows: leg.fittings.iter().map(row).collect(), breaks: Vec::new() }
    };
    flow.table(&titled(set, leg_index, "Flanges and bodies"), 1, &build);
}

/// What a fitting is cut into, in words.
pub fn set_into(fitting: &Fitting) -> &'static str {
    match (fitting.kind, fitting.face) {
        (FittingKind::Notch, _) => "counter and front",
        (FittingKind::Well, _) => "counter",
        (FittingKind::Opening(OpeningSort::Vent), Face::Front) => "front board, vent",
        (FittingKind::Opening(OpeningSort::Vent), Face::Back) => "back board, vent",
        (FittingKind::Opening(OpeningSort::Vent), Face::Left) => "left end, vent",
        (FittingKind::Opening(OpeningSort::Vent), Face::Right) => "right end, vent",
        (FittingKind::Opening(_), Face::Front) => "front board",
        (FittingKind::Opening(_), Face::Back) => "back board",
        (FittingKind::Opening(_), Face::Left) => "left end board",
        (FittingKind::Opening(_), Face::Right) => "right end board",
    }
}

/// The plane of a cutout as people say it.
pub fn plane_words(plane: Plane) -> &'static str {
    match plane {
        Plane::Counter => "counter",
        Plane::Substrate => "substrate",
        Plane::FrontBoard => "front board",
        Plane::BackBoard => "back board",
        Plane::LeftBoard => "left end board",
        Plane::RightBoard => "right end board",
    }
}
