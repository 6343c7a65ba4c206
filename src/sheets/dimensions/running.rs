//! Running dimensions: one line from a datum, a number at every stop, each measured from that datum.

use super::{ORIGIN, PAST};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint, through};
use crate::sheets::view::{View, number};
use crate::units::{Length, Show};

/// On which side of the line the numbers stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Above it (towards smaller paper y).
    Above,
    /// Below it.
    Below,
}

/// One place that a tape is read at.
#[derive(Clone, Debug)]
pub struct Stop {
    /// The point in the model.
    pub at: (Length, Length),
    /// What is there, as `B1 left edge`.
    pub name: String,
    /// Where on the sheet its witness line starts (paper y); otherwise 1.5 mm off the point.
    pub witness: Option<f64>,
}

/// A level running dimension.
#[derive(Clone, Debug)]
pub struct Running {
    /// The datum's point in the model.
    pub datum: (Length, Length),
    /// The datum's name.
    pub datum_name: String,
    /// Paper y of the line.
    pub line: f64,
    /// Side of the numbers.
    pub side: Side,
    /// It starts at a finished face: accent.
    pub finished: bool,
    /// The stops in any order.
    pub stops: Vec<Stop>,
}

/// Least distance between two upright numbers, mm.
const PITCH: f64 = 3.7;

impl Running {
    /// Length of paper that the numbers need beyond the line, mm.
    pub fn reach(&self, show: Show) -> f64 {
        let width = |stop: &Stop| number_width(show, (stop.at.0 - self.datum.0).abs());
        3.0 + self.stops.iter().map(width).fold(0.0, f64::max)
    }

    /// Draws the line, the witness lines and the numbers. Stops that stand too near one another have their numbers
    /// moved apart, each at the end of a short bent line.
    pub fn draw<S>(&self, canvas: &mut Canvas, at: Layer, view: &View<S>, show: Show) {
        self.draw_from(canvas, at, view, show, None);
    }

    /// The same where the datum lies on another page: the line begins at this paper x, without the open circle.
    pub fn draw_from<S>(&self, canvas: &mut Canvas, at: Layer, view: &View<S>, show: Show, begin: Option<f64>) {
        let colour = if self.finished { Colour::ACCENT } else { Colour::INK };
        let mut stops: Vec<&Stop> = self.stops.iter().collect();
        stops.sort_by_key(|stop| stop.at.0);
        stops.dedup_by_key(|stop| show.rounded(stop.at.0));
        let places = spread(&stops.iter().map(|stop| view.x(stop.at.0)).collect::<Vec<_>>());
        let zero = PaperPoint::new(view.x(self.datum.0), self.line);
        let ends = stops.iter().map(|stop| view.x(stop.at.0));
        let first = begin.unwrap_or(zero.x);
        let (low, high) = ends.fold((first, first), |(a, b), x| (a.min(x), b.max(x)));
        let width = if self.finished { Pen::SECONDARY } else { Pen::DIMENSION };
        for (stop, place) in stops.iter().zip(&places) {
            self.draw_stop(canvas, at, view, show, stop, *place, colour);
        }
        let (a, b) = (PaperPoint::new(low, self.line), PaperPoint::new(high, self.line));
        canvas.line(at, a, b, width.coloured(colour));
        if begin.is_none() {
            canvas.circle(at, zero, ORIGIN, Paint::both(Pen::DIMENSION.coloured(colour), Fill::WHITE));
        }
    }

    #[allow(clippy::too_many_arguments)]
    fn draw_stop<S>(
        &self,
        canvas: &mut Canvas,
        at: Layer,
        view: &View<S>,
        show: Show,
        stop: &Stop,
        place: f64,
        colour: Colour,
    ) {
        let length = (stop.at.0 - self.datum.0).abs();
        let point = |p: (Length, Length)| format!("{},{}", number(p.0.mm(), 6), number(p.1.mm(), 6));
        let facts = vec![
            ("data-dim", format!("d{}", canvas.next_number())),
            ("data-dim-mm", number(length.mm(), 6)),
            ("data-from", point(self.datum)),
            ("data-to", point(stop.at)),
            ("data-axis", "x".to_owned()),
            ("data-round-mm", number(show.step().mm(), 6)),
            ("data-from-datum", self.datum_name.clone()),
            ("data-to-datum", stop.name.clone()),
        ];
        let group = canvas.layer_with(at, "dim", facts);
        let out = if self.side == Side::Above { -1.0 } else { 1.0 };
        let (zero, x) = (view.x(self.datum.0), view.x(stop.at.0));
        let role = |role: &str, end: &str| vec![("data-role", role.to_owned()), ("data-end", end.to_owned())];
        let p = PaperPoint::new;
        let own = view.y(stop.at.1);
        let toward = if self.line > own { 1.0 } else { -1.0 };
        let start = stop.witness.unwrap_or(own + toward * super::GAP);
        let ghost = Shape::Line(p(zero, self.line - out), p(zero, self.line + out * PAST));
        canvas.shape(group, ghost, Paint::pen(Pen::GHOST), "", role("witness", "from"));
        let witness = Shape::Line(p(x, start), p(x, self.line + out * PAST));
        canvas.shape(group, witness, Paint::pen(Pen::DIMENSION.coloured(colour)), "", role("witness", "to"));
        let facts = vec![("data-role", "dimline".to_owned())];
        canvas.shape(group, Shape::Line(p(zero, self.line), p(x, self.line)), Paint::pen(Pen::GHOST), "", facts);
        let angle = if x >= zero { 0.0 } else { 180.0 };
        canvas.arrow(group, p(x, self.line), angle, colour);
        let mut base = self.line + out * (PAST + 1.0);
        if (place - x).abs() > 0.01 {
            let bend = [p(x, base - out), p(place, base + out * 2.2), p(place, base + out * 3.0)];
            canvas.steps(group, through(&bend, false), Paint::pen(Pen::DIMENSION.coloured(colour)));
            base += out * 4.0;
        }
        let weight = if self.finished { Weight::SemiBold } else { Weight::Regular };
        let style = Style { weight, colour, ..Style::body() }.upright().fact("data-role", "dimtext");
        let style = if self.side == Side::Above { style } else { style.end() };
        let text = show.text(length);
        let second = show.second(length);
        let plain = Style { colour, ..Style::body() }.upright();
        let wide = second.as_ref().map_or(0.0, |text| 1.0 + lettering::width(text, BODY, Weight::Regular));
        // Both read upwards: the second reading follows the first, away from the line or towards it.
        let (first, next, plain) = match self.side {
            Side::Above => (base, base - lettering::width(&text, BODY, weight) - 1.0, plain),
            Side::Below => (base + wide, base, plain.end()),
        };
        canvas.text(group, p(place + ABOVE_AXIS, first), &text, &style);
        if let Some(second) = second {
            canvas.text(group, p(place + ABOVE_AXIS, next), &second, &plain);
        }
    }
}

/// From a witness line's axis to the baseline of the upright number on it, mm.
const ABOVE_AXIS: f64 = 1.25;

fn number_width(show: Show, length: Length) -> f64 {
    let own = lettering::width(&show.text(length), BODY, Weight::SemiBold);
    own + show.second(length).map_or(0.0, |text| 1.0 + lettering::width(&text, BODY, Weight::Regular))
}

/// Moves sorted places apart to the least pitch of upright numbers.
pub fn spread(places: &[f64]) -> Vec<f64> {
    apart(places, PITCH)
}

/// Moves sorted places apart to a least pitch, as little as can be: clusters are centred on their own middle.
pub fn apart(places: &[f64], pitch: f64) -> Vec<f64> {
    let mut clusters: Vec<(Vec<usize>, f64)> = Vec::new();
    for (index, &place) in places.iter().enumerate() {
        clusters.push((vec![index], place));
        while let [.., (before, left), (after, right)] = clusters.as_slice() {
            let need = pitch * (before.len() + after.len()) as f64 / 2.0;
            if right - left >= need - 1e-9 {
                break;
            }
            let all: Vec<usize> = before.iter().chain(after).copied().collect();
            let middle = all.iter().map(|&k| places[k]).sum::<f64>() / all.len() as f64;
            clusters.truncate(clusters.len() - 2);
            clusters.push((all, middle));
        }
    }
    let mut moved = places.to_vec();
    for (members, middle) in clusters {
        let first = middle - pitch * (members.len() - 1) as f64 / 2.0;
        for (k, &index) in members.iter().enumerate() {
            moved[index] = if members.len() == 1 { places[index] } else { first + pitch * k as f64 };
        }
    }
    moved
}

#[cfg(test)]
mod tests {
    use super::spread;

    #[test]
    fn near_numbers_move_apart_and_lone_ones_stay() {
        let moved = spread(&[10.0, 11.0, 30.0]);
        assert!((moved[1] - moved[0] - 3.7).abs() < 1e-9);
        assert!((moved[0] + moved[1] - 21.0).abs() < 1e-9);
        assert_eq!(moved[2], 30.0);
    }
}
