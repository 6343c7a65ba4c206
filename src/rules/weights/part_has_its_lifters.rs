//! Frames, sheets and fittings that want more people than there are. Pieces of the counter have a rule of their own.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Lack, Rule, fittings, named};
use crate::solve::{LiftKind, Look, Solved};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "part-has-its-lifters",
    severity: Severity::Note,
    about: "Frames, boards and fittings are lifted by as many as there are: by two where the job doesn't say.",
    why: "A grill that two lower into a notch with stretched arms comes down on fingers or on the strip beside it.",
    instead: "write how many lift as `lifters: 4` in the counter, bring a lift or a cart, or take the grill's doors and grates out first",
    origin: Origin::FromMemory,
    concerns: Concern::Materials,
    limits: &[],
    needs,
    check,
};

/// Grills and refrigerators are heavy, whatever they weigh.
fn needs(solved: &Solved) -> Vec<Lack> {
    fittings(solved)
        .filter(|(_, fitting)| fitting.mass.is_none() && matches!(fitting.look, Look::Grill | Look::Refrigerator))
        .map(|(_, fitting)| {
            let instead = "write what its sheet or its box says as `weight: \"135 lb\"`";
            Lack::of_practice("weight", fitting.subject(), fitting.place.as_ref(), instead).for_what(named(fitting))
        })
        .collect()
}

fn check(solved: &Solved) -> Vec<Finding> {
    /// More parts than this are counted.
    const MOST: usize = 4;
    let weights = &solved.shop.weights;
    let crew = solved.counter.needs.lifters.map_or(2, u32::from).max(1);
    let mut heavy: Vec<_> =
        weights.lifts.iter().filter(|lift| lift.kind != LiftKind::Counter && weights.lifters(lift) > crew).collect();
    heavy.sort_by(|a, b| b.mass.total_cmp(&a.mass));
    if heavy.is_empty() {
        return Vec::new();
    }
    let told: Vec<String> = heavy
        .iter()
        .take(MOST)
        .map(|lift| format!("{} ({}, {} people)", lift.name, solved.show.mass(lift.mass), weights.lifters(lift)))
        .collect();
    let more = if heavy.len() > MOST { format!(" and {} more", heavy.len() - MOST) } else { String::new() };
    let message = format!(
        "{}{more} {} more than {crew} people, who lift {} each",
        told.join(", "),
        if heavy.len() == 1 { "wants" } else { "want" },
        solved.show.mass(weights.each())
    );
    vec![RULE.finding(Severity::Note, Subject::Job, solved.counter.place.as_ref(), message, RULE.instead)]
}
