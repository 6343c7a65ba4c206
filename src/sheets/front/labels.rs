//! Marks in rings with the fittings' names, each in its opening where that is white, else beside it with a leader.

use super::elevation::Elevation;
use super::stops::opens_up;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Dash, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::frame::Area;
use crate::sheets::marks::{self, LeaderEnd};
use crate::sheets::notes::wrapped;
use crate::solve::Fitting;

/// White round a label, mm.
const CLEAR: f64 = 0.9;
/// From one line of a label to the next, mm.
const PITCH: f64 = 4.2;

/// A ring with words under it or beside it, about the middle of its box.
struct Label<'t> {
    mark: &'t str,
    lines: Vec<(String, Style)>,
    beside: bool,
}

impl Label<'_> {
    fn words_width(&self) -> f64 {
        self.lines.iter().map(|(line, _)| lettering::width(line, BODY, Weight::Regular)).fold(0.0, f64::max)
    }

    fn size(&self) -> (f64, f64) {
        let ring = marks::ring_radius(self.mark) * 2.0;
        let words = self.words_width();
        let height = self.lines.len() as f64 * PITCH;
        match (self.lines.is_empty(), self.beside) {
            (true, _) => (ring, ring),
            (_, true) => (ring + 1.5 + words, ring.max(height)),
            (_, false) => (ring.max(words), ring + 0.6 + height),
        }
    }

    fn draw(&self, canvas: &mut Canvas, at: Layer, centre: PaperPoint) {
        let radius = marks::ring_radius(self.mark);
        let (width, height) = self.size();
        let ring = if self.beside {
            centre.moved(-width / 2.0 + radius, 0.0)
        } else {
            centre.moved(0.0, -height / 2.0 + radius)
        };
        marks::ring(canvas, at, ring, self.mark);
        let count = self.lines.len() as f64;
        for (index, (line, style)) in self.lines.iter().enumerate() {
            if self.beside {
                let y = (index as f64 - (count - 1.0) / 2.0) * PITCH + 1.25;
                canvas.text(at, ring.moved(radius + 1.5, y), line, style);
            } else {
                let y = radius + 4.0 + index as f64 * PITCH;
                canvas.text(at, ring.moved(0.0, y), line, &style.clone().middle());
            }
        }
    }
}

/// Centrelines of the openings that are open at the top: over the counter, where the run's other views find them.
pub fn centrelines(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    for (_, fitting) in e.fittings().filter(|(_, fitting)| opens_up(fitting, &e.facing)) {
        let Some(room) = hole(e, fitting) else { continue };
        let x = (room.left + room.right) / 2.0;
        let (top, bottom) = (e.view.y(e.top) - 6.0, room.bottom + 3.0);
        canvas.line(at, PaperPoint::new(x, top), PaperPoint::new(x, bottom), Pen::DIMENSION.dashed(Dash::CENTRE));
    }
}

/// Marks every opening of the page.
pub fn draw(canvas: &mut Canvas, at: Layer, e: &Elevation<'_>) {
    // Large openings first: they have the room, and small ones may then look for what is left.
    let mut fittings: Vec<&Fitting> = e.fittings().map(|(_, fitting)| fitting).collect();
    fittings.sort_by_key(|fitting| (-fitting.width(), fitting.left));
    let mut crowded = Vec::new();
    for fitting in fittings {
        let Some(room) = hole(e, fitting) else { continue };
        if !inside(canvas, at, fitting, room, opens_up(fitting, &e.facing)) {
            crowded.push((fitting, room));
        }
    }
    for (fitting, room) in crowded {
        outside(canvas, at, fitting, room);
    }
}

/// An opening on the sheet.
pub fn hole(e: &Elevation<'_>, fitting: &Fitting) -> Option<Area> {
    let cutout = fitting.cutout(e.facing.plane())?;
    let (x0, x1) = e.facing.span(cutout.extent.x0, cutout.extent.x1);
    let top = if opens_up(fitting, &e.facing) { e.leg.datums.substrate_top } else { cutout.extent.y1 };
    Some(Area { left: e.view.x(x0), top: e.view.y(top), right: e.view.x(x1), bottom: e.view.y(cutout.extent.y0) })
}

fn labels<'f>(fitting: &'f Fitting, room: Area) -> Vec<Label<'f>> {
    let names = |width: f64| -> Vec<(String, Style)> {
        wrapped(&fitting.name, width, BODY, Weight::Regular).into_iter().map(|line| (line, Style::body())).collect()
    };
    let label = |lines: Vec<(String, Style)>, beside: bool| Label { mark: &fitting.mark, lines, beside };
    let mut all = Vec::new();
    let width = (room.width() - 3.0).max(10.0);
    if fitting.to_floor {
        let mut lines = names(width);
        lines.push(("open to the floor".to_owned(), Style::caption()));
        all.push(label(lines, false));
    }
    let (under, beside) = (label(names(width), false), label(names(width), true));
    // Under the ring where the opening is high, beside it where it is low.
    if room.height() < 25.0 {
        all.extend([beside, under]);
    } else {
        all.extend([under, beside]);
    }
    all.push(label(names(width * 0.5), false));
    all.push(label(names(width * 0.5), true));
    all.push(label(Vec::new(), false));
    all
}

fn inside(canvas: &mut Canvas, at: Layer, fitting: &Fitting, room: Area, notch: bool) -> bool {
    // What the drops at the left leave free, or a centreline.
    let aim_x = if notch { room.left + room.width() * 0.75 } else { (room.left + 6.0 + room.right) / 2.0 };
    let aim = PaperPoint::new(aim_x, (room.top + room.bottom) / 2.0);
    for label in labels(fitting, room) {
        let (width, height) = label.size();
        let (dx, dy) = ((room.width() - width) / 2.0 - CLEAR, (room.height() - height) / 2.0 - CLEAR);
        if dx < 0.0 || dy < 0.0 {
            continue;
        }
        let middle = PaperPoint::new((room.left + room.right) / 2.0, (room.top + room.bottom) / 2.0);
        let steps = |reach: f64| -> Vec<f64> {
            let count = (reach / 1.5).ceil().max(1.0) as i32;
            (-count..=count).map(|k| reach * f64::from(k) / f64::from(count)).collect()
        };
        let mut places: Vec<PaperPoint> =
            steps(dx).into_iter().flat_map(|x| steps(dy).into_iter().map(move |y| middle.moved(x, y))).collect();
        places.push(aim);
        let inside = |p: &PaperPoint| (p.x - middle.x).abs() <= dx + 1e-9 && (p.y - middle.y).abs() <= dy + 1e-9;
        places.retain(inside);
        places.sort_by(|a, b| a.distance(aim).total_cmp(&b.distance(aim)));
        if let Some(place) = places.into_iter().find(|p| is_free(canvas, *p, width, height)) {
            label.draw(canvas, at, place);
            return true;
        }
    }
    false
}

fn is_free(canvas: &Canvas, p: PaperPoint, width: f64, height: f64) -> bool {
    let (dx, dy) = (width / 2.0 + CLEAR, height / 2.0 + CLEAR);
    canvas.is_box_free(p.x - dx, p.y - dy, p.x + dx, p.y + dy)
}

/// Beside an opening that is too small: the nearest white place for ring and name, or the ring alone.
fn outside(canvas: &mut Canvas, at: Layer, fitting: &Fitting, room: Area) {
    let middle = PaperPoint::new((room.left + room.right) / 2.0, (room.top + room.bottom) / 2.0);
    let named = |beside| Label { mark: &fitting.mark, lines: vec![(fitting.name.clone(), Style::body())], beside };
    for label in [named(true), named(false), Label { mark: &fitting.mark, lines: Vec::new(), beside: false }] {
        let (width, height) = label.size();
        let radius = marks::ring_radius(&fitting.mark);
        for ring in 1..=30 {
            let reach = 4.0 + f64::from(ring) * 1.5;
            for k in 0..24 {
                let angle = f64::from(k) * std::f64::consts::TAU / 24.0;
                let place = middle.moved(angle.cos() * (room.width() / 2.0 + reach), angle.sin() * (room.height() / 2.0 + reach));
                let ring = if label.beside { place.moved(-width / 2.0 + radius, 0.0) } else { place.moved(0.0, -height / 2.0 + radius) };
                // The dot lies in the opening, just inside the edge that is nearest to the ring.
                let clamp = |v: f64, a: f64, b: f64| if b - a > 4.0 { v.clamp(a + 2.0, b - 2.0) } else { (a + b) / 2.0 };
                let dot = PaperPoint::new(clamp(ring.x, room.left, room.right), clamp(ring.y, room.top, room.bottom));
                let end = ring.towards(dot, radius / ring.distance(dot).max(radius));
                // The leader comes from the side where the name is not.
                let own = if label.lines.is_empty() {
                    true
                } else if label.beside {
                    dot.x <= ring.x + 0.5
                } else {
                    dot.y <= ring.y + 0.5
                };
                if own && is_free(canvas, place, width, height) && !canvas.crosses_text(dot, end, Pen::new(1.2)) {
                    label.draw(canvas, at, place);
                    marks::leader(canvas, at, &[dot, end], LeaderEnd::Dot, Colour::INK);
                    return;
                }
            }
        }
    }
}
