//! Dimensions of a joined sheet: its outside edges, and its cutouts from the finished faces.

use super::joined::Joined;
use crate::geometry::PaperPoint;
use crate::sheets::aligned::Aligned;
use crate::sheets::canvas::{Canvas, Layer};
use crate::solve::{Edge, EdgeKind, Leg, Plane};
use crate::units::Length;

/// Distances at which a dimension line may lie, mm: the first leaves room for a tag.
const TRIES: [f64; 3] = [14.0, 21.0, 10.0];

/// Draws them.
pub fn draw(canvas: &mut Canvas, sheet: &Joined<'_>) {
    let layer = canvas.layer(sheet.view.layer, "sizes");
    for (index, leg) in sheet.legs() {
        centres(canvas, layer, sheet, index, leg);
        voids(canvas, layer, sheet, index, leg);
    }
    if sheet.plane == Plane::Substrate {
        for piece in sheet.pieces() {
            for edge in piece.edges.iter().filter(|edge| is_outer(sheet, piece.leg, edge)) {
                let ends = [edge.from, edge.to].map(|(u, v)| sheet.home(piece.leg, u.mm(), v.mm()));
                length(canvas, layer, sheet, [(ends[0].x, ends[0].y), (ends[1].x, ends[1].y)], &[10.0, 14.0]);
            }
        }
    }
    for (edge, kind) in edges(sheet) {
        // Off the tag of an edge that is seen.
        let tries = match (sheet.plane, kind) {
            (Plane::Counter, EdgeKind::Finished) => [14.0, 10.0, 17.0, 21.0],
            (Plane::Counter, _) => [10.0, 14.0, 17.0, 21.0],
            _ => [17.0, 21.0, 14.0, 10.0],
        };
        length(canvas, layer, sheet, edge, &tries);
    }
    for (index, leg) in sheet.legs() {
        depth(canvas, layer, sheet, index, leg);
    }
}

/// The long outside edges of the whole sheet but its front ones, which notches break up.
fn edges(sheet: &Joined<'_>) -> Vec<([(f64, f64); 2], EdgeKind)> {
    let point = |p: (Length, Length)| (p.0.mm(), p.1.mm());
    let outer = &sheet.region().outer;
    if sheet.plane == Plane::Counter {
        let kept = sheet.slab.edges.iter().filter(|edge| edge.kind != EdgeKind::Covered);
        let ends = kept.map(|edge| ([point(edge.from), point(edge.to)], edge.kind));
        return ends.filter(|(ends, _)| !is_front(sheet, *ends)).collect();
    }
    // A substrate has no tags: its straight edges are those of its outline.
    outer
        .edges()
        .filter(|(a, _)| a.bulge == 0.0)
        .map(|(a, b)| [(a.x, a.y), (b.x, b.y)])
        .filter(|ends| !is_front(sheet, *ends) && !is_one_piece(sheet, *ends))
        .map(|ends| (ends, EdgeKind::Finished))
        .collect()
}

/// Whether an edge of the whole substrate is an edge of one of its pieces, which has its own dimension.
fn is_one_piece(sheet: &Joined<'_>, ends: [(f64, f64); 2]) -> bool {
    let near = |a: (f64, f64), b: (f64, f64)| (a.0 - b.0).hypot(a.1 - b.1) < 0.01;
    sheet.pieces().iter().any(|piece| {
        piece.edges.iter().any(|edge| {
            let own = [edge.from, edge.to].map(|(u, v)| sheet.home(piece.leg, u.mm(), v.mm()));
            ends.iter().all(|end| own.iter().any(|p| near((p.x, p.y), *end)))
        })
    })
}

/// Whether a piece's edge is one of the whole sheet's, and no front edge.
fn is_outer(sheet: &Joined<'_>, leg: usize, edge: &Edge) -> bool {
    let ends = [edge.from, edge.to].map(|(u, v)| {
        let p = sheet.home(leg, u.mm(), v.mm());
        (p.x, p.y)
    });
    edge.kind != EdgeKind::Seam && edge.kind != EdgeKind::Covered && !is_front(sheet, ends)
}

/// Whether an edge runs along a leg's front, or into a notch there.
fn is_front(sheet: &Joined<'_>, ends: [(f64, f64); 2]) -> bool {
    sheet.legs().any(|(index, leg)| {
        let [a, b] = ends.map(|(x, y)| sheet.in_leg(index, x, y));
        let d = &leg.datums;
        let along = |p: f64| p > d.counter_left.mm() - 1.0 && p < d.counter_right.mm() + 1.0;
        let ahead = |v: f64| v < d.frame_face.mm() + 1.0;
        let notch = leg.fittings.iter().filter_map(|f| f.cutout(sheet.plane).filter(|cut| cut.open)).any(|cut| {
            let on = |u: f64, v: f64| {
                u > cut.extent.x0.mm() - 0.5 && u < cut.extent.x1.mm() + 0.5 && v < cut.extent.y1.mm() + 0.5
            };
            on(a.x, a.y) && on(b.x, b.y)
        });
        notch || (ahead(a.y) && ahead(b.y) && along((a.x + b.x) / 2.0) && (a.x - b.x).abs() > (a.y - b.y).abs())
    })
}

/// The length of an edge, outside it.
fn length(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>, ends: [(f64, f64); 2], tries: &[f64]) -> bool {
    let [a, b] = ends.map(|(x, y)| PaperPoint::new(sheet.view.x_mm(x), sheet.view.y_mm(y)));
    let long = a.distance(b);
    if long < 10.0 {
        return false;
    }
    let out = (-(b.y - a.y) / long, (b.x - a.x) / long);
    let far = Length::from_mm((ends[0].0 - ends[1].0).hypot(ends[0].1 - ends[1].1));
    let datum = if sheet.plane == Plane::Counter { "counter edge" } else { "substrate edge" };
    let one = Aligned {
        ends: (a, b),
        model: (ends[0], ends[1]),
        off: (out, 0.0),
        length: far,
        label: String::new(),
        datums: (datum, datum),
        finished: false,
    };
    one.draw(canvas, at, sheet.set.solved.show, tries)
}

/// A dimension between two points of a leg, off in a direction of the leg.
fn of_leg(
    sheet: &Joined<'_>,
    leg: usize,
    (from, to): ((f64, f64), (f64, f64)),
    off: (f64, f64),
    datums: (&'static str, &'static str),
) -> Aligned {
    let (a, b) = (sheet.at(leg, from.0, from.1), sheet.at(leg, to.0, to.1));
    let (p, q) = (sheet.at(leg, 0.0, 0.0), sheet.at(leg, off.0 * 1000.0, off.1 * 1000.0));
    let long = p.distance(q).max(1e-9);
    let (m, n) = (sheet.home(leg, from.0, from.1), sheet.home(leg, to.0, to.1));
    Aligned {
        ends: (a, b),
        model: ((m.x, m.y), (n.x, n.y)),
        off: (((q.x - p.x) / long, (q.y - p.y) / long), 0.0),
        length: Length::from_mm((to.0 - from.0).hypot(to.1 - from.1)),
        label: String::new(),
        datums,
        finished: datums.0.starts_with("finished"),
    }
}

/// Each cutout's centreline from the leg's finished left end, in front of it, the nearest one nearest.
fn centres(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>, index: usize, leg: &Leg) {
    let show = sheet.set.solved.show;
    let mut places: Vec<Length> =
        leg.fittings.iter().filter_map(|f| f.cutout(sheet.plane)).map(|cut| cut.extent.centre_x()).collect();
    places.sort();
    places.dedup();
    let edge = match sheet.plane {
        Plane::Substrate => leg.substrate.extent.y0,
        _ => leg.datums.counter_front,
    };
    let mut next = 0;
    for u in places.into_iter().filter(|u| *u > Length::ZERO) {
        let one = of_leg(
            sheet,
            index,
            ((0.0, edge.mm()), (u.mm(), edge.mm())),
            (0.0, -1.0),
            ("finished left end", "centreline"),
        );
        for (k, distance) in TRIES.iter().enumerate().skip(next) {
            let tried = Aligned { datums: one.datums, label: String::new(), ..copy(&one) };
            if tried.draw(canvas, at, show, &[*distance]) {
                next = k + 1;
                break;
            }
        }
    }
}

fn copy(one: &Aligned) -> Aligned {
    Aligned {
        ends: one.ends,
        model: one.model,
        off: one.off,
        length: one.length,
        label: one.label.clone(),
        datums: one.datums,
        finished: one.finished,
    }
}

/// Width of a notch and its depth from the finished face, in its void.
fn voids(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>, index: usize, leg: &Leg) {
    let show = sheet.set.solved.show;
    for fitting in &leg.fittings {
        let Some(cut) = fitting.cutout(sheet.plane).filter(|cut| cut.open) else { continue };
        let (x0, x1, deep) = (cut.extent.x0.mm(), cut.extent.x1.mm(), cut.extent.y1.mm());
        let wide =
            of_leg(sheet, index, ((x0, deep * 0.4), (x1, deep * 0.4)), (0.0, -1.0), ("cutout edge", "cutout edge"));
        wide.draw(canvas, at, show, &[0.0]);
        for share in [0.88, 0.12, 0.8] {
            let u = x0 + (x1 - x0) * share;
            let depth = of_leg(sheet, index, ((u, 0.0), (u, deep)), (1.0, 0.0), ("finished face", "cutout edge"));
            if depth.draw(canvas, at, show, &[0.0]) {
                break;
            }
        }
    }
}

/// Depth at a free end from the finished face to the back edge.
fn depth(canvas: &mut Canvas, at: Layer, sheet: &Joined<'_>, index: usize, leg: &Leg) {
    let d = &leg.datums;
    let (show, substrate) = (sheet.set.solved.show, leg.substrate.extent);
    let sheet_ends = match sheet.plane {
        Plane::Substrate => (substrate.x0, substrate.x1, substrate.y1),
        _ => (d.counter_left, d.counter_right, d.counter_back),
    };
    let back = sheet_ends.2.mm();
    for (free, u, side) in [(leg.left.is_open(), sheet_ends.0, -1.0), (leg.right.is_open(), sheet_ends.1, 1.0)] {
        if free {
            let datums = ("finished face", "back edge");
            let one = of_leg(sheet, index, ((u.mm(), 0.0), (u.mm(), back)), (side, 0.0), datums);
            if one.draw(canvas, at, show, &[21.0, 17.0, 14.0]) {
                break;
            }
        }
    }
}
