//! A foot with more on it than it carries.

use crate::findings::{Finding, Origin, Severity, Subject};
use crate::rules::{Concern, Rule, nothing};
use crate::solve::{Board, BodyBox, Face, Fitting, FrameMaterial, Leg, Solved};
use crate::units::Length;

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
        let whole = shared(leg);
        let mut boards: Vec<f64> = vec![0.0; leg.modules.len()];
        for board in &leg.boards {
            if let Some(sum) = board.module.and_then(|module| boards.get_mut(module)) {
                *sum += board_mass(leg, board);
            }
        }
        // Feet are listed module by module.
        let mut first = 0;
        for feet in leg.feet.chunk_by(|a, b| a.module == b.module) {
            let at_first = first;
            first += feet.len();
            let index = feet[0].module;
            let (Some(module), Some(boards)) = (leg.modules.get(index), boards.get(index)) else { continue };
            let own = whole * module.width().mm() + boards + set_in(leg, index) + tubes(solved, leg, index);
            let load = own / feet.len().saturating_sub(1).max(1) as f64;
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
                findings.push(RULE.finding(Severity::Warn, Subject::Foot(at, at_first), place, message, RULE.instead));
            }
        }
    }
    findings
}

/// Counter and splash, kg, for each mm of the leg's modules.
fn shared(leg: &Leg) -> f64 {
    let counter: f64 = leg.counter.pieces.iter().map(|piece| piece.mass).sum();
    let splashes: f64 = leg.counter.splashes.iter().map(|(_, _, _, mass)| mass).sum();
    (counter + splashes) / leg.modules.iter().map(|module| module.width().mm()).sum::<f64>().max(1.0)
}

/// A board with its finish, kg.
fn board_mass(leg: &Leg, board: &Board) -> f64 {
    let build = leg.build(board.face);
    let finish = build.finish.as_ref().map_or(0.0, |finish| finish.mass);
    board.region.area() / 1e6 * (build.board.mm() / 1e3 * BOARD + finish)
}

/// The tubes of a module, kg.
fn tubes(solved: &Solved, leg: &Leg, index: usize) -> f64 {
    let density = match solved.frame.material {
        FrameMaterial::Steel => DENSITIES[0],
        FrameMaterial::Aluminium => DENSITIES[1],
        FrameMaterial::Wood => DENSITIES[2],
    };
    let (tube, wall) = (solved.frame.tube.mm() / 1e3, solved.frame.wall.mm() / 1e3);
    let metal = if wall > 0.0 { tube * tube - (tube - 2.0 * wall).max(0.0).powi(2) } else { tube * tube };
    let side = |(low, high): (Length, Length)| (high - low).mm() / 1e3;
    let long = |body: &BodyBox| side(body.u).max(side(body.v)).max(side(body.z));
    leg.members_of(index..=index).iter().map(|member| long(&member.body) * metal * density).sum()
}

/// What is set into a module and stands on its feet, kg: not what stands on the floor itself.
fn set_in(leg: &Leg, index: usize) -> f64 {
    let on_floor = |fitting: &Fitting| fitting.to_floor && fitting.face == Face::Front;
    leg.fittings_of(index).iter().filter(|fitting| !on_floor(fitting)).filter_map(|fitting| fitting.mass).sum()
}
