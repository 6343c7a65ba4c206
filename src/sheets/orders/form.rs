//! The head of an order: the job's facts at the left, blanks to fill in at the right.

use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Fill, Pen};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::frame::Area;
use crate::sheets::set::Set;
use crate::sheets::title_block::shortened;

/// From one line of the head to the next, mm.
const PITCH: f64 = 6.0;
/// Height of the head, mm.
pub const HEIGHT: f64 = 4.0 * PITCH;
/// Room for a caption, mm.
const CAPTION: f64 = 20.0;

/// Draws it into an area.
pub fn draw(canvas: &mut Canvas, at: Layer, area: Area, set: &Set<'_>) {
    let job = &set.solved.job;
    let or = |text: &str| if text.trim().is_empty() { "\u{2013}".to_owned() } else { text.to_owned() };
    let revision = job.revisions.last().map_or(String::new(), |revision| format!(", revision {}", revision.mark));
    let to: Vec<&str> =
        [job.client.as_str(), job.address.as_str()].into_iter().filter(|text| !text.trim().is_empty()).collect();
    let facts = [
        ("Job", or(&job.title)),
        ("Job no.", format!("{}{revision}", or(&job.number))),
        ("Date", or(&job.date)),
        ("Deliver to", or(&to.join(", "))),
    ];
    let blanks = ["Order no.", "Wanted by", "Ordered by", "Signature"];
    let middle = area.left + area.width() * 0.55;
    for (row, ((caption, value), blank)) in facts.iter().zip(blanks).enumerate() {
        let y = area.top + row as f64 * PITCH + 3.6;
        canvas.text(at, PaperPoint::new(area.left, y), caption, &Style::caption());
        let value = shortened(value, middle - area.left - CAPTION - 3.0, &Style::body());
        canvas.text(at, PaperPoint::new(area.left + CAPTION, y), &value, &Style::body());
        canvas.text(at, PaperPoint::new(middle, y), blank, &Style::caption());
        let (a, b) = (PaperPoint::new(middle + CAPTION, y - 3.4), PaperPoint::new(area.right, y + 1.2));
        canvas.rectangle(at, a, b, Paint::fill(Fill::tint(Colour::TINT_BOARD)));
    }
    let bottom = area.bottom;
    canvas.line(at, PaperPoint::new(area.left, bottom), PaperPoint::new(area.right, bottom), Pen::SECONDARY);
}
