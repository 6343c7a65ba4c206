//! The members that hold up counters, substrate and fittings.

use crate::parameters::given::Given;
use crate::solve::{Solved, Supports};

/// The members that hold up counters, substrate and fittings.
pub fn supports(_given: &Given, _solved: &Solved) -> Supports {
    Default::default()
}
