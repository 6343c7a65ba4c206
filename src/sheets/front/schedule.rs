//! The schedule of openings: sizes in board and frame, left edge and top edge from what is finished and from what is
//! there on the day the boards are cut.

use super::facing::Facing;
use super::stops::opens_up;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Datum, Fitting, Leg};
use crate::units::{Length, Show, System};

/// The schedule of some fittings of a face, in order of their marks. Where the room (mm) is wider than it needs, its
/// columns share what is left.
pub fn table(set: &Set<'_>, leg: &Leg, facing: &Facing, fittings: &[&Fitting], room: f64) -> Table {
    let show = set.solved.show;
    let longest = leg.datums.finished_right;
    let wide = figures(show, longest);
    let tall = figures(show, leg.datums.counter_top);
    let name = fittings
        .iter()
        .map(|fitting| lettering::width(&fitting.name, BODY, Weight::Regular))
        .fold(18.0, f64::max)
        .min(42.0);
    let mark =
        fittings.iter().map(|fitting| lettering::width(&fitting.mark, BODY, Weight::SemiBold)).fold(7.5, f64::max);
    let mut columns = vec![
        Column::words(mark + 3.0, "mark"),
        Column::words(name + 3.0, "fitting"),
        Column::figures(tall, "in the board\nW"),
        Column::figures(tall.max(17.0), "\nH"),
        Column::figures(wide.max(26.5), "left edge from\nfinished end").from_finished(),
        Column::figures(wide.max(20.0), "\nboard end"),
        Column::figures(tall.max(22.0), "top edge down from\ncounter top"),
        Column::figures(tall.max(19.0), "\nframe top"),
        Column::figures(tall, "in the frame\nW"),
        Column::figures(tall, "\nH"),
    ];
    let needed: f64 = columns.iter().map(|column| column.width).sum();
    // Where even so it is too wide, the frame's sizes are left to a note.
    let needed =
        if needed > room { columns.drain(8..).fold(needed, |width, column| width - column.width) } else { needed };
    let share = ((room - needed) / columns.len() as f64).clamp(0.0, 3.5);
    for column in &mut columns {
        column.width += share;
    }
    let rows = fittings.iter().map(|fitting| row(set, leg, facing, fitting)).collect();
    let breaks = fittings
        .windows(2)
        .enumerate()
        .filter(|(_, pair)| pair[0].module != pair[1].module)
        .map(|(index, _)| index)
        .collect();
    Table { columns, rows, breaks }
}

/// Whether a schedule has the sizes in the frame.
pub fn has_frame(table: &Table) -> bool {
    table.columns.len() > 8
}

/// Width of a column of lengths up to this one, mm.
fn figures(show: Show, greatest: Length) -> f64 {
    // The longest fraction, with its mark.
    let longest = match show.system {
        System::Millimetres => String::new(),
        System::Inches | System::Both => format!("\u{2009}{}", show.text(Length::from_sixty_fourths(60))),
    };
    let second = show.second(greatest).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
    7.5 + (lettering::width(&longest, BODY, Weight::SemiBold) + second).max(6.0) + 1.2
}

fn row(set: &Set<'_>, leg: &Leg, facing: &Facing, fitting: &Fitting) -> Vec<Cell> {
    let Some(cutout) = fitting.cutout(facing.plane()) else { return Vec::new() };
    let d = &leg.datums;
    let gap = set.solved.frame.rough_gap;
    let (x0, _) = facing.span(cutout.extent.x0, cutout.extent.x1);
    let [finished, board, _] = facing.near();
    let (width, height) = (cutout.extent.width(), cutout.extent.height());
    let up = opens_up(fitting, facing);
    let word = |text: &str| Cell::words(text);
    let sides = gap * if up { 1 } else { 2 };
    let high = |length: Length| if fitting.to_floor { word("to floor") } else { Cell::Figure(length) };
    let top = |datum: Datum| if up { word("open") } else { Cell::Figure(d.drop(datum, cutout.extent.y1)) };
    vec![
        Cell::Bold(fitting.mark.clone()),
        Cell::Words(fitting.name.clone()),
        Cell::Figure(width),
        high(height),
        Cell::Finished(x0 - facing.datum(leg, finished)),
        Cell::Figure(x0 - facing.datum(leg, board)),
        top(Datum::CounterTop),
        top(Datum::FrameTop),
        Cell::Figure(width + gap * 2),
        high(height + sides),
    ]
}
