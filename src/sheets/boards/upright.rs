//! Running dimensions down a board: one upright line from a level, a level number at every stop.

use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint, through};
use crate::sheets::dimensions::{ORIGIN, PAST, apart};
use crate::sheets::view::{View, number};
use crate::units::{Length, Show};

/// Least distance from number to number, mm.
const PITCH: f64 = 4.0;
/// From the line to the numbers, mm.
const OUT: f64 = 3.4;
/// More where numbers are moved apart, mm.
const BENT: f64 = 3.0;

/// An upright running dimension, measured downwards.
pub struct Upright {
    /// y of its level in the model.
    pub level: Length,
    /// Name of the level.
    pub level_name: String,
    /// Paper x of the line.
    pub line: f64,
    /// The numbers stand at its left.
    pub at_left: bool,
    /// Where it is read: y in the model, name, and x in the model of the point that is meant.
    pub stops: Vec<(Length, String, Length)>,
    /// Paper x where witness lines start.
    pub witness: f64,
}

impl Upright {
    /// Width of paper that line and numbers need, mm.
    pub fn reach(stops: impl Iterator<Item = Length>, show: Show) -> f64 {
        let width = |length: Length| {
            let second = show.second(length).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular));
            lettering::width(&show.text(length), BODY, Weight::SemiBold) + second
        };
        OUT + BENT + stops.map(width).fold(0.0, f64::max)
    }

    /// Draws it.
    pub fn draw<S>(&self, canvas: &mut Canvas, at: Layer, view: &View<S>, show: Show) {
        let mut stops: Vec<&(Length, String, Length)> = self.stops.iter().collect();
        stops.sort_by_key(|stop| -stop.0);
        stops.dedup_by_key(|stop| show.rounded(stop.0));
        let marks: Vec<f64> = stops.iter().map(|stop| view.y(stop.0)).collect();
        let places = apart(&marks, PITCH);
        let moved = marks.iter().zip(&places).any(|(a, b)| (a - b).abs() > 0.05);
        let zero = view.y(self.level);
        let low = marks.iter().copied().fold(zero, f64::max);
        for ((stop, mark), place) in stops.iter().zip(&marks).zip(&places) {
            self.stop(canvas, at, view, show, stop, (*mark, *place), moved);
        }
        let p = |y: f64| PaperPoint::new(self.line, y);
        canvas.line(at, p(zero), p(low), Pen::DIMENSION);
        canvas.circle(at, p(zero), ORIGIN, Paint::both(Pen::DIMENSION, Fill::WHITE));
    }

    #[allow(clippy::too_many_arguments)]
    fn stop<S>(
        &self,
        canvas: &mut Canvas,
        at: Layer,
        view: &View<S>,
        show: Show,
        (y, name, x): &(Length, String, Length),
        (mark, place): (f64, f64),
        moved: bool,
    ) {
        let length = self.level - *y;
        let point = |y: Length| format!("{},{}", number(x.mm(), 6), number(y.mm(), 6));
        let facts = vec![
            ("data-dim", format!("d{}", canvas.next_number())),
            ("data-dim-mm", number(length.mm(), 6)),
            ("data-from", point(self.level)),
            ("data-to", point(*y)),
            ("data-axis", "y".to_owned()),
            ("data-round-mm", number(show.step().mm(), 6)),
            ("data-from-datum", self.level_name.clone()),
            ("data-to-datum", name.clone()),
        ];
        let group = canvas.layer_with(at, "dim", facts);
        let out = if self.at_left { -1.0 } else { 1.0 };
        let p = PaperPoint::new;
        let zero = view.y(self.level);
        let role = |role: &str, end: &str| vec![("data-role", role.to_owned()), ("data-end", end.to_owned())];
        let from = Shape::Line(p(self.line - out, zero), p(self.line + out * PAST, zero));
        canvas.shape(group, from, Paint::pen(Pen::GHOST), "", role("witness", "from"));
        let to = Shape::Line(p(self.witness, mark), p(self.line + out * PAST, mark));
        canvas.shape(group, to, Paint::pen(Pen::DIMENSION), "", role("witness", "to"));
        let line = Shape::Line(p(self.line, zero), p(self.line, mark));
        canvas.shape(group, line, Paint::pen(Pen::GHOST), "", vec![("data-role", "dimline".to_owned())]);
        canvas.arrow(group, p(self.line, mark), 90.0, Colour::INK);
        let mut base = self.line + out * OUT;
        if moved {
            let bend = [
                p(self.line + out * PAST, mark),
                p(base + out * (BENT - 1.0), place),
                p(base + out * (BENT - 0.6), place),
            ];
            if (mark - place).abs() > 0.05 {
                canvas.steps(group, through(&bend, false), Paint::pen(Pen::DIMENSION));
            }
            base += out * BENT;
        }
        let style = Style::body().fact("data-role", "dimtext");
        let text = show.text(length);
        let second = show.second(length);
        let own = lettering::width(&text, BODY, Weight::Regular);
        let after = second.as_ref().map_or(0.0, |text| 1.0 + lettering::width(text, BODY, Weight::Regular));
        let left = if self.at_left { base - own - after } else { base };
        canvas.text(group, p(left, place + 1.25), &text, &style);
        if let Some(second) = second {
            canvas.text(group, p(left + own + 1.0, place + 1.25), &second, &Style::caption());
        }
    }
}
