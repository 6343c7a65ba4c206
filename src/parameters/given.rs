//! A job with every value worked out, in plain lengths: what the solver reads.

mod around;
mod counter;
mod cut;
mod faces;
mod fitting;
mod frame;
mod job;
mod leg;
mod materials;
mod notch;
mod paper;
mod path;
mod services;
mod site;
mod stock;
mod supports;
mod supports_assumed;
mod tolerances;
mod trim;
mod waits;

pub use around::*;
pub use counter::*;
pub use cut::*;
pub use faces::*;
pub use fitting::*;
pub use frame::*;
pub use job::*;
pub use leg::*;
pub use materials::*;
pub use notch::*;
pub use paper::*;
pub use path::*;
pub use services::*;
pub use site::*;
pub use stock::*;
pub use supports::*;
pub use tolerances::*;
pub use trim::*;
pub use waits::*;

/// A whole job, every expression evaluated and every default filled in.
#[derive(Clone, Debug)]
pub struct Given {
    /// The facts of the title block.
    pub job: Job,
    /// The floor and what comes up through it.
    pub site: Site,
    /// The bare frame.
    pub frame: Frame,
    /// The counter.
    pub counter: Counter,
    /// The sheet under the counter.
    pub substrate: Substrate,
    /// Where the top of the run is.
    pub height: Height,
    /// The base trim, where there is one.
    pub trim: Option<Trim>,
    /// What carries counters and heavy fittings besides the frame's own tubes.
    pub supports: SupportWork,
    /// The straight rows of modules.
    pub legs: Vec<Leg>,
    /// Where legs meet.
    pub joints: Vec<Joint>,
    /// Everything set into the run, in the order written.
    pub fittings: Vec<Fitting>,
    /// Fuel gas, where the job says what feeds the run.
    pub services: Option<Services>,
    /// What pieces are cut from.
    pub stock: Stock,
    /// How boards are laid on the frame.
    pub laying: Laying,
    /// Figures by which materials are weighed and bought.
    pub materials: Materials,
    /// Limits of rules that the job sets itself.
    pub limits: Vec<LimitSet>,
    /// What the builder, the finish and the placing may be off by.
    pub tolerances: Tolerances,
    /// How long what the job uses takes to dry or harden.
    pub waits: Waits,
    /// The paper.
    pub paper: Paper,
    /// Named values that the job did not give, as filled in.
    pub defaults: Vec<DefaultUsed>,
}

/// A named value that the job did not give.
#[derive(Clone, Debug, PartialEq)]
pub struct DefaultUsed {
    /// Its name, as the model would write it: `frame.tube`.
    pub name: String,
    /// The length filled in.
    pub value: String,
    /// Where it comes from: `common practice` or `from memory, verify`.
    pub origin: &'static str,
}
