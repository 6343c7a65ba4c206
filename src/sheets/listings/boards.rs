//! Boards as they are cut.

use crate::drawing::{Listing, ListingColumn as Column};
use crate::solve::{Board, SheetPart, Solved};
use crate::units::Length;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("board"),
        Column::words("of"),
        Column::lengths("across"),
        Column::lengths("high"),
        Column::lengths("thick"),
        Column::words("cut for"),
    ];
    let mut list = Listing::new("boards", "Boards", columns);
    for (index, leg) in solved.legs.iter().enumerate() {
        for (board, (across, high)) in cut(solved, index) {
            let build = leg.build(board.face);
            let marks: Vec<&str> =
                board.fittings.iter().filter_map(|&k| leg.fittings.get(k)).map(|f| f.mark.as_str()).collect();
            list.push(vec![
                leg.id.as_str().into(),
                board.name.as_str().into(),
                build.board_name.as_str().into(),
                across.into(),
                high.into(),
                build.board.into(),
                marks.join(", ").into(),
            ]);
        }
    }
    list
}

/// The boards of a leg with the sizes that they are cut to: pieces with the gaps between them, parted where no sheet takes
/// them whole, and with what bevelled edges add; whole boards where no pieces were worked out.
pub fn cut(solved: &Solved, leg: usize) -> Vec<(&Board, (Length, Length))> {
    let pieces = solved.shop.pieces.iter().filter(|piece| piece.leg == leg);
    let blanks: Vec<_> =
        pieces.filter(|piece| matches!(piece.part, SheetPart::Face(_))).map(|piece| piece.blank).collect();
    let boards = solved.shop.boards.get(leg).filter(|boards| !boards.is_empty());
    match boards {
        Some(boards) => boards.iter().zip(blanks).collect(),
        None => {
            let whole = |board: &'_ Board| (board.extent.width(), board.extent.height());
            solved.legs.get(leg).map_or(Vec::new(), |leg| leg.boards.iter().map(|one| (one, whole(one))).collect())
        }
    }
}
