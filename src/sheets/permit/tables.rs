//! Appliances, pipe, vents, distances, limits, signatures: each a table.

use super::diagram::inches;
use crate::sheets::flow::{Flow, fit};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Bound, Face, Fitting, FittingKind, Leg, Look, OpeningSort, Plane, Service, services};
use crate::units::{Length, System};

/// Width of a column of lengths, mm: dual units take more.
fn lengths(set: &Set<'_>) -> f64 {
    if set.solved.show.system == System::Both { 34.0 } else { 22.0 }
}

fn table(columns: Vec<Column>, rows: Vec<Vec<Cell>>) -> Table {
    Table { columns, rows, breaks: Vec::new() }
}

fn or_not_given(text: Option<String>) -> Cell {
    text.map_or_else(|| Cell::Grey("not given".to_owned()), Cell::Words)
}

fn fittings<'s>(set: &Set<'s>) -> impl Iterator<Item = (&'s Leg, &'s Fitting)> {
    set.solved.legs.iter().flat_map(|leg| leg.fittings.iter().map(move |fitting| (leg, fitting)))
}

fn is_appliance(fitting: &Fitting) -> bool {
    services::burns_gas(fitting)
        || fitting.heat.is_some()
        || fitting.needs.power.is_some()
        || fitting.look == Look::Refrigerator
}

/// Adds the appliances with inputs and weights.
pub fn appliances(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let show = super::reading(set);
    let run = set.solved.services.as_ref().and_then(|services| services.fuel);
    let build = |_: f64| {
        let columns = vec![
            Column::words(11.0, "mark"),
            Column::words(44.0, "appliance"),
            Column::words(30.0, "input"),
            Column::words(30.0, "burns"),
            Column::words(22.0, "weight"),
            Column::words(28.0, "power"),
        ];
        let row = |(_, fitting): (&Leg, &Fitting)| {
            let gas = services::burns_gas(fitting);
            let burns = if gas {
                or_not_given(fitting.needs.fuel.or(run).map(|fuel| fuel.words().to_owned()))
            } else {
                Cell::Words("no gas".to_owned())
            };
            let heat = fitting.heat.map(|heat| show.heat(heat));
            vec![
                Cell::Bold(fitting.mark.clone()),
                Cell::Words(fitting.name.clone()),
                if gas { or_not_given(heat) } else { heat.map_or(Cell::Empty, Cell::Words) },
                burns,
                or_not_given(fitting.mass.map(|mass| show.mass(mass))),
                fitting.needs.power.clone().map_or(Cell::Empty, Cell::Words),
            ]
        };
        let mut rows: Vec<Vec<Cell>> = fittings(set).filter(|(_, fitting)| is_appliance(fitting)).map(row).collect();
        let loads =
            set.solved.services.iter().flat_map(|services| &services.appliances).filter(|a| a.fitting.is_none());
        rows.extend(loads.map(|load| {
            let heat = or_not_given(load.heat.map(|heat| show.heat(heat)));
            let burns = or_not_given(run.map(|fuel| fuel.words().to_owned()));
            vec![
                Cell::Empty,
                Cell::Words(format!("{}, not in the run", load.name)),
                heat,
                burns,
                Cell::Empty,
                Cell::Empty,
            ]
        }));
        table(columns, rows)
    };
    flow.table("Appliances", 1, &build);
}

/// Adds the pipe, segment by segment.
pub fn pipe(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let Some(services) = &set.solved.services else { return };
    let show = super::reading(set);
    let build = |_: f64| {
        let columns = vec![
            Column::words(11.0, "part"),
            Column::words(46.0, "from, to"),
            Column::words(18.0, "length"),
            Column::words(27.0, "carries"),
            Column::words(16.0, "needs"),
            Column::words(18.0, "installed"),
            Column::words(24.0, "loses"),
        ];
        let row = |segment: &services::Segment| {
            vec![
                Cell::Bold(segment.id.clone()),
                Cell::Words(format!("{} to {}", segment.from, segment.to)),
                Cell::Words(show.way(segment.length)),
                or_not_given(segment.load.map(|load| show.heat(load))),
                or_not_given(segment.needed.map(|size| inches(size.words()))),
                or_not_given(segment.installed.map(|size| inches(size.words()))),
                segment.drop.map_or(Cell::Empty, |drop| Cell::Words(show.pressure(drop))),
            ]
        };
        table(columns, services.pipe.iter().map(row).collect())
    };
    flow.table("Gas pipe, part by part", 1, &build);
    let build = |_: f64| {
        let columns = vec![
            Column::words(11.0, "mark"),
            Column::words(30.0, "appliance"),
            Column::words(60.0, "shutoff: along, depth, over floor"),
            Column::words(22.0, "connector"),
            Column::words(28.0, "pressure left"),
        ];
        let rows = services.appliances.iter().filter(|appliance| appliance.fitting.is_some()).map(|appliance| {
            let connection = services.connections.iter().find(|connection| connection.fitting == appliance.id);
            let shutoff = connection.and_then(|connection| connection.shutoff);
            let shutoff = shutoff.map(|(u, v, z)| [u, v, z].map(|length| show.text(length)).join(", "));
            let connector = connection.and_then(|connection| connection.connector).map(|length| show.way(length));
            vec![
                Cell::Bold(appliance.mark.clone()),
                Cell::Words(appliance.name.clone()),
                or_not_given(shutoff),
                or_not_given(connector),
                appliance.pressure.map_or(Cell::Empty, |pressure| Cell::Words(show.pressure(pressure))),
            ]
        });
        table(columns, rows.collect())
    };
    flow.table("Gas connections", 1, &build);
}

/// Adds the vents with their free area.
pub fn vents(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let show = super::reading(set);
    let build = |_: f64| {
        let columns = vec![
            Column::words(11.0, "mark"),
            Column::words(30.0, "vent"),
            Column::words(18.0, "face"),
            Column::words(24.0, "face area"),
            Column::words(40.0, "free area"),
            Column::words(25.0, "under counter"),
            Column::words(22.0, "over floor"),
        ];
        let is_vent = |fitting: &Fitting| fitting.kind == FittingKind::Opening(OpeningSort::Vent);
        let rows = fittings(set).filter(|(_, fitting)| is_vent(fitting)).map(|(leg, vent)| {
            let area = vent.cutout(Plane::of(vent.face)).map_or(0.0, |cutout| cutout.outline.area().abs() / 1e6);
            let free = match vent.needs.free_area {
                Some(free) => Cell::Words(show.area(free)),
                None => Cell::Grey(format!("not given; 40 % is {}", show.area(area * 0.4))),
            };
            let top = vent.top.map(|top| show.text(leg.datums.counter_top - top));
            let bottom = vent.bottom.map(|bottom| show.text(bottom));
            vec![
                Cell::Bold(vent.mark.clone()),
                Cell::Words(vent.name.clone()),
                Cell::Words(face(vent.face).to_owned()),
                Cell::Words(show.area(area)),
                free,
                top.map_or(Cell::Empty, Cell::Words),
                bottom.map_or(Cell::Empty, Cell::Words),
            ]
        });
        table(columns, rows.collect())
    };
    flow.table("Vents", 1, &build);
}

fn face(face: Face) -> &'static str {
    match face {
        Face::Front => "front",
        Face::Left => "left end",
        Face::Right => "right end",
        Face::Back => "back",
    }
}

/// Adds what each hot fitting's manual keeps away, and what is there.
pub fn clearances(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let show = set.solved.show;
    let build = |width: f64| {
        let figure = |name: &str| Column::words(lengths(set), name);
        let fixed = 11.0 + 3.0 * lengths(set);
        let columns = vec![
            Column::words(11.0, "mark"),
            figure("manual:\nbeside"),
            figure("\nbehind"),
            figure("\nabove"),
            Column::words(fit::rest(width, fixed, 70.0), "what is near"),
        ];
        let hot = fittings(set).filter(|(_, fitting)| fitting.heat.is_some() || services::burns_gas(fitting));
        let mut rows = Vec::new();
        for (leg, fitting) in hot {
            let asks = |length: Option<Length>| or_not_given(length.map(|length| show.prose(length)));
            let needs = &fitting.needs;
            let cells = vec![
                Cell::Bold(fitting.mark.clone()),
                asks(needs.beside),
                asks(needs.behind),
                asks(needs.above),
                Cell::Words(near(set, leg, fitting)),
            ];
            rows.extend(fit::lines(&columns, cells));
        }
        table(columns, rows)
    };
    flow.table("Distances to what burns", 1, &build);
}

/// What stands near a hot fitting above the counter, whether it burns, and how far it is.
fn near(set: &Set<'_>, leg: &Leg, fitting: &Fitting) -> String {
    let show = set.solved.show;
    let d = &leg.datums;
    let back = fitting.back.unwrap_or(d.frame_back);
    let burns = |known: Option<bool>| match known {
        Some(true) => "burns",
        Some(false) => "doesn\u{2019}t burn",
        None => "not said whether it burns",
    };
    let bound = |bound: &Bound, away: Length| {
        (!bound.is_open() && bound.height > d.counter_top)
            .then(|| format!("{} {} away, {}", bound.name, show.prose(away), burns(bound.combustible)))
    };
    let mut parts: Vec<String> = [
        bound(&leg.left, fitting.left - leg.left.at_counter),
        bound(&leg.right, leg.right.at_counter - fitting.right),
        bound(&leg.back, leg.back.at_counter - back),
    ]
    .into_iter()
    .flatten()
    .collect();
    for thing in set.solved.around.combustibles.iter().filter(|thing| thing.leg == fitting.at.0) {
        parts.push(format!(
            "{} {} from the run\u{2019}s {}, burns",
            thing.name,
            show.prose(thing.distance),
            face(thing.side)
        ));
    }
    parts.push(match &set.solved.around.overhead {
        crate::solve::Overhead::Unsaid => "above: not said".to_owned(),
        crate::solve::Overhead::Open => "open above".to_owned(),
        crate::solve::Overhead::Roof { name, height, combustible, .. } => {
            format!("{name} {} over the counter, {}", show.prose(*height - d.counter_top), burns(*combustible))
        }
    });
    if fitting.needs.liner == Some(true) {
        parts.push("in an insulated liner".to_owned());
    }
    parts.join("; ")
}

/// Adds limits of rules that the job sets, each with its reason.
pub fn limits(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let build = |width: f64| {
        let columns = vec![
            Column::words(64.0, "rule"),
            Column::words(24.0, "limit"),
            Column::words(fit::rest(width, 88.0, 60.0), "because"),
        ];
        let mut rows = Vec::new();
        for set in &set.solved.limits {
            let cells =
                vec![Cell::Words(set.name.clone()), Cell::Bold(set.written.clone()), Cell::Words(set.because.clone())];
            rows.extend(fit::lines(&columns, cells));
        }
        table(columns, rows)
    };
    flow.table("Limits that this job sets in place of the rules\u{2019} own", 1, &build);
}

/// Adds which statements a licensed person signs for.
pub fn signatures(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let gas = fittings(set).any(|(_, fitting)| services::burns_gas(fitting));
    let stub =
        |service: Service| set.solved.legs.iter().any(|leg| leg.stubs.iter().any(|stub| stub.service == service));
    let mut statements: Vec<(&str, &str)> = Vec::new();
    if gas {
        statements.push(("pipe sizes, shutoffs, connectors", "gas fitter"));
        statements.push(("pressure test and leak test", "gas fitter"));
        statements.push(("vents as the manuals ask", "gas fitter"));
    }
    if stub(Service::Power) || fittings(set).any(|(_, f)| f.look == Look::Refrigerator || f.needs.power.is_some()) {
        statements.push(("circuits, protection, bonding", "electrician"));
    }
    if stub(Service::Water) || stub(Service::Drain) {
        statements.push(("supply, backflow, drain", "plumber"));
    }
    if fittings(set).any(|(_, fitting)| fitting.heat.is_some()) {
        statements.push(("distances to what burns", "inspector"));
    }
    let build = |width: f64| {
        let name = ((width - 84.0 - 22.0) / 2.0).max(34.0);
        let columns = vec![
            Column::words(58.0, "statement"),
            Column::words(26.0, "licensed"),
            Column::words(name, "name, licence"),
            Column::words(name, "signature"),
            Column::words(22.0, "date"),
        ];
        let row = |(what, who): &(&str, &str)| {
            vec![Cell::Words((*what).to_owned()), Cell::Words((*who).to_owned()), Cell::Blank, Cell::Blank, Cell::Blank]
        };
        table(columns, statements.iter().map(row).collect())
    };
    flow.table("Needs a licensed person\u{2019}s signature", 1, &build);
}
