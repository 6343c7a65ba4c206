//! What has to be done before what.

/// Who does a step.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doer {
    /// Whoever builds the run.
    #[default]
    Builder,
    /// A licensed gas fitter.
    GasFitter,
    /// A licensed electrician.
    Electrician,
    /// A plumber.
    Plumber,
    /// Whoever makes the counter.
    Fabricator,
}

impl Doer {
    /// By trade.
    pub const fn words(self) -> &'static str {
        match self {
            Doer::Builder => "builder",
            Doer::GasFitter => "gas fitter",
            Doer::Electrician => "electrician",
            Doer::Plumber => "plumber",
            Doer::Fabricator => "fabricator",
        }
    }
}

/// One step of the work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Step {
    /// Its key, as `fix-boards`: unique, the same in every job.
    pub key: &'static str,
    /// Its name, in a few words.
    pub name: &'static str,
    /// Who does it.
    pub who: Doer,
    /// What is done, in a sentence.
    pub what: String,
    /// Why it comes now, in a sentence.
    pub why: String,
    /// The steps that must be done first, by index, each smaller than its own; none that follows from another of them.
    pub after: Vec<usize>,
    /// How long to wait after it, hours; `None` for no wait.
    pub wait: Option<f64>,
    /// Where the wait or the order comes from.
    pub origin: String,
    /// Where the work can hurt: the usual caution.
    pub caution: Option<&'static str>,
}
