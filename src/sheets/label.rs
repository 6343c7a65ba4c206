//! Marks in rings with words under or beside them: inside their opening where that is white, else outside with a leader.

use super::canvas::{Canvas, Layer};
use super::frame::Area;
use super::marks::{self, LeaderEnd};
use super::notes::wrapped;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Pen};
use crate::geometry::PaperPoint;

/// White round a label, mm.
const CLEAR: f64 = 0.7;
/// From one line of a label to the next, mm.
const PITCH: f64 = 4.2;

/// A ring with words under it or beside it, about the middle of its box.
struct Label<'t> {
    mark: &'t str,
    lines: Vec<(String, Style)>,
    beside: bool,
    /// Without a ring: in low openings, the mark semi-bold and the name after it.
    bare: bool,
}

impl Label<'_> {
    fn words_width(&self) -> f64 {
        self.lines.iter().map(|(line, _)| lettering::width(line, BODY, Weight::Regular)).fold(0.0, f64::max)
    }

    fn bare_mark_width(&self) -> f64 {
        lettering::width(self.mark, BODY, Weight::SemiBold)
    }

    fn size(&self) -> (f64, f64) {
        if self.bare {
            let words = self.words_width();
            return (self.bare_mark_width() + if words > 0.0 { 1.5 + words } else { 0.0 }, 3.4);
        }
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
        if self.bare {
            let start = centre.moved(-width / 2.0, 1.15);
            canvas.text(at, start, self.mark, &Style::body().bold());
            if let Some((line, style)) = self.lines.first() {
                canvas.text(at, start.moved(self.bare_mark_width() + 1.5, 0.0), line, style);
            }
            return;
        }
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

/// What is written at an opening.
#[derive(Clone, Debug)]
pub struct Words {
    /// Its mark.
    pub mark: String,
    /// Its name, broken over lines where need be.
    pub name: String,
    /// Further lines in caption grey.
    pub more: Vec<String>,
    /// The further lines are not left out where there is no room for them inside: all goes outside before.
    pub whole: bool,
}

fn labels(words: &Words, room: Area) -> Vec<Label<'_>> {
    let names = |width: f64| -> Vec<(String, Style)> {
        wrapped(&words.name, width, BODY, Weight::Regular).into_iter().map(|line| (line, Style::body())).collect()
    };
    let label = |lines: Vec<(String, Style)>, beside: bool| Label { mark: &words.mark, lines, beside, bare: false };
    let mut all = Vec::new();
    let width = (room.width() - 3.0).max(10.0);
    if !words.more.is_empty() {
        let low = room.height() < 25.0;
        // Name and further lines one under the other, the further ones on one line where that is too high.
        for more in [words.more.clone(), vec![words.more.join(" ")]] {
            for name in [names(width), names(width * 0.6)] {
                let lines: Vec<(String, Style)> =
                    name.into_iter().chain(more.iter().map(|line| (line.clone(), Style::caption()))).collect();
                all.extend([label(lines.clone(), low), label(lines, !low)]);
            }
        }
    }
    if words.whole && !words.more.is_empty() {
        let line = format!("{}, {}", words.name, words.more.join(" "));
        all.push(Label { mark: &words.mark, lines: vec![(line, Style::body())], beside: true, bare: true });
        return all;
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
    let bare = |lines: Vec<(String, Style)>| Label { mark: &words.mark, lines, beside: true, bare: true };
    all.extend([bare(vec![(words.name.clone(), Style::body())]), bare(Vec::new())]);
    all
}

/// Writes the words inside a room, as near as can be to `aim`; says whether there was a place for them, or for the
/// ring alone.
pub fn inside(canvas: &mut Canvas, at: Layer, words: &Words, room: Area, aim: PaperPoint) -> bool {
    for label in labels(words, room) {
        let (width, height) = label.size();
        let clear = if label.bare { CLEAR / 2.0 } else { CLEAR };
        let (dx, dy) = ((room.width() - width) / 2.0 - clear, (room.height() - height) / 2.0 - clear);
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
        if let Some(place) = places.into_iter().find(|p| is_free(canvas, *p, width, height, clear)) {
            label.draw(canvas, at, place);
            return true;
        }
    }
    false
}

fn is_free(canvas: &Canvas, p: PaperPoint, width: f64, height: f64, clear: f64) -> bool {
    let (dx, dy) = (width / 2.0 + clear, height / 2.0 + clear);
    canvas.is_box_free(p.x - dx, p.y - dy, p.x + dx, p.y + dy)
}

/// Writes ring and name, or the ring alone, in the nearest white place round a room that is too small, within bounds
/// and off rooms that are taken; says whether there was one.
pub fn outside(canvas: &mut Canvas, at: Layer, words: &Words, room: Area, within: Area, taken: &[Area]) -> bool {
    let plain = |text: &str| (text.to_owned(), Style::body());
    let grey = |text: &String| (text.clone(), Style::caption());
    let label = |lines: Vec<(String, Style)>, beside: bool| Label { mark: &words.mark, lines, beside, bare: false };
    let stacked: Vec<(String, Style)> =
        std::iter::once(plain(&words.name)).chain(words.more.iter().map(grey)).collect();
    let mut tried = Vec::new();
    if !words.more.is_empty() {
        tried.push(label(vec![plain(&format!("{}, {}", words.name, words.more.join(", ")))], true));
        tried.extend([label(stacked.clone(), true), label(stacked, false)]);
    }
    if words.whole && !words.more.is_empty() {
        return written(canvas, at, words, room, within, taken, tried);
    }
    tried.extend([
        label(vec![plain(&words.name)], true),
        label(vec![plain(&words.name)], false),
        label(Vec::new(), false),
    ]);
    written(canvas, at, words, room, within, taken, tried)
}

/// Writes the first of several labels that has a place round a room, the nearest place of it.
fn written(
    canvas: &mut Canvas,
    at: Layer,
    words: &Words,
    room: Area,
    within: Area,
    taken: &[Area],
    tried: Vec<Label<'_>>,
) -> bool {
    let middle = PaperPoint::new((room.left + room.right) / 2.0, (room.top + room.bottom) / 2.0);
    for label in tried {
        let (width, height) = label.size();
        let radius = marks::ring_radius(&words.mark);
        for ring in 1..=30 {
            let reach = 4.0 + f64::from(ring) * 1.5;
            for k in 0..24 {
                let angle = f64::from(k) * std::f64::consts::TAU / 24.0;
                let place = middle
                    .moved(angle.cos() * (room.width() / 2.0 + reach), angle.sin() * (room.height() / 2.0 + reach));
                let ring = if label.beside {
                    place.moved(-width / 2.0 + radius, 0.0)
                } else {
                    place.moved(0.0, -height / 2.0 + radius)
                };
                // The dot lies in the opening, just inside the edge that is nearest to the ring.
                let clamp =
                    |v: f64, a: f64, b: f64| if b - a > 4.0 { v.clamp(a + 2.0, b - 2.0) } else { (a + b) / 2.0 };
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
                let (dx, dy) = (width / 2.0, height / 2.0);
                let held = place.x - dx >= within.left
                    && place.x + dx <= within.right
                    && place.y - dy >= within.top
                    && place.y + dy <= within.bottom;
                // In another opening it would name that one.
                let clear = |area: &Area| {
                    place.x + dx < area.left
                        || place.x - dx > area.right
                        || place.y + dy < area.top
                        || place.y - dy > area.bottom
                };
                if own
                    && held
                    && taken.iter().all(clear)
                    && is_free(canvas, place, width, height, CLEAR)
                    && !canvas.crosses_text(dot, end, Pen::new(1.2))
                {
                    label.draw(canvas, at, place);
                    marks::leader(canvas, at, &[dot, end], LeaderEnd::Dot, Colour::INK);
                    return true;
                }
            }
        }
    }
    false
}
