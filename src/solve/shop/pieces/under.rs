//! The pieces of the substrate: parted at its joints, without a gap, since it is fitted before anything is measured on it.

use super::faces::columns;
use super::{Pieces, plain};
use crate::solve::{Extent, Leg, Plane, SheetJoint, SheetPart, Slab};
use crate::units::Length;

/// Cuts the pieces of a leg's substrate.
pub fn cut(all: &mut Pieces, slabs: &[Slab], (at, leg): (usize, &Leg), stuff: usize) {
    let sheet = &leg.substrate;
    let e = sheet.extent;
    if sheet.region.outer.vertices.len() < 3 {
        return;
    }
    // An outline that follows a corner reaches past the leg's own box.
    let (x0, y0, x1, y1) = sheet.region.outer.bounds();
    let reach = Extent {
        x0: e.x0.min(Length::from_mm(x0)),
        y0: e.y0.min(Length::from_mm(y0)),
        x1: e.x1.max(Length::from_mm(x1)),
        y1: e.y1.max(Length::from_mm(y1)),
    };
    let mut parts: Vec<(Extent, crate::geometry::Region)> = Vec::new();
    // A substrate that turns corners is parted already.
    let shared = slabs.iter().flat_map(|slab| &slab.sheets).filter(|under| under.leg == at);
    parts.extend(shared.map(|under| {
        let (x0, y0, x1, y1) = under.region.outer.bounds();
        let [x0, y0, x1, y1] = [x0, y0, x1, y1].map(Length::from_mm);
        (Extent { x0, y0, x1, y1 }, under.region.clone())
    }));
    if parts.is_empty() {
        let starts = [reach.x0].into_iter().chain(sheet.joints.iter().copied());
        let ends = sheet.joints.iter().copied().chain([reach.x1]);
        let spans: Vec<(Length, Length)> = starts.zip(ends).collect();
        parts = columns(&sheet.region, &spans, (reach.y0, reach.y1)).into_iter().flatten().collect();
    }
    for &joint in &sheet.joints {
        let sides = leg.fittings.iter().filter_map(|fitting| fitting.cutout(Plane::Substrate));
        let off = sides.flat_map(|cut| [cut.extent.x0, cut.extent.x1]).map(|side| (side - joint).abs()).min();
        let edge = leg.modules.iter().any(|module| module.left == joint);
        let line = sheet.screw_lines.iter().any(|(u, _, _)| (*u - joint).abs() <= Length::from_sixty_fourths(64));
        all.joints.push(SheetJoint {
            leg: at,
            part: SheetPart::Substrate,
            level: false,
            at: joint,
            span: (e.y0, e.y1),
            between_modules: edge,
            on_framing: edge || line,
            off_corner: off,
        });
    }
    for (extent, region) in parts {
        let touches = |(k, fitting): (usize, &crate::solve::Fitting)| {
            fitting.cutout(Plane::Substrate).is_some_and(|cutout| cutout.extent.meets(&extent)).then_some(k)
        };
        let fittings = leg.fittings.iter().enumerate().filter_map(touches).collect();
        let piece = plain("substrate".to_owned(), SheetPart::Substrate, (at, None), stuff);
        all.add(super::SheetPiece { extent, region, fittings, ..piece });
    }
}
