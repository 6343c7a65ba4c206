//! The pieces on stock sheets, the lengths on stock bars.

use crate::parameters::given::Given;
use crate::solve::{Shop, Solved, StockBar, StockSheet};

/// The pieces on stock sheets, the lengths on stock bars.
pub fn cutting(_given: &Given, _solved: &Solved, _shop: &Shop) -> (Vec<StockSheet>, Vec<StockBar>) {
    Default::default()
}
