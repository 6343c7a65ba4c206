//! Orders for things that are cut to figures nobody has measured.

use std::collections::BTreeSet;

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Fitting, Solved, Supplier};

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "order-rests-on-measured-lengths",
    severity: Severity::Note,
    about: "What is cut by someone else is ordered to lengths that were measured on the fitting in hand.",
    why: "A frame or a slab comes back cut to the order, right or wrong.",
    instead: "order the fittings first, measure them, write the figures as measured, then send the other orders",
    origin: Origin::CommonPractice,
    concerns: Concern::Orders,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let cut_to = [Supplier::FrameMaker, Supplier::Counter];
    let mut resting: Vec<String> = Vec::new();
    for order in solved.shop.orders.iter().filter(|order| cut_to.contains(&order.supplier)) {
        let fittings: BTreeSet<(usize, usize)> =
            order.lines.iter().flat_map(|line| line.fittings.iter().copied()).collect();
        let open = |&(leg, index): &(usize, usize)| {
            let fitting = solved.legs.get(leg)?.fittings.get(index)?;
            is_unmeasured(fitting).then_some(fitting.mark.as_str())
        };
        let marks: Vec<&str> = fittings.iter().filter_map(open).collect();
        if !marks.is_empty() {
            resting.push(format!("to the {} ({})", order.supplier.words(), shortened(&marks)));
        }
    }
    if resting.is_empty() {
        return Vec::new();
    }
    let message = format!("orders rest on figures that nobody measured: {}", resting.join(", "));
    let instead = "send the order for the fittings first; measure what comes, write it as measured, then send these";
    vec![RULE.finding(Severity::Note, Subject::Job, None, message, instead)]
}

/// A width, depth or height of its cutout was never measured. Holes for pipes have nothing to measure.
fn is_unmeasured(fitting: &Fitting) -> bool {
    use crate::solve::{FittingKind, OpeningSort};
    fitting.kind != FittingKind::Opening(OpeningSort::PassThrough)
        && fitting.measures.iter().any(|(name, measure)| !name.starts_with("body") && measure.measured.is_none())
}

/// The first of many marks.
fn shortened(marks: &[&str]) -> String {
    const MOST: usize = 8;
    let shown = marks[..marks.len().min(MOST)].join(", ");
    if marks.len() > MOST { format!("{shown} and {} more", marks.len() - MOST) } else { shown }
}
