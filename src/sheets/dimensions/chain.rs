//! A chain: parts end to end that add up to the total as printed, because running positions are rounded, not parts.

use super::{Across, Dimension, NEXT};
use crate::sheets::canvas::{Canvas, Layer};
use crate::sheets::view::View;
use crate::units::{Length, Show};

/// One end of a part.
#[derive(Clone, Debug)]
pub struct Part {
    /// Position on the chain's axis.
    pub at: Length,
    /// What is there.
    pub name: String,
}

/// A chain of dimensions along one axis.
#[derive(Clone, Debug)]
pub struct Chain {
    /// Its name, unique on its view.
    pub name: String,
    /// Axis.
    pub across: Across,
    /// Positions in rising order, at least two.
    pub positions: Vec<Part>,
    /// The other coordinate of all points.
    pub beside: Length,
    /// Where the line lies on the sheet, mm.
    pub line: f64,
    /// Where the total's line lies; none is drawn without it.
    pub total: Option<f64>,
    /// Words after the total's number.
    pub total_label: String,
    /// The total starts at a finished face.
    pub total_finished: bool,
    /// Where on the sheet all witness lines start.
    pub witness: Option<f64>,
}

impl Chain {
    /// Line of a total one step further out than the parts, on the side that the witnesses come from not.
    pub fn next_line(line: f64, outward: f64) -> f64 {
        line + outward * NEXT
    }

    /// Draws parts and total. Returns the paper middles and widths of the part numbers that stand over their line, so
    /// that a caller may set a mark beside them.
    pub fn draw<S>(&self, canvas: &mut Canvas, at: Layer, view: &View<S>, show: Show) {
        let point = |position: Length| match self.across {
            Across::X => (position, self.beside),
            Across::Y => (self.beside, position),
        };
        let zero = self.positions.first().map_or(Length::ZERO, |part| part.at);
        let printed = |position: Length| show.rounded(position - zero);
        let last = self.positions.len().saturating_sub(2);
        for (index, pair) in self.positions.windows(2).enumerate() {
            let mut part = Dimension::new(self.across, point(pair[0].at), point(pair[1].at), self.line)
                .datums(pair[0].name.clone(), pair[1].name.clone())
                .chained(self.name.clone(), "part")
                .shown_as(printed(pair[1].at) - printed(pair[0].at))
                .witnesses(self.witness, self.witness)
                .ghosts(index > 0, false);
            if index == 0 && last > 0 && !part.fits(view, show) {
                part = part.number(super::Number::Before(6.5));
            }
            part.draw(canvas, at, view, show);
        }
        if let (Some(line), [first, .., end]) = (self.total, self.positions.as_slice()) {
            let total = Dimension::new(self.across, point(first.at), point(end.at), line)
                .datums(first.name.clone(), end.name.clone())
                .chained(self.name.clone(), "total")
                .shown_as(printed(end.at))
                .witnesses(self.witness, self.witness)
                .label(self.total_label.clone());
            let total = if self.total_finished { total.from_finished() } else { total };
            total.draw(canvas, at, view, show);
        }
    }
}
