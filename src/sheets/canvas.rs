//! A page being drawn: layers, shapes and lettering, with a note of all ink so that labels can look for white.

use crate::drawing::clash::{CLEAR, Ink};
use crate::drawing::lettering::{self, Style};
use crate::drawing::{Fact, Fill, Group, Item, Page, Path, Pen, Shape, Step, Text};
use crate::geometry::{PaperPoint, clip_segments};

/// A layer of a canvas; layers are drawn in the order they were made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Layer(usize);

/// A page being drawn.
pub struct Canvas {
    /// Width of the sheet, mm.
    pub width: f64,
    /// Height of the sheet, mm.
    pub height: f64,
    layers: Vec<Building>,
    ink: Ink,
    numbers: usize,
}

struct Building {
    class: String,
    facts: Vec<Fact>,
    items: Vec<Content>,
}

enum Content {
    Layer(usize),
    Item(Item),
}

/// Pen and fill of a shape.
#[derive(Clone, Copy, Debug, Default)]
pub struct Paint {
    /// Its outline.
    pub pen: Option<Pen>,
    /// Its inside.
    pub fill: Option<Fill>,
}

impl Paint {
    /// Outline only.
    pub const fn pen(pen: Pen) -> Paint {
        Paint { pen: Some(pen), fill: None }
    }
    /// Fill only.
    pub const fn fill(fill: Fill) -> Paint {
        Paint { pen: None, fill: Some(fill) }
    }
    /// Both.
    pub const fn both(pen: Pen, fill: Fill) -> Paint {
        Paint { pen: Some(pen), fill: Some(fill) }
    }
}

impl Canvas {
    /// The bottom layer; every other layer lies in it.
    pub const ROOT: Layer = Layer(0);

    /// An empty sheet, mm.
    pub fn new(width: f64, height: f64) -> Canvas {
        let root = Building { class: String::new(), facts: Vec::new(), items: Vec::new() };
        Canvas { width, height, layers: vec![root], ink: Ink::default(), numbers: 0 }
    }

    /// A new layer on top of what is in `parent` so far.
    pub fn layer(&mut self, parent: Layer, class: &str) -> Layer {
        self.layer_with(parent, class, Vec::new())
    }

    /// A new layer with facts.
    pub fn layer_with(&mut self, parent: Layer, class: &str, facts: Vec<Fact>) -> Layer {
        let index = self.layers.len();
        self.layers.push(Building { class: class.to_owned(), facts, items: Vec::new() });
        self.layers[parent.0].items.push(Content::Layer(index));
        Layer(index)
    }

    /// A number not given before on this sheet, from 1.
    pub fn next_number(&mut self) -> usize {
        self.numbers += 1;
        self.numbers
    }

    /// Adds a finished shape.
    pub fn add(&mut self, at: Layer, path: Path) {
        self.ink.add_path(&path);
        self.layers[at.0].items.push(Content::Item(Item::Path(path)));
    }

    /// Adds a shape with class and facts.
    pub fn shape(&mut self, at: Layer, shape: Shape, paint: Paint, class: &'static str, facts: Vec<Fact>) {
        let dashes = match (&shape, paint.pen.and_then(|pen| pen.dash)) {
            (Shape::Line(a, b), Some(dash)) => dash.stretched(a.distance(*b)).unwrap_or_default(),
            (_, Some(dash)) => dash.0.to_vec(),
            (_, None) => Vec::new(),
        };
        self.add(at, Path { shape, pen: paint.pen, dashes, fill: paint.fill, class, facts });
    }

    /// A straight line.
    pub fn line(&mut self, at: Layer, a: PaperPoint, b: PaperPoint, pen: Pen) {
        self.shape(at, Shape::Line(a, b), Paint::pen(pen), "", Vec::new());
    }

    /// Straight lines through points. Broken lines are stretched for each side by itself, so that corners close.
    pub fn polyline(&mut self, at: Layer, points: &[PaperPoint], closed: bool, paint: Paint) {
        if let (Some(pen), None) = (paint.pen, paint.fill)
            && pen.dash.is_some()
        {
            for pair in points.windows(2) {
                self.line(at, pair[0], pair[1], pen);
            }
            if let (true, Some(&first), Some(&last)) = (closed, points.first(), points.last()) {
                self.line(at, last, first, pen);
            }
            return;
        }
        self.steps(at, through(points, closed), paint);
    }

    /// A path of steps.
    pub fn steps(&mut self, at: Layer, steps: Vec<Step>, paint: Paint) {
        self.shape(at, Shape::Steps(steps), paint, "", Vec::new());
    }

    /// A level rectangle between two corners.
    pub fn rectangle(&mut self, at: Layer, a: PaperPoint, b: PaperPoint, paint: Paint) {
        self.polyline(at, &corners(a, b), true, paint);
    }

    /// A circle.
    pub fn circle(&mut self, at: Layer, centre: PaperPoint, radius: f64, paint: Paint) {
        self.shape(at, Shape::Circle(centre, radius), paint, "", Vec::new());
    }

    /// An arrow head with its tip here, pointing along `angle` degrees (0 right, 90 down the sheet).
    pub fn arrow(&mut self, at: Layer, tip: PaperPoint, angle: f64, colour: crate::drawing::Colour) {
        self.arrow_sized(at, tip, angle, colour, 2.5, 0.84);
    }

    /// An arrow head of a length and width, mm.
    pub fn arrow_sized(
        &mut self,
        at: Layer,
        tip: PaperPoint,
        angle: f64,
        colour: crate::drawing::Colour,
        length: f64,
        width: f64,
    ) {
        let (sin, cos) = angle.to_radians().sin_cos();
        let base = tip.moved(-cos * length, -sin * length);
        let (dx, dy) = (-sin * width / 2.0, cos * width / 2.0);
        let points = [tip, base.moved(dx, dy), base.moved(-dx, -dy)];
        self.polyline(at, &points, true, Paint::fill(Fill::ink(colour)));
    }

    /// Sets a text and returns its width, mm.
    pub fn text(&mut self, at: Layer, place: PaperPoint, text: &str, style: &Style) -> f64 {
        let set = lettering::set(place, text, style);
        self.put(at, set)
    }

    /// Adds a text that has been set, and returns its width, mm.
    pub fn put(&mut self, at: Layer, text: Text) -> f64 {
        let width = text.width;
        if text.runs.is_empty() {
            return width;
        }
        if text.colour != crate::drawing::Colour::WHITE {
            self.ink.add_text(&text);
        }
        self.layers[at.0].items.push(Content::Item(Item::Text(text)));
        width
    }

    /// Sets a text at the first of several places where it meets nothing, and says which. Falls back to none.
    pub fn text_at_first(&mut self, at: Layer, places: &[PaperPoint], text: &str, style: &Style) -> Option<usize> {
        let index = places.iter().position(|&place| self.is_free(&lettering::set(place, text, style)))?;
        self.text(at, places[index], text, style);
        Some(index)
    }

    /// Whether a text would meet nothing, with some white to spare.
    pub fn is_free(&self, text: &Text) -> bool {
        let inside = text.corners().iter().all(|p| p.x > 0.0 && p.y > 0.0 && p.x < self.width && p.y < self.height);
        inside && self.ink.meets(text, CLEAR + 0.15).is_none()
    }

    /// Whether a level box (left, top, right, bottom) holds no ink.
    pub fn is_box_free(&self, left: f64, top: f64, right: f64, bottom: f64) -> bool {
        let corners = corners(PaperPoint::new(left, top), PaperPoint::new(right, bottom));
        self.ink.meets_box(&corners, CLEAR).is_none()
    }

    /// Whether a line would run through lettering that is there.
    pub fn crosses_text(&self, a: PaperPoint, b: PaperPoint, pen: Pen) -> bool {
        self.ink.crosses_text(a, b, pen.width)
    }

    /// Whether a line through points keeps clear of all lettering so far.
    pub fn is_clear_of_text(&self, points: &[PaperPoint]) -> bool {
        points.windows(2).all(|pair| !self.crosses_text(pair[0], pair[1], Pen::DIMENSION))
    }

    /// Whether a level box (left, top, right, bottom) holds no text, whatever lines run through it.
    pub fn is_box_free_of_text(&self, left: f64, top: f64, right: f64, bottom: f64) -> bool {
        !self.ink.meets_text(&corners(PaperPoint::new(left, top), PaperPoint::new(right, bottom)), CLEAR)
    }

    /// Lines clipped to an even-odd region of rings, in one path. Angle in degrees, counter-clockwise on the paper;
    /// their phase is fixed to the sheet's corner.
    pub fn hatch(&mut self, at: Layer, rings: &[Vec<PaperPoint>], angle: f64, step: f64, pen: Pen) {
        let rings: Vec<Vec<(f64, f64)>> = rings.iter().map(|ring| ring.iter().map(|p| (p.x, p.y)).collect()).collect();
        let pieces = clip_segments(&rings, -angle.to_radians(), step, 0.15);
        if pieces.is_empty() {
            return;
        }
        let steps = pieces
            .iter()
            .flat_map(|p| [Step::Move(PaperPoint::new(p[0], p[1])), Step::Line(PaperPoint::new(p[2], p[3]))])
            .collect();
        self.steps(at, steps, Paint::pen(pen));
    }

    /// Dots on a fixed lattice inside a level box, for mortar.
    pub fn dots(
        &mut self,
        at: Layer,
        a: PaperPoint,
        b: PaperPoint,
        step: f64,
        radius: f64,
        colour: crate::drawing::Colour,
    ) {
        let (x0, x1) = (a.x.min(b.x) + radius + 0.1, a.x.max(b.x) - radius - 0.1);
        let (y0, y1) = (a.y.min(b.y) + radius + 0.1, a.y.max(b.y) - radius - 0.1);
        let mut steps = Vec::new();
        let mut row = (y0 / (step * 0.5)).ceil() as i64;
        while row as f64 * step * 0.5 <= y1 {
            let y = row as f64 * step * 0.5;
            let shift = if row.rem_euclid(2) == 1 { 0.5 } else { 0.0 };
            let mut column = ((x0 / step) - shift).ceil() as i64;
            while (column as f64 + shift) * step <= x1 {
                let x = (column as f64 + shift) * step;
                steps.extend(circle_steps(PaperPoint::new(x, y), radius));
                column += 1;
            }
            row += 1;
        }
        if !steps.is_empty() {
            self.steps(at, steps, Paint::fill(Fill::tint(colour)));
        }
    }

    /// The finished page.
    pub fn finish(self, name: impl Into<String>, title: impl Into<String>) -> Page {
        let (width, height) = (self.width, self.height);
        let mut built: Vec<Option<Building>> = self.layers.into_iter().map(Some).collect();
        let root = assemble(&mut built, 0);
        Page { name: name.into(), title: title.into(), width, height, stretch: (1.0, 1.0), remarks: Vec::new(), root }
    }
}

fn assemble(layers: &mut [Option<Building>], index: usize) -> Group {
    let Some(building) = layers[index].take() else { return Group::default() };
    let items = building
        .items
        .into_iter()
        .filter_map(|content| match content {
            Content::Item(item) => Some(item),
            Content::Layer(inner) => {
                let group = assemble(layers, inner);
                (!group.items.is_empty()).then_some(Item::Group(group))
            }
        })
        .collect();
    Group { class: building.class, facts: building.facts, items }
}

/// The four corners of a level box, in order.
pub fn corners(a: PaperPoint, b: PaperPoint) -> [PaperPoint; 4] {
    [a, PaperPoint::new(b.x, a.y), b, PaperPoint::new(a.x, b.y)]
}

/// Steps through points.
pub fn through(points: &[PaperPoint], closed: bool) -> Vec<Step> {
    let mut steps: Vec<Step> =
        points.iter().enumerate().map(|(k, &p)| if k == 0 { Step::Move(p) } else { Step::Line(p) }).collect();
    if closed {
        steps.push(Step::Close);
    }
    steps
}

/// Steps of a full circle.
pub fn circle_steps(centre: PaperPoint, radius: f64) -> [Step; 4] {
    let half = |to| Step::Arc { radius, large: false, clockwise: true, to };
    [
        Step::Move(centre.moved(-radius, 0.0)),
        half(centre.moved(radius, 0.0)),
        half(centre.moved(-radius, 0.0)),
        Step::Close,
    ]
}
