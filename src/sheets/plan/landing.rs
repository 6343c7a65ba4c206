//! Clear counter beside what is hot or wet.

use crate::solve::{Fitting, FittingKind, Leg, Look, Plane};
use crate::units::Length;

/// A stretch of clear counter with something hot or wet at one end at least.
pub struct Landing {
    /// Left end on u.
    pub from: Length,
    /// What is there.
    pub from_name: String,
    /// Right end on u.
    pub to: Length,
    /// What is there.
    pub to_name: String,
}

/// Whether a fitting wants clear counter beside it: a burner, a grill, a sink.
pub fn wants(fitting: &Fitting) -> bool {
    let cut =
        matches!(fitting.kind, FittingKind::Notch | FittingKind::Well) && fitting.cutout(Plane::Counter).is_some();
    cut && !matches!(fitting.look, Look::Faucet | Look::Hole)
}

/// The stretches of a leg, left to right.
pub fn landings(leg: &Leg) -> Vec<Landing> {
    let mut cut: Vec<&Fitting> = leg.fittings.iter().filter(|fitting| wants(fitting)).collect();
    cut.sort_by_key(|fitting| (fitting.left, fitting.right));
    let mut stretches = Vec::new();
    let counter = leg.counter.extent;
    let (mut from, mut from_name) = (counter.x0, "counter left edge".to_owned());
    for fitting in &cut {
        if fitting.left > from {
            let to_name = format!("{} left edge", fitting.mark);
            stretches.push(Landing { from, from_name: from_name.clone(), to: fitting.left, to_name });
        }
        if fitting.right > from {
            (from, from_name) = (fitting.right, format!("{} right edge", fitting.mark));
        }
    }
    if !cut.is_empty() && counter.x1 > from {
        stretches.push(Landing { from, from_name, to: counter.x1, to_name: "counter right edge".to_owned() });
    }
    stretches
}

/// Clear counter left of, right of and behind a fitting that wants it.
pub fn beside(leg: &Leg, fitting: &Fitting) -> (Length, Length, Length) {
    let counter = leg.counter.extent;
    let others = || leg.fittings.iter().filter(|other| wants(other) && other.id != fitting.id);
    let left = others().map(|other| other.right).filter(|right| *right <= fitting.left).fold(counter.x0, Length::max);
    let right = others().map(|other| other.left).filter(|left| *left >= fitting.right).fold(counter.x1, Length::min);
    let behind = fitting.back.map_or(Length::ZERO, |back| counter.y1 - back);
    (fitting.left - left, right - fitting.right, behind)
}
