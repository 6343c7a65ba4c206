//! What a sheet of one leg's counter or substrate is drawn from.

use super::set::{Kind, Set};
use crate::solve::{Leg, Solved};
use crate::units::Show;

/// One leg on its sheet.
#[derive(Clone, Copy)]
pub struct Task<'s> {
    /// The set.
    pub set: &'s Set<'s>,
    /// The sheet.
    pub kind: Kind,
    /// The leg, by index.
    pub index: usize,
    /// The solved run.
    pub solved: &'s Solved,
    /// The leg.
    pub leg: &'s Leg,
    /// How lengths are shown.
    pub show: Show,
}

impl<'s> Task<'s> {
    /// A leg of the set's run on one of its sheets.
    pub fn new(set: &'s Set<'s>, kind: Kind, (index, leg): (usize, &'s Leg)) -> Task<'s> {
        Task { set, kind, index, solved: set.solved, leg, show: set.solved.show }
    }
}
