//! Legs that meet, seats behind them, and the site as surveyed.

pub(super) mod corner_is_cut_to_its_angle;
pub(super) mod fronts_clear_the_corner;
pub(super) mod run_clears_what_was_surveyed;
pub(super) mod seats_have_knee_space;
