//! Labels of a row of feet, side by side beyond the row, each at the end of a line from its foot.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Pen, Text};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::dimensions::apart;
use crate::sheets::frame::Area;

/// Least distance between two labels, mm.
const PITCH: f64 = 3.9;

/// One label: what it is of, its number among the feet, and what is written after that.
pub struct Label {
    /// Where the line to it starts.
    pub at: PaperPoint,
    /// The foot's number.
    pub tag: String,
    /// Semi-bold, after the number; may be empty.
    pub words: String,
}

impl Label {
    /// Its length, mm.
    pub fn length(&self) -> f64 {
        let words = lettering::width(&self.words, BODY, Weight::SemiBold);
        lettering::width(&self.tag, BODY, Weight::Regular) + if words > 0.0 { 1.6 + words } else { 0.0 }
    }
}

/// Writes labels in a lane that begins `start` mm from the feet, on the side `out` of them (a unit step of paper).
/// What would meet other ink is tried farther out, within the view's own `area` where one is given; the indices of labels
/// that found nothing free are returned.
pub fn draw(
    canvas: &mut Canvas,
    at: Layer,
    labels: &[Label],
    out: (f64, f64),
    start: f64,
    area: Option<&Area>,
) -> Vec<usize> {
    let inside = |text: &Text| {
        let Some(area) = area else { return true };
        let held = |p: PaperPoint| p.x > area.left && p.x < area.right && p.y > area.top && p.y < area.bottom;
        text.corners().into_iter().all(held)
    };
    let along = (-out.1, out.0);
    let level = out.0.abs() < 0.02 || out.1.abs() < 0.02;
    let mut sorted: Vec<(usize, f64)> =
        labels.iter().map(|label| label.at.x * along.0 + label.at.y * along.1).enumerate().collect();
    sorted.sort_by(|a, b| a.1.total_cmp(&b.1));
    let mut unplaced = Vec::new();
    let pitch = if level { PITCH } else { PITCH * 1.5 };
    let places = apart(&sorted.iter().map(|(_, place)| *place).collect::<Vec<_>>(), pitch);
    for ((index, own), place) in sorted.into_iter().zip(places) {
        let label = &labels[index];
        let mut written = false;
        let shift = place - own;
        let step = |far: f64, aside: f64| label.at.moved(out.0 * far + along.0 * aside, out.1 * far + along.1 * aside);
        for more in [0.0, 7.0, 14.0, 21.0] {
            let base = step(start + more, shift);
            let texts = texts(label, base, out);
            if !texts.iter().all(|text| canvas.is_free(text) && (more == 0.0 || inside(text))) {
                continue;
            }
            let line = [label.at, step(start - 4.0, 0.0), step(start - 1.4, shift), step(start + more - 1.0, shift)];
            if !canvas.is_clear_of_text(&line) {
                continue;
            }
            for pair in line.windows(2).filter(|pair| pair[0].distance(pair[1]) > 0.05) {
                canvas.line(at, pair[0], pair[1], Pen::FINE);
            }
            for text in texts {
                canvas.put(at, text);
            }
            written = true;
            break;
        }
        if !written {
            unplaced.push(index);
        }
    }
    unplaced
}

/// Writes a label by its foot, a circle of `radius` mm: right at it, or as near as anything is free, with a line to it.
/// Says whether there was room.
pub fn by_foot(canvas: &mut Canvas, at: Layer, label: &Label, radius: f64) -> bool {
    let found = at_foot(canvas, label, radius).map(|texts| (texts, None)).or_else(|| {
        let away = |k: i32| 5.0 + f64::from(k) * 1.5;
        let ways = |far: f64| (0..24).map(move |k| (far, f64::from(k) * std::f64::consts::TAU / 24.0));
        (0..20).flat_map(|k| ways(away(k))).find_map(|(far, angle)| {
            let (dx, dy) = (angle.cos(), angle.sin());
            let base = label.at.moved(dx * far, dy * far);
            let line = [label.at.moved(dx * radius, dy * radius), base];
            let side = if dx < 0.0 { -1.0 } else { 1.0 };
            let texts = texts(label, base.moved(side, 0.0), (side, 0.0));
            (texts.iter().all(|text| canvas.is_free(text)) && canvas.is_clear_of_text(&line))
                .then_some((texts, Some(line)))
        })
    });
    let Some((texts, line)) = found else { return false };
    if let Some([a, b]) = line {
        canvas.line(at, a, b, Pen::FINE);
    }
    for text in texts {
        canvas.put(at, text);
    }
    true
}

/// A label right at its foot, a circle of `radius` mm, on the first side that is free.
fn at_foot(canvas: &Canvas, label: &Label, radius: f64) -> Option<Vec<Text>> {
    let (near, half) = (radius + 1.2, label.length() / 2.0);
    let level = [(near, 0.0, 1.0), (-near, 0.0, -1.0)];
    let sides = level.into_iter().flat_map(|(x, y, way)| [0.0, -2.4, 2.4].map(|dy| (x, y + dy, way)));
    let over = [(-half, -near - 2.0, 1.0), (-half, near + 2.0, 1.0)];
    let all = sides.chain(over).map(|(x, y, way)| texts(label, label.at.moved(x, y), (way, 0.0)));
    all.into_iter().find(|texts| texts.iter().all(|text| canvas.is_free(text)))
}

/// Number and words, read from below or from the right.
fn texts(label: &Label, base: PaperPoint, out: (f64, f64)) -> Vec<Text> {
    let upright = out.1.abs() >= out.0.abs();
    let length = label.length();
    // Both read in one direction; a lane below or at the left ends where the line does.
    let back = if upright { out.1 > 0.0 } else { out.0 < 0.0 };
    let from = if back { -length } else { 0.0 };
    let after = lettering::width(&label.tag, BODY, Weight::Regular) + 1.6;
    let place = |far: f64| if upright { base.moved(1.25, -(from + far)) } else { base.moved(from + far, 1.25) };
    let turned = |style: Style| if upright { style.upright() } else { style };
    let mut all = vec![lettering::set(place(0.0), &label.tag, &turned(Style::caption()))];
    if !label.words.is_empty() {
        all.push(lettering::set(place(after), &label.words, &turned(Style::body().bold())));
    }
    all
}
