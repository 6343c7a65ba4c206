//! What was surveyed round the run, as thin lines on the floor: walls by their faces, posts by their outlines, steps by
//! their edges. They hide nothing, and what hides them is left out; walls and steps end where the floor that is shown
//! does, posts near it are shown for what they tell of the place.

use super::seen::Seen;
use crate::drawing::lettering::{self, Style};
use crate::drawing::{Colour, Dash, Pen};
use crate::geometry::{LegPoint, PaperPoint, PlanPoint};
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::frame::Area;
use crate::solve::Solved;

/// From a line to its name, mm.
const APART: f64 = 5.0;
/// Pieces that a line is looked at in, mm of paper.
const FINE: f64 = 1.0;
/// How far round the counters lines are drawn, mm at full size.
const PAST: f64 = 900.0;

/// A place of the plan, mm.
type Spot = (f64, f64);

/// Draws them within an area of the sheet.
pub fn draw(canvas: &mut Canvas, solved: &Solved, seen: &Seen<'_>, area: &Area) {
    let (Some(first), Some(held)) = (solved.legs.first(), held(solved)) else { return };
    let layer = canvas.layer(Canvas::ROOT, "surveyed");
    let survey = &solved.survey;
    let floor = |(x, y): Spot| {
        let at = first.placement.to_leg(PlanPoint::new(x, y));
        seen.paper([x, y, first.floor.height(at.x, at.y)])
    };
    let solid = Pen::SECONDARY.coloured(Colour::GREY_TEXT);
    let edge = Pen::DIMENSION.coloured(Colour::GREY_TEXT).dashed(Dash::PHANTOM);
    let line = |canvas: &mut Canvas, a: Spot, b: Spot, pen: Pen, anywhere: bool| -> Option<PaperPoint> {
        let (a, b) = clipped(a, b, held)?;
        let shows = |p| within(area, p) && if anywhere { seen.is_clear(p) } else { seen.is_floor(p) };
        one(canvas, layer, [floor(a), floor(b)], pen, shows)
    };
    let mut named: Vec<(PaperPoint, String)> = Vec::new();
    for wall in &survey.walls {
        let places = wall.points.windows(2).filter_map(|pair| line(canvas, pair[0], pair[1], solid, false));
        let places: Vec<PaperPoint> = places.collect();
        named.extend(places.first().map(|place| (*place, wall.name.clone())));
    }
    for post in &survey.posts {
        let ((x, y), (w, d)) = (post.at, (post.size.0 / 2.0, post.size.1 / 2.0));
        let ring = [(x - w, y - d), (x + w, y - d), (x + w, y + d), (x - w, y + d)];
        let sides = (0..4).filter_map(|k| line(canvas, ring[k], ring[(k + 1) % 4], solid, true)).count();
        named.extend((sides > 0).then(|| (floor(post.at), post.name.clone())));
    }
    for step in &survey.steps {
        let words = format!("step in the floor, {}", solved.show.prose(step.drop));
        named.extend(line(canvas, step.from, step.to, edge, false).map(|place| (place, words)));
    }
    for (place, text) in named {
        name(canvas, layer, seen, area, place, &text);
    }
}

/// The box of the plan in which lines are drawn: x0, y0, x1, y1.
fn held(solved: &Solved) -> Option<[f64; 4]> {
    let corners = solved.legs.iter().flat_map(|leg| {
        let e = leg.counter.extent;
        let ends = [(e.x0, e.y0), (e.x1, e.y0), (e.x1, e.y1), (e.x0, e.y1)];
        ends.map(|(u, v)| leg.placement.to_plan(LegPoint::new(u.mm(), v.mm())))
    });
    let boxes = corners.map(|p| [p.x - PAST, p.y - PAST, p.x + PAST, p.y + PAST]);
    boxes.reduce(|a, b| [a[0].min(b[0]), a[1].min(b[1]), a[2].max(b[2]), a[3].max(b[3])])
}

/// The part of a stretch inside a box.
fn clipped(a: Spot, b: Spot, [x0, y0, x1, y1]: [f64; 4]) -> Option<(Spot, Spot)> {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let (mut low, mut high) = (0.0_f64, 1.0_f64);
    for (way, off) in [(-dx, a.0 - x0), (dx, x1 - a.0), (-dy, a.1 - y0), (dy, y1 - a.1)] {
        if way == 0.0 && off < 0.0 {
            return None;
        } else if way < 0.0 {
            low = low.max(off / way);
        } else if way > 0.0 {
            high = high.min(off / way);
        }
    }
    let at = |share: f64| (a.0 + dx * share, a.1 + dy * share);
    (high - low > 1e-9).then(|| (at(low), at(high)))
}

/// Draws what is seen of a line on the floor; returns a point of it.
fn one(
    canvas: &mut Canvas,
    at: Layer,
    [a, b]: [PaperPoint; 2],
    pen: Pen,
    shows: impl Fn(PaperPoint) -> bool,
) -> Option<PaperPoint> {
    let count = (a.distance(b) / FINE).ceil().max(1.0) as usize;
    let point = |k: usize| a.towards(b, k as f64 / count as f64);
    let (mut from, mut found) = (None, None);
    for k in 0..=count {
        match (from, shows(point(k))) {
            (None, true) => from = Some(k),
            (Some(start), open) if !open || k == count => {
                let end = if open { k } else { k - 1 };
                if end > start {
                    canvas.line(at, point(start), point(end), pen);
                    found = found.or(Some(point((start + end) / 2)));
                }
                from = None;
            }
            _ => {}
        }
    }
    found
}

/// A name beside its line, on white paper or on the floor.
fn name(canvas: &mut Canvas, at: Layer, seen: &Seen<'_>, area: &Area, place: PaperPoint, text: &str) {
    let style = Style::caption().middle();
    let rings = [APART, 2.0 * APART, 3.0 * APART].into_iter();
    // Below first, then all round.
    let around =
        rings.flat_map(|far| (0..12).map(move |turn| (far, f64::from(3 + turn) * std::f64::consts::FRAC_PI_6)));
    for (far, angle) in around {
        let (sin, cos) = angle.sin_cos();
        let set = lettering::set(place.moved(2.4 * far * cos, far * sin + 1.25), text, &style);
        let corners = set.corners();
        let middle = corners[0].towards(corners[2], 0.5);
        let on = |p: PaperPoint| within(area, p) && seen.is_clear(p);
        if canvas.is_free(&set) && corners.into_iter().chain([middle]).all(on) {
            canvas.put(at, set);
            return;
        }
    }
}

fn within(area: &Area, p: PaperPoint) -> bool {
    p.x > area.left && p.x < area.right && p.y > area.top && p.y < area.bottom
}
