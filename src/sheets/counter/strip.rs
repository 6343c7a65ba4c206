//! The narrowest strip of material left beside a cutout.

use crate::solve::{Cutout, Extent, Leg, Plane};
use crate::units::Length;

/// Least width of material between a cutout and the nearest other cutout, edge or joint of its sheet. Edges that the
/// cutout is open to don't count, nor joints that run through it.
pub fn narrowest(leg: &Leg, plane: Plane, cutout: &Cutout) -> Option<Length> {
    let (sheet, joints) = match plane {
        Plane::Substrate => (leg.substrate.extent, &leg.substrate.joints),
        _ => (leg.counter.extent, &leg.counter.seams),
    };
    let own = cutout.extent;
    let edges = [own.x0 - sheet.x0, sheet.x1 - own.x1, own.y0 - sheet.y0, sheet.y1 - own.y1];
    let mut strips: Vec<Length> = edges.into_iter().filter(|gap| *gap > Length::ZERO).collect();
    strips.extend(joints.iter().filter_map(|&u| {
        let gap = (own.x0 - u).max(u - own.x1);
        (gap > Length::ZERO).then_some(gap)
    }));
    let others = leg.fittings.iter().filter_map(|f| f.cutout(plane));
    strips.extend(others.filter(|other| other.extent != own).map(|other| between(cutout, other)));
    let notches = leg.notches.iter().map(|notch| notch.extent).filter(|notch| notch.meets(&sheet));
    strips.extend(notches.map(|notch| between(cutout, &square(plane, notch))));
    strips.into_iter().min()
}

/// A box as a cutout.
fn square(plane: Plane, extent: Extent) -> Cutout {
    Cutout { plane, extent, outline: extent.outline(), radius: Length::ZERO, open: true, round: false }
}

/// Width between two cutouts; zero when they meet.
fn between(a: &Cutout, b: &Cutout) -> Length {
    let zero = Length::ZERO;
    let core = |cutout: &Cutout| match cutout.round {
        true => {
            let (x, y) = (cutout.extent.centre_x(), cutout.extent.centre_y());
            (Extent { x0: x, y0: y, x1: x, y1: y }, cutout.extent.width().half())
        }
        false => (cutout.extent, zero),
    };
    let ((a, ra), (b, rb)) = (core(a), core(b));
    let dx = (b.x0 - a.x1).max(a.x0 - b.x1).max(zero);
    let dy = (b.y0 - a.y1).max(a.y0 - b.y1).max(zero);
    let apart = match (dx > zero, dy > zero) {
        (true, true) => Length::from_mm(dx.mm().hypot(dy.mm())),
        _ => dx.max(dy),
    };
    (apart - ra - rb).max(zero)
}

#[cfg(test)]
mod tests {
    use super::between;
    use crate::geometry::Outline;
    use crate::solve::{Cutout, Extent, Plane};
    use crate::units::Length;

    fn cutout(x: f64, y: f64, width: f64, depth: f64, round: bool) -> Cutout {
        let mm = Length::from_mm;
        let extent = Extent { x0: mm(x), y0: mm(y), x1: mm(x + width), y1: mm(y + depth) };
        Cutout { plane: Plane::Counter, extent, outline: Outline::default(), radius: Length::ZERO, open: false, round }
    }

    #[test]
    fn side_by_side_it_is_the_gap_and_across_corners_the_diagonal() {
        let well = cutout(0.0, 0.0, 100.0, 100.0, false);
        assert_eq!(between(&well, &cutout(130.0, 20.0, 50.0, 50.0, false)), Length::from_mm(30.0));
        assert_eq!(between(&well, &cutout(130.0, 140.0, 50.0, 50.0, false)), Length::from_mm(50.0));
        assert_eq!(between(&well, &cutout(90.0, 90.0, 50.0, 50.0, false)), Length::ZERO);
    }

    #[test]
    fn a_round_hole_is_measured_from_its_rim() {
        let well = cutout(0.0, 0.0, 100.0, 100.0, false);
        assert_eq!(between(&well, &cutout(40.0, 120.0, 20.0, 20.0, true)), Length::from_mm(20.0));
        // Centres 50 apart along 3-4-5, less two radii.
        let (a, b) = (cutout(-10.0, -10.0, 20.0, 20.0, true), cutout(25.0, 35.0, 10.0, 10.0, true));
        assert_eq!(between(&a, &b), Length::from_mm(35.0));
    }
}
