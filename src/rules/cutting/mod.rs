//! What is cut, and whether it fits.

pub(super) mod body_fits_its_module;
pub(super) mod body_passes_its_cutout;
pub(super) mod cutout_clears_frame_members;
pub(super) mod cutout_stays_in_its_board;
pub(super) mod cutout_was_measured;
pub(super) mod cutouts_keep_a_strip_between_them;
pub(super) mod fitting_inside_its_module;
pub(super) mod flange_covers_its_gap;
pub(super) mod flange_finds_its_backing;
pub(super) mod limit_belongs_to_a_rule;
pub(super) mod published_agrees_with_measured;
pub(super) mod run_fits_its_site;
