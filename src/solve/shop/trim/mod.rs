//! The base trim, piece by piece: where it runs, where lengths of it meet, how it is scribed, notched and fastened.

mod edges;
mod joints;
mod metal;
mod scribe;

use crate::parameters::given::Given;
use crate::solve::{BaseTrim, Face, Fitting, Leg, ModuleKind, Plane, Shop, Solved, Trim, TrimEnd};
use crate::units::Length;

/// A stretch of a face without a break, and how it ends.
#[derive(Clone, Copy, Debug)]
struct Stretch {
    from: Length,
    to: Length,
    ends: [TrimEnd; 2],
}

/// The base trim, piece by piece.
pub fn trim(given: &Given, solved: &Solved, _shop: &Shop) -> BaseTrim {
    let Some(trim) = &given.trim else { return BaseTrim::default() };
    let mut pieces = Vec::new();
    for (at, leg) in solved.legs.iter().enumerate() {
        for face in [Face::Front, Face::Left, Face::Right, Face::Back] {
            let Some(whole) = edges::whole(solved, trim, at, face) else { continue };
            let metal = metal::Metal::of(leg, face, trim, given.frame.tube);
            for stretch in parted(whole, &bays(leg, face, trim)) {
                let notches = notches(leg, face, trim);
                let lengths = joints::parted(stretch, trim, &metal, &notches);
                pieces.extend(
                    lengths.into_iter().map(|part| scribe::piece(leg, (at, face), trim, part, &notches, &metal)),
                );
            }
        }
    }
    for (index, piece) in pieces.iter_mut().enumerate() {
        piece.mark = format!("T{}", index + 1);
    }
    BaseTrim { pieces }
}

/// What is left of a stretch between bays, which are sorted.
fn parted(whole: Stretch, bays: &[(Length, Length)]) -> Vec<Stretch> {
    let mut left = Vec::new();
    let mut rest = Some(whole);
    for &(from, to) in bays {
        let Some(stretch) = rest else { break };
        if to <= stretch.from || from >= stretch.to {
            continue;
        }
        if from > stretch.from {
            left.push(Stretch { to: from, ends: [stretch.ends[0], TrimEnd::Square], ..stretch });
        }
        rest = (to < stretch.to).then_some(Stretch { from: to, ends: [TrimEnd::Square, stretch.ends[1]], ..stretch });
    }
    left.extend(rest);
    // A sliver between two bays is no piece of trim.
    left.retain(|stretch| stretch.to - stretch.from >= SHORTEST);
    left
}

/// Shorter pieces than this aren't worth fixing: 1/2 in, common practice.
const SHORTEST: Length = Length::from_sixty_fourths(32);

/// Where the trim of a face is broken: bays that reach the floor, and what reaches down as far as the trim does.
fn bays(leg: &Leg, face: Face, trim: &Trim) -> Vec<(Length, Length)> {
    let plane = Plane::of(face);
    let cutouts = leg.fittings.iter().filter_map(|fitting| Some((fitting, fitting.cutout(plane)?)));
    let mut bays: Vec<(Length, Length)> = cutouts
        .filter(|(fitting, cutout)| {
            let (from, to) = (cutout.extent.x0, cutout.extent.x1);
            fitting.to_floor
                || (reach(fitting, trim).is_some_and(|low| low <= scribe::highest(leg, face, trim, from, to)))
        })
        .map(|(_, cutout)| (cutout.extent.x0, cutout.extent.x1))
        .collect();
    if face == Face::Front {
        let open = leg.modules.iter().filter(|module| module.kind == ModuleKind::OpenBay);
        bays.extend(open.map(|module| (module.left, module.right)));
    }
    bays.sort();
    let mut joined: Vec<(Length, Length)> = Vec::new();
    for bay in bays {
        match joined.last_mut() {
            Some(last) if bay.0 <= last.1 => last.1 = last.1.max(bay.1),
            _ => joined.push(bay),
        }
    }
    joined
}

/// Bottom of the notch that a fitting asks for; `None` where it ends over the trim.
fn reach(fitting: &Fitting, trim: &Trim) -> Option<Length> {
    let low = fitting.bottom? - fitting.flange.near - trim.notch_gap;
    (!fitting.to_floor && low < trim.top).then_some(low)
}

/// A notch that a fitting asks for: the fitting, from, to, bottom.
type Wanted = (usize, Length, Length, Length);

/// The notches along a face.
fn notches(leg: &Leg, face: Face, trim: &Trim) -> Vec<Wanted> {
    let plane = Plane::of(face);
    let fittings = leg.fittings.iter().enumerate();
    let mut all: Vec<Wanted> = fittings
        .filter_map(|(index, fitting)| {
            let (cut, low) = (fitting.cutout(plane)?.extent, reach(fitting, trim)?);
            let (left, right) = (cut.x0 - fitting.flange.left, cut.x1 + fitting.flange.right);
            let (from, to) = (left - trim.notch_gap, right + trim.notch_gap);
            (low > scribe::highest(leg, face, trim, from, to)).then_some((index, from, to, low))
        })
        .collect();
    all.sort_by_key(|notch| notch.1);
    all
}

/// Whether places along a face count along v, as on a leg's ends, not along u.
fn is_end(face: Face) -> bool {
    matches!(face, Face::Left | Face::Right)
}
