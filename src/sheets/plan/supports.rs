//! What carries counter, fittings and overhangs, as hidden beneath the counter, each with its mark.

use super::seen::Seen;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::hidden::{self, Hidden};
use crate::solve::{Solved, SupportRole};

/// The supports of a leg that a plan shows: all that is added, and what of the frame carries a cutout's rim.
fn shown<'s>(solved: &'s Solved, seen: &Seen<'_>) -> Vec<Hidden<'s>> {
    let own = solved.shop.supports.all().filter(|one| one.leg == seen.index && one.role != SupportRole::Backing);
    own.map(|one| {
        let (u, v) = (one.body.u, one.body.v);
        Hidden { mark: &one.mark, corners: seen.corners(u.0.mm(), v.0.mm(), u.1.mm(), v.1.mm()) }
    })
    .collect()
}

/// Draws them; to be lettered over.
pub fn draw(canvas: &mut Canvas, at: Layer, solved: &Solved, seen: &Seen<'_>) {
    hidden::draw(canvas, at, &shown(solved, seen));
}

/// Marks them where there is white. A mark in another leg would be read as one of that leg's.
pub fn marks(canvas: &mut Canvas, at: Layer, solved: &Solved, seen: &Seen<'_>) {
    hidden::marks(canvas, at, &shown(solved, seen), &seen.extent(&seen.leg.counter.extent));
}
