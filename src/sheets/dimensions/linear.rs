//! One dimension between two points.

use super::{ABOVE, GAP, ORIGIN, PAST};
use crate::drawing::lettering::{self, BODY, Style, Weight};
use crate::drawing::{Colour, Fact, Fill, Pen, Shape};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};
use crate::sheets::view::{View, number};
use crate::units::{Length, Show};

/// Which way a dimension measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Across {
    /// Along the model's x: a level dimension line.
    X,
    /// Along the model's y: an upright dimension line.
    Y,
}

/// Where the number stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Number {
    /// Over the middle of the line; outside, after the end, where the line is too short for it.
    Fitted,
    /// After the end that is right (X) or above (Y), this far beyond it, mm.
    After(f64),
    /// Before the end that is left (X) or below (Y), this far beyond it, mm.
    Before(f64),
    /// Under the middle of the line, clear of what passes it, and this much lower, mm: for parts too short for their
    /// number, next ones by turns.
    Under(f64),
    /// Level beside an upright line, this far right of its middle, mm.
    Level(f64),
    /// Right-aligned to a place on the line's axis of the sheet (x for X, y for Y), mm.
    Aligned(f64),
}

/// One dimension. Build it with [`Dimension::new`] and the methods that follow.
#[derive(Clone, Debug)]
pub struct Dimension {
    across: Across,
    from: (Length, Length),
    to: (Length, Length),
    line: f64,
    from_datum: String,
    to_datum: String,
    accent: bool,
    origin: bool,
    number: Number,
    label: String,
    height: f64,
    weight: Weight,
    witness_from: Option<f64>,
    witness_to: Option<f64>,
    ghost_from: bool,
    ghost_to: bool,
    chain: Option<(String, &'static str)>,
    shown: Option<Length>,
}

impl Dimension {
    /// A dimension between two model points, its line at a place of the sheet (y for X, x for Y), mm.
    pub fn new(across: Across, from: (Length, Length), to: (Length, Length), line: f64) -> Dimension {
        Dimension {
            across,
            from,
            to,
            line,
            from_datum: String::new(),
            to_datum: String::new(),
            accent: false,
            origin: false,
            number: Number::Fitted,
            label: String::new(),
            height: BODY,
            weight: Weight::Regular,
            witness_from: None,
            witness_to: None,
            ghost_from: false,
            ghost_to: false,
            chain: None,
            shown: None,
        }
    }

    /// Names the datums at its two ends.
    pub fn datums(mut self, from: impl Into<String>, to: impl Into<String>) -> Dimension {
        (self.from_datum, self.to_datum) = (from.into(), to.into());
        self
    }

    /// The tape starts at `from`: an open circle there, one arrow.
    pub fn origin(mut self) -> Dimension {
        self.origin = true;
        self
    }

    /// It starts at a finished face: accent, semi-bold, and an open circle.
    pub fn from_finished(mut self) -> Dimension {
        self.accent = true;
        self.origin = true;
        self.weight = Weight::SemiBold;
        self
    }

    /// Where its number stands.
    pub fn number(mut self, number: Number) -> Dimension {
        self.number = number;
        self
    }

    /// Words after the number.
    pub fn label(mut self, label: impl Into<String>) -> Dimension {
        self.label = label.into();
        self
    }

    /// A number that is cut to: 3.5 mm, semi-bold.
    pub fn cut_to(mut self) -> Dimension {
        self.height = lettering::TITLE;
        self.weight = Weight::SemiBold;
        self
    }

    /// Semi-bold number.
    pub fn bold(mut self) -> Dimension {
        self.weight = Weight::SemiBold;
        self
    }

    /// Where on the sheet its witness lines start, mm (y for X, x for Y); otherwise 1.5 mm off the points.
    pub fn witnesses(mut self, from: Option<f64>, to: Option<f64>) -> Dimension {
        (self.witness_from, self.witness_to) = (from, to);
        self
    }

    /// Leaves a witness line without ink: another dimension has drawn it, or an outline is in its place.
    pub fn ghosts(mut self, from: bool, to: bool) -> Dimension {
        (self.ghost_from, self.ghost_to) = (from, to);
        self
    }

    /// A part (or the total) of a chain. Chains of one name and axis on a view are added up by checkers.
    pub fn chained(mut self, chain: impl Into<String>, role: &'static str) -> Dimension {
        self.chain = Some((chain.into(), role));
        self
    }

    /// Prints this length (already rounded) in place of rounding the true one.
    pub fn shown_as(mut self, printed: Length) -> Dimension {
        self.shown = Some(printed);
        self
    }

    /// The true length.
    pub fn length(&self) -> Length {
        match self.across {
            Across::X => (self.to.0 - self.from.0).abs(),
            Across::Y => (self.to.1 - self.from.1).abs(),
        }
    }

    fn colour(&self) -> Colour {
        if self.accent { Colour::ACCENT } else { Colour::INK }
    }

    /// Width of number, second number and label together, mm.
    pub fn lettering_width(&self, show: Show) -> f64 {
        let printed = self.shown.unwrap_or(self.length());
        let mut width = lettering::width(&show.text(printed), self.height, self.weight);
        if let Some(second) = show.second(printed) {
            width += 1.0 + lettering::width(&second, BODY, Weight::Regular);
        }
        if !self.label.is_empty() {
            width += 1.3 + lettering::width(&self.label, BODY, self.label_weight());
        }
        width
    }

    fn label_weight(&self) -> Weight {
        if self.accent { Weight::SemiBold } else { Weight::Regular }
    }

    /// Whether the number fits over the line, arrows and all.
    pub fn fits<S>(&self, view: &View<S>, show: Show) -> bool {
        let (from, to) = self.ends(show);
        view.size(self.length()) >= (self.lettering_width(show) + from + to).max(6.0)
    }

    /// Room that the lettering leaves at the line's start and end, mm: what hangs down to the height of the arrows
    /// needs its place between them.
    fn ends(&self, show: Show) -> (f64, f64) {
        let hangs = show.second(self.length()).is_some() || self.label.contains(['g', 'j', 'p', 'q', 'y', ',', '(']);
        match (hangs, self.origin) {
            (false, _) => (1.0, 1.0),
            (true, true) => (1.4, 3.2),
            (true, false) => (3.2, 3.2),
        }
    }

    /// Draws it into a layer of the view.
    pub fn draw<S>(&self, canvas: &mut Canvas, at: Layer, view: &View<S>, show: Show) {
        let id = canvas.next_number();
        let facts = self.facts(id, view, show);
        let group = canvas.layer_with(at, "dim", facts);
        let (a, b) = (view.at(self.from.0, self.from.1), view.at(self.to.0, self.to.1));
        self.witness(canvas, group, a, "from", self.witness_from, self.ghost_from);
        self.witness(canvas, group, b, "to", self.witness_to, self.ghost_to);
        let (a, b) = match self.across {
            Across::X => (PaperPoint::new(a.x, self.line), PaperPoint::new(b.x, self.line)),
            Across::Y => (PaperPoint::new(self.line, a.y), PaperPoint::new(self.line, b.y)),
        };
        let outside = self.is_outside(view, show);
        if outside {
            self.line_outside(canvas, group, a, b);
        } else {
            self.line_inside(canvas, group, a, b);
        }
        self.letter(canvas, group, a, b, outside, show);
    }

    fn is_outside<S>(&self, view: &View<S>, show: Show) -> bool {
        match self.number {
            Number::Fitted => !self.fits(view, show),
            _ => view.size(self.length()) < 6.0,
        }
    }

    fn facts<S>(&self, id: usize, view: &View<S>, show: Show) -> Vec<Fact> {
        let point = |p: (Length, Length)| format!("{},{}", number(p.0.mm(), 6), number(p.1.mm(), 6));
        let printed = self.shown.unwrap_or_else(|| show.rounded(self.length()));
        // A part of a chain is printed as the difference of two rounded positions: up to one step off, not half.
        let off = (printed - self.length()).abs();
        let step = if off * 2 > show.step() { show.step() * 2 } else { show.step() };
        let mut facts = vec![
            ("data-dim", format!("d{id}")),
            ("data-dim-mm", number(self.length().mm(), 6)),
            ("data-from", point(self.from)),
            ("data-to", point(self.to)),
            ("data-axis", if self.across == Across::X { "x" } else { "y" }.to_owned()),
            ("data-round-mm", number(step.mm(), 6)),
            ("data-from-datum", self.from_datum.clone()),
            ("data-to-datum", self.to_datum.clone()),
        ];
        if let Some((chain, role)) = &self.chain {
            facts.push(("data-chain", chain.clone()));
            facts.push(("data-chain-role", (*role).to_owned()));
        }
        if self.is_outside(view, show) {
            facts.push(("data-outside", "1".to_owned()));
        }
        facts
    }

    fn witness(
        &self,
        canvas: &mut Canvas,
        group: Layer,
        point: PaperPoint,
        end: &str,
        start: Option<f64>,
        ghost: bool,
    ) {
        let own = match self.across {
            Across::X => point.y,
            Across::Y => point.x,
        };
        let side = if self.line > start.unwrap_or(own) { 1.0 } else { -1.0 };
        let from = start.unwrap_or(own + side * GAP);
        let to = self.line + side * PAST;
        let (p, q) = match self.across {
            Across::X => (PaperPoint::new(point.x, from), PaperPoint::new(point.x, to)),
            Across::Y => (PaperPoint::new(from, point.y), PaperPoint::new(to, point.y)),
        };
        let colour = if self.accent && end == "from" { Colour::ACCENT } else { Colour::INK };
        let pen = if ghost { Pen::GHOST } else { Pen::DIMENSION.coloured(colour) };
        let facts = vec![("data-role", "witness".to_owned()), ("data-end", end.to_owned())];
        canvas.shape(group, Shape::Line(p, q), Paint::pen(pen), "", facts);
    }

    fn line_inside(&self, canvas: &mut Canvas, group: Layer, a: PaperPoint, b: PaperPoint) {
        let colour = self.colour();
        let width = if self.accent { Pen::SECONDARY.width } else { Pen::DIMENSION.width };
        let facts = vec![("data-role", "dimline".to_owned())];
        canvas.shape(group, Shape::Line(a, b), Paint::pen(Pen::new(width).coloured(colour)), "", facts);
        let angle = (b.y - a.y).atan2(b.x - a.x).to_degrees();
        canvas.arrow(group, b, angle, colour);
        if self.origin {
            canvas.circle(group, a, ORIGIN, Paint::both(Pen::DIMENSION.coloured(colour), Fill::WHITE));
        } else {
            canvas.arrow(group, a, angle + 180.0, colour);
        }
    }

    /// Arrows outside, the line carried past both ends.
    fn line_outside(&self, canvas: &mut Canvas, group: Layer, a: PaperPoint, b: PaperPoint) {
        let colour = self.colour();
        let length = a.distance(b).max(1e-9);
        let (dx, dy) = match self.across {
            _ if a.distance(b) > 1e-6 => ((b.x - a.x) / length, (b.y - a.y) / length),
            Across::X => (1.0, 0.0),
            Across::Y => (0.0, -1.0),
        };
        let reach = 5.5;
        let (p, q) = (a.moved(-dx * reach, -dy * reach), b.moved(dx * reach, dy * reach));
        let facts = vec![("data-role", "dimline".to_owned())];
        canvas.shape(group, Shape::Line(p, q), Paint::pen(Pen::DIMENSION.coloured(colour)), "", facts);
        let angle = dy.atan2(dx).to_degrees();
        canvas.arrow(group, a, angle, colour);
        canvas.arrow(group, b, angle + 180.0, colour);
    }

    /// Number, second number, label, one after the other along the line.
    fn letter(&self, canvas: &mut Canvas, group: Layer, a: PaperPoint, b: PaperPoint, outside: bool, show: Show) {
        let printed = self.shown.unwrap_or(self.length());
        let total = self.lettering_width(show);
        // Along the reading direction: x to the right, or y upwards.
        let (low, high) = match self.across {
            Across::X => (a.x.min(b.x), a.x.max(b.x)),
            Across::Y => (-a.y.max(b.y), -a.y.min(b.y)),
        };
        let start = match self.number {
            Number::Fitted if outside => high + 6.5,
            Number::Fitted => {
                let forward = if self.across == Across::X { a.x <= b.x } else { a.y >= b.y };
                let (from, to) = self.ends(show);
                (low + high - total + if forward { from - to } else { to - from }) / 2.0
            }
            Number::Under(_) => (low + high - total) / 2.0,
            Number::Level(off) => self.line + off,
            Number::After(off) => high + off,
            Number::Before(off) => low - off - total,
            Number::Aligned(place) => {
                let place = if self.across == Across::X { place } else { -place };
                let own = lettering::width(&show.text(printed), self.height, self.weight);
                place - own
            }
        };
        let base = match self.number {
            Number::Under(lower) => self.line + PAST + 0.9 + self.height + lower,
            _ => self.line - ABOVE,
        };
        let level = matches!(self.number, Number::Level(_));
        let place = |along: f64| match self.across {
            _ if level => PaperPoint::new(along, -(low + high) / 2.0 + self.height / 2.0),
            Across::X => PaperPoint::new(along, base),
            Across::Y => PaperPoint::new(base, -along),
        };
        let turn = if self.across == Across::X || level { 0.0 } else { -90.0 };
        let style =
            |height: f64, weight: Weight| Style { height, weight, colour: self.colour(), turn, ..Style::body() };
        let figure = style(self.height, self.weight).fact("data-role", "dimtext");
        let mut along = start + canvas.text(group, place(start), &show.text(printed), &figure);
        if let Some(second) = show.second(printed) {
            along += 1.0;
            along += canvas.text(group, place(along), &second, &style(BODY, Weight::Regular));
        }
        if !self.label.is_empty() {
            along += 1.3;
            canvas.text(group, place(along), &self.label, &style(BODY, self.label_weight()));
        }
    }
}
