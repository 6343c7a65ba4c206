//! Orders: nothing left to ask, nothing that rests on a figure nobody measured.

pub(super) mod order_rests_on_measured_lengths;
pub(super) mod order_says_left_or_right;
