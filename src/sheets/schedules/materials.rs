//! Materials: the layers of each face from the bare frame out, and what the rest is made of.

use super::columns::{short, titled};
use super::findings::FACES;
use crate::sheets::flow::{Flow, fit};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::units::Length;

/// Adds the layers of a leg's faces.
pub fn build_ups(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let build = |width: f64| {
        let (thick, out) = (short(show, "thick"), short(show, "outside of it\nover bare frame"));
        let spread = short(show, "may vary\neither way");
        let fixed = 26.0 + thick.width + out.width + spread.width;
        let name = Column::words(fit::rest(width, fixed, 40.0), "layer");
        let columns = vec![Column::words(26.0, "face"), name, thick, out, spread];
        let (mut rows, mut breaks) = (Vec::new(), Vec::new());
        for (face, word) in FACES {
            let it = leg.build(face);
            let mut layers: Vec<(String, Length, Length)> = Vec::new();
            if it.board > Length::ZERO {
                layers.push((it.board_name.clone(), it.board, Length::ZERO));
            }
            if let Some(finish) = &it.finish {
                if finish.bed > Length::ZERO {
                    layers.push((format!("bed of {}", finish.name), finish.bed, Length::ZERO));
                }
                layers.push((finish.name.clone(), finish.thickness, finish.spread));
            }
            let count = layers.len();
            if count == 0 {
                rows.push(vec![
                    Cell::words(word),
                    Cell::Grey("bare frame".to_owned()),
                    Cell::Empty,
                    Cell::Empty,
                    Cell::Empty,
                ]);
            }
            let mut outside = Length::ZERO;
            for (index, (name, thick, spread)) in layers.into_iter().enumerate() {
                outside += thick;
                let first = if index == 0 { Cell::words(word) } else { Cell::Empty };
                let reach = if index + 1 == count && it.finish.is_some() {
                    Cell::Finished(outside)
                } else {
                    Cell::Figure(outside)
                };
                let spread = if spread > Length::ZERO { Cell::Figure(spread) } else { Cell::Empty };
                rows.push(vec![first, Cell::Words(name), Cell::Figure(thick), reach, spread]);
            }
            breaks.push(rows.len() - 1);
        }
        Table { columns, rows, breaks }
    };
    flow.table(&titled(set, leg_index, "Build-up of each face"), 1, &build);
}

/// Adds counter, substrate, frame, trim and floor.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>) {
    let (solved, show) = (set.solved, set.solved.show);
    let build = |width: f64| {
        let thick = short(show, "thick");
        let note = Column::words(fit::rest(width, 30.0 + 50.0 + thick.width, 40.0), "note");
        let columns = vec![Column::words(30.0, "part"), Column::words(50.0, "material"), thick, note];
        let mut rows = vec![
            ("counter", solved.counter.name.clone(), Some(solved.counter.thickness), counter_note(set)),
            ("substrate", solved.substrate.name.clone(), Some(solved.substrate.thickness), String::new()),
            (
                "frame",
                "square tube".to_owned(),
                Some(solved.frame.tube),
                format!("wall {}", show.text(solved.frame.wall)),
            ),
        ];
        if let Some(trim) = &solved.trim {
            let note = format!("top {} over the highest floor point", show.text(trim.top));
            rows.push(("base trim", trim.name.clone(), Some(trim.thickness), note));
        }
        if !solved.paving.is_empty() {
            rows.push(("floor", solved.paving.clone(), None, String::new()));
        }
        let rows = rows.into_iter().flat_map(|(part, name, thick, note)| {
            let cells =
                vec![Cell::words(part), Cell::Words(name), thick.map_or(Cell::Empty, Cell::Figure), Cell::Words(note)];
            fit::lines(&columns, cells)
        });
        Table { rows: rows.collect(), columns: columns.clone(), breaks: Vec::new() }
    };
    flow.table("Materials", 1, &build);
}

fn counter_note(set: &Set<'_>) -> String {
    let (counter, show) = (&set.solved.counter, set.solved.show);
    let mut note = format!("corners R {}, arris R {}", show.text(counter.corner_radius), show.text(counter.arris));
    if let Some(splash) = counter.splash {
        note.push_str(&format!(", splash {} high, {} thick", show.text(splash.height), show.text(splash.thickness)));
    }
    if counter.drip > Length::ZERO {
        note.push_str(&format!(", drip {}", show.text(counter.drip)));
    }
    note
}
