//! The frame's own tubes, alike ones of a module together.

use std::collections::BTreeMap;

use super::module_id;
use crate::drawing::{Listing, ListingColumn as Column, Value};
use crate::solve::{Member, Role, Solved};
use crate::units::Length;

/// The list.
pub fn listing(solved: &Solved) -> Listing {
    let columns = vec![
        Column::words("leg"),
        Column::words("module"),
        Column::words("tube"),
        Column::words("runs"),
        Column::counts("count"),
        Column::lengths("length each"),
        Column::lengths("outside"),
        Column::lengths("wall"),
    ];
    let mut list = Listing::new("tubes", "Tubes of the frame", columns)
        .noted("Lengths are those of the tube as it stands in the frame; the welder takes off what the joints need.");
    for leg in &solved.legs {
        for index in 0..leg.modules.len() {
            let mut alike: BTreeMap<(&str, &str, Length), u64> = BTreeMap::new();
            for member in leg.members_of(index..=index) {
                let (runs, length) = along(member);
                *alike.entry((role(member.role), runs, length)).or_default() += 1;
            }
            for ((role, runs, length), count) in alike {
                list.push(vec![
                    leg.id.as_str().into(),
                    module_id(leg, index),
                    role.into(),
                    runs.into(),
                    Value::Count(count),
                    length.into(),
                    solved.frame.tube.into(),
                    solved.frame.wall.into(),
                ]);
            }
        }
    }
    list
}

/// Which way a tube runs, and its length that way.
fn along(member: &Member) -> (&'static str, Length) {
    let size = |(low, high): (Length, Length)| high - low;
    let body = member.body;
    let ways = [("along the face", size(body.u)), ("front to back", size(body.v)), ("upright", size(body.z))];
    // The first of equal ones, so that a cube has a way too.
    ways.into_iter().fold(("upright", Length::ZERO), |best, way| if way.1 > best.1 { way } else { best })
}

const fn role(role: Role) -> &'static str {
    match role {
        Role::Post => "post",
        Role::Rail => "rail",
        Role::Backing => "backing",
    }
}
