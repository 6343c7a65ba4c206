//! What things weigh, kg.

/// Weights of a run, kg.
#[derive(Clone, Debug, Default)]
pub struct Weights {
    /// Each leg's modules as they stand when all is done: frame, boards, finish, substrate, counter over them, fittings.
    pub modules: Vec<Vec<ModuleWeight>>,
    /// Each leg's counter pieces as they are lifted.
    pub counter_pieces: Vec<Vec<f64>>,
    /// The whole run.
    pub total: f64,
    /// Fittings whose weight nobody gave, as (leg, index): what is summed leaves them out.
    pub unknown: Vec<(usize, usize)>,
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
    /// Counter over it.
    pub counter: f64,
    /// Fittings in it, as far as their weight is known.
    pub fittings: f64,
}

impl ModuleWeight {
    /// All of it, kg.
    pub fn total(&self) -> f64 {
        self.frame + self.boards + self.finish + self.substrate + self.counter + self.fittings
    }
}
