//! The sequence of the work: nothing is closed in for good that has to be reached again.

pub(super) mod closed_in_service_is_reached;
