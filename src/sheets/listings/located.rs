//! Every edge of every cutout from every datum that a tape can be held to, one line an edge and datum.

use crate::drawing::{Listing, ListingColumn as Column};
use crate::sheets::schedules::located::{EDGES, measured};
use crate::solve::Solved;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("mark"),
        Column::words("fitting"),
        Column::words("edge"),
        Column::words("from"),
        Column::words("a finished face"),
        Column::lengths("measures"),
    ];
    let mut list = Listing::new("located", "Located", columns)
        .noted("The finished face is the datum of every cut; it is not there yet on the day the boards are cut, so each edge is also given from what is.");
    for leg in &solved.legs {
        for fitting in &leg.fittings {
            for group in EDGES {
                for (edge, at) in (group.edges)(fitting) {
                    for &datum in group.datums {
                        list.push(vec![
                            leg.id.as_str().into(),
                            fitting.mark.as_str().into(),
                            fitting.name.as_str().into(),
                            edge.into(),
                            datum.words().into(),
                            if datum.is_finished() { "yes" } else { "no" }.into(),
                            measured(&leg.datums, datum, at).into(),
                        ]);
                    }
                }
            }
        }
    }
    list
}
