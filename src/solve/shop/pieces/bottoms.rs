//! The bottoms of closed modules: on the rails at the sides, between the rails before and behind, notched round uprights.

use super::{Pieces, plain};
use crate::geometry::Region;
use crate::parameters::given::Given;
use crate::solve::slab::{Bite, bitten, outline, sharp_box};
use crate::solve::{Extent, Face, Leg, ModuleKind, Plane, SheetPart};
use crate::units::Length;

/// Cuts the bottoms of a leg's closed modules.
pub fn cut(all: &mut Pieces, given: &Given, (at, leg): (usize, &Leg), stuff: usize) {
    let Some(thickness) = all.materials.get(stuff).map(|material| material.thickness) else { return };
    let (tube, clear, half) = (given.frame.tube, given.frame.rough_gap, given.laying.gap.half());
    let d = &leg.datums;
    for (index, module) in leg.modules.iter().enumerate() {
        let framed = module.width() >= tube * 4;
        if module.kind == ModuleKind::OpenBay || !framed || reaches_floor(leg, index) {
            continue;
        }
        let box_ = Extent {
            x0: module.left + half,
            x1: module.right - half,
            y0: d.frame_face + tube + clear,
            y1: d.frame_back - tube - clear,
        };
        if box_.height() <= Length::ZERO {
            continue;
        }
        // Studs at the sides stand on the rails; the bottom is notched round them.
        let over = (d.frame_bottom + tube, d.frame_bottom + tube + thickness);
        let uprights = |side: usize| -> Vec<Bite> {
            let stands = |body: &&crate::solve::BodyBox| {
                let low = body.z.0 < over.1 && over.0 < body.z.1;
                let own = if side == 0 { body.u.0 == module.left } else { body.u.1 == module.right };
                low && own && body.v.0 < box_.y1 && box_.y0 < body.v.1
            };
            let bodies = leg.members_of(index..=index).iter().map(|member| &member.body).filter(stands);
            bodies
                .map(|body| Bite {
                    x0: (body.v.0 - clear).mm(),
                    x1: (body.v.1 + clear).mm(),
                    y: if side == 0 { (module.left + tube + clear).mm() } else { (module.right - tube - clear).mm() },
                    mouth: 0.0,
                    inner: 0.0,
                })
                .collect()
        };
        // Bites are taken from level edges: depth lies along the first coordinate until the outline is turned back.
        let corners = sharp_box(box_.y0.mm(), box_.x0.mm(), box_.y1.mm(), box_.x1.mm());
        let corners = bitten(&corners, 2, &uprights(1));
        let corners = bitten(&corners, 0, &uprights(0));
        let region = super::faces::transposed(&Region::solid(outline(&corners)));
        let mark = format!("bottom {}", module.id);
        let piece = plain(mark, SheetPart::Bottom, (at, Some(index)), stuff);
        all.add(super::SheetPiece { extent: box_, region, ..piece });
    }
}

/// Whether something stands on the floor in a module.
fn reaches_floor(leg: &Leg, module: usize) -> bool {
    let open = |face: Face| {
        leg.fittings_of(module)
            .iter()
            .filter_map(|fitting| fitting.cutout(Plane::of(face)))
            .any(|cutout| cutout.extent.y0 <= leg.datums.frame_bottom)
    };
    open(Face::Front) || open(Face::Back)
}
