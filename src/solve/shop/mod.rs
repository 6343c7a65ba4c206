//! What gets set, cut, ordered and finished, from a run whose legs are solved.

mod cutting;
mod levelling;
mod orders;
mod pieces;
mod quantities;
mod sequence;
mod supports;
mod trim;
mod weights;

use super::{SheetPiece, Shop, Solved};
use crate::parameters::given::Given;

/// Works out the shop's share of a run, each part from the legs and from the parts before it.
pub fn shop(given: &Given, solved: &Solved) -> Shop {
    let mut shop = Shop { supports: supports::supports(given, solved), ..Shop::default() };
    let cut = pieces::pieces(given, solved, &shop);
    (shop.cutting.materials, shop.pieces, shop.cutting.joints) = (cut.materials, cut.pieces, cut.joints);
    shop.cutting.laying = given.laying;
    let of_leg = |leg: usize| shop.pieces.iter().filter(move |piece| piece.leg == leg).filter_map(SheetPiece::as_board);
    shop.boards = (0..solved.legs.len()).map(|leg| of_leg(leg).collect()).collect();
    shop.weights = weights::weights(given, solved, &shop);
    shop.levelling = levelling::levelling(given, solved, &shop);
    shop.trim = trim::trim(given, solved, &shop);
    (shop.cutting.sheets, shop.cutting.bars) = cutting::cutting(given, solved, &shop);
    (shop.quantities, shop.figures) = quantities::quantities(given, solved, &shop);
    shop.slab = quantities::slab(given, solved);
    shop.orders = orders::orders(given, solved, &shop);
    shop.sequence = sequence::sequence(given, solved, &shop);
    shop
}
