//! Every step that a run may need: what makes it needed, what comes before it, and why.

mod boards;
mod closing;
mod counter;
mod finish;
mod fittings;
mod frame;
mod ground;
mod lines;

use super::Causes;
use crate::parameters::given::WaitFor;
use crate::solve::Doer::{self, Builder};

/// A step as the table has it.
pub struct Template {
    /// Its key.
    pub key: &'static str,
    /// Its name.
    pub name: &'static str,
    /// Who does it.
    pub who: Doer,
    /// The keys of the steps before it.
    pub after: &'static [&'static str],
    /// Whether a run needs it.
    pub needed: fn(&Causes) -> bool,
    /// What is done.
    pub what: fn(&Causes) -> String,
    /// Why it comes now.
    pub why: &'static str,
    /// What is waited for after it.
    pub wait: Option<WaitFor>,
    /// Where the order comes from.
    pub origin: &'static str,
    /// Where it can hurt.
    pub caution: Option<&'static str>,
}

const GAS: &str = "Gas: only a licensed gas fitter, by the code in force and the appliance\u{2019}s manual.";
const POWER: &str = "Power: only a licensed electrician, by the code in force.";
const DUST: &str =
    "Dust harms the lungs: score and snap or cut wet, outdoors, with extraction and a mask (OSHA 29 CFR 1926.1153).";
const WEIGHT: &str = "Weight: enough people or a lifting aid, hands clear, and nobody under it.";
const PRACTICE: &str = "common practice";

const PLAIN: Template = Template {
    key: "",
    name: "",
    who: Builder,
    after: &[],
    needed: |_| true,
    what: |_| String::new(),
    why: "",
    wait: None,
    origin: PRACTICE,
    caution: None,
};

fn said(text: &str) -> String {
    text.to_owned()
}

fn marks(list: &[String]) -> String {
    list.join(", ")
}

/// The steps stage by stage.
const STAGES: [&[Template]; 8] = [
    ground::STEPS,
    frame::STEPS,
    lines::STEPS,
    boards::STEPS,
    finish::STEPS,
    counter::STEPS,
    fittings::STEPS,
    closing::STEPS,
];

/// All of them, in the order in which they are taken up where several could be next.
pub fn all() -> Vec<&'static Template> {
    STAGES.iter().copied().flatten().collect()
}
