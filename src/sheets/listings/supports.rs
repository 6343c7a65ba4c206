//! The supports, one a row, and how each bends.

use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::solve::Solved;

/// The supports that are added to the frame, with their holes, then the frame's own backing; places are those of the left,
/// front and upper side.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("mark"),
        Column::words("what"),
        Column::words("leg"),
        Column::words("module"),
        Column::words("section"),
        Column::words("metal"),
        Column::lengths("length"),
        Column::lengths("left, from frame end"),
        Column::lengths("front, from bare frame"),
        Column::lengths("top under frame top"),
        Column::words("holes, from the left, front or lower end"),
        Column::masses("weight"),
        Column::lengths("span"),
        Column::lengths("deflection"),
        Column::lengths("most deflection"),
        Column::words("holds"),
    ];
    let mut list = Listing::new("supports", "Supports", columns);
    for support in solved.shop.supports.all() {
        let Some(leg) = solved.legs.get(support.leg) else { continue };
        let hole = |(at, wide): &(crate::units::Length, crate::units::Length)| {
            format!("{} at {}", solved.show.prose(*wide), solved.show.prose(*at))
        };
        let holes: Vec<String> = support.holes.iter().map(hole).collect();
        let check = support.check.as_ref();
        let holds = check.map(|check| if check.is_strong() && check.is_stiff() { "yes" } else { "no" });
        let length = |of: Option<crate::units::Length>| of.map_or(Value::Empty, Value::from);
        list.push(vec![
            support.mark.as_str().into(),
            support.role.words().into(),
            leg.id.as_str().into(),
            super::module_id(leg, support.module),
            support.section.as_str().into(),
            support.alloy.as_str().into(),
            support.length.into(),
            (support.body.u.0 - leg.datums.frame_left).into(),
            (support.body.v.0 - leg.datums.frame_face).into(),
            (leg.datums.frame_top - support.body.z.1).into(),
            holes.join(", ").into(),
            Value::Mass(support.mass),
            length(check.map(|check| check.span)),
            length(check.map(|check| check.deflection)),
            length(check.map(|check| check.most)),
            holds.unwrap_or("not checked").into(),
        ]);
    }
    list
}
