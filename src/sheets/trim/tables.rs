//! The pieces in a list, their notches, and where their fasteners go.

use super::ends;
use crate::drawing::lettering::{self, BODY, Weight};
use crate::sheets::flow::fit;
use crate::sheets::schedules::columns::{lengths, short};
use crate::sheets::set::Set;
use crate::sheets::shelves::Block;
use crate::sheets::table::{Cell, Column, Table};
use crate::sheets::table_blocks;

/// What weighs less, kg, would show as nothing.
const LIGHT: f64 = 0.5;

/// All tables as blocks, each no higher than a page.
pub fn blocks<'a>(set: &'a Set<'_>, width: f64, page: f64) -> Vec<Block<'a>> {
    let tables = vec![
        ("Pieces".to_owned(), pieces(set)),
        ("Notches, from the left end".to_owned(), notches(set)),
        (
            "Places: each piece\u{2019}s left end, and its screws from there".to_owned(),
            fasteners(set, width.min(176.0)),
        ),
    ];
    table_blocks::blocks(tables, width, page, set.solved.show)
}

fn pieces(set: &Set<'_>) -> Table {
    let solved = set.solved;
    let show = solved.show;
    let columns = vec![
        Column::words(9.0, ""),
        Column::words(24.0, "along"),
        lengths(show, "longest\nlength"),
        short(show, "greatest\nheight"),
        short(show, "least\nheight"),
        Column::words(23.0, "left end\nas seen"),
        Column::words(23.0, "right end\nas seen"),
        Column::right(13.0, "screws"),
        Column::right(17.0, "weight"),
    ];
    let row = |piece: &crate::solve::TrimPiece| {
        let [left, right] = ends::ends(piece).map(ends::short);
        let leg = match solved.legs.len() {
            1 => String::new(),
            _ => format!(", leg {}", piece.leg + 1),
        };
        vec![
            Cell::Bold(piece.mark.clone()),
            Cell::Words(format!("{}{leg}", ends::face(piece.face))),
            Cell::Key(piece.length()),
            Cell::Figure(piece.width()),
            Cell::Figure(piece.narrowest().0),
            Cell::Words(left),
            Cell::Words(right),
            Cell::Words(piece.fasteners.len().to_string()),
            if piece.mass < LIGHT { Cell::Grey("\u{2013}".to_owned()) } else { Cell::Words(show.mass(piece.mass)) },
        ]
    };
    Table { columns, rows: solved.shop.trim.pieces.iter().map(row).collect(), breaks: Vec::new() }
}

fn notches(set: &Set<'_>) -> Table {
    let solved = set.solved;
    let show = solved.show;
    let columns = vec![
        Column::words(9.0, ""),
        Column::words(40.0, "clears"),
        lengths(show, "from"),
        lengths(show, "to"),
        short(show, "deep"),
        short(show, "left\nunder it"),
    ];
    let mut rows = Vec::new();
    for piece in &solved.shop.trim.pieces {
        let Some(leg) = solved.legs.get(piece.leg) else { continue };
        for notch in &piece.notches {
            let (from, to) = ends::seen_span(piece, notch.from, notch.to);
            let fitting = leg.fittings.get(notch.fitting);
            let words = fitting.map_or(String::new(), |fitting| format!("{} {}", fitting.mark, fitting.name));
            rows.push(vec![
                Cell::Bold(piece.mark.clone()),
                Cell::Words(words),
                Cell::Figure(from),
                Cell::Figure(to),
                Cell::Figure(piece.top - notch.bottom),
                Cell::Figure(notch.left_over),
            ]);
        }
    }
    Table { columns, rows, breaks: Vec::new() }
}

fn fasteners(set: &Set<'_>, width: f64) -> Table {
    let solved = set.solved;
    let show = solved.show;
    let begins = |piece: &crate::solve::TrimPiece| {
        solved.legs.get(piece.leg).map_or(String::new(), |leg| ends::begins(leg, piece, show))
    };
    let widest = solved.shop.trim.pieces.iter().map(|piece| lettering::width(&begins(piece), BODY, Weight::Regular));
    let widest = widest.fold(20.0, f64::max) + 3.5;
    let first =
        vec![Column::words(9.0, ""), Column::words(widest, "left end lies"), short(show, "screws under\nits top")];
    let used: f64 = first.iter().map(|column| column.width).sum();
    let mut columns = first;
    columns.push(Column::words((width - used).max(40.0), "at"));
    let mut rows = Vec::new();
    for piece in &solved.shop.trim.pieces {
        let mut places: Vec<_> = piece.fasteners.iter().map(|at| ends::seen(piece, *at)).collect();
        places.sort();
        // A figure and its unit stay on one line.
        let words: Vec<String> = places.iter().map(|at| show.prose(*at).replace(' ', "\u{a0}")).collect();
        let cells = vec![
            Cell::Bold(piece.mark.clone()),
            Cell::Words(begins(piece)),
            Cell::Figure(piece.top - piece.fastener_z),
            Cell::Words(words.join(", ")),
        ];
        rows.extend(fit::lines(&columns, cells));
    }
    Table { columns, rows, breaks: Vec::new() }
}
