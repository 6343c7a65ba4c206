//! Everything in a leg that weighs something, share by share of the modules that carry it.

use super::density::Densities;
use crate::geometry::Region;
use crate::solve::{BodyBox, Face, Fitting, FittingKind, Leg, Plane, SheetPart, Shop, Solved};
use crate::units::Length;

/// What a part counts as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Tube or support.
    Frame,
    /// Board.
    Board,
    /// Finish.
    Finish,
    /// Substrate.
    Substrate,
    /// Counter or upstand.
    Counter,
    /// Fitting that the frame carries.
    Fitting,
    /// Fitting that stands on the floor.
    OnFloor,
}

/// A share of a part that one module carries.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// The module, by index.
    pub module: usize,
    /// What it counts as.
    pub kind: Kind,
    /// Mass, kg.
    pub mass: f64,
    /// Its centre, (u, v) mm.
    pub centre: (f64, f64),
}

/// Every part of a leg.
pub fn parts(solved: &Solved, shop: &Shop, densities: &Densities, leg: usize) -> Vec<Part> {
    let mut parts = Vec::new();
    tubes(solved, shop, densities, leg, &mut parts);
    boards(solved, shop, densities, leg, &mut parts);
    let leg = &solved.legs[leg];
    let mut flat = |kind, region: &Region, by_area: f64| {
        for (module, share) in shares(leg, region) {
            parts.push(Part { module, kind, mass: share.area() * by_area, centre: share.centroid() });
        }
    };
    // Square millimetres by millimetres by kg/m3.
    flat(Kind::Substrate, &leg.substrate.region, solved.substrate.thickness.mm() * densities.substrate * 1e-9);
    flat(Kind::Counter, &leg.counter.region, solved.counter.thickness.mm() * densities.counter * 1e-9);
    if let Some(splash) = &solved.counter.splash {
        let v = leg.datums.counter_back.mm() - splash.thickness.mm() / 2.0;
        for (_, from, to, mass) in &leg.counter.splashes {
            let strip = Region::solid(crate::geometry::Outline::from_corners(from.mm(), 0.0, to.mm(), 1.0));
            for (module, share) in shares(leg, &strip) {
                let mass = mass * share.area() / strip.area().max(f64::MIN_POSITIVE);
                parts.push(Part { module, kind: Kind::Counter, mass, centre: (share.centroid().0, v) });
            }
        }
    }
    for fitting in &leg.fittings {
        if let Some(mass) = fitting.mass {
            let kind = if stands_on_floor(fitting) { Kind::OnFloor } else { Kind::Fitting };
            parts.push(Part { module: fitting.module, kind, mass, centre: centre_of(leg, fitting) });
        }
    }
    parts
}

/// Whether a fitting stands on the floor and not on the frame.
pub fn stands_on_floor(fitting: &Fitting) -> bool {
    fitting.to_floor && fitting.face == Face::Front && fitting.kind != FittingKind::Notch
}

fn tubes(solved: &Solved, shop: &Shop, densities: &Densities, leg: usize, parts: &mut Vec<Part>) {
    let metal = section(solved);
    for member in &solved.legs[leg].members {
        let mass = longest(&member.body).mm() / 1e3 * metal * densities.frame;
        parts.push(Part { module: member.module, kind: Kind::Frame, mass, centre: middle(&member.body) });
    }
    for support in shop.supports.members.iter().filter(|support| support.leg == leg) {
        let (module, mass) = (support.module, support.mass);
        parts.push(Part { module, kind: Kind::Frame, mass, centre: middle(&support.body) });
    }
}

/// Metal in the frame's tube, m2: all of it where no wall is given.
pub fn section(solved: &Solved) -> f64 {
    let (tube, wall) = (solved.frame.tube.mm() / 1e3, solved.frame.wall.mm() / 1e3);
    if wall > 0.0 { tube * tube - (tube - 2.0 * wall).max(0.0).powi(2) } else { tube * tube }
}

/// Length of a tube: its longest side.
pub fn longest(body: &BodyBox) -> Length {
    let side = |(low, high): (Length, Length)| high - low;
    side(body.u).max(side(body.v)).max(side(body.z))
}

fn middle(body: &BodyBox) -> (f64, f64) {
    let half = |(low, high): (Length, Length)| (low.mm() + high.mm()) / 2.0;
    (half(body.u), half(body.v))
}

fn boards(solved: &Solved, shop: &Shop, densities: &Densities, at: usize, parts: &mut Vec<Part>) {
    let leg = &solved.legs[at];
    let mut put = |face: Face, region: &Region| {
        let build = leg.build(face);
        let board = build.board.mm() * densities.board * 1e-9;
        let finish = build.finish.as_ref().map_or(0.0, |finish| finish.mass * 1e-6);
        let (board_at, finish_at) = layers(leg, face);
        let ended = matches!(face, Face::Left | Face::Right);
        let last = leg.modules.len().saturating_sub(1);
        let whole = || vec![(if face == Face::Left { 0 } else { last }, region.clone())];
        for (module, share) in if ended { whole() } else { shares(leg, region) } {
            let along = share.centroid().0;
            let centre = |across: f64| if ended { (across, along) } else { (along, across) };
            let area = share.area();
            parts.push(Part { module, kind: Kind::Board, mass: area * board, centre: centre(board_at) });
            parts.push(Part { module, kind: Kind::Finish, mass: area * finish, centre: centre(finish_at) });
        }
    };
    if shop.pieces.iter().any(|piece| matches!(piece.part, SheetPart::Face(_))) {
        for piece in shop.pieces.iter().filter(|piece| piece.leg == at) {
            if let SheetPart::Face(face) = piece.part {
                put(face, &piece.region);
            }
        }
    } else {
        for board in &leg.boards {
            put(board.face, &board.region);
        }
    }
    for piece in shop.pieces.iter().filter(|piece| piece.leg == at && piece.part == SheetPart::Bottom) {
        for (module, share) in shares(leg, &piece.region) {
            let mass = share.area() / piece.region.area().max(f64::MIN_POSITIVE) * piece.mass;
            parts.push(Part { module, kind: Kind::Board, mass, centre: share.centroid() });
        }
    }
}

/// Where board and finish of a face lie across it, in the middle of their thickness, mm: on v, or on u at an end.
fn layers(leg: &Leg, face: Face) -> (f64, f64) {
    let d = &leg.datums;
    let half = |a: Length, b: Length| (a.mm() + b.mm()) / 2.0;
    match face {
        Face::Front => (half(d.board_face, d.frame_face), half(Length::ZERO, d.board_face)),
        Face::Back => (half(d.board_back, d.frame_back), half(d.finished_back, d.board_back)),
        Face::Left => (half(d.board_left, d.frame_left), half(Length::ZERO, d.board_left)),
        Face::Right => (half(d.board_right, d.frame_right), half(d.finished_right, d.board_right)),
    }
}

/// What of a region over or before a leg each module carries: what lies between its edges, and past the run's ends what
/// hangs over there.
fn shares(leg: &Leg, region: &Region) -> Vec<(usize, Region)> {
    const FAR: f64 = 1e7;
    let last = leg.modules.len().saturating_sub(1);
    let (low, _, high, _) = region.outer.bounds();
    // Modules lie from left to right; cutting a region apart costs far more than seeing that it lies elsewhere.
    let first = leg.modules.partition_point(|module| module.right.mm() <= low).min(last);
    let end = leg.modules.partition_point(|module| module.left.mm() < high).max(first + 1).min(leg.modules.len());
    let near = leg.modules.get(first..end).unwrap_or(&[]);
    let spans: Vec<(f64, f64)> = (first..end)
        .zip(near)
        .map(|(index, module)| {
            let left = if index == 0 { -FAR } else { module.left.mm() };
            (left, if index == last { FAR } else { module.right.mm() })
        })
        .collect();
    let strips = region.strips(&spans).into_iter().zip(first..);
    strips.flat_map(|(strip, index)| strip.into_iter().map(move |share| (index, share))).collect()
}

/// Where a fitting's weight lies, (u, v) mm: in the middle of its body, or of its cutout where no body is given.
fn centre_of(leg: &Leg, fitting: &Fitting) -> (f64, f64) {
    if let Some(body) = &fitting.body {
        return middle(body);
    }
    let d = &leg.datums;
    let along = fitting.centre().mm();
    let deep = (d.frame_face.mm() + d.frame_back.mm()) / 2.0;
    match (fitting.face, fitting.cutout(Plane::Counter)) {
        (_, Some(cutout)) => (cutout.extent.centre_x().mm(), cutout.extent.centre_y().mm()),
        (Face::Front | Face::Back, None) => (along, deep),
        (Face::Left, None) => (d.board_left.mm(), along),
        (Face::Right, None) => (d.board_right.mm(), along),
    }
}
