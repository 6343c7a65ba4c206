//! From where the run is seen: of the directions of a system, the one that shows the most of its faces.
//!
//! A straight run is drawn in the dimetric system, nearly square on; one that turns corners in the isometric, which
//! treats its legs alike. What counts is the area of what is seen on the picture: fronts and the cook's side whole, ends
//! and the guests' side less. Of views that show as much the first is taken.

use crate::sheets::client::patch::area;
use crate::sheets::solids::{self, Facet, Model, Projection, Skin, System};
use crate::solve::{Bound, Face, Solved};

/// A view has to show this much more to be taken instead of an earlier one.
const BETTER: f64 = 1.02;

/// The system and the view of a run.
pub fn view(solved: &Solved) -> (System, Projection) {
    let along = solved.legs.first().map_or(0.0, |leg| leg.placement.angle);
    let turned = solved.legs.iter().any(|leg| (leg.placement.angle - along).sin().abs() > 0.05);
    let system = if turned { System::Isometric } else { System::Dimetric };
    let quarter = std::f64::consts::FRAC_PI_2;
    let views: Vec<Projection> = match system {
        System::Isometric => {
            (0..4).map(|k| Projection::axonometric(system, along + quarter * f64::from(k), false)).collect()
        }
        System::Dimetric => [(0.0, false), (0.0, true), (2.0, false), (2.0, true)]
            .into_iter()
            .map(|(turns, left)| Projection::axonometric(system, along + quarter * turns, left))
            .collect(),
    };
    let legs: Vec<usize> = (0..solved.legs.len()).collect();
    let mut best: Option<(f64, Projection)> = None;
    for view in views {
        let model = solids::run(solved, &legs, &view, false);
        let shown = score(&model, &view);
        if best.as_ref().is_none_or(|(most, _)| shown > most * BETTER) {
            best = Some((shown, view));
        }
    }
    let view = best.map_or_else(|| Projection::axonometric(system, along, false), |(_, view)| view);
    (system, view)
}

/// How much a view shows.
fn score(model: &Model<'_>, view: &Projection) -> f64 {
    let shown = solids::turned(&model.facets, view);
    let seen = solids::seen(&shown, view);
    let areas = shown
        .iter()
        .zip(&seen)
        .map(|(one, patch)| patch.rings.iter().map(|ring| area(ring)).sum::<f64>().abs() * weight(model, one.facet));
    areas.sum()
}

fn weight(model: &Model<'_>, facet: &Facet) -> f64 {
    // An end that stands against something is no finished one.
    let against = |bound: &Bound| if bound.is_open() { 0.4 } else { 0.0 };
    let of = |scene: usize| match (model.scenes[scene].face, model.scenes[scene].leg) {
        (Face::Front, _) => 1.0,
        (Face::Left, leg) => against(&leg.left),
        (Face::Right, leg) => against(&leg.right),
        (Face::Back, leg) => against(&leg.back) * 0.6,
    };
    match facet.skin {
        Skin::Clad(scene) => of(scene),
        Skin::Front(scene, _) | Skin::Fascia(scene, _) | Skin::Hood(scene, _, false) => 2.0 * of(scene),
        _ => 0.0,
    }
}
