//! The pieces on stock sheets, the lengths on stock bars.

mod bars;
mod sheets;

use crate::parameters::given::Given;
use crate::solve::{Shop, Solved, StockBar, StockSheet};

/// The pieces on stock sheets, the lengths on stock bars.
pub fn cutting(given: &Given, solved: &Solved, shop: &Shop) -> (Vec<StockSheet>, Vec<StockBar>) {
    (sheets::sheets(given, shop), bars::bars(given, solved, shop))
}
