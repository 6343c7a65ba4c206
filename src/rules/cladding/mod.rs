//! Board and finish.

pub(super) mod board_carries_its_cladding;
pub(super) mod cladding_clears_the_floor;
pub(super) mod cladding_has_its_joints;
pub(super) mod face_thin_enough_for_its_fitting;
pub(super) mod framing_close_enough_for_its_board;

use crate::solve::{Build, Face, Finish, Leg};

/// The four faces with their names.
const FACES: [(Face, &str); 4] =
    [(Face::Front, "front"), (Face::Left, "left end"), (Face::Right, "right end"), (Face::Back, "back")];

/// The clad faces of a leg.
pub(super) fn clad(leg: &Leg) -> impl Iterator<Item = (Face, &'static str, &Build, &Finish)> {
    FACES.into_iter().filter_map(|(face, word)| {
        let build = leg.build(face);
        build.finish.as_ref().map(|finish| (face, word, build, finish))
    })
}
