//! What is added to the frame under the sheet: members at its top, and brackets that are let into the sheet's underside.

use crate::geometry::PaperPoint;
use crate::sheets::hidden::Hidden;
use crate::solve::{Extent, Leg, Solved, Support, SupportRole};
use crate::units::Length;

/// Those of a leg that touch the sheet.
pub fn under(solved: &Solved, leg: usize) -> impl Iterator<Item = &Support> {
    let top = solved.legs.get(leg).map_or(Length::ZERO, |leg| leg.datums.frame_top);
    let own = solved.shop.supports.members.iter().filter(move |one| one.leg == leg);
    own.filter(move |one| one.body.z.1 == top || one.role == SupportRole::Bracket)
}

/// The brackets of a leg.
pub fn brackets(solved: &Solved, leg: usize) -> Vec<&Support> {
    under(solved, leg).filter(|one| one.role == SupportRole::Bracket).collect()
}

/// The same, as far as the sheet lies over them between two places along it, on paper.
pub fn shown<'s>(
    solved: &'s Solved,
    (index, leg): (usize, &Leg),
    (from, to): (Length, Length),
    at: impl Fn(Length, Length) -> PaperPoint,
) -> Vec<Hidden<'s>> {
    let Extent { x0, y0, x1, y1 } = leg.substrate.extent;
    let clipped = |one: &'s Support| {
        let (u, v) = (one.body.u, one.body.v);
        let (u, v) = ((u.0.max(x0).max(from), u.1.min(x1).min(to)), (v.0.max(y0), v.1.min(y1)));
        let corners = [at(u.0, v.0), at(u.1, v.0), at(u.1, v.1), at(u.0, v.1)];
        (u.0 < u.1 && v.0 < v.1).then_some(Hidden { mark: &one.mark, corners })
    };
    under(solved, index).filter_map(clipped).collect()
}
