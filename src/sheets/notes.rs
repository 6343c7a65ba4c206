//! Notes: a lead word, then one plain sentence; and words wrapped to a width.

use super::canvas::{Canvas, Layer};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::geometry::PaperPoint;

/// From line to line, mm.
pub const PITCH: f64 = 4.7;

/// Splits words into lines no wider than `width` mm.
pub fn wrapped(text: &str, width: f64, height: f64, weight: Weight) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split([' ', '\n', '\r', '\t']).filter(|word| !word.is_empty()) {
        let longer = lines.last().map(|line| format!("{line} {word}"));
        match longer {
            Some(longer) if lettering::width(&longer, height, weight) <= width => {
                if let Some(line) = lines.last_mut() {
                    *line = longer;
                }
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// Lines of ordinary lettering under one another, the first baseline at `place`. Returns the next baseline.
pub fn paragraph(canvas: &mut Canvas, at: Layer, place: PaperPoint, text: &str, width: f64, style: &Style) -> f64 {
    let mut y = place.y;
    for line in wrapped(text, width, style.height, style.weight) {
        canvas.text(at, PaperPoint::new(place.x, y), &line, style);
        y += PITCH;
    }
    y
}

/// Notes with lead words in a column of their own. Returns the next baseline.
pub fn list(canvas: &mut Canvas, at: Layer, place: PaperPoint, notes: &[(String, String)], width: f64) -> f64 {
    let lead = notes.iter().map(|(lead, _)| lettering::width(lead, BODY, Weight::SemiBold)).fold(0.0, f64::max) + 3.0;
    let mut y = place.y;
    for (word, sentence) in notes {
        canvas.text(at, PaperPoint::new(place.x, y), word, &Style::body().bold());
        y = paragraph(canvas, at, PaperPoint::new(place.x + lead, y), sentence, width - lead, &Style::body());
    }
    y
}

/// Height that [`list`] takes, mm.
pub fn list_height(notes: &[(String, String)], width: f64) -> f64 {
    let lead = notes.iter().map(|(lead, _)| lettering::width(lead, BODY, Weight::SemiBold)).fold(0.0, f64::max) + 3.0;
    let lines: usize = notes.iter().map(|(_, s)| wrapped(s, width - lead, BODY, Weight::Regular).len()).sum();
    lines as f64 * PITCH
}
