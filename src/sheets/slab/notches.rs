//! Notches in a joined sheet's outline that no fitting makes, each side from two finished faces.

use super::joined::Joined;
use super::lists::wide;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{CounterNotch, Extent, Face, Leg, Plane};
use crate::units::Length;

/// Points nearer to a notch than this are corners of it, mm.
const NEAR: f64 = 0.5;

/// The notches, leg by leg.
pub fn table(sheet: &Joined<'_>) -> Table {
    let show = sheet.set.solved.show;
    let found: Vec<(usize, &Leg, &CounterNotch)> = sheet
        .legs()
        .flat_map(|(index, leg)| leg.notches.iter().map(move |notch| (index, leg, notch)))
        .filter(|(_, leg, notch)| sheet.plane == Plane::Counter || reaches(leg, notch))
        .collect();
    let name = |leg: &Leg, notch: &CounterNotch| {
        let what = match notch.clearance {
            Some(clear) => format!("round {}, {} clear", notch.name, show.text(clear)),
            None => notch.name.clone(),
        };
        if sheet.slab.legs.len() > 1 { format!("{what}, leg {}", leg.id) } else { what }
    };
    let names: Vec<String> = found.iter().map(|(_, leg, notch)| name(leg, notch)).collect();
    let widest = names.iter().map(|text| lettering::width(text, BODY, Weight::Regular)).fold(22.0, f64::max);
    let figures = wide(sheet.set);
    let (end, face) = (figures.max(27.0), figures.max(30.0));
    let mut columns = vec![
        Column::words(widest.min(64.0) + 3.0, "notch"),
        Column::words(16.0, "out of"),
        Column::figures(end, "left side from\nfin. left end").from_finished(),
        Column::figures(end, "right side from\nfin. left end").from_finished(),
        Column::figures(face, "front side from\nfinished face").from_finished(),
        Column::figures(face, "back side from\nfinished face").from_finished(),
        Column::words(14.0, "corners"),
    ];
    let numbered = sheet.plane == Plane::Counter;
    if numbered {
        columns.insert(0, Column::words(16.0, "nos."));
    }
    let rows = found.iter().zip(names).map(|(&(index, _, notch), name)| {
        let Extent { x0, x1, y0, y1 } = notch.extent;
        let side = |face: Face, at: Length| if notch.edge == face { Cell::words("open") } else { Cell::Finished(at) };
        let round = notch.radius > Length::ZERO;
        let mut row = vec![
            Cell::Words(name),
            Cell::words(edge(notch.edge)),
            side(Face::Left, x0),
            side(Face::Right, x1),
            side(Face::Front, y0),
            side(Face::Back, y1),
            Cell::Words(if round { format!("R {}", show.text(notch.radius)) } else { "sharp".to_owned() }),
        ];
        if numbered {
            row.insert(0, Cell::Bold(numbers(sheet, index, &notch.extent)));
        }
        row
    });
    Table { rows: rows.collect(), columns, breaks: Vec::new() }
}

/// Whether a notch reaches into the substrate of its leg.
fn reaches(leg: &Leg, notch: &CounterNotch) -> bool {
    notch.extent.meets(&leg.substrate.extent)
}

/// An edge in a word.
fn edge(face: Face) -> &'static str {
    match face {
        Face::Front => "front",
        Face::Back => "back",
        Face::Left => "left end",
        Face::Right => "right end",
    }
}

/// The numbers of a notch's corners on the sheet, as `4 to 7`.
fn numbers(sheet: &Joined<'_>, leg: usize, extent: &Extent) -> String {
    let held = |low: Length, at: f64, high: Length| at > low.mm() - NEAR && at < high.mm() + NEAR;
    let own: Vec<usize> = sheet
        .slab
        .edges
        .iter()
        .enumerate()
        .filter(|(_, corner)| {
            let p = sheet.in_leg(leg, corner.from.0.mm(), corner.from.1.mm());
            held(extent.x0, p.x, extent.x1) && held(extent.y0, p.y, extent.y1)
        })
        .map(|(at, _)| at + 1)
        .collect();
    match (own.first(), own.last()) {
        (Some(first), Some(last)) if own.len() == last - first + 1 && first < last => format!("{first} to {last}"),
        _ => own.iter().map(usize::to_string).collect::<Vec<_>>().join(", "),
    }
}
