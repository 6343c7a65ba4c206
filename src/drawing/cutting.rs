//! A flat part at full size for machines that cut: closed outlines, circles, lines and words on named layers.

use crate::geometry::Outline;

/// What a line is for, in plain words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Layer {
    /// The tool follows it.
    Cut,
    /// Something that lies on the part or under it, for reference.
    Outline,
    /// A face or edge that lengths are given from.
    Datum,
    /// The middle of a cutout.
    Centreline,
    /// Words.
    Text,
}

impl Layer {
    /// Every layer.
    pub const ALL: [Layer; 5] = [Layer::Cut, Layer::Outline, Layer::Datum, Layer::Centreline, Layer::Text];

    /// Its name in files.
    pub const fn word(self) -> &'static str {
        match self {
            Layer::Cut => "cut",
            Layer::Outline => "outline",
            Layer::Datum => "datum",
            Layer::Centreline => "centreline",
            Layer::Text => "text",
        }
    }
}

/// The unit that a file's numbers are in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Inches.
    Inch,
    /// Millimetres.
    Millimetre,
}

/// Something on a part; mm, y up.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// A closed outline of straight edges and true arcs; two half circles are a circle.
    Outline(Layer, Outline),
    /// A straight line.
    Line(Layer, (f64, f64), (f64, f64)),
    /// Words: the left end of their baseline, height of capitals, turn counter-clockwise in degrees.
    Text {
        /// Left end of the baseline.
        at: (f64, f64),
        /// Height of capitals, mm.
        height: f64,
        /// Degrees, counter-clockwise.
        turn: f64,
        /// One line.
        words: String,
    },
}

/// One part at full size.
#[derive(Clone, Debug, PartialEq)]
pub struct Cutting {
    /// Its file name without an ending.
    pub name: String,
    /// The unit of its file's numbers.
    pub unit: Unit,
    /// What is on it.
    pub marks: Vec<Mark>,
}

impl Cutting {
    /// The box of all but the words: least and greatest x and y, mm; zeros when there is nothing.
    pub fn bounds(&self) -> (f64, f64, f64, f64) {
        let mut b = (f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY);
        let mut take = |x: f64, y: f64| b = (b.0.min(x), b.1.min(y), b.2.max(x), b.3.max(y));
        for mark in &self.marks {
            match mark {
                Mark::Outline(_, outline) => {
                    let (x0, y0, x1, y1) = outline.bounds();
                    take(x0, y0);
                    take(x1, y1);
                }
                Mark::Line(_, from, to) => {
                    take(from.0, from.1);
                    take(to.0, to.1);
                }
                Mark::Text { .. } => {}
            }
        }
        if b.0.is_finite() { b } else { (0.0, 0.0, 0.0, 0.0) }
    }
}
