//! The pieces of all counters and splashes numbered through the run, so that no name is given twice.

use super::{Leg, Slab};

/// Numbers pieces and splashes in the order of the legs; those of a counter that turns corners from its left to its right.
pub fn numbered(legs: &mut [Leg], slabs: &[Slab]) {
    let mut order: Vec<(usize, usize)> = Vec::new();
    for (index, leg) in legs.iter().enumerate() {
        match slabs.iter().find(|slab| slab.legs.contains(&index)) {
            // Its pieces are told with its first leg.
            Some(slab) if slab.legs.iter().min() == Some(&index) => {
                order.extend(slab.pieces.iter().map(|(leg, piece, _)| (*leg, *piece)));
            }
            Some(_) => {}
            None => order.extend((0..leg.counter.pieces.len()).map(|piece| (index, piece))),
        }
    }
    for (number, (leg, piece)) in order.into_iter().enumerate() {
        if let Some(piece) = legs.get_mut(leg).and_then(|leg| leg.counter.pieces.get_mut(piece)) {
            piece.name = format!("Piece {}", number + 1);
        }
    }
    let splashes = legs.iter_mut().flat_map(|leg| &mut leg.counter.splashes);
    for (number, (name, ..)) in splashes.enumerate() {
        *name = format!("Splash {}", number + 1);
    }
}
