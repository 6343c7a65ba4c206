//! The floor and the feet on it.

pub(super) mod drain_stays_open;
pub(super) mod feet_keep_some_travel;
pub(super) mod feet_within_range;
pub(super) mod floor_sheds_water;
pub(super) mod foot_carries_a_rocking_module;
pub(super) mod foot_carries_its_load;
pub(super) mod foot_stands_under_a_tube;
mod loads;
