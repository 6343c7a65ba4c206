//! How long things take to dry or to harden before the next step.

use std::collections::BTreeMap;

/// What is waited for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WaitFor {
    /// Mortar over the tape of board joints.
    JointMortar,
    /// Each skim coat.
    SkimCoat,
    /// Mortar behind stone veneer.
    Veneer,
    /// Thin-set behind tile.
    Tile,
    /// Grout between tiles.
    Grout,
    /// A cast counter.
    Concrete,
    /// Sealer on the counter.
    Sealer,
    /// Sealant in joints.
    Sealant,
}

impl WaitFor {
    /// All of them.
    pub const ALL: [WaitFor; 8] = [
        WaitFor::JointMortar,
        WaitFor::SkimCoat,
        WaitFor::Veneer,
        WaitFor::Tile,
        WaitFor::Grout,
        WaitFor::Concrete,
        WaitFor::Sealer,
        WaitFor::Sealant,
    ];

    /// As a job names it.
    pub const fn word(self) -> &'static str {
        match self {
            WaitFor::JointMortar => "joint_mortar",
            WaitFor::SkimCoat => "skim_coat",
            WaitFor::Veneer => "veneer",
            WaitFor::Tile => "tile",
            WaitFor::Grout => "grout",
            WaitFor::Concrete => "concrete",
            WaitFor::Sealer => "sealer",
            WaitFor::Sealant => "sealant",
        }
    }
}

/// One wait.
#[derive(Clone, Debug, PartialEq)]
pub struct Wait {
    /// Hours.
    pub hours: f64,
    /// Where it comes from: `the job`, or a default's origin.
    pub origin: String,
}

/// The waits of a job, those that its materials ask for.
pub type Waits = BTreeMap<WaitFor, Wait>;
