//! Marks and names of cutouts, each where nobody can take it for its neighbour's: in the void, or led to it.

use super::{cutouts, parts};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Fill, Pen};
use crate::geometry::{Leg as LegSpace, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::view::View;
use crate::sheets::{marks, place};
use crate::solve::{Cutout, Fitting, FittingKind, Leg, Look, Plane};
use crate::units::Show;

/// What a cutout is called: `grill notch`.
pub fn name_of(fitting: &Fitting) -> String {
    let kind = match (fitting.kind, fitting.look) {
        (FittingKind::Notch, _) => "notch",
        (FittingKind::Well, Look::Faucet | Look::Hole) => "hole",
        (FittingKind::Well, _) => "well",
        _ => "",
    };
    if kind.is_empty() || fitting.name.ends_with(kind) {
        fitting.name.clone()
    } else {
        format!("{} {kind}", fitting.name)
    }
}

/// Boxes on the sheet of all cutouts of a plane.
pub fn voids(leg: &Leg, plane: Plane, view: &View<LegSpace>) -> Vec<Area> {
    parts::cutouts(leg, plane).iter().map(|(_, cutout)| void(cutout, view)).collect()
}

fn void(cutout: &Cutout, view: &View<LegSpace>) -> Area {
    let (a, b) = (view.at(cutout.extent.x0, cutout.extent.y1), view.at(cutout.extent.x1, cutout.extent.y0));
    Area { left: a.x, top: a.y, right: b.x, bottom: b.y }
}

/// What the names lie on.
#[derive(Clone, Copy)]
pub struct Ground {
    /// The slab or the sheet, on the page.
    pub area: Area,
    /// The tone of a plate that may hide lines under a mark for which there is no white; none may without it.
    pub plate: Option<Fill>,
}

/// Ring, name and size of one cutout: in its void, or beside it on the slab with a leader, off all other voids.
pub fn name_cutout(
    canvas: &mut Canvas,
    at: Layer,
    show: Show,
    ground: Ground,
    (fitting, cutout): (&Fitting, &Cutout),
    view: &View<LegSpace>,
    voids: &[Area],
) {
    let void = void(cutout, view);
    let radius = marks::ring_radius(&fitting.mark);
    let name = name_of(fitting);
    let size = cutouts::plain_size(show, cutout);
    let wide = |text: &str| lettering::width(text, BODY, Weight::Regular);
    let both = wide(&name).max(wide(&size));
    let middle = PaperPoint::new((void.left + void.right) / 2.0 - 2.0, (void.top + void.bottom) / 2.0);
    // Ring with name and size beside it, or with the name alone, or over them, or the ring alone.
    let beside = 2.0 * radius + 1.6;
    if let Some(spot) = place::free_spot(canvas, void, (beside + both, 8.6), middle) {
        let left = spot.x - (beside + both) / 2.0;
        marks::ring(canvas, at, PaperPoint::new(left + radius, spot.y), &fitting.mark);
        canvas.text(at, PaperPoint::new(left + beside, spot.y - 0.9), &name, &Style::body());
        canvas.text(at, PaperPoint::new(left + beside, spot.y + 3.6), &size, &Style::caption());
    } else if let Some(spot) =
        place::free_spot(canvas, void, (wide(&name).max(2.0 * radius), 2.0 * radius + 4.4), middle)
    {
        let top = spot.y - radius - 2.2;
        marks::ring(canvas, at, PaperPoint::new(spot.x, top + radius), &fitting.mark);
        canvas.text(at, PaperPoint::new(spot.x, top + 2.0 * radius + 3.6), &name, &Style::body().middle());
    } else if let Some(spot) = place::free_spot(canvas, void, (2.0 * radius, 2.0 * radius), middle) {
        marks::ring(canvas, at, spot, &fitting.mark);
    } else if !bare(canvas, at, &fitting.mark, void) {
        outside(canvas, at, ground, fitting, &name, void, voids);
    }
}

/// The mark alone, level or upright, in a void too narrow for its ring. Says whether it found room.
fn bare(canvas: &mut Canvas, at: Layer, mark: &str, void: Area) -> bool {
    let wide = lettering::width(mark, BODY, Weight::SemiBold);
    let middle = PaperPoint::new((void.left + void.right) / 2.0, (void.top + void.bottom) / 2.0);
    let style = Style::body().bold().middle();
    if let Some(spot) = place::free_spot(canvas, void, (wide, 2.6), middle) {
        canvas.text(at, spot.moved(0.0, 1.25), mark, &style);
        return true;
    }
    if let Some(spot) = place::free_spot(canvas, void, (2.6, wide), middle) {
        canvas.text(at, spot.moved(1.25, 0.0), mark, &style.upright());
        return true;
    }
    false
}

/// Ring and name beside a cutout that is too small for them, with a leader; the bare mark close to it as a last resort.
fn outside(canvas: &mut Canvas, at: Layer, ground: Ground, fitting: &Fitting, name: &str, void: Area, voids: &[Area]) {
    let radius = marks::ring_radius(&fitting.mark);
    let centre = PaperPoint::new((void.left + void.right) / 2.0, (void.top + void.bottom) / 2.0);
    let slab = ground.area;
    let near = Area {
        left: (void.left - 50.0).max(slab.left + 0.5),
        top: (void.top - 26.0).max(slab.top + 0.5),
        right: (void.right + 50.0).min(slab.right - 0.5),
        bottom: (void.bottom + 26.0).min(slab.bottom - 0.5),
    };
    let width = lettering::width(name, BODY, Weight::Regular);
    let prefer = PaperPoint::new(void.right + 4.0 + radius + width / 2.0, void.top - 4.0);
    let reach = (void.right - void.left).min(void.bottom - void.top) / 2.0;
    // The ring is at the end that looks at the cutout, so that its leader doesn't cross the name.
    let ring_of = |spot: PaperPoint, whole: f64| {
        let off = whole / 2.0 - radius;
        spot.moved(if spot.x < centre.x { off } else { -off }, 0.0)
    };
    let line = |ring: PaperPoint| {
        let apart = ring.distance(centre).max(1.0);
        (centre.towards(ring, (reach + 0.3) / apart), ring.towards(centre, (radius + 0.2) / apart))
    };
    let place = |canvas: &Canvas, whole: f64| {
        let led = |spot: PaperPoint| {
            let (rim, end) = line(ring_of(spot, whole));
            rim.distance(end) < 3.0 || place::is_path_free(canvas, rim, end)
        };
        place::free_spot_off(canvas, near, (whole, 2.0 * radius), prefer, voids, led)
    };
    let named = 2.0 * radius + 1.6 + width;
    let found = place(canvas, named).map(|spot| (spot, named));
    let Some((spot, whole)) = found.or_else(|| place(canvas, 2.0 * radius).map(|spot| (spot, 2.0 * radius))) else {
        close_by(canvas, at, ground, &fitting.mark, void, voids);
        return;
    };
    let ring = ring_of(spot, whole);
    let (rim, end) = line(ring);
    if rim.distance(end) > 0.8 {
        canvas.line(at, rim, end, Pen::DIMENSION);
    }
    marks::ring(canvas, at, ring, &fitting.mark);
    if whole > 2.0 * radius {
        let name_left = spot.x < centre.x;
        let (x, style) = if name_left { (-radius - 1.6, Style::body().end()) } else { (radius + 1.6, Style::body()) };
        canvas.text(at, ring.moved(x, 1.25), name, &style);
    }
}

/// The bare mark at the rim of its cutout: on white, or on a plate that hides what lies under the sheet.
fn close_by(canvas: &mut Canvas, at: Layer, ground: Ground, mark: &str, void: Area, voids: &[Area]) {
    let style = Style::body().bold();
    let wide = lettering::width(mark, BODY, Weight::SemiBold);
    let middle = PaperPoint::new((void.left + void.right) / 2.0, (void.top + void.bottom) / 2.0);
    let (right, left) = (void.right + 1.2, void.left - 1.2 - wide);
    let rows = [1.25, -2.2, 4.2].map(|off| middle.y + off);
    let beside = rows.iter().flat_map(|&y| [right, left].map(|x| PaperPoint::new(x, y)));
    let above = [void.top - 1.4, void.bottom + 4.0].map(|y| PaperPoint::new(middle.x - wide / 2.0, y));
    let places: Vec<PaperPoint> = beside.chain(above).collect();
    let (Some(plate), None) = (ground.plate, canvas.text_at_first(at, &places, mark, &style)) else { return };
    let slab = ground.area;
    let free = places.into_iter().find(|p| {
        let (x0, y0, x1, y1) = (p.x - 0.6, p.y - 3.3, p.x + wide + 0.6, p.y + 0.8);
        let meets = |void: &Area| x0 < void.right && x1 > void.left && y0 < void.bottom && y1 > void.top;
        let inside = x0 > slab.left + 0.4 && x1 < slab.right - 0.4 && y0 > slab.top + 0.4 && y1 < slab.bottom - 0.4;
        inside && !voids.iter().any(meets) && canvas.is_box_free_of_text(x0, y0, x1, y1)
    });
    if let Some(p) = free {
        canvas.rectangle(at, p.moved(-0.6, -3.3), p.moved(wide + 0.6, 0.8), Paint::fill(plate));
        canvas.text(at, p, mark, &style);
    }
}
