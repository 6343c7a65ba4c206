//! Counters with their real outlines, what is let into them, and upstands.

use super::facet::Skin;
use super::model::{Body, Depth, Model, level};
use crate::geometry::{Outline, Placement, Region};
use crate::sheets::client::patch::{Patch, Rect, Spot};
use crate::solve::EdgeKind;

/// How near flat pieces follow an arc, mm.
const FINE: f64 = 0.4;

/// An outline as a ring.
fn ring(outline: &Outline) -> Vec<Spot> {
    let mut ring: Vec<Spot> = outline.flattened(FINE).into_iter().map(|(x, y)| [x, y]).collect();
    ring.dedup_by(|a, b| (a[0] - b[0]).hypot(a[1] - b[1]) < 0.01);
    if let (Some(first), Some(last)) = (ring.first(), ring.last())
        && ring.len() > 1
        && (first[0] - last[0]).hypot(first[1] - last[1]) < 0.01
    {
        ring.pop();
    }
    ring
}

/// A region as a patch.
pub fn patch(region: &Region) -> Patch {
    Patch { rings: region.outlines().map(ring).collect() }
}

/// Adds the counter over legs: one slab for legs that meet, one for each of the others.
pub fn counters(model: &mut Model<'_>, shown: &[usize]) {
    let solved = model.solved;
    for slab in &solved.slabs {
        let Some(&first) = slab.legs.first() else { continue };
        if slab.legs.iter().any(|leg| shown.contains(leg)) {
            one(model, first, &slab.region);
        }
    }
    for &index in shown {
        if !solved.slabs.iter().any(|slab| slab.legs.contains(&index)) {
            one(model, index, &solved.legs[index].counter.region);
        }
        upstands(model, index);
    }
}

fn one(model: &mut Model<'_>, leg: usize, region: &Region) {
    let of = &model.solved.legs[leg];
    let (low, high) = (of.datums.substrate_top.mm(), of.datums.counter_top.mm());
    let shared = model.solved.slabs.iter().any(|slab| slab.legs.contains(&leg));
    model.begin((!shared).then_some(leg));
    let name = format!("leg {} counter", leg + 1);
    let depth = Depth { from: low, to: high };
    let (pose, plan) = (level(of.placement), patch(region));
    model.bodies.push(Body { name: name.clone(), pose, plan: plan.clone(), z: (low, high) });
    model.pulled(&name, pose, plan, depth, (Skin::Top, Skin::Edge), 0.5);
}

/// Upstands along the back.
fn upstands(model: &mut Model<'_>, index: usize) {
    let Some(splash) = model.solved.counter.splash else { return };
    let leg = &model.solved.legs[index];
    let (back, top) = (leg.datums.counter_back.mm(), leg.datums.counter_top.mm());
    for (_, a, b, _) in &leg.counter.splashes {
        model.begin(Some(index));
        let plan = Rect::new(a.mm(), back - splash.thickness.mm(), b.mm(), back).patch();
        let depth = Depth { from: top, to: top + splash.height.mm() };
        let name = format!("leg {} splash", index + 1);
        model.pulled(&name, level(leg.placement), plan, depth, (Skin::Top, Skin::Upstand), 0.25);
    }
}

/// Seams between pieces, as lines in the plan of the legs that they are cut in.
pub fn seams<'s>(model: &Model<'s>) -> Vec<(Placement, f64, [Spot; 2])> {
    let mut found: Vec<(Placement, f64, [Spot; 2])> = Vec::new();
    for leg in &model.solved.legs {
        for edge in leg.counter.pieces.iter().flat_map(|piece| &piece.edges).filter(|e| e.kind == EdgeKind::Seam) {
            let line = [[edge.from.0.mm(), edge.from.1.mm()], [edge.to.0.mm(), edge.to.1.mm()]];
            found.push((leg.placement, leg.datums.counter_top.mm(), line));
        }
    }
    found
}
