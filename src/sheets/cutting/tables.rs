//! The pieces in a list, and the cuts of each stock sheet in their order.

use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::schedules::columns::lengths;
use crate::sheets::set::Set;
use crate::sheets::table::{Cell, Column, Table};
use crate::solve::{Face, SheetPart};
use crate::units::Length;

/// All tables with their titles.
pub fn tables(set: &Set<'_>) -> Vec<(String, Table)> {
    vec![("Pieces".to_owned(), pieces(set)), ("Cuts, in their order".to_owned(), cuts(set))]
}

fn pieces(set: &Set<'_>) -> Table {
    let shop = &set.solved.shop;
    let show = set.solved.show;
    let widest = shop.pieces.iter().map(|piece| lettering::width(&piece.mark, BODY, Weight::SemiBold) + 3.0);
    let heavy = shop.pieces.iter().map(|piece| lettering::width(&show.mass(piece.mass), BODY, Weight::Regular) + 3.5);
    let columns = vec![
        Column::words(widest.fold(18.0, f64::max), ""),
        Column::words(if set.solved.legs.len() > 1 { 34.0 } else { 20.0 }, "what"),
        lengths(show, "across"),
        lengths(show, "high or\ndeep"),
        Column::words(15.0, "from\nsheet"),
        Column::words(26.0, "cut for"),
        Column::right(heavy.fold(17.0, f64::max), "weight"),
    ];
    let row = |(index, piece): (usize, &crate::solve::SheetPiece)| {
        let sheet = shop.cutting.sheets.iter().position(|sheet| sheet.placed.iter().any(|one| one.piece == index));
        let leg = set.solved.legs.get(piece.leg);
        let marks: Vec<&str> = piece
            .fittings
            .iter()
            .filter_map(|&k| leg.and_then(|leg| leg.fittings.get(k)))
            .map(|fitting| fitting.mark.as_str())
            .collect();
        let of_leg = if set.solved.legs.len() > 1 { format!(", leg {}", piece.leg + 1) } else { String::new() };
        vec![
            Cell::Bold(piece.mark.clone()),
            Cell::Words(format!("{}{of_leg}", part(piece.part))),
            Cell::Key(piece.blank.0),
            Cell::Key(piece.blank.1),
            sheet.map_or(Cell::Bold("none".to_owned()), |sheet| Cell::Words(super::name(set, sheet))),
            Cell::Words(marks.join(", ")),
            if piece.mass < 0.5 { Cell::Grey("\u{2013}".to_owned()) } else { Cell::Words(show.mass(piece.mass)) },
        ]
    };
    Table { columns, rows: shop.pieces.iter().enumerate().map(row).collect(), breaks: Vec::new() }
}

const fn part(part: SheetPart) -> &'static str {
    match part {
        SheetPart::Face(Face::Front) => "front",
        SheetPart::Face(Face::Back) => "back",
        SheetPart::Face(Face::Left) => "left end",
        SheetPart::Face(Face::Right) => "right end",
        SheetPart::Bottom => "bottom",
        SheetPart::Substrate => "substrate",
    }
}

/// Each cut with where it lies on the sheet before any of it was cut, measured to the side that a tape reaches first.
fn cuts(set: &Set<'_>) -> Table {
    let cutting = &set.solved.shop.cutting;
    let show = set.solved.show;
    let columns = vec![
        Column::words(15.0, "sheet"),
        Column::words(12.0, "cut"),
        Column::words(16.0, "runs"),
        lengths(show, "from left\nedge"),
        lengths(show, "from lower\nedge"),
        lengths(show, "long"),
    ];
    let mut rows = Vec::new();
    let mut breaks = Vec::new();
    for (index, sheet) in cutting.sheets.iter().enumerate() {
        let kerf = cutting.materials.get(sheet.material).map_or(Length::ZERO, |material| material.kerf);
        for (number, cut) in sheet.cuts.iter().enumerate() {
            let upright = cut.from.0 == cut.to.0;
            let near = |middle: Length| middle - kerf.half();
            let long = if upright { cut.to.1 - cut.from.1 } else { cut.to.0 - cut.from.0 };
            rows.push(vec![
                if number == 0 { Cell::Bold(super::name(set, index)) } else { Cell::Empty },
                Cell::Words((number + 1).to_string()),
                Cell::Words(if upright { "up" } else { "along" }.to_owned()),
                if upright { Cell::Key(near(cut.from.0)) } else { Cell::Empty },
                if upright { Cell::Empty } else { Cell::Key(near(cut.from.1)) },
                Cell::Figure(long),
            ]);
        }
        if !sheet.cuts.is_empty() {
            breaks.push(rows.len() - 1);
        }
    }
    Table { columns, rows, breaks }
}
