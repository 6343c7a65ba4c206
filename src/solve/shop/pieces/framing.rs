//! The tubes behind a face, as joints need them.

use crate::solve::{BodyBox, Extent, Face, Leg, Plane};
use crate::units::Length;

/// A face's tubes and cutouts, each as a box in the face's plane.
pub struct Framing {
    tubes: Vec<Extent>,
    cuts: Vec<Extent>,
    /// Uncovered stretches up to this are left between a rail and the end of a stud.
    allowed: Length,
}

/// Half an inch of tube under each of two edges that meet: common practice.
const BEARING: Length = Length::from_sixty_fourths(32);

impl Framing {
    /// Behind a face, in the modules that touch a board's.
    pub fn behind(leg: &Leg, face: Face, module: Option<usize>, fittings: &[usize], tube: Length) -> Framing {
        let d = &leg.datums;
        let touches = |body: &BodyBox| match face {
            Face::Front => body.v.0 == d.frame_face,
            Face::Back => body.v.1 == d.frame_back,
            Face::Left => body.u.0 == d.frame_left,
            Face::Right => body.u.1 == d.frame_right,
        };
        let near = module.map_or(0..=leg.modules.len(), |own| own.saturating_sub(1)..=own + 1);
        let tubes = leg.members_of(near).iter().filter(|member| touches(&member.body)).map(|member| {
            let across = if matches!(face, Face::Front | Face::Back) { member.body.u } else { member.body.v };
            Extent { x0: across.0, x1: across.1, y0: member.body.z.0, y1: member.body.z.1 }
        });
        let cut = |&index: &usize| leg.fittings.get(index)?.cutout(Plane::of(face)).map(|cutout| cutout.extent);
        Framing { tubes: tubes.collect(), cuts: fittings.iter().filter_map(cut).collect(), allowed: tube * 3 }
    }

    /// Places for a joint that stands (or lies level) between two levels (or sides): the middle of every tube that
    /// runs that way.
    pub fn middles(&self, level: bool) -> Vec<Length> {
        let along = |tube: &&Extent| (tube.width() > tube.height()) == level;
        let middle = |tube: &Extent| if level { tube.centre_y() } else { tube.centre_x() };
        let mut all: Vec<Length> = self.tubes.iter().filter(along).map(middle).collect();
        all.sort();
        all.dedup();
        all
    }

    /// Whether tubes lie under a joint as far as there is board, short stretches aside.
    pub fn carries(&self, level: bool, at: Length, span: (Length, Length)) -> bool {
        let turned = |e: &Extent| if level { (e.y0, e.y1, e.x0, e.x1) } else { (e.x0, e.x1, e.y0, e.y1) };
        let mut covered: Vec<(Length, Length)> = Vec::new();
        for tube in self.tubes.iter().map(turned) {
            if tube.0 + BEARING <= at && at + BEARING <= tube.1 {
                covered.push((tube.2, tube.3));
            }
        }
        // Two posts side by side carry an edge each.
        let (mut left, mut right) = (Vec::new(), Vec::new());
        for tube in self.tubes.iter().map(turned) {
            if tube.1 == at {
                left.push((tube.2, tube.3));
            }
            if tube.0 == at {
                right.push((tube.2, tube.3));
            }
        }
        for a in &left {
            let both = right.iter().map(|b| (a.0.max(b.0), a.1.min(b.1))).filter(|both| both.0 < both.1);
            covered.extend(both);
        }
        covered.extend(self.cuts.iter().map(turned).filter(|cut| cut.0 < at && at < cut.1).map(|cut| (cut.2, cut.3)));
        covered.sort();
        let mut reached = span.0;
        for (from, to) in covered {
            if from - reached > self.allowed {
                return false;
            }
            reached = reached.max(to);
        }
        span.1 - reached <= self.allowed
    }

    /// From a joint to the nearest corner of a cutout beside it.
    pub fn off_corner(&self, level: bool, at: Length) -> Option<Length> {
        let sides = |cut: &Extent| if level { [cut.y0, cut.y1] } else { [cut.x0, cut.x1] };
        self.cuts.iter().flat_map(sides).map(|side| (side - at).abs()).min()
    }
}
