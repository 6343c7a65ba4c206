//! Where each support goes, what to cut, and the frame's own tubes.

use super::plan_words::runs;
use crate::sheets::flow::Flow;
use crate::sheets::flow::fit::rest;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table, figures_width};
use crate::solve::{Role, Solved, Support};
use crate::units::{Length, Show};

/// Supports that are cut alike: their marks, and one of them.
pub struct Alike<'s> {
    /// Their marks, in order.
    pub marks: Vec<&'s str>,
    /// The first of them.
    pub one: &'s Support,
}

/// The supports that are added, alike ones together, in the order of their marks.
pub fn alike(solved: &Solved) -> Vec<Alike<'_>> {
    let mut all: Vec<Alike<'_>> = Vec::new();
    for support in &solved.shop.supports.members {
        let same = |other: &&mut Alike<'_>| {
            other.one.section == support.section
                && other.one.alloy == support.alloy
                && other.one.length == support.length
                && other.one.holes == support.holes
        };
        match all.iter_mut().find(same) {
            Some(found) => found.marks.push(&support.mark),
            None => all.push(Alike { marks: vec![&support.mark], one: support }),
        }
    }
    all
}

/// A column of lengths, as wide as the longest of a run needs.
fn lengths(show: Show, heading: &str) -> Column {
    Column::figures(figures_width(show, Length::from_inches(120.0)).max(26.0), heading)
}

/// Where each goes, from the faces that will be there and from the frame that is.
pub fn places(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let (solved, show) = (set.solved, set.solved.show);
    let build = |_: f64| {
        let columns = vec![
            Column::words(11.5, "mark"),
            Column::words(27.5, "what"),
            Column::words(24.0, "runs"),
            lengths(show, "left, from\nfinished end").from_finished(),
            lengths(show, "left, from\nframe end"),
            lengths(show, "front, from\nfinished face").from_finished(),
            lengths(show, "front, from\nbare frame"),
            lengths(show, "top under\nframe top"),
        ];
        let mut breaks = Vec::new();
        let members = &solved.shop.supports.members;
        let rows = members
            .iter()
            .enumerate()
            .map(|(at, support)| {
                let next = members.get(at + 1);
                if next.is_none_or(|next| (next.leg, next.module) != (support.leg, support.module)) {
                    breaks.push(at);
                }
                let d = &solved.legs[support.leg].datums;
                let (u, v, top) = (support.body.u.0, support.body.v.0, d.frame_top - support.body.z.1);
                let over = if top < Length::ZERO { Cell::Words("on the frame".to_owned()) } else { Cell::Key(top) };
                vec![
                    Cell::Bold(support.mark.clone()),
                    Cell::words(what(solved, support)),
                    Cell::words(runs(support.along)),
                    Cell::Finished(u),
                    Cell::Figure(u - d.frame_left),
                    Cell::Finished(v),
                    Cell::Figure(v - d.frame_face),
                    over,
                ]
            })
            .collect();
        Table { columns, rows, breaks }
    };
    flow.table("Where they go", 1, &build);
}

/// What a support is, and for which fitting.
fn what(solved: &Solved, support: &Support) -> String {
    let fitting = support.fitting.and_then(|index| solved.legs[support.leg].fittings.get(index));
    match fitting {
        Some(fitting) => format!("{}, {}", support.role.words(), fitting.mark),
        None => support.role.words().to_owned(),
    }
}

/// Marks in a row, as `S1, S4`; runs of them by their first and last.
pub fn marks(all: &[&str]) -> String {
    // One run's marks begin alike.
    let letters = all.first().map_or("", |mark| mark.trim_end_matches(|sign: char| sign.is_ascii_digit()));
    let numbers: Vec<usize> = all.iter().filter_map(|mark| mark.strip_prefix(letters)?.parse().ok()).collect();
    let mut words: Vec<String> = Vec::new();
    let mut at = 0;
    while at < numbers.len() {
        let mut end = at;
        while end + 1 < numbers.len() && numbers[end + 1] == numbers[end] + 1 {
            end += 1;
        }
        let (first, last) = (numbers[at], numbers[end]);
        words.push(match end - at {
            0 => format!("{letters}{first}"),
            1 => format!("{letters}{first}, {letters}{last}"),
            _ => format!("{letters}{first} to {letters}{last}"),
        });
        at = end + 1;
    }
    words.join(", ")
}

/// What to cut.
pub fn cuts(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let (solved, show) = (set.solved, set.solved.show);
    let build = |width: f64| {
        let fixed = 14.0 + 30.0 + 22.0 + 22.0;
        let sections = 52.0_f64.min(rest(width, fixed + 28.0, 44.0));
        let columns = vec![
            Column::words(28.0, "mark"),
            Column::words(12.0, "count"),
            Column::words(sections, "section"),
            Column::words(30.0, "metal"),
            lengths(show, "length\neach"),
            Column::right(22.0, "mass\neach"),
        ];
        let rows = alike(solved)
            .iter()
            .map(|own| {
                vec![
                    Cell::Bold(marks(&own.marks)),
                    Cell::words(own.marks.len().to_string()),
                    Cell::words(own.one.section.clone()),
                    Cell::words(own.one.alloy.clone()),
                    Cell::Key(own.one.length),
                    Cell::words(show.mass(own.one.mass)),
                ]
            })
            .collect();
        Table { columns, rows, breaks: Vec::new() }
    };
    flow.table("Cut list of supports", 1, &build);
}

/// The backing that the frame has of its own, with its places in the bare frame.
pub fn backing(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let (solved, show) = (set.solved, set.solved.show);
    let framed = &solved.shop.supports.framed;
    let build = |_: f64| {
        let columns = vec![
            Column::words(11.5, "mark"),
            Column::words(14.0, "module"),
            Column::words(29.0, "what"),
            Column::words(24.0, "runs"),
            lengths(show, "length"),
            lengths(show, "left, from\nframe end"),
            lengths(show, "front, from\nbare frame"),
            lengths(show, "top under\nframe top"),
        ];
        let mut breaks = Vec::new();
        let rows = framed
            .iter()
            .enumerate()
            .map(|(at, one)| {
                if framed.get(at + 1).is_none_or(|next| (next.leg, next.module) != (one.leg, one.module)) {
                    breaks.push(at);
                }
                let (leg, body) = (&solved.legs[one.leg], &one.body);
                let d = &leg.datums;
                vec![
                    Cell::Bold(one.mark.clone()),
                    Cell::words(leg.modules.get(one.module).map_or("", |module| module.id.as_str())),
                    Cell::words(what(solved, one)),
                    Cell::words(runs(one.along)),
                    Cell::Key(one.length),
                    Cell::Figure(body.u.0 - d.frame_left),
                    Cell::Figure(body.v.0 - d.frame_face),
                    Cell::Figure(d.frame_top - body.z.1),
                ]
            })
            .collect();
        Table { columns, rows, breaks }
    };
    flow.table("Backing that the frame has of its own", 1, &build);
}

/// Every tube of the frame, its backing included, for a frame that is made in the shop.
pub fn frame(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let (solved, show) = (set.solved, set.solved.show);
    let build = |_: f64| {
        let columns = vec![
            Column::words(14.0, "mark"),
            Column::words(12.0, "count"),
            Column::words(18.0, "module"),
            Column::words(24.0, "what"),
            lengths(show, "length\neach"),
        ];
        let tubes = &solved.shop.supports.tubes;
        let mut breaks = Vec::new();
        let rows = tubes
            .iter()
            .enumerate()
            .map(|(at, cut)| {
                let next = tubes.get(at + 1);
                if next.is_none_or(|next| (next.leg, next.module) != (cut.leg, cut.module)) {
                    breaks.push(at);
                }
                let module = solved.legs[cut.leg].modules.get(cut.module);
                vec![
                    Cell::words(cut.mark.clone()),
                    Cell::words(cut.count.to_string()),
                    Cell::words(module.map_or("", |module| module.id.as_str())),
                    Cell::words(match cut.role {
                        Role::Post => "post",
                        Role::Rail => "rail",
                        Role::Backing => "backing",
                    }),
                    Cell::Key(cut.length),
                ]
            })
            .collect();
        Table { columns, rows, breaks }
    };
    flow.table("Tubes of the frame, if it is made in the shop", 1, &build);
}
