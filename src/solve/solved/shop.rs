//! What gets set, cut, ordered and finished: worked out from the solved legs, after them.

use super::{
    Board, cutting::Cutting, feet_loads::Levelling, orders::Order, quantities::MaterialLine, sequence::Step,
    sheet_pieces::SheetPiece, supports::Supports, trim_pieces::BaseTrim, weights::Weights,
};
use crate::solve::DefaultUsed;
use crate::units::Length;

/// The shop's share of a solved run, in the order in which it is worked out.
#[derive(Clone, Debug, Default)]
pub struct Shop {
    /// Support arms, rails, backing and intermediate members that the frame gets besides its own tubes.
    pub supports: Supports,
    /// Every piece cut from sheet: faces, ends, backs, bottoms, substrate.
    pub pieces: Vec<SheetPiece>,
    /// The pieces of each leg's faces as boards, under their marks: what templates and files are cut by, with the gaps
    /// between them and parted where no sheet takes them whole.
    pub boards: Vec<Vec<Board>>,
    /// What things weigh.
    pub weights: Weights,
    /// Feet: heights, the high point, loads.
    pub levelling: Levelling,
    /// The base trim, piece by piece.
    pub trim: BaseTrim,
    /// The pieces laid out on stock sheets, and lengths on stock bars.
    pub cutting: Cutting,
    /// What has to be bought, line by line.
    pub quantities: Vec<MaterialLine>,
    /// Figures of materials that were taken for want of the job's own.
    pub figures: Vec<DefaultUsed>,
    /// The usable slab, length and width, that slabs are counted by: the job's own, or the usual one.
    pub slab: (Length, Length),
    /// One order a supplier.
    pub orders: Vec<Order>,
    /// What has to be done before what.
    pub sequence: Vec<Step>,
}
