//! Leaving out what lies before a plane, and showing what the plane cuts.

use std::collections::BTreeSet;

use super::facet::Skin;
use super::hidden::halved;
use super::model::{Body, Model};
use super::space::{Pose, dot, minus};
use crate::sheets::client::patch::{Patch, Rect, Spot};

/// Leaves out all that lies before an upright plane (on the side that its normal points to). What is cut is closed
/// with a face of its own.
pub fn cut(model: &mut Model<'_>, plane: &Pose) {
    let whole = std::mem::take(&mut model.facets);
    // A fitting that would be cut through is left out whole: nobody cuts an appliance to look at a kitchen.
    let through: BTreeSet<usize> = whole
        .iter()
        .filter(|facet| {
            facet.skin.is_fitting()
                && facet.patch.rings.iter().flatten().any(|s| plane.ahead(facet.pose.place(*s)) > 0.0)
        })
        .map(|facet| facet.solid)
        .collect();
    let whole = whole.into_iter().filter(|facet| !through.contains(&facet.solid));
    for mut facet in whole {
        let behind = |spot: &Spot| -plane.ahead(facet.pose.place(*spot));
        let rings = facet.patch.rings.iter().map(|ring| halved(ring, behind)).filter(|ring| ring.len() > 2);
        let patch = Patch { rings: rings.collect() };
        if patch.is_empty() {
            continue;
        }
        facet.lines = facet.lines.iter().filter_map(|line| kept(*line, behind)).collect();
        facet.bends = facet.bends.iter().filter_map(|line| kept(*line, behind)).collect();
        facet.patch = patch;
        model.facets.push(facet);
    }
    let bodies = std::mem::take(&mut model.bodies);
    model.begin(None);
    for body in &bodies {
        for (a, b) in crossed(body, plane) {
            let patch = Rect::new(a, body.z.0, b, body.z.1).patch();
            model.face(
                format!("{} cut", body.name),
                Pose { at: [plane.at[0], plane.at[1], 0.0], ..*plane },
                patch,
                Skin::Cut,
                0.7,
            );
        }
    }
    model.bodies = bodies;
}

/// What of a line lies behind.
fn kept([a, b]: [Spot; 2], behind: impl Fn(&Spot) -> f64) -> Option<[Spot; 2]> {
    let (da, db) = (behind(&a), behind(&b));
    let t = da / (da - db);
    let turn = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    match (da > 0.0, db > 0.0) {
        (true, true) => Some([a, b]),
        (true, false) => Some([a, turn]),
        (false, true) => Some([turn, b]),
        (false, false) => None,
    }
}

/// Where a plane crosses a body, along the plane.
fn crossed(body: &Body, plane: &Pose) -> Vec<(f64, f64)> {
    let plan = body.plan.mapped(|spot| {
        let place = body.pose.place(spot);
        [dot(minus(place, plane.at), plane.across), plane.ahead(place)]
    });
    plan.spans(0.0)
}
