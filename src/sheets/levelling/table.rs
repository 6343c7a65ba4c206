//! Every foot: where it stands, how high it is set, what it carries.

use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::flow::Flow;
use crate::sheets::frame::Area;
use crate::sheets::notes::list_height;
use crate::sheets::schedules::columns::{datum, or_none, short, titled};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, HEAD, ROW, Table};
use crate::solve::Datum;

/// Adds the table of a leg's feet.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, index: usize) {
    let solved = set.solved;
    let show = solved.show;
    let leg = &solved.legs[index];
    let loads = solved.shop.levelling.loads.get(index);
    let rating = solved.frame.foot_rating;
    let range = (solved.frame.foot_shortest, solved.frame.foot_longest);
    let build = |_: f64| {
        let columns = columns(set);
        let mut breaks = Vec::new();
        let rows = leg.feet.iter().enumerate().map(|(at, foot)| {
            if leg.feet.get(at + 1).is_none_or(|next| next.module != foot.module) {
                breaks.push(at);
            }
            let module = leg.modules.get(foot.module).map_or(String::new(), |module| module.id.clone());
            let load = loads.and_then(|loads| loads.get(at)).copied().unwrap_or_default();
            let mass = |kilograms: f64| {
                let words = show.mass(kilograms);
                match kilograms {
                    none if none <= 0.0 => Cell::Grey("\u{2013}".to_owned()),
                    over if rating > 0.0 && over > rating => Cell::Bold(words),
                    _ => Cell::Words(words),
                }
            };
            let over = rating > 0.0 && load.tripod > rating;
            let remark = if foot.height > range.1 {
                Cell::Bold("too long".to_owned())
            } else if foot.height < range.0 {
                Cell::Bold("too short".to_owned())
            } else if over {
                Cell::Bold("overloaded".to_owned())
            } else if solved.shop.levelling.high == Some((index, at)) {
                Cell::Bold("high point".to_owned())
            } else {
                Cell::Empty
            };
            vec![
                Cell::words(solved.foot_tag(index, at).to_string()),
                Cell::Words(module),
                Cell::Finished(foot.u),
                Cell::Finished(foot.v),
                or_none(-foot.ground),
                Cell::Key(foot.height),
                mass(load.all),
                mass(load.tripod),
                remark,
            ]
        });
        let rows = rows.collect();
        Table { columns, rows, breaks }
    };
    flow.table(&titled(set, index, "Adjustable feet"), 1, &build);
}

fn columns(set: &Set<'_>) -> Vec<Column> {
    let show = set.solved.show;
    let loads = set.solved.shop.levelling.loads.iter().flatten();
    let words = loads.flat_map(|load| [load.all, load.tripod]).map(|kilograms| show.mass(kilograms));
    let mass = words.map(|words| lettering::width(&words, BODY, Weight::SemiBold)).fold(15.0, f64::max) + 3.5;
    vec![
        Column::words(8.0, "foot"),
        Column::words(12.0, "in"),
        datum(show, "from", Datum::FinishedLeftEnd),
        datum(show, "from", Datum::FinishedFace),
        short(show, "floor\nunder 0"),
        short(show, "set to\nheight"),
        Column::right(mass, "all feet\nbear"),
        Column::right(mass, "on three\nfeet"),
        Column::words(20.0, ""),
    ]
}

/// Whether the tables of all legs, and the notes after them, fit whole into areas of a page.
pub fn fits(set: &Set<'_>, areas: &[Area], list: &[(String, String)]) -> bool {
    let mut left: Vec<(f64, f64)> = areas.iter().map(|area| (area.width(), area.height())).collect();
    let mut take = |wide: f64, high: &dyn Fn(f64) -> f64| {
        let room = left.iter_mut().find(|room| room.0 >= wide && room.1 >= high(room.0));
        room.map(|room| room.1 -= high(room.0) + 8.0).is_some()
    };
    let wide: f64 = columns(set).iter().map(|column| column.width).sum();
    let tables = set.solved.legs.iter().all(|leg| take(wide, &|_| 2.0 * HEAD + 9.0 + leg.feet.len() as f64 * ROW));
    tables && (list.is_empty() || take(60.0, &|wide| 9.0 + list_height(list, wide)))
}
