//! A view: one part of the model placed on the sheet at a scale. The only way from a model space to paper.

use std::marker::PhantomData;

use super::canvas::{Canvas, Layer};
use super::scale::Scale;
use crate::drawing::Step;
use crate::geometry::{Outline, PaperPoint, Point, Region, Vertex};
use crate::units::Length;

/// A view of space `S` (y up) on a sheet (y down).
#[derive(Clone, Debug)]
pub struct View<S> {
    /// Its scale.
    pub scale: Scale,
    /// Where the model's (0, 0) falls on the sheet.
    pub origin: PaperPoint,
    /// The layer that carries the view's facts; everything of the view is drawn in it.
    pub layer: Layer,
    space: PhantomData<S>,
}

impl<S> View<S> {
    /// Opens a view on a canvas. `name` must be unique on its sheet.
    pub fn open(canvas: &mut Canvas, name: &str, scale: Scale, origin: PaperPoint) -> View<S> {
        let facts = vec![
            ("data-view", name.to_owned()),
            ("data-scale", number(scale.factor(), 9)),
            ("data-origin-mm", format!("{},{}", number(origin.x, 4), number(origin.y, 4))),
        ];
        let layer = canvas.layer_with(Canvas::ROOT, "view", facts);
        View { scale, origin, layer, space: PhantomData }
    }

    /// Paper x of a model x.
    pub fn x(&self, x: Length) -> f64 {
        self.x_mm(x.mm())
    }

    /// Paper y of a model y.
    pub fn y(&self, y: Length) -> f64 {
        self.y_mm(y.mm())
    }

    /// Paper x of a model x, mm.
    pub fn x_mm(&self, x: f64) -> f64 {
        self.origin.x + x * self.scale.factor()
    }

    /// Paper y of a model y, mm.
    pub fn y_mm(&self, y: f64) -> f64 {
        self.origin.y - y * self.scale.factor()
    }

    /// Paper length of a model length.
    pub fn size(&self, length: Length) -> f64 {
        length.mm() * self.scale.factor()
    }

    /// A model point on the paper.
    pub fn at(&self, x: Length, y: Length) -> PaperPoint {
        PaperPoint::new(self.x(x), self.y(y))
    }

    /// A model point on the paper.
    pub fn point(&self, point: Point<S>) -> PaperPoint {
        PaperPoint::new(self.x_mm(point.x), self.y_mm(point.y))
    }

    /// An outline of the model as steps on the paper, arcs as arcs.
    pub fn steps(&self, outline: &Outline) -> Vec<Step> {
        let mut steps = Vec::with_capacity(outline.vertices.len() + 2);
        for (index, (a, b)) in outline.edges().enumerate() {
            if index == 0 {
                steps.push(Step::Move(self.spot(a)));
            }
            steps.push(self.step(a, b));
        }
        steps.push(Step::Close);
        steps
    }

    /// Corners of a line that isn't closed as steps on the paper, arcs as arcs.
    pub fn open_steps(&self, chain: &[Vertex]) -> Vec<Step> {
        let start = chain.first().map(|first| Step::Move(self.spot(*first)));
        start.into_iter().chain(chain.windows(2).map(|pair| self.step(pair[0], pair[1]))).collect()
    }

    fn spot(&self, vertex: Vertex) -> PaperPoint {
        PaperPoint::new(self.x_mm(vertex.x), self.y_mm(vertex.y))
    }

    fn step(&self, a: Vertex, b: Vertex) -> Step {
        if a.bulge == 0.0 {
            return Step::Line(self.spot(b));
        }
        let sweep = 4.0 * a.bulge.abs().atan();
        let chord = (b.x - a.x).hypot(b.y - a.y);
        let radius = chord / (2.0 * (sweep / 2.0).sin()) * self.scale.factor();
        // Counter-clockwise with y up stays counter-clockwise to the eye: not clockwise on the paper.
        let (large, clockwise) = (sweep > std::f64::consts::PI + 1e-9, a.bulge < 0.0);
        Step::Arc { radius, large, clockwise, to: self.spot(b) }
    }

    /// A region of the model as steps on the paper.
    pub fn region(&self, region: &Region) -> Vec<Step> {
        region.outlines().flat_map(|outline| self.steps(outline)).collect()
    }

    /// Rings of points on the paper, for hatching.
    pub fn rings(&self, region: &Region) -> Vec<Vec<PaperPoint>> {
        region.outlines().map(|outline| self.ring(outline)).collect()
    }

    /// One ring of points on the paper.
    pub fn ring(&self, outline: &Outline) -> Vec<PaperPoint> {
        let tolerance = 0.02 / self.scale.factor();
        outline.flattened(tolerance).into_iter().map(|(x, y)| PaperPoint::new(self.x_mm(x), self.y_mm(y))).collect()
    }

    /// The facts of a feature whose drawn box a checker may compare with the model's (mm).
    pub fn feature(
        &self,
        name: impl Into<String>,
        x0: Length,
        y0: Length,
        x1: Length,
        y1: Length,
    ) -> Vec<crate::drawing::Fact> {
        let values = [x0, y0, x1, y1].map(|v| number(v.mm(), 4)).join(",");
        vec![("data-feature", name.into()), ("data-bbox-mm", values)]
    }
}

/// A plain decimal with at most this many places, no trailing zeros, no negative zero.
pub fn number(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" || text.is_empty() { "0".to_owned() } else { text.to_owned() }
}
