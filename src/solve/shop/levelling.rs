//! The high point, and what each foot carries.

use crate::parameters::given::Given;
use crate::solve::statics::{shared, tripod};
use crate::solve::{BoxLoad, FootLoad, Leg, Levelling, Shop, Solved};
use crate::units::Length;

/// A mass, kg, and where it is, (u, v) mm.
type Part = (f64, (f64, f64));

/// The high point, and what each foot carries: each module is a rigid box on its own feet, with its dressed weight at its
/// centre of mass. What stands on the floor by itself is left out; a module without feet hangs on its neighbours.
pub fn levelling(_given: &Given, solved: &Solved, shop: &Shop) -> Levelling {
    let grounds = solved
        .legs
        .iter()
        .enumerate()
        .flat_map(|(at, leg)| leg.feet.iter().enumerate().map(move |(index, foot)| ((at, index), foot.ground)));
    // Of several the first: a later one has to lie higher.
    let high = grounds.fold(None, |best: Option<((usize, usize), Length)>, next| match best {
        Some(best) if best.1 >= next.1 => Some(best),
        _ => Some(next),
    });
    let boxes: Vec<Vec<BoxLoad>> = (0..solved.legs.len()).map(|leg| boxes(solved, shop, leg)).collect();
    let loads = solved.legs.iter().zip(&boxes).map(|(leg, boxes)| loads(leg, boxes)).collect();
    Levelling { high: high.map(|(foot, _)| foot), boxes, loads }
}

/// What each foot of a leg carries; feet are listed module by module.
fn loads(leg: &Leg, boxes: &[BoxLoad]) -> Vec<FootLoad> {
    leg.feet
        .chunk_by(|a, b| a.module == b.module)
        .flat_map(|feet| {
            let load = boxes.get(feet[0].module).copied().unwrap_or_default();
            let places: Vec<(f64, f64)> = feet.iter().map(|foot| (foot.u.mm(), foot.v.mm())).collect();
            let all = shared(&places, load.mass, load.centre);
            let most = tripod(&places, load.mass, load.centre);
            all.into_iter().zip(most).map(|(all, tripod)| FootLoad { all, tripod }).collect::<Vec<_>>()
        })
        .collect()
}

/// What stands on the feet of each module of a leg.
fn boxes(solved: &Solved, shop: &Shop, leg: usize) -> Vec<BoxLoad> {
    let Some(own) = solved.legs.get(leg) else { return Vec::new() };
    let weights = shop.weights.modules.get(leg).map_or(&[][..], Vec::as_slice);
    let count = own.modules.len();
    let mut parts: Vec<Vec<Part>> = (0..count)
        .map(|module| weights.get(module).map(|weight| (weight.on_feet(), weight.centre)).into_iter().collect())
        .collect();
    let on_feet: Vec<bool> = (0..count).map(|module| own.feet.iter().any(|foot| foot.module == module)).collect();
    for module in (0..count).filter(|&module| !on_feet[module]) {
        let hung = std::mem::take(&mut parts[module]);
        let before = (0..module).rev().find(|&other| on_feet[other]);
        let after = (module + 1..count).find(|&other| on_feet[other]);
        let holds: Vec<usize> = before.into_iter().chain(after).collect();
        for &other in &holds {
            // It hangs at the side that faces it.
            let edge = if other < module { own.modules[other].right } else { own.modules[other].left };
            let share = hung.iter().map(|(mass, at)| (mass / holds.len() as f64, (edge.mm(), at.1)));
            parts[other].extend(share);
        }
    }
    parts.iter().map(|parts| gathered(parts)).collect()
}

/// Parts as one mass at their centre.
fn gathered(parts: &[Part]) -> BoxLoad {
    let mass: f64 = parts.iter().map(|(mass, _)| mass).sum();
    if mass <= 0.0 {
        return BoxLoad::default();
    }
    let sum = |of: fn(&Part) -> f64| parts.iter().map(of).sum::<f64>() / mass;
    BoxLoad { mass, centre: (sum(|(mass, at)| mass * at.0), sum(|(mass, at)| mass * at.1)) }
}
