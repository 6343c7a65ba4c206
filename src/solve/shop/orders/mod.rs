//! One order a supplier, by trade: what to buy, how many, and what must not be got wrong.
//!
//! Gas and electrical material is no order of ours: licensed trades choose and bring it.

mod bought;
mod counter;
mod edges;
mod fittings;
mod frames;
mod sheets;

use crate::parameters::given::Given;
use crate::solve::{Order, Shop, Solved};

/// The orders of a run, those that have a line.
pub fn orders(given: &Given, solved: &Solved, shop: &Shop) -> Vec<Order> {
    let all = [
        frames::order(given, solved, shop),
        bought::metal(solved, shop),
        fittings::order(solved),
        sheets::order(solved, shop),
        bought::hardware(solved, shop),
        bought::finish(solved, shop),
        counter::order(solved, shop),
        bought::trim(solved, shop),
    ];
    all.into_iter().filter(|order| !order.lines.is_empty()).collect()
}
