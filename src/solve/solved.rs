//! The solved run: everything that is drawn, listed and checked, in plain lengths.
//!
//! Leg coordinates throughout: u from the finished left end to the right, v from the finished face away
//! from the cook, z up from the highest floor point under the feet.

mod cutting;
mod extent;
mod facts;
mod feet_loads;
mod fitting;
mod floor;
mod ground;
mod joined;
mod leg;
mod made;
mod notch;
mod orders;
mod quantities;
mod sequence;
mod sheet_pieces;
mod shop;
mod supports;
mod trim_pieces;
mod weights;

pub use cutting::*;
pub use extent::*;
pub use facts::*;
pub use feet_loads::*;
pub use fitting::*;
pub use floor::*;
pub use ground::*;
pub use joined::*;
pub use leg::*;
pub use made::*;
pub use notch::*;
pub use orders::*;
pub use quantities::*;
pub use sequence::*;
pub use sheet_pieces::*;
pub use shop::*;
pub use supports::*;
pub use trim_pieces::*;
pub use weights::*;

use super::{Around, DefaultUsed, Job, LimitSet, Paper, Survey, Tolerances, Trim, services::Services};
use crate::units::Show;

/// A whole run.
#[derive(Clone, Debug)]
pub struct Solved {
    /// The facts of the title block.
    pub job: Job,
    /// How lengths are shown.
    pub show: Show,
    /// The paper asked for.
    pub paper: Paper,
    /// What may be off.
    pub tolerances: Tolerances,
    /// The legs.
    pub legs: Vec<Leg>,
    /// Where legs meet.
    pub joints: Vec<Joint>,
    /// The counters that turn corners, one for each row of legs that does.
    pub slabs: Vec<Slab>,
    /// Walls, posts, steps and doors as surveyed.
    pub survey: Survey,
    /// Facts of the counter that are the same on all legs.
    pub counter: CounterFacts,
    /// Facts of the frame.
    pub frame: FrameFacts,
    /// The substrate's name and thickness.
    pub substrate: SheetFacts,
    /// Base trim.
    pub trim: Option<Trim>,
    /// What lies underfoot, by name.
    pub paving: String,
    /// What is round the run.
    pub around: Around,
    /// Fuel gas, sized, where the job says what feeds the run.
    pub services: Option<Services>,
    /// What gets set, cut, ordered and finished.
    pub shop: Shop,
    /// Limits of rules that the job sets itself.
    pub limits: Vec<LimitSet>,
    /// Named values that the job did not give.
    pub defaults: Vec<DefaultUsed>,
}

impl Solved {
    /// The number of a foot among all of the run, from 1, as every sheet and message has it.
    pub fn foot_tag(&self, leg: usize, foot: usize) -> usize {
        self.legs.iter().take(leg).map(|leg| leg.feet.len()).sum::<usize>() + foot + 1
    }

    /// Whether a leg is a straight one by itself: it meets no other, none stands behind it, and its counter is a box.
    pub fn stands_alone(&self, leg: usize) -> bool {
        let met = self.joints.iter().any(|joint| joint.left == leg || joint.right == leg);
        let behind = self
            .legs
            .iter()
            .enumerate()
            .any(|(other, one)| (one.behind == Some(leg)) || (other == leg && one.behind.is_some()));
        !met && !behind && !self.slabs.iter().any(|slab| slab.legs.contains(&leg))
    }
}
