//! Sealant by joint: at walls, at seams, where planes change, round fittings, in movement joints.

use super::book::{Book, Draft, Kind};
use super::counter::edges;
use super::faces::{Corner, Faced};
use crate::parameters::given::{Figure, FinishKind};
use crate::solve::{EdgeKind, FittingKind, MaterialGroup, MaterialLine, OpeningSort, Plane, Solved, takeoff};
use crate::units::{Exact, Length};

/// One sort of joint: its name, its length, and the volume that fills it.
struct Joint {
    name: &'static str,
    long: Exact,
    volume: Exact,
    told: String,
}

/// The line of the sealant.
pub fn line(book: &Book, solved: &Solved, faced: &[Faced], corners: &[Corner]) -> Option<MaterialLine> {
    let (deep, round) = (book.length(Figure::SealantDepth), book.length(Figure::SealantBead));
    let filled = |name, long: Exact, wide: Length| {
        let volume = long.clone() * Exact::length(wide) * Exact::length(deep);
        let told =
            format!("{} × {} × {}", book.words(Kind::Length, &long), book.show.prose(wide), book.show.prose(deep));
        Joint { name, long, volume, told }
    };
    let beaded = |name, long: Exact| {
        let told = format!("{} of {} bead", book.words(Kind::Length, &long), book.show.prose(round));
        Joint { name, volume: takeoff::bead(&long, round), long, told }
    };
    let (wall, at_wall) = edges(solved, EdgeKind::Wall);
    let (splash, at_splash) = edges(solved, EdgeKind::Splash);
    let (seams, at_seam) = edges(solved, EdgeKind::Seam);
    let mut by = vec![Figure::SealantDepth, Figure::SealantBead, Figure::Cartridge];
    let mut joints = vec![
        filled("walls", Exact::length(wall + splash), at_wall.max(at_splash)),
        // Both pieces list the seam between them.
        filled("seams", Exact::length(seams.half()), at_seam),
        beaded("changes of plane", planes(solved, faced, corners)),
        beaded("fittings", round_fittings(solved)),
    ];
    let movement = movement(faced, corners);
    if movement.is_positive() {
        by.push(Figure::MovementJoint);
        joints.push(filled("movement joints", movement, book.length(Figure::MovementJoint)));
    }
    joints.retain(|joint| joint.long.is_positive() && joint.volume.is_positive());
    let told: Vec<String> = joints.iter().map(|joint| format!("{}: {}", joint.name, joint.told)).collect();
    let line = book.line(Draft {
        group: MaterialGroup::Finish,
        name: "sealant, exterior, neutral cure".to_owned(),
        kind: Kind::Small,
        net: joints.iter().map(|joint| joint.volume.clone()).sum(),
        from: told.join("; "),
        waste: Some(Figure::SealantWaste),
        each: book.exact(Figure::Cartridge),
        unit: format!("cartridge of {}", book.words(Kind::Small, &book.exact(Figure::Cartridge))),
        gives: "a cartridge holds",
        by,
        parts: Vec::new(),
    })?;
    Some(line)
}

/// Upstands on the counter, and inside corners.
fn planes(solved: &Solved, faced: &[Faced], corners: &[Corner]) -> Exact {
    let upstands =
        solved.legs.iter().flat_map(|leg| &leg.counter.splashes).map(|(_, from, to, _)| Exact::length(*to - *from));
    let inside = corners.iter().filter(|corner| !corner.outside && finished(faced, corner));
    upstands.chain(inside.map(|corner| Exact::length(corner.high))).sum()
}

fn finished(faced: &[Faced], corner: &Corner) -> bool {
    corner.faces.iter().all(|&face| faced[face].build.finish.is_some())
}

/// Round the cutouts of what is set in, not where they are open to the front or the floor; vents stay open below so that
/// water gets out, and are counted whole.
fn round_fittings(solved: &Solved) -> Exact {
    let mut long = 0.0;
    for fitting in solved.legs.iter().flat_map(|leg| &leg.fittings) {
        if fitting.kind == FittingKind::Opening(OpeningSort::PassThrough) {
            continue;
        }
        let plane = match fitting.kind {
            FittingKind::Notch | FittingKind::Well => Plane::Counter,
            FittingKind::Opening(_) => Plane::of(fitting.face),
        };
        let Some(cutout) = fitting.cutout(plane) else { continue };
        let mouth = if cutout.open { cutout.extent.width().mm() } else { 0.0 };
        long += cutout.outline.perimeter() - mouth;
    }
    Exact::length(Length::from_mm(long.max(0.0)))
}

/// Movement joints where the job says how far apart they are: one for every stretch after the first, and at outside
/// corners of tile.
fn movement(faced: &[Faced], corners: &[Corner]) -> Exact {
    let mut long = Exact::zero();
    for one in faced {
        let (Some(apart), Some(_)) = (one.build.joints, &one.build.finish) else { continue };
        let from = one.sheets.iter().map(|(extent, _)| extent.x0).min().unwrap_or_default();
        let to = one.sheets.iter().map(|(extent, _)| extent.x1).max().unwrap_or_default();
        let high = one.sheets.iter().map(|(extent, _)| extent.height()).max().unwrap_or_default();
        long = long + Exact::length(high) * Exact::whole(i128::from(takeoff::between(to - from, apart)));
    }
    let tiled = |face: usize| {
        faced[face].build.finish.as_ref().is_some_and(|finish| matches!(finish.kind, FinishKind::Tile { .. }))
    };
    let turned = corners.iter().filter(|corner| corner.outside && corner.faces.iter().all(|&face| tiled(face)));
    long + turned.map(|corner| Exact::length(corner.high)).sum()
}
