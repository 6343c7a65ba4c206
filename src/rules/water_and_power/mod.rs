//! Water and electricity.

pub(super) mod power_apart_from_gas;
pub(super) mod power_where_it_is_wanted;
pub(super) mod sink_has_water_and_drain;
pub(super) mod stub_comes_up_beside_the_tubes;
