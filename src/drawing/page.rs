//! The page as a tree of groups, shapes and texts.

use super::pen::{Colour, Pen};
use crate::geometry::PaperPoint;

/// A fact that travels with an item for whoever checks the drawing: a name and a value.
pub type Fact = (&'static str, String);

/// A finished page. Everything is in millimetres of paper from its top left corner, y down.
#[derive(Clone, Debug)]
pub struct Page {
    /// Its file name without an ending, as `04-front-elevation`.
    pub name: String,
    /// Its title, for people.
    pub title: String,
    /// Width, mm.
    pub width: f64,
    /// Height, mm.
    pub height: f64,
    /// What everything on it is multiplied by across and along the page, from its top left corner, before it is
    /// printed: a printer that prints small is answered by drawing large. (1, 1) on every page that isn't a template.
    pub stretch: (f64, f64),
    /// Numbers, from 1, of the remarks that concern it.
    pub remarks: Vec<usize>,
    /// What is on it, in drawing order.
    pub root: Group,
}

/// Items that belong together.
#[derive(Clone, Debug, Default)]
pub struct Group {
    /// Its class; may be empty.
    pub class: String,
    /// Its facts.
    pub facts: Vec<Fact>,
    /// Its items, in drawing order.
    pub items: Vec<Item>,
}

/// Something on a page.
#[derive(Clone, Debug)]
pub enum Item {
    /// A group.
    Group(Group),
    /// A shape.
    Path(Path),
    /// A text.
    Text(Text),
}

/// A shape with its pen and fill.
#[derive(Clone, Debug)]
pub struct Path {
    /// The shape.
    pub shape: Shape,
    /// Its pen; `None` for a bare fill.
    pub pen: Option<Pen>,
    /// Dashes worked out for this very shape, mm; empty for a solid line.
    pub dashes: Vec<f64>,
    /// Its fill.
    pub fill: Option<Fill>,
    /// Its class; may be empty.
    pub class: &'static str,
    /// Its facts.
    pub facts: Vec<Fact>,
}

/// A fill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// Tone.
    pub colour: Colour,
    /// 1 is opaque.
    pub opacity: f64,
    /// It is ink that lettering must keep clear of (arrow heads), not a tint under it.
    pub solid: bool,
}

impl Fill {
    /// A flat tint under whatever comes on it.
    pub const fn tint(colour: Colour) -> Fill {
        Fill { colour, opacity: 1.0, solid: false }
    }
    /// Ink.
    pub const fn ink(colour: Colour) -> Fill {
        Fill { colour, opacity: 1.0, solid: true }
    }
    /// A see-through layer.
    pub const fn glaze(colour: Colour, opacity: f64) -> Fill {
        Fill { colour, opacity, solid: false }
    }
    /// White that hides what lies under it, for lettering.
    pub const WHITE: Fill = Fill::tint(Colour::WHITE);
}

/// The geometry of a shape.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A straight line.
    Line(PaperPoint, PaperPoint),
    /// A circle.
    Circle(PaperPoint, f64),
    /// Steps; filled by the even-odd rule.
    Steps(Vec<Step>),
}

/// One step of a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Step {
    /// Start a new part.
    Move(PaperPoint),
    /// A straight line.
    Line(PaperPoint),
    /// An arc of a circle, less than a whole one.
    Arc {
        /// Its radius, mm.
        radius: f64,
        /// It is the longer way round.
        large: bool,
        /// It runs clockwise as seen on the paper (y down).
        clockwise: bool,
        /// Where it ends.
        to: PaperPoint,
    },
    /// Back to the start of the part.
    Close,
}

/// A line of lettering.
#[derive(Clone, Debug)]
pub struct Text {
    /// Left end of its baseline before turning, mm.
    pub at: PaperPoint,
    /// Turn about `at`, degrees clockwise on the paper; -90 reads from the right.
    pub turn: f64,
    /// What is set, in order.
    pub runs: Vec<Run>,
    /// Whole width, mm.
    pub width: f64,
    /// Height of its capitals, mm.
    pub height: f64,
    /// It has parts below the baseline.
    pub descends: bool,
    /// Tone.
    pub colour: Colour,
    /// Its facts.
    pub facts: Vec<Fact>,
}

/// Glyphs of one size and weight.
#[derive(Clone, Debug, PartialEq)]
pub struct Run {
    /// The characters.
    pub text: String,
    /// Where they go relative to the text's start, mm, y down: one place for all, or one for each character.
    pub places: Vec<(f64, f64)>,
    /// Font size (em), mm.
    pub size: f64,
    /// 400 or 600.
    pub weight: u16,
}

impl Text {
    /// The box of its ink on the paper, as four corners in order.
    pub fn corners(&self) -> [PaperPoint; 4] {
        let (sin, cos) = self.turn.to_radians().sin_cos();
        let turn = |x: f64, y: f64| self.at.moved(x * cos - y * sin, x * sin + y * cos);
        let (top, bottom) = (-self.height * 1.06, if self.descends { self.height * 0.30 } else { self.height * 0.05 });
        [turn(0.0, bottom), turn(self.width, bottom), turn(self.width, top), turn(0.0, top)]
    }

    /// The whole text as one string, as a reader would copy it.
    pub fn content(&self) -> String {
        self.runs.iter().map(|run| run.text.as_str()).collect()
    }
}

impl Shape {
    /// Straight pieces that follow the shape within `tolerance` mm, each part by itself.
    pub fn flattened(&self, tolerance: f64) -> Vec<Vec<PaperPoint>> {
        match self {
            Shape::Line(a, b) => vec![vec![*a, *b]],
            Shape::Circle(centre, radius) => {
                let count = chords(*radius, std::f64::consts::TAU, tolerance).max(8);
                let angle = |k: usize| std::f64::consts::TAU * k as f64 / count as f64;
                vec![(0..=count).map(|k| centre.moved(radius * angle(k).cos(), radius * angle(k).sin())).collect()]
            }
            Shape::Steps(steps) => flattened_steps(steps, tolerance),
        }
    }
}

fn flattened_steps(steps: &[Step], tolerance: f64) -> Vec<Vec<PaperPoint>> {
    let mut parts: Vec<Vec<PaperPoint>> = Vec::new();
    for step in steps {
        match *step {
            Step::Move(point) => parts.push(vec![point]),
            Step::Line(point) => {
                if let Some(part) = parts.last_mut() {
                    part.push(point);
                }
            }
            Step::Arc { radius, large, clockwise, to } => {
                if let Some(part) = parts.last_mut()
                    && let Some(&from) = part.last()
                {
                    part.extend(arc_points(from, to, radius, large, clockwise, tolerance));
                }
            }
            Step::Close => {
                if let Some(part) = parts.last_mut()
                    && let Some(&first) = part.first()
                {
                    part.push(first);
                }
            }
        }
    }
    parts
}

fn chords(radius: f64, sweep: f64, tolerance: f64) -> usize {
    let step = 2.0 * (1.0 - (tolerance / radius.max(1e-9)).min(0.5)).acos();
    (sweep / step.max(1e-3)).ceil().max(1.0) as usize
}

/// Points along an arc after its start, the end included.
fn arc_points(
    a: PaperPoint,
    b: PaperPoint,
    radius: f64,
    large: bool,
    clockwise: bool,
    tolerance: f64,
) -> Vec<PaperPoint> {
    let chord = a.distance(b);
    if chord < 1e-9 {
        return vec![b];
    }
    let radius = radius.max(chord / 2.0);
    let off = (radius * radius - chord * chord / 4.0).max(0.0).sqrt();
    // On the paper (y down) a clockwise arc that is the shorter way has its centre to the right of travel.
    let side = if clockwise == large { 1.0 } else { -1.0 };
    let (nx, ny) = ((b.y - a.y) / chord, -(b.x - a.x) / chord);
    let centre = a.towards(b, 0.5).moved(nx * off * side, ny * off * side);
    let start = (a.y - centre.y).atan2(a.x - centre.x);
    let mut sweep = (b.y - centre.y).atan2(b.x - centre.x) - start;
    let tau = std::f64::consts::TAU;
    if clockwise && sweep < 0.0 {
        sweep += tau;
    } else if !clockwise && sweep > 0.0 {
        sweep -= tau;
    }
    let count = chords(radius, sweep.abs(), tolerance);
    (1..=count)
        .map(|k| {
            if k == count {
                return b;
            }
            let angle = start + sweep * k as f64 / count as f64;
            centre.moved(radius * angle.cos(), radius * angle.sin())
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::{Shape, Step};
    use crate::geometry::PaperPoint;

    #[test]
    fn arcs_flatten_on_the_right_side() {
        // From the top of a unit circle to its right, clockwise on the paper (y down).
        let (top, right) = (PaperPoint::new(0.0, -1.0), PaperPoint::new(1.0, 0.0));
        for (large, clockwise, x, y) in
            [(false, true, 0.0, 0.0), (true, false, 0.0, 0.0), (false, false, 1.0, -1.0), (true, true, 1.0, -1.0)]
        {
            let shape = Shape::Steps(vec![Step::Move(top), Step::Arc { radius: 1.0, large, clockwise, to: right }]);
            for point in &shape.flattened(1e-3)[0] {
                assert!((point.distance(PaperPoint::new(x, y)) - 1.0).abs() < 1e-6, "{large} {clockwise} {point:?}");
            }
        }
    }
}
