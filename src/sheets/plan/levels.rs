//! Depths of every face and edge from the finished face, fanned out beside one end of the run.

use super::seen::Seen;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::dimensions::apart;
use crate::sheets::table::{Cell, Column, Table};
use crate::sheets::{marks, table};
use crate::solve::{Datum, Leg};
use crate::units::{Length, Show};

/// From line to line of the fan, mm.
const PITCH: f64 = 4.6;
/// From the end of the run to the names, mm.
const LEADER: f64 = 13.0;

/// A depth to name.
struct Level {
    name: String,
    v: Length,
    finished: bool,
}

fn levels(leg: &Leg) -> Vec<Level> {
    let mut list: Vec<Level> = Vec::new();
    let datums = [
        Datum::FinishedFace,
        Datum::CounterEdge,
        Datum::BoardFace,
        Datum::FrameFace,
        Datum::FrameBack,
        Datum::BoardBack,
        Datum::FinishedBack,
        Datum::CounterBack,
    ];
    for datum in datums {
        let v = leg.datums.at(datum);
        if !list.iter().any(|level| level.v == v) {
            list.push(Level { name: datum.words().to_owned(), v, finished: datum.is_finished() });
        }
    }
    if !leg.back.is_open() && !list.iter().any(|level| level.v == leg.back.at_counter) {
        let name = if leg.back.name.is_empty() { "wall".to_owned() } else { leg.back.name.clone() };
        list.push(Level { name, v: leg.back.at_counter, finished: false });
    }
    list.sort_by_key(|level| -level.v.nm());
    list
}

fn names_width(list: &[Level]) -> f64 {
    let width = |level: &Level| lettering::width(&level.name, BODY, Weight::SemiBold);
    list.iter().map(width).fold(0.0, f64::max).min(44.0) + 3.6
}

/// Paper that the fan takes beside the run, mm.
pub fn reach(leg: &Leg, show: Show) -> f64 {
    LEADER + names_width(&levels(leg)) + 2.0 + table::figures_width(show, Length::from_mm(999.0)) + 2.0
}

/// The same depths as a table, where the sheet has no room for the fan.
pub fn table(leg: &Leg, show: Show) -> Table {
    let columns = vec![
        Column::words(52.0, "face or edge"),
        Column::figures(table::figures_width(show, Length::from_mm(999.0)).max(40.0), "from\nfinished face")
            .from_finished(),
    ];
    let row = |level: Level| vec![Cell::Words(level.name), Cell::Finished(level.v)];
    Table { columns, rows: levels(leg).into_iter().map(row).collect(), breaks: Vec::new() }
}

/// Draws the fan; `start` is the paper x of the run's end, `edge` that of what else stands there, and `way` 1 to the
/// right, -1 to the left.
pub fn draw(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, show: Show, start: f64, edge: f64, way: f64) {
    let list = levels(seen.leg);
    let names = names_width(&list);
    let places: Vec<f64> = list.iter().map(|level| seen.at(Length::ZERO, level.v).y).collect();
    let moved = apart(&places, PITCH);
    let figures = table::figures_width(show, Length::from_mm(999.0));
    let left = if way > 0.0 { edge + LEADER } else { edge - LEADER - names - 2.0 - figures };
    for ((level, place), y) in list.iter().zip(places).zip(moved) {
        let colour = if level.finished { Colour::ACCENT } else { Colour::INK };
        let x = |off: f64| edge + way * off;
        let p = PaperPoint::new;
        let points = [p(start + way * 1.5, place), p(x(4.5), place), p(x(9.5), y), p(x(LEADER - 1.0), y)];
        canvas.polyline(at, &points, false, Paint::pen(Pen::DIMENSION.coloured(colour)));
        let baseline = y + BODY / 2.0;
        let name = crate::sheets::title_block::shortened(&level.name, names - 3.6, &Style::body());
        let style = if level.finished { Style::body().bold().coloured(colour) } else { Style::body() };
        if level.finished {
            marks::flaglet(canvas, at, p(left, baseline));
        }
        canvas.text(at, p(left + 3.6, baseline), &name, &style);
        let units = if show.system == crate::units::System::Millimetres { 11.5 } else { 7.5 };
        table::figure(canvas, at, left + names + 2.0 + units, baseline, level.v, &style, show);
    }
    let head = list.iter().map(|level| seen.at(Length::ZERO, level.v).y).fold(f64::INFINITY, f64::min);
    let top = apart(&list.iter().map(|level| seen.at(Length::ZERO, level.v).y).collect::<Vec<_>>(), PITCH);
    let y = top.first().copied().unwrap_or(head) - PITCH + BODY / 2.0;
    let place = PaperPoint::new(left + 3.6, y);
    canvas.text_at_first(at, &[place, place.moved(0.0, -1.5)], "depth from finished face", &Style::caption());
}
