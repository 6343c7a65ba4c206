//! What has to be done before what.

/// One step of the work.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Step {
    /// What is done, in a sentence.
    pub what: String,
    /// Why it comes now, in a sentence.
    pub why: String,
    /// The steps that must be done first, by index.
    pub after: Vec<usize>,
    /// How long to wait after it, hours; `None` for no wait.
    pub wait: Option<f64>,
    /// Where the wait or the order comes from.
    pub origin: String,
}
