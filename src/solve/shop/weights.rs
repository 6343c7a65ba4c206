//! What everything weighs.

use crate::parameters::given::Given;
use crate::solve::{Shop, Solved, Weights};

/// What everything weighs.
pub fn weights(_given: &Given, _solved: &Solved, _shop: &Shop) -> Weights {
    Default::default()
}
