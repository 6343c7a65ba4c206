//! What lies hidden under a counter or a sheet, as thin tinted outlines, each with its mark where there is white.

use super::canvas::{Canvas, Layer, Paint, through};
use crate::drawing::lettering::{self, BODY, Style};
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::PaperPoint;

/// Something hidden, from above.
pub struct Hidden<'s> {
    /// Its mark.
    pub mark: &'s str,
    /// Its corners on the sheet, one after the other.
    pub corners: [PaperPoint; 4],
}

/// Draws them; to be lettered over.
pub fn draw(canvas: &mut Canvas, at: Layer, all: &[Hidden<'_>]) {
    let pen = Pen::FINE.coloured(Colour::GREY_TEXT).dashed(Dash(&[1.5, 0.6]));
    for one in all {
        let tint = Paint::fill(Fill::tint(Colour::TINT_BOARD));
        let facts = vec![("data-support", one.mark.to_owned())];
        canvas.shape(at, Shape::Steps(through(&one.corners, true)), tint, "support", facts);
        canvas.polyline(at, &one.corners, true, Paint::pen(pen));
    }
}

/// Marks them where there is white inside `own`: in what is wide enough, else beside it, along its longer side first; with a
/// short leader where another lies as near.
pub fn marks(canvas: &mut Canvas, at: Layer, all: &[Hidden<'_>], own: &[PaperPoint; 4]) {
    let style = Style::caption();
    for (index, one) in all.iter().enumerate() {
        let wide = lettering::width(one.mark, BODY, style.weight);
        let here = |spot: &Spot| is_within(own, spot.middle(wide));
        let free = |spot: &Spot| {
            let (left, y) = (spot.place.x, spot.place.y);
            // Not in a row with another mark.
            let apart = canvas.is_box_free_of_text(left - 2.0, y - BODY - 0.4, left + wide + 2.0, y + 0.4);
            apart && canvas.is_free(&lettering::set(spot.place, one.mark, &style))
        };
        let near = |spot: &Spot| {
            let mut others = all.iter().enumerate().filter(|(other, _)| *other != index);
            others.any(|(_, other)| is_near(&other.corners, spot.middle(wide), wide))
        };
        // A mark by itself needs no leader.
        let fits = |spot: &Spot| {
            here(spot)
                && free(spot)
                && (spot.inside || spot.foot.is_some() == near(spot))
                && spot.foot.is_none_or(|foot| canvas.is_clear_of_text(&[foot, spot.end(wide)]))
        };
        let spots = beside(one.corners, wide);
        let Some(spot) = spots.iter().find(|spot| fits(spot)) else { continue };
        if let Some(foot) = spot.foot {
            canvas.line(at, foot, spot.end(wide), Pen::FINE.coloured(Colour::GREY_TEXT));
            canvas.circle(at, foot, 0.35, Paint::fill(Fill::ink(Colour::GREY_TEXT)));
        }
        canvas.text(at, spot.place, one.mark, &style);
    }
}

/// Where a mark may stand.
struct Spot {
    /// Left end of its baseline.
    place: PaperPoint,
    /// In the support itself.
    inside: bool,
    /// Where its leader stands on the support.
    foot: Option<PaperPoint>,
}

impl Spot {
    fn middle(&self, wide: f64) -> PaperPoint {
        self.place.moved(wide / 2.0, -BODY / 2.0)
    }

    /// Where its leader ends, just off the lettering.
    fn end(&self, wide: f64) -> PaperPoint {
        let middle = self.middle(wide);
        let Some(foot) = self.foot else { return middle };
        let (dx, dy) = ((middle.x - foot.x).abs().max(1e-9), (middle.y - foot.y).abs().max(1e-9));
        let share = ((wide / 2.0 + 0.7) / dx).min((BODY / 2.0 + 0.7) / dy).min(1.0);
        middle.towards(foot, share)
    }
}

/// Places for a text of a width in a box and beside it, the middle of the longer sides first.
fn beside(p: [PaperPoint; 4], wide: f64) -> Vec<Spot> {
    let long = p[0].distance(p[1]) >= p[1].distance(p[2]);
    let sides = if long { [(p[0], p[1]), (p[3], p[2])] } else { [(p[1], p[2]), (p[0], p[3])] };
    let middle = p[0].towards(p[2], 0.5);
    let shares = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9];
    let mut spots = Vec::new();
    for share in shares {
        let centre = sides[0].0.towards(sides[0].1, share).towards(sides[1].0.towards(sides[1].1, share), 0.5);
        let corners = [(-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)];
        let boxed = corners.map(|(x, y)| centre.moved(x * (wide / 2.0 + 0.6), y * (BODY / 2.0 + 0.7)));
        if boxed.iter().all(|corner| is_within(&p, *corner)) {
            let place = centre.moved(-wide / 2.0, BODY / 2.0);
            spots.push(Spot { place, inside: true, foot: None });
        }
    }
    for (share, (a, b)) in shares.into_iter().flat_map(|share| sides.map(|side| (share, side))) {
        let point = a.towards(b, share);
        let across = away(a, b, middle);
        // Off the side, as the side lies on the sheet.
        let half = (wide / 2.0 * across.0.abs()).hypot(BODY / 2.0 * across.1.abs());
        let at = |off: f64| point.moved(across.0 * (off + half) - wide / 2.0, across.1 * (off + half) + BODY / 2.0);
        spots.push(Spot { place: at(1.0), inside: false, foot: None });
        let foot = point.moved(-across.0 * 0.7, -across.1 * 0.7);
        for off in [1.6, 2.4, 3.4, 5.0] {
            spots.push(Spot { place: at(off), inside: false, foot: Some(foot) });
        }
    }
    spots
}

/// The way off a side, away from the middle of its box, of length 1.
fn away(a: PaperPoint, b: PaperPoint, middle: PaperPoint) -> (f64, f64) {
    let long = a.distance(b).max(1e-9);
    let (x, y) = ((b.y - a.y) / long, (a.x - b.x) / long);
    let out = (a.x - middle.x) * x + (a.y - middle.y) * y;
    if out < 0.0 { (-x, -y) } else { (x, y) }
}

/// Whether a point lies in a convex four-sided figure.
fn is_within(p: &[PaperPoint; 4], point: PaperPoint) -> bool {
    let side = |k: usize| {
        let (a, b) = (p[k], p[(k + 1) % 4]);
        (b.x - a.x) * (point.y - a.y) - (b.y - a.y) * (point.x - a.x)
    };
    let sides = [0, 1, 2, 3].map(side);
    sides.iter().all(|one| *one >= 0.0) || sides.iter().all(|one| *one <= 0.0)
}

/// Whether a text of a width round a point could be read as a mark of a box.
fn is_near(p: &[PaperPoint; 4], middle: PaperPoint, wide: f64) -> bool {
    let reach = 3.0;
    let (x0, x1) = p.iter().fold((f64::MAX, f64::MIN), |(low, high), one| (low.min(one.x), high.max(one.x)));
    let (y0, y1) = p.iter().fold((f64::MAX, f64::MIN), |(low, high), one| (low.min(one.y), high.max(one.y)));
    let (dx, dy) = (wide / 2.0 + reach, BODY / 2.0 + reach);
    middle.x > x0 - dx && middle.x < x1 + dx && middle.y > y0 - dy && middle.y < y1 + dy
}
