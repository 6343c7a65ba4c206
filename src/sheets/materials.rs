//! How materials look when they are cut through: line hatches by material, dots for mortar, black for thin tube.
//!
//! Neighbours lean opposite ways and the spacing follows the size of the part. Names are in the look's own rules;
//! ISO 128-50 leaves the choice of hatch to the drawing.

use super::canvas::{Canvas, Layer};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;
use crate::solve::{CounterMaterial, FinishKind};

/// A material in section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Material {
    /// The counter.
    Counter(CounterMaterial),
    /// The sheet under the counter.
    Substrate,
    /// Board on the frame.
    Board,
    /// The outer layer of a finish.
    Finish(FinishKind),
    /// The bed of a finish.
    Bed,
    /// Base trim.
    Trim,
    /// A wall or pier.
    Wall,
    /// The floor.
    Ground,
}

impl Material {
    /// Lean of its hatch (degrees, counter-clockwise) and its spacing at about 1:5 and at about 1:1, mm; `None` for dots.
    fn pattern(self) -> Option<(f64, f64, f64)> {
        match self {
            Material::Counter(CounterMaterial::Concrete) => Some((45.0, 1.9, 3.6)),
            Material::Counter(_) => Some((45.0, 1.8, 3.4)),
            Material::Substrate => Some((135.0, 1.1, 2.0)),
            Material::Board => Some((45.0, 1.0, 1.4)),
            Material::Finish(_) => Some((135.0, 1.6, 2.9)),
            Material::Bed => None,
            Material::Trim => Some((135.0, 0.9, 1.6)),
            Material::Wall => Some((-45.0, 1.9, 2.4)),
            Material::Ground => Some((45.0, 2.2, 2.2)),
        }
    }
}

/// Hatches rings of paper points (even-odd) as a material; `large` for views of 1:2 and over. Boxes of lettering inside
/// are given as further rings, so that the hatch is cut away round them.
pub fn hatch(canvas: &mut Canvas, at: Layer, rings: &[Vec<PaperPoint>], material: Material, large: bool) {
    match material.pattern() {
        Some((angle, small_step, large_step)) => {
            let step = if large { large_step } else { small_step };
            canvas.hatch(at, rings, angle, step, Pen::FINE);
        }
        None => {
            let Some(first) = rings.first() else { return };
            let (mut a, mut b) = (first[0], first[0]);
            for p in first {
                a = PaperPoint::new(a.x.min(p.x), a.y.min(p.y));
                b = PaperPoint::new(b.x.max(p.x), b.y.max(p.y));
            }
            let (step, radius) = if large { (1.5, 0.16) } else { (0.9, 0.1) };
            canvas.dots(at, a, b, step, radius, Colour::INK);
        }
    }
}

/// A ring round a piece of level lettering, to cut a hatch away, mm.
pub fn clearing(left: f64, baseline: f64, width: f64, height: f64) -> Vec<PaperPoint> {
    let (a, b) =
        (PaperPoint::new(left - 1.2, baseline - height - 1.2), PaperPoint::new(left + width + 1.2, baseline + 1.4));
    super::canvas::corners(a, b).to_vec()
}
