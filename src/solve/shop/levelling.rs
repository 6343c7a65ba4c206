//! The high point, and what each foot carries.

use crate::parameters::given::Given;
use crate::solve::{Levelling, Shop, Solved};

/// The high point, and what each foot carries.
pub fn levelling(_given: &Given, _solved: &Solved, _shop: &Shop) -> Levelling {
    Default::default()
}
