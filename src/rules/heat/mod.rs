//! Heat, and what burns.

pub(super) mod body_has_its_air_gap;
pub(super) mod burnable_parts_have_a_liner;
pub(super) mod combustibles_keep_their_distance;
pub(super) mod lid_has_room_to_open;
pub(super) mod nothing_that_burns_overhead;
pub(super) mod stubs_outside_the_hot_zone;
