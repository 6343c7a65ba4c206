//! Everything that is lifted by itself.

use super::density::Densities;
use super::parts::{longest, section};
use crate::solve::{Extent, FittingKind, Leg, Lift, LiftKind, OpeningSort, SheetPart, Shop, Solved};
use crate::units::Length;

/// Every lift, leg by leg: frames, sheets, counter, fittings.
pub fn lifts(solved: &Solved, shop: &Shop, densities: &Densities) -> Vec<Lift> {
    let mut all = Vec::new();
    for (index, leg) in solved.legs.iter().enumerate() {
        let mut put = |kind, name: String, mass: f64, long: Length| {
            if mass > 0.0 {
                all.push(Lift { kind, name, leg: index, mass, long });
            }
        };
        for (module, frame) in leg.modules.iter().enumerate() {
            let tubes: f64 = leg.members_of(module..=module).iter().map(|tube| longest(&tube.body).mm() / 1e3).sum();
            let supports = shop.supports.members.iter().filter(|one| one.leg == index && one.module == module);
            let mass = tubes * section(solved) * densities.frame + supports.map(|one| one.mass).sum::<f64>();
            put(LiftKind::Frame, format!("frame {}", frame.id), mass, Length::ZERO);
        }
        let pieces: Vec<_> = shop.pieces.iter().filter(|piece| piece.leg == index).collect();
        if pieces.is_empty() {
            for board in &leg.boards {
                let mass = board.region.area() * leg.build(board.face).board.mm() * densities.board * 1e-9;
                put(LiftKind::Sheet, board.name.clone(), mass, longest_side(&board.extent));
            }
            for (number, (mass, long)) in substrates(solved, densities, leg).into_iter().enumerate() {
                put(LiftKind::Sheet, format!("substrate {}", number + 1), mass, long);
            }
        }
        for piece in pieces {
            let (thick, density) = match piece.part {
                SheetPart::Face(face) => (leg.build(face).board.mm(), densities.board),
                SheetPart::Substrate => (solved.substrate.thickness.mm(), densities.substrate),
                SheetPart::Bottom => (0.0, 0.0),
            };
            // A piece that the cutting doesn't weigh is weighed here.
            let own = piece.region.area() * thick * density * 1e-9;
            put(
                LiftKind::Sheet,
                piece.mark.clone(),
                if own > 0.0 { own } else { piece.mass },
                longest_side(&piece.extent),
            );
        }
        for piece in &leg.counter.pieces {
            put(LiftKind::Counter, piece.name.clone(), piece.mass, longest_side(&piece.extent));
        }
        for (name, from, to, mass) in &leg.counter.splashes {
            put(LiftKind::Splash, name.clone(), *mass, *to - *from);
        }
        for fitting in &leg.fittings {
            put(
                LiftKind::Fitting,
                format!("{} {}", fitting.mark, fitting.name),
                fitting.mass.unwrap_or(0.0),
                Length::ZERO,
            );
        }
    }
    all
}

fn longest_side(extent: &Extent) -> Length {
    extent.width().max(extent.height())
}

/// The sheets of a leg's substrate between its joints: mass, kg, and longest side.
fn substrates(solved: &Solved, densities: &Densities, leg: &Leg) -> Vec<(f64, Length)> {
    let sheet = &leg.substrate;
    let (low, high) = (sheet.extent.x0 - Length::from_mm(1.0), sheet.extent.x1 + Length::from_mm(1.0));
    let ends: Vec<Length> = std::iter::once(low).chain(sheet.joints.iter().copied()).chain([high]).collect();
    let by_area = solved.substrate.thickness.mm() * densities.substrate * 1e-9;
    let area = |pair: &[Length]| -> f64 {
        sheet.region.strip(pair[0].mm(), pair[1].mm()).iter().map(crate::geometry::Region::area).sum()
    };
    let long = |pair: &[Length]| {
        let (from, to) = (pair[0].max(sheet.extent.x0), pair[1].min(sheet.extent.x1));
        (to - from).max(sheet.extent.height())
    };
    ends.windows(2).map(|pair| (area(pair) * by_area, long(pair))).collect()
}

/// Fittings that weigh something nobody gave, as (leg, index).
pub fn unknown(solved: &Solved) -> Vec<(usize, usize)> {
    let weighs =
        |kind| matches!(kind, FittingKind::Notch | FittingKind::Well | FittingKind::Opening(OpeningSort::Fitting));
    let all = solved.legs.iter().flat_map(|leg| &leg.fittings);
    let bare = |look| matches!(look, crate::solve::Look::Hole | crate::solve::Look::Faucet);
    all.filter(|fitting| fitting.mass.is_none() && weighs(fitting.kind) && !bare(fitting.look))
        .map(|fitting| fitting.at)
        .collect()
}
