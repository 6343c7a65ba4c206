//! What things weigh, kg.

use crate::units::Length;

/// Weights of a run, kg.
#[derive(Clone, Debug, Default)]
pub struct Weights {
    /// Each leg's modules as they stand when all is done: frame, boards, finish, substrate, counter over them, fittings.
    pub modules: Vec<Vec<ModuleWeight>>,
    /// Each leg's counter pieces as they are lifted.
    pub counter_pieces: Vec<Vec<f64>>,
    /// Everything that is lifted by itself, leg by leg, in the order in which it is built in.
    pub lifts: Vec<Lift>,
    /// What two people lift between them.
    pub two_lift: f64,
    /// The job says so; otherwise it is taken from memory.
    pub lift_given: bool,
    /// Base trim, which stands on the floor.
    pub trim: f64,
    /// The whole run.
    pub total: f64,
    /// Fittings whose weight nobody gave, as (leg, index): what is summed leaves them out. Vents and plain holes, which
    /// weigh next to nothing, are not among them.
    pub unknown: Vec<(usize, usize)>,
    /// Each leg's floor: what stands on it and on how much.
    pub floors: Vec<FloorLoad>,
}

/// One module's weight, kg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ModuleWeight {
    /// Tubes, its supports with them.
    pub frame: f64,
    /// Boards on its faces and bottom.
    pub boards: f64,
    /// Finish on them.
    pub finish: f64,
    /// Substrate over it.
    pub substrate: f64,
    /// Counter over it, upstand included.
    pub counter: f64,
    /// Fittings in it, as far as their weight is known.
    pub fittings: f64,
    /// Of the fittings, those that stand on the floor themselves.
    pub on_floor: f64,
    /// Centre of mass of what stands on its feet, (u, v) mm.
    pub centre: (f64, f64),
}

impl ModuleWeight {
    /// All of it, kg.
    pub fn total(&self) -> f64 {
        self.frame + self.boards + self.finish + self.substrate + self.counter + self.fittings
    }

    /// What stands on its feet, kg.
    pub fn on_feet(&self) -> f64 {
        self.total() - self.on_floor
    }
}

/// What sort of thing is lifted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LiftKind {
    /// A module's bare frame with its supports.
    Frame,
    /// A board, or a sheet of the substrate.
    Sheet,
    /// A piece of the counter.
    Counter,
    /// An upstand.
    Splash,
    /// A fitting.
    Fitting,
}

/// One thing that is lifted by itself.
#[derive(Clone, Debug, PartialEq)]
pub struct Lift {
    /// What sort.
    pub kind: LiftKind,
    /// Its mark or name, as on the drawings.
    pub name: String,
    /// Its leg, by index.
    pub leg: usize,
    /// Mass, kg.
    pub mass: f64,
    /// Its longest side, where it is a sheet or a slab.
    pub long: Length,
}

/// A sheet or slab that is longer breaks or bends in one pair of hands: 6 ft, common practice.
const TWO_ENDS: Length = Length::from_nm(1_828_800_000);

/// More people than this don't get round a thing: lifting gear.
const CREW: u32 = 6;

/// Weights are known no better than this, kg: so much over a limit asks for nobody more.
const NEAR: f64 = 0.25;

impl Weights {
    /// What one person lifts: half of what two lift.
    pub fn each(&self) -> f64 {
        self.two_lift / 2.0
    }

    /// How many people lift something when each takes half of what two take; at least one.
    pub fn people(&self, mass: f64) -> u32 {
        let each = self.each();
        if each > 0.0 { ((mass - NEAR) / each).ceil().max(1.0) as u32 } else { 1 }
    }

    /// How many people carry a sheet or slab of a length: by its weight, and two at least where it is long.
    pub fn carriers(&self, mass: f64, long: Length) -> u32 {
        self.people(mass).max(if long > TWO_ENDS { 2 } else { 1 })
    }

    /// How many people lift a thing.
    pub fn lifters(&self, lift: &Lift) -> u32 {
        self.carriers(lift.mass, lift.long)
    }

    /// Who lifts, in words: so many people, or lifting gear where more would be wanted than get round a thing.
    pub fn crew(people: u32) -> String {
        match people {
            0 | 1 => "1 person".to_owned(),
            people if people > CREW => "lifting gear".to_owned(),
            people => format!("{people} people"),
        }
    }

    /// Whether more than two people are wanted for something.
    pub fn wants_more_than_two(&self, lift: &Lift) -> bool {
        self.lifters(lift) > 2
    }
}

/// What stands on the floor under a leg.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FloorLoad {
    /// All that stands there, kg.
    pub mass: f64,
    /// The bare frame's footprint, m2.
    pub footprint: f64,
}

impl FloorLoad {
    /// Spread over the footprint, kg/m2; nothing where there is none.
    pub fn spread(&self) -> f64 {
        if self.footprint > 0.0 { self.mass / self.footprint } else { 0.0 }
    }
}
