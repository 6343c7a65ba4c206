//! The base trim piece by piece, and its heights at the stations.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::sheets::trim::ends;
use crate::solve::Solved;

/// The pieces.
pub fn pieces(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("piece"),
        Column::words("leg"),
        Column::words("along"),
        Column::words("left end lies"),
        Column::lengths("longest length"),
        Column::lengths("greatest height"),
        Column::lengths("least height"),
        Column::words("left end as seen"),
        Column::words("right end as seen"),
        Column::counts("screws"),
        Column::masses("weight"),
    ];
    let mut list = Listing::new("trim-pieces", "Base trim, pieces", columns);
    for piece in &solved.shop.trim.pieces {
        let Some(leg) = solved.legs.get(piece.leg) else { continue };
        let [left, right] = ends::ends(piece).map(ends::short);
        list.push(vec![
            piece.mark.as_str().into(),
            leg.id.as_str().into(),
            ends::face(piece.face).into(),
            ends::begins(leg, piece, solved.show).as_str().into(),
            piece.length().into(),
            piece.width().into(),
            piece.narrowest().0.into(),
            left.as_str().into(),
            right.as_str().into(),
            Value::Count(piece.fasteners.len() as u64),
            Value::Mass(piece.mass),
        ]);
    }
    list
}

/// Heights along the pieces, from their left ends as they are seen from outside.
pub fn stations(solved: &Solved) -> Listing {
    let columns = vec![Column::words("piece"), Column::lengths("from its left end"), Column::lengths("height")];
    let mut list = Listing::new("trim-stations", "Base trim, heights of the scribe", columns);
    for piece in &solved.shop.trim.pieces {
        let mut stations: Vec<_> =
            piece.stations.iter().map(|station| (ends::seen(piece, station.at), station.height)).collect();
        stations.sort();
        for (at, height) in stations {
            list.push(vec![piece.mark.as_str().into(), at.into(), height.into()]);
        }
    }
    list
}
