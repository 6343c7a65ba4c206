//! What is lifted, and what the floor carries.

pub(super) mod floor_carries_the_run;
pub(super) mod part_has_its_lifters;
