//! Weights: what is known of what the frame and its feet have to carry.

use super::columns::titled;
use crate::sheets::flow::{Flow, fit};
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::Leg;

/// Adds the schedule of a leg.
pub fn add(flow: &mut Flow<'_, '_>, set: &Set<'_>, leg: usize) {
    let (show, leg_index) = (set.solved.show, leg);
    let leg = &set.solved.legs[leg_index];
    let build = |width: f64| {
        let columns = vec![
            Column::words(fit::rest(width, 34.0 + 66.0, 40.0), "part"),
            Column::right(34.0, "weight"),
            Column::words(66.0, "   how it is known"),
        ];
        let known = known(leg);
        let total: f64 = known.iter().map(|(_, mass, _)| mass).sum();
        let mut rows: Vec<Vec<Cell>> = known
            .into_iter()
            .map(|(name, mass, how)| {
                vec![Cell::Words(name), Cell::Words(show.mass(mass)), Cell::Grey(format!("   {how}"))]
            })
            .collect();
        let breaks = vec![rows.len().saturating_sub(1)];
        let sum = Cell::Bold("together".to_owned());
        rows.push(vec![
            sum,
            Cell::Bold(show.mass(total)),
            Cell::Grey("   without frame, boards, substrate".to_owned()),
        ]);
        let unknown: Vec<&str> = leg.fittings.iter().filter(|f| f.mass.is_none()).map(|f| f.mark.as_str()).collect();
        if !unknown.is_empty() {
            let words = Cell::Grey(format!("not given, not in the sum: {}", unknown.join(", ")));
            rows.push(vec![words, Cell::Empty, Cell::Empty]);
        }
        Table { columns, rows, breaks }
    };
    flow.table(&titled(set, leg_index, "Weights"), 1, &build);
}

/// Every part whose weight is known: name, kilograms, and how it is known.
fn known(leg: &Leg) -> Vec<(String, f64, &'static str)> {
    let mut list = Vec::new();
    for piece in &leg.counter.pieces {
        list.push((format!("counter, {}", piece.name.to_lowercase()), piece.mass, "outline, thickness and density"));
    }
    for (name, _, _, mass) in &leg.counter.splashes {
        list.push((name.to_lowercase(), *mass, "outline, thickness and density"));
    }
    for (face, word) in super::findings::FACES {
        let area: f64 = leg.boards.iter().filter(|board| board.face == face).map(|board| board.region.area()).sum();
        if let Some(finish) = leg.finish(face)
            && area > 0.0
        {
            // Square millimetres to square metres.
            list.push((
                format!("{} on the {word}", finish.name),
                area * 1e-6 * finish.mass,
                "area of the boards and weight per area",
            ));
        }
    }
    for fitting in &leg.fittings {
        if let Some(mass) = fitting.mass {
            list.push((format!("{} {}", fitting.mark, fitting.name), mass, "given with the fitting"));
        }
    }
    list
}
