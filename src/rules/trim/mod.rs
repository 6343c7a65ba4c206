//! The base trim.

pub(super) mod trim_hides_the_feet;
pub(super) mod trim_joint_is_backed;
pub(super) mod trim_keeps_a_strip;
pub(super) mod trim_screws_into_tube;
