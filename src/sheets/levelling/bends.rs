//! The lines along which the floor bends between spots that it goes through.

use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};

/// Lines are broken at lettering to this, mm.
const PIECE: f64 = 0.5;
/// Shorter pieces than this between two letterings are left out, mm.
const LEAST: f64 = 1.5;

/// A measured spot: u, v and its height, mm.
type Spot = (f64, f64, f64);

/// Draws each edge between two facets whose ends lie on the sheet, broken where lettering stands. The edges round all
/// of them are none: there the floor goes on.
pub fn draw(canvas: &mut Canvas, at: Layer, facets: &[[Spot; 3]], held: &dyn Fn(Spot) -> Option<PaperPoint>) {
    let edges: Vec<(Spot, Spot)> =
        facets.iter().flat_map(|facet| (0..3).map(|k| (facet[k], facet[(k + 1) % 3]))).collect();
    for (index, &(a, b)) in edges.iter().enumerate() {
        let shared = edges[index + 1..].iter().any(|&other| other == (a, b) || other == (b, a));
        if !shared {
            continue;
        }
        if let (Some(a), Some(b)) = (held(a), held(b)) {
            broken(canvas, at, a, b);
        }
    }
}

/// A line but for what of it would meet lettering.
fn broken(canvas: &mut Canvas, at: Layer, a: PaperPoint, b: PaperPoint) {
    let long = a.distance(b);
    let count = (long / PIECE).ceil().max(1.0) as usize;
    let place = |k: usize| a.towards(b, k as f64 / count as f64);
    let pen = Pen::FINE.coloured(Colour::GREY_RULE);
    let mut from = None;
    for k in 0..=count {
        let clear = k < count && canvas.is_clear_of_text(&[place(k), place(k + 1)]);
        match (clear, from) {
            (true, None) => from = Some(k),
            (false, Some(start)) => {
                let (p, q) = (place(start), place(k));
                if p.distance(q) >= LEAST {
                    canvas.line(at, p, q, pen);
                }
                from = None;
            }
            _ => {}
        }
    }
}
