//! Boards as they lie on the frame.

use crate::drawing::{Listing, ListingColumn as Column};
use crate::solve::Solved;

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
    for leg in &solved.legs {
        for board in &leg.boards {
            let build = leg.build(board.face);
            let marks: Vec<&str> =
                board.fittings.iter().filter_map(|&k| leg.fittings.get(k)).map(|f| f.mark.as_str()).collect();
            list.push(vec![
                leg.id.as_str().into(),
                board.name.as_str().into(),
                build.board_name.as_str().into(),
                board.extent.width().into(),
                board.extent.height().into(),
                build.board.into(),
                marks.join(", ").into(),
            ]);
        }
    }
    list
}
