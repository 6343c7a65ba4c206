//! The high point, and what each foot carries.

use crate::geometry::Region;
use crate::parameters::given::Given;
use crate::solve::statics::{shared, tripod};
use crate::solve::{
    Board, BodyBox, BoxLoad, Face, Fitting, FootLoad, Leg, Levelling, ModuleWeight, Plane, Shop, Solved, Support,
};
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
    let supports = |module: usize| -> Vec<&Support> {
        shop.supports.members.iter().filter(|support| support.leg == leg && support.module == module).collect()
    };
    let count = own.modules.len();
    let mut parts: Vec<Vec<Part>> = (0..count)
        .map(|module| match weights.get(module) {
            Some(weight) => self::parts(own, module, weight, &supports(module)),
            None => Vec::new(),
        })
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

/// A dressed module part by part.
fn parts(leg: &Leg, index: usize, weight: &ModuleWeight, supports: &[&Support]) -> Vec<Part> {
    let Some(module) = leg.modules.get(index) else { return Vec::new() };
    let d = &leg.datums;
    let middle = (module.centre().mm(), (d.frame_face + d.frame_back).half().mm());
    let (low, high) = (
        if index == 0 { f64::NEG_INFINITY } else { module.left.mm() },
        if index + 1 == leg.modules.len() { f64::INFINITY } else { module.right.mm() },
    );
    let mut all: Vec<Part> = supports.iter().map(|support| (support.mass, body_middle(&support.body))).collect();
    let supported: f64 = supports.iter().map(|support| support.mass).sum();
    let tubes: Vec<Part> = leg
        .members_of(index..=index)
        .iter()
        .map(|member| {
            let side = |(low, high): (Length, Length)| (high - low).mm();
            let long = side(member.body.u).max(side(member.body.v)).max(side(member.body.z));
            (long, body_middle(&member.body))
        })
        .collect();
    all.push(((weight.frame - supported).max(0.0), middle_of(&tubes, middle)));
    let boards: Vec<&Board> = leg.boards.iter().filter(|board| board.module == Some(index)).collect();
    let bare: Vec<Part> = boards.iter().map(|board| (board.region.area(), board_middle(leg, board, false))).collect();
    all.push((weight.boards, middle_of(&bare, middle)));
    let finished: Vec<Part> = boards
        .iter()
        .filter_map(|board| {
            let finish = leg.finish(board.face)?;
            Some((board.region.area() * finish.mass, board_middle(leg, board, true)))
        })
        .collect();
    all.push((weight.finish, middle_of(&finished, middle)));
    all.push((weight.substrate, strip_middle(&leg.substrate.region, low, high, middle)));
    all.push((weight.counter, strip_middle(&leg.counter.region, low, high, middle)));
    let carried = leg.fittings_of(index).iter().filter(|fitting| !stands_by_itself(fitting));
    all.extend(carried.filter_map(|fitting| Some((fitting.mass?, fitting_middle(leg, fitting, middle)))));
    all
}

/// It stands on the floor, not on the frame.
fn stands_by_itself(fitting: &Fitting) -> bool {
    fitting.to_floor && fitting.face == Face::Front
}

fn body_middle(body: &BodyBox) -> (f64, f64) {
    ((body.u.0 + body.u.1).half().mm(), (body.v.0 + body.v.1).half().mm())
}

/// The middle of weighted places, or `otherwise` where nothing weighs anything.
fn middle_of(parts: &[Part], otherwise: (f64, f64)) -> (f64, f64) {
    let all = gathered(parts);
    if all.mass > 0.0 { all.centre } else { otherwise }
}

/// The middle of a board, or of the finish on it, in plan.
fn board_middle(leg: &Leg, board: &Board, finish: bool) -> (f64, f64) {
    let d = &leg.datums;
    let along = if board.region.area() > 0.0 { board.region.centroid().0 } else { board.extent.centre_x().mm() };
    let pick = |frame: Length, board: Length, finished: Length| {
        if finish { (board + finished).half().mm() } else { (frame + board).half().mm() }
    };
    match board.face {
        Face::Front => (along, pick(d.frame_face, d.board_face, Length::ZERO)),
        Face::Back => (along, pick(d.frame_back, d.board_back, d.finished_back)),
        Face::Left => (pick(d.frame_left, d.board_left, Length::ZERO), along),
        Face::Right => (pick(d.frame_right, d.board_right, d.finished_right), along),
    }
}

/// The middle of the part of a sheet between two u.
fn strip_middle(region: &Region, low: f64, high: f64, otherwise: (f64, f64)) -> (f64, f64) {
    let (x0, _, x1, _) = region.outer.bounds();
    if region.outer.vertices.is_empty() {
        return otherwise;
    }
    let strip = region.strip(low.max(x0 - 1.0), high.min(x1 + 1.0));
    let pieces: Vec<Part> = strip.iter().map(|piece| (piece.area(), piece.centroid())).collect();
    middle_of(&pieces, otherwise)
}

/// Where a fitting weighs: in the middle of its body, or of its cutout in the counter; else half-way into the frame, or at
/// the end that it is set into.
fn fitting_middle(leg: &Leg, fitting: &Fitting, middle: (f64, f64)) -> (f64, f64) {
    let d = &leg.datums;
    match (&fitting.body, fitting.cutout(Plane::Counter), fitting.face) {
        (Some(body), _, _) => body_middle(body),
        (_, Some(cutout), _) => (cutout.extent.centre_x().mm(), cutout.extent.centre_y().mm()),
        (_, _, Face::Front | Face::Back) => (fitting.centre().mm(), middle.1),
        (_, _, Face::Left) => (d.frame_left.mm(), fitting.centre().mm()),
        (_, _, Face::Right) => (d.frame_right.mm(), fitting.centre().mm()),
    }
}
