//! The table of cutouts: size, corners, centre from two finished datums, narrowest strip left.

use super::{Task, names, parts, strip};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::sheets::canvas::Canvas;
use crate::sheets::shelves::Block;
use crate::sheets::table::{self, Cell, Column, Table};
use crate::solve::{Cutout, Fitting, Plane};
use crate::units::{Length, Show, System};

/// From the top of a block to its table, mm.
pub const TITLE: f64 = 5.0;

/// The table, in as many blocks as pages of this height (mm) ask for.
pub fn blocks<'a>(task: &Task<'_>, most_width: f64, page: f64) -> Vec<Block<'a>> {
    titled(task, "Cutouts", most_width, page)
}

/// The same under another title.
pub fn titled<'a>(task: &Task<'_>, title: &str, most_width: f64, page: f64) -> Vec<Block<'a>> {
    let table = table(task, most_width);
    if table.rows.is_empty() {
        return Vec::new();
    }
    chunks(title, table, task.show, page, true)
}

/// A titled table in blocks that fit a page.
pub fn chunks<'a>(title: &str, table: Table, show: Show, page: f64, right: bool) -> Vec<Block<'a>> {
    let most = (((page - TITLE - table.height(0)) / table::ROW).floor() as usize).max(1);
    let count = table.rows.len();
    let table = std::rc::Rc::new(table);
    (0..count.div_ceil(most))
        .map(|k| {
            let (title, table, from, to) = (title.to_owned(), table.clone(), k * most, ((k + 1) * most).min(count));
            Block {
                width: table.width(),
                height: TITLE + table.height(to - from),
                right,
                scale: None,
                draw: Box::new(move |canvas: &mut Canvas, at| {
                    let layer = canvas.layer(Canvas::ROOT, "table");
                    let words = if from > 0 { format!("{title}, continued") } else { title.clone() };
                    canvas.text(layer, at.moved(0.0, 3.0), &words, &Style::body().bold());
                    table.draw_rows(canvas, layer, at.moved(0.0, TITLE), show, from, to);
                }),
            }
        })
        .collect()
}

/// Width of a column of marks, mm.
pub fn mark_width(found: &[(&Fitting, &Cutout)]) -> f64 {
    let wide = |mark: &str| lettering::width(mark, BODY, Weight::SemiBold);
    found.iter().map(|(fitting, _)| wide(&fitting.mark)).fold(7.4, f64::max).min(20.0) + 2.6
}

/// Size of a cutout in words, in the first of the job's units.
pub fn plain_size(show: Show, cutout: &Cutout) -> String {
    let (width, depth) = (cutout.extent.width(), cutout.extent.height());
    if cutout.round {
        format!("\u{d8} {}", show.text(width))
    } else {
        format!("{} \u{d7} {}", show.text(width), show.text(depth))
    }
}

/// Size of a cutout in words.
pub fn size(show: Show, cutout: &Cutout) -> String {
    let (width, depth) = (cutout.extent.width(), cutout.extent.height());
    let second = |length: Length| show.second(length).map_or(String::new(), |text| format!(" {text}"));
    match cutout.round {
        true => format!("\u{d8} {}{}", show.text(width), second(width)),
        false => format!("{}{} \u{d7} {}{}", show.text(width), second(width), show.text(depth), second(depth)),
    }
}

fn table(task: &Task<'_>, most_width: f64) -> Table {
    let show = task.show;
    let found = parts::cutouts(task.leg, Plane::Counter);
    let greatest = task.leg.datums.counter_right;
    let mut sizes: Vec<String> = found.iter().map(|(_, cutout)| size(show, cutout)).collect();
    let called: Vec<String> = found.iter().map(|(fitting, _)| names::name_of(fitting)).collect();
    let widest = |texts: &[String], least: f64, most: f64| {
        texts.iter().map(|t| lettering::width(t, BODY, Weight::Regular)).fold(least, f64::max).min(most) + 2.6
    };
    let figures = if show.system == System::Both { table::figures_width(show, greatest) + 3.0 } else { 22.0 };
    let mut columns = vec![
        Column::words(mark_width(&found), "mark"),
        Column::words(widest(&called, 18.0, 34.0), "cutout"),
        Column::words(widest(&sizes, 24.0, 70.0), "width \u{d7} depth"),
        Column::words(14.5, "corners"),
        Column::figures(figures.max(26.0), "centre from\nfin. left end").from_finished(),
        Column::words(12.5, "and its"),
        Column::figures(figures.max(28.5), "from\nfinished face").from_finished(),
        Column::figures(
            figures.min(17.0).max(if show.system == System::Both { figures } else { 17.0 }),
            "narrowest\nstrip left",
        ),
    ];
    if columns.iter().map(|column| column.width).sum::<f64>() > most_width {
        sizes = found.iter().map(|(_, cutout)| plain_size(show, cutout)).collect();
        columns[2].width = widest(&sizes, 24.0, 70.0);
    }
    let rows = found.iter().zip(sizes).zip(called).map(|(((fitting, cutout), size), name)| {
        let hole = cutout.extent;
        let (part, depth) = if cutout.open { ("back", hole.y1) } else { ("centre", hole.centre_y()) };
        let corners = match (cutout.round, cutout.radius > Length::ZERO) {
            (true, _) => Cell::Empty,
            (_, true) => Cell::words(format!("R {}", show.text(cutout.radius))),
            _ => Cell::words("sharp"),
        };
        vec![
            Cell::Bold(fitting.mark.clone()),
            Cell::Words(name),
            Cell::Words(size),
            corners,
            Cell::Finished(hole.centre_x()),
            Cell::words(part),
            Cell::Finished(depth),
            strip::narrowest(task.leg, Plane::Counter, cutout).map_or(Cell::Empty, Cell::Figure),
        ]
    });
    Table { rows: rows.collect(), columns, breaks: Vec::new() }
}
