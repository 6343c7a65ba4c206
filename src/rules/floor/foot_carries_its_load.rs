//! A foot with more on it than it carries.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Face, FrameMaterial, Leg, Solved};

/// Steel, aluminium and wood, kg/m3.
const DENSITIES: [f64; 3] = [7850.0, 2700.0, 550.0];
/// Cement board of any make weighs about this, kg/m3 (a maker: 2.9 lb/ft2 at 1/2 in).
const BOARD: f64 = 1115.0;

/// See [`Rule::about`].
pub const RULE: Rule = Rule {
    name: "foot-carries-its-load",
    severity: Severity::Warn,
    about: "No foot carries more than it is rated for, with one foot of the module standing free.",
    why: "On an uneven floor the load of a module stands on all feet but one; a plastic foot splits, a small one goes through paving.",
    instead: "choose stronger feet and write their rating, add feet, or spread them on plates",
    origin: Origin::CommonPractice,
    concerns: Concern::Floor,
    limits: &[],
    needs: nothing,
    check,
};

fn check(solved: &Solved) -> Vec<Finding> {
    let rating = solved.frame.foot_rating;
    if rating <= 0.0 {
        return Vec::new();
    }
    let mut findings = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for (index, module) in leg.modules.iter().enumerate() {
            let feet: Vec<usize> = (0..leg.feet.len()).filter(|&foot| leg.feet[foot].module == index).collect();
            let Some(&first) = feet.first() else { continue };
            let load = weight(solved, leg, index) / feet.len().saturating_sub(1).max(1) as f64;
            if load > rating {
                let mass = |mass| solved.show.mass(mass);
                let message = format!(
                    "a foot of module {} may have {} on it, {} feet with one standing free; it carries {}",
                    module.id,
                    mass(load),
                    feet.len(),
                    mass(rating)
                );
                let place = module.place.as_ref();
                findings.push(RULE.finding(Severity::Warn, Subject::Foot(at, first), place, message, RULE.instead));
            }
        }
    }
    findings
}

/// What stands on the feet of a module, kg: its share of the counter, boards and finish, tubes, and what is set in.
fn weight(solved: &Solved, leg: &Leg, index: usize) -> f64 {
    let share = leg.modules.get(index).map_or(0.0, |module| {
        module.width().mm() / leg.modules.iter().map(|module| module.width().mm()).sum::<f64>().max(1.0)
    });
    let counter: f64 = leg.counter.pieces.iter().map(|piece| piece.mass).sum::<f64>()
        + leg.counter.splashes.iter().map(|(_, _, _, mass)| mass).sum::<f64>();
    let boards: f64 = leg
        .boards
        .iter()
        .filter(|board| board.module == Some(index))
        .map(|board| {
            let build = leg.build(board.face);
            let finish = build.finish.as_ref().map_or(0.0, |finish| finish.mass);
            board.region.area() / 1e6 * (build.board.mm() / 1e3 * BOARD + finish)
        })
        .sum();
    let density = match solved.frame.material {
        FrameMaterial::Steel => DENSITIES[0],
        FrameMaterial::Aluminium => DENSITIES[1],
        FrameMaterial::Wood => DENSITIES[2],
    };
    let (tube, wall) = (solved.frame.tube.mm() / 1e3, solved.frame.wall.mm() / 1e3);
    let metal = if wall > 0.0 { tube * tube - (tube - 2.0 * wall).max(0.0).powi(2) } else { tube * tube };
    let tubes: f64 = leg
        .members
        .iter()
        .filter(|member| member.module == index)
        .map(|member| {
            let side = |(low, high): (crate::units::Length, crate::units::Length)| (high - low).mm() / 1e3;
            side(member.body.u).max(side(member.body.v)).max(side(member.body.z)) * metal * density
        })
        .sum();
    let set_in: f64 = leg
        .fittings
        .iter()
        .filter(|fitting| fitting.module == index && !(fitting.to_floor && fitting.face == Face::Front))
        .filter_map(|fitting| fitting.mass)
        .sum();
    counter * share + boards + tubes + set_in
}
