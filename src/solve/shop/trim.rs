//! The base trim, piece by piece.

use crate::parameters::given::Given;
use crate::solve::{BaseTrim, Shop, Solved};

/// The base trim, piece by piece.
pub fn trim(_given: &Given, _solved: &Solved, _shop: &Shop) -> BaseTrim {
    Default::default()
}
