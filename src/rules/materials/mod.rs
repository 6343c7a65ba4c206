//! What is bought, and whether it can be counted.

pub(super) mod bed_of_a_finish_is_given;
pub(super) mod one_name_one_material;
