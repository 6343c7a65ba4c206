//! Landing, reach, heights, fronts that open.

pub(super) mod aisle_wide_enough;
pub(super) mod counter_height_suits_its_people;
pub(super) mod fronts_open_freely;
pub(super) mod landing_behind_an_island_grill;
pub(super) mod landing_beside_heat;
pub(super) mod landing_beside_water;
pub(super) mod landing_by_the_refrigerator;
pub(super) mod pier_between_openings;
mod sides;
