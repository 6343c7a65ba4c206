//! How each support bends under its load, against what its metal and its counter allow.

use super::tables::marks;
use super::values::{deflection, deflection_unit, force, moment, stress, stress_unit};
use crate::sheets::flow::Flow;
use crate::sheets::flow::fit::rest;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table, figures_width};
use crate::solve::{Support, SupportCheck};
use crate::units::Length;

/// Adds the table of checks, and what lies on the pieces.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let (solved, show) = (set.solved, set.solved.show);
    let mut rows: Vec<(Vec<&str>, &Support, &SupportCheck)> = Vec::new();
    for support in solved.shop.supports.all() {
        let Some(check) = &support.check else { continue };
        match rows.iter_mut().find(|(_, one, other)| *other == check && one.section == support.section) {
            Some((marks, ..)) => marks.push(&support.mark),
            None => rows.push((vec![&support.mark], support, check)),
        }
    }
    let build = |width: f64| {
        let spans = figures_width(show, Length::from_inches(100.0)).max(17.0);
        let fixed = 15.0 + spans + 20.0 + 24.0 + 30.0 + 12.0 + 15.0;
        let own = rest(width, fixed + 30.0, 16.0).min(28.0);
        let columns = vec![
            Column::words(own, "mark"),
            Column::words(30.0, "carries"),
            Column::right(15.0, "load"),
            Column::figures(spans, "span"),
            Column::right(20.0, "moment"),
            Column::right(24.0, &format!("stress of\nallowed, {}", stress_unit(show))),
            Column::right(30.0, &format!("bends of\nallowed, {}", deflection_unit(show))),
            Column::right(12.0, "limit"),
            Column::words(15.0, "verdict"),
        ];
        let rows = rows
            .iter()
            .map(|(own, _, check)| {
                let verdict = match (check.is_strong(), check.is_stiff()) {
                    (true, true) => Cell::words("holds"),
                    (false, _) => Cell::Bold("too weak".to_owned()),
                    (true, false) => Cell::Bold("bends".to_owned()),
                };
                vec![
                    Cell::Bold(marks(own)),
                    Cell::words(check.load_words.clone()),
                    Cell::words(force(show, check.load)),
                    Cell::Figure(check.span),
                    Cell::words(moment(show, check.moment)),
                    Cell::words(format!("{} of {}", stress(show, check.stress), stress(show, check.allowed))),
                    Cell::words(format!("{} of {}", deflection(show, check.deflection), deflection(show, check.most))),
                    Cell::words(format!(
                        "L/{:.0}",
                        if check.held == "overhang" { check.share / 2.0 } else { check.share }
                    )),
                    verdict,
                ]
            })
            .collect();
        Table { columns, rows, breaks: Vec::new() }
    };
    flow.table("How they bend, by beam formulas", 1, &build);
    let remedies: Vec<(String, String)> = rows
        .iter()
        .filter_map(|(own, _, check)| check.remedy.as_ref().map(|remedy| (marks(own), format!("{remedy}."))))
        .collect();
    flow.notes("What would hold instead", &remedies);
}
