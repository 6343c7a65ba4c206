//! A dimension along a line that need be neither level nor upright.

use super::canvas::{Canvas, Layer, Paint};
use super::dimensions::{ABOVE, GAP, ORIGIN, PAST};
use super::view::number;
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::units::{Length, Show};

/// Room that a line takes beside its number for its two arrowheads, mm.
const HEADS: f64 = 8.0;

/// A dimension parallel to what it measures.
pub struct Aligned {
    /// Start and end on the sheet.
    pub ends: (PaperPoint, PaperPoint),
    /// Start and end in the model, mm.
    pub model: ((f64, f64), (f64, f64)),
    /// Where the line lies: a unit direction on the sheet square to it, and how far off, mm.
    pub off: ((f64, f64), f64),
    /// The length.
    pub length: Length,
    /// Words after the number.
    pub label: String,
    /// Names of the datums at its ends.
    pub datums: (&'static str, &'static str),
    /// It starts at a finished face.
    pub finished: bool,
}

impl Aligned {
    /// Width of its lettering, mm.
    fn lettering(&self, show: Show) -> (String, f64) {
        let mut text = show.text(self.length);
        if let Some(second) = show.second(self.length) {
            text = format!("{text} {second}");
        }
        if !self.label.is_empty() {
            text = format!("{text} {}", self.label);
        }
        let wide = lettering::width(&text, BODY, self.weight());
        (text, wide)
    }

    fn weight(&self) -> Weight {
        if self.finished { Weight::SemiBold } else { Weight::Regular }
    }

    /// Draws it at the first of several distances where its number meets nothing; whether there was one.
    pub fn draw(mut self, canvas: &mut Canvas, at: Layer, show: Show, tries: &[f64]) -> bool {
        for &distance in tries {
            self.off.1 = distance;
            if let Some((base, style)) = self.place(canvas, show) {
                let (text, _) = self.lettering(show);
                self.strokes(canvas, at, show, base, &text, style);
                return true;
            }
        }
        false
    }

    /// Draws a chain at the first distance that does for all of its parts, and returns it. Parts too short for their own
    /// number, as a filler at a corner, stay blank between their neighbours' lines: they would take the others with them.
    pub fn draw_chain(chain: Vec<Aligned>, canvas: &mut Canvas, at: Layer, show: Show, tries: &[f64]) -> Option<f64> {
        let long = |one: &Aligned| one.ends.0.distance(one.ends.1) >= one.lettering(show).1 + HEADS;
        let mut chain: Vec<Aligned> = chain.into_iter().filter(long).collect();
        if chain.is_empty() {
            return None;
        }
        for &distance in tries {
            chain.iter_mut().for_each(|one| one.off.1 = distance);
            let places: Option<Vec<(PaperPoint, Style)>> = chain.iter().map(|one| one.place(canvas, show)).collect();
            if let Some(places) = places {
                for (one, (base, style)) in chain.iter().zip(places) {
                    let (text, _) = one.lettering(show);
                    one.strokes(canvas, at, show, base, &text, style);
                }
                return Some(distance);
            }
        }
        None
    }

    /// Where its number stands, middle first, if it meets nothing at the distance set.
    fn place(&self, canvas: &Canvas, show: Show) -> Option<(PaperPoint, Style)> {
        let (text, wide) = self.lettering(show);
        let ((x, y), _) = self.off;
        let (a, b) = self.line();
        let length = a.distance(b);
        let strokes = [
            [a, b],
            [self.ends.0.moved(x * GAP, y * GAP), a.moved(x * PAST, y * PAST)],
            [self.ends.1.moved(x * GAP, y * GAP), b.moved(x * PAST, y * PAST)],
        ];
        // Arrowheads are wider than the line that they end.
        let along = ((b.x - a.x) / length.max(1e-9), (b.y - a.y) / length.max(1e-9));
        let head = |tip: PaperPoint, back: f64| {
            let foot = tip.moved(along.0 * back, along.1 * back);
            [foot.moved(-along.1, along.0), tip, foot.moved(along.1, -along.0)]
        };
        let heads = [head(a, 3.6), head(b, -3.6)];
        let clear = strokes.iter().all(|ends| canvas.is_clear_of_text(ends))
            && heads.iter().all(|points| canvas.is_clear_of_text(points));
        if length < wide + HEADS || !clear {
            return None;
        }
        let angle = (b.y - a.y).atan2(b.x - a.x);
        // Read from the bottom or from the right.
        // Up to 12 degrees past upright a line still reads from the right.
        let turn = angle.to_degrees().rem_euclid(360.0);
        let flip = turn > 78.0 && turn <= 258.0;
        let angle = if flip { angle + std::f64::consts::PI } else { angle };
        let up = (angle.sin(), -angle.cos());
        let style = Style { weight: self.weight(), turn: angle.to_degrees(), ..Style::body().middle() };
        let style = if self.finished { style.coloured(Colour::ACCENT) } else { style };
        let spare = ((length - wide) / 2.0 - 4.0) / length;
        [0.0, 0.3, -0.3, 0.6, -0.6, 0.9, -0.9].into_iter().find_map(|share| {
            let on = a.towards(b, 0.5 + share * spare);
            let base = PaperPoint::new(on.x + up.0 * ABOVE, on.y + up.1 * ABOVE);
            canvas.is_free(&lettering::set(base, &text, &style)).then(|| (base, style.clone()))
        })
    }

    fn line(&self) -> (PaperPoint, PaperPoint) {
        let ((x, y), d) = self.off;
        (self.ends.0.moved(x * d, y * d), self.ends.1.moved(x * d, y * d))
    }

    fn strokes(&self, canvas: &mut Canvas, at: Layer, show: Show, base: PaperPoint, text: &str, style: Style) {
        let id = canvas.next_number();
        let point = |p: (f64, f64)| format!("{},{}", number(p.0, 6), number(p.1, 6));
        // The outside checker reads 11/16 by itself as 1 1/16: such a dimension is drawn without facts.
        let number_text = show.text(self.length);
        let top = number_text.chars().take_while(char::is_ascii_digit).count();
        let misread = top == 2 && number_text.chars().nth(2) == Some(crate::units::show::FRACTION_SLASH);
        let facts = vec![
            ("data-dim", format!("d{id}")),
            ("data-dim-mm", number(self.length.mm(), 6)),
            ("data-from", point(self.model.0)),
            ("data-to", point(self.model.1)),
            ("data-axis", "aligned".to_owned()),
            ("data-round-mm", number(show.step().mm(), 6)),
            ("data-from-datum", self.datums.0.to_owned()),
            ("data-to-datum", self.datums.1.to_owned()),
        ];
        let group = canvas.layer_with(at, "dim", if misread { Vec::new() } else { facts });
        let colour = if self.finished { Colour::ACCENT } else { Colour::INK };
        let pen = Pen::DIMENSION.coloured(colour);
        let ((x, y), _) = self.off;
        let (a, b) = self.line();
        for (own, on, first) in [(self.ends.0, a, true), (self.ends.1, b, false)] {
            let pen = if first { pen } else { Pen::DIMENSION };
            canvas.line(group, own.moved(x * GAP, y * GAP), on.moved(x * PAST, y * PAST), pen);
        }
        canvas.shape(group, Shape::Line(a, b), Paint::pen(pen), "", vec![("data-role", "dimline".to_owned())]);
        let angle = (b.y - a.y).atan2(b.x - a.x).to_degrees();
        canvas.arrow(group, b, angle, colour);
        if self.finished {
            canvas.circle(group, a, ORIGIN, Paint::both(pen, Fill::WHITE));
        } else {
            canvas.arrow(group, a, angle + 180.0, colour);
        }
        // The number by itself, then what follows it, from the start of the whole.
        let (sin, cos) = style.turn.to_radians().sin_cos();
        let along = |by: f64| base.moved(cos * by, sin * by);
        let start = -lettering::width(text, BODY, self.weight()) / 2.0;
        let style = Style { anchor: lettering::Anchor::Start, ..style };
        canvas.text(group, along(start), &number_text, &style.clone().fact("data-role", "dimtext"));
        let rest = text.strip_prefix(number_text.as_str()).unwrap_or("").trim_start();
        if !rest.is_empty() {
            let from =
                start + lettering::width(text, BODY, self.weight()) - lettering::width(rest, BODY, self.weight());
            canvas.text(group, along(from), rest, &style);
        }
    }
}
