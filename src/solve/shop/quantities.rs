//! What has to be bought.

use crate::parameters::given::Given;
use crate::solve::{MaterialLine, Shop, Solved};

/// What has to be bought.
pub fn quantities(_given: &Given, _solved: &Solved, _shop: &Shop) -> Vec<MaterialLine> {
    Default::default()
}
