//! Which face the finished picture shows at a spot of the sheet.

use crate::geometry::PaperPoint;
use crate::sheets::client::patch::{Patch, Spot, area};
use crate::sheets::solids::{self, Facet, Model, Projection, Skin};

/// How far before a flat face what is set into it may stand, mm.
const PROUD: f64 = 70.0;

/// The faces of a picture, each with what is seen of it.
pub struct Seen<'m> {
    faces: Vec<(&'m Facet, Patch, [f64; 4])>,
    view: &'m Projection,
    origin: PaperPoint,
    factor: f64,
}

impl<'m> Seen<'m> {
    /// Of a model as it is drawn: `origin` is where the projection's (0, 0) falls, `factor` its scale.
    pub fn new(model: &'m Model<'_>, view: &'m Projection, origin: PaperPoint, factor: f64) -> Seen<'m> {
        let shown = solids::turned(&model.facets, view);
        let seen = solids::seen(&shown, view);
        let faces = shown.iter().zip(seen).filter(|(_, patch)| !patch.is_empty()).map(|(one, patch)| {
            let b = patch.bounds();
            (&model.facets[one.index], patch, [b.x0, b.y0, b.x1, b.y1])
        });
        Seen { faces: faces.collect(), view, origin, factor }
    }

    /// Where a place of the site falls on the sheet.
    pub fn paper(&self, place: [f64; 3]) -> PaperPoint {
        self.on_paper(self.view.spot(place))
    }

    fn on_paper(&self, [x, y]: Spot) -> PaperPoint {
        PaperPoint::new(self.origin.x + x * self.factor, self.origin.y - y * self.factor)
    }

    /// The face at a point of the sheet; `None` where the paper is white.
    pub fn at(&self, point: PaperPoint) -> Option<&'m Facet> {
        let (x, y) = ((point.x - self.origin.x) / self.factor, (self.origin.y - point.y) / self.factor);
        let near = |b: &[f64; 4]| x >= b[0] && x <= b[2] && y >= b[1] && y <= b[3];
        self.faces.iter().find(|(_, patch, bounds)| near(bounds) && patch.holds([x, y])).map(|(facet, ..)| *facet)
    }

    /// Whether a point shows the site or nothing, none of the run.
    pub fn is_clear(&self, point: PaperPoint) -> bool {
        self.at(point).is_none_or(|facet| matches!(facet.skin, Skin::Paving | Skin::Ground))
    }

    /// Whether a point shows the floor.
    pub fn is_floor(&self, point: PaperPoint) -> bool {
        self.at(point).is_some_and(|facet| facet.skin == Skin::Paving)
    }

    /// Where on the sheet a place on or in a face is seen, if `counts` holds for the face that shows there.
    pub fn visible(&self, place: [f64; 3], counts: impl Fn(&Facet) -> bool) -> Option<PaperPoint> {
        let point = self.paper(place);
        self.at(point).filter(|facet| counts(facet) && facet.pose.ahead(place).abs() < PROUD).map(|_| point)
    }

    /// A point of the largest seen piece of the faces that `counts` holds for.
    pub fn on_largest(&self, counts: impl Fn(&Facet) -> bool) -> Option<PaperPoint> {
        let size = |patch: &Patch| patch.rings.iter().map(|ring| area(ring)).sum::<f64>().abs();
        let own = self.faces.iter().filter(|(facet, ..)| counts(facet));
        let (_, patch, [x0, y0, x1, y1]) = own.max_by(|a, b| size(&a.1).total_cmp(&size(&b.1)))?;
        let shares = [0.5, 0.35, 0.65, 0.2, 0.8];
        let spots = shares.iter().flat_map(|v| shares.iter().map(move |u| [*u, *v]));
        let mut spots = spots.map(|[u, v]| [x0 + (x1 - x0) * u, y0 + (y1 - y0) * v]);
        spots.find(|spot| patch.holds(*spot)).map(|spot| self.on_paper(spot))
    }
}
