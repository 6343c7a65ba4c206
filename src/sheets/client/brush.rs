//! From patches of the picture to shapes on the sheet: one path for all that has one tone, coordinates to 0.01 mm.

use super::clip::Clip;
use super::patch::{Patch, Rect, Ring, Spot};
use crate::drawing::{Colour, Fact, Fill, Pen, Shape, Step};
use crate::geometry::PaperPoint;
use crate::sheets::canvas::{Canvas, Layer, Paint};

/// Near black, for shadows.
pub const SHADE: Colour = Colour::from_hex(0x26_23_1f);
/// Outlines of things behind the run.
pub const MID: Colour = Colour::from_hex(0x5a_5a_58);
/// Outlines of light things.
pub const SOFT: Colour = Colour::from_hex(0x8b_8a_87);
/// Outlines of the run.
pub const DARK: Colour = Colour::from_hex(0x1f_1f_1f);

/// Where spots of a picture fall on the sheet: an affine map.
#[derive(Clone, Copy, Debug)]
pub struct Map {
    /// Where (0, 0) falls.
    pub origin: PaperPoint,
    /// What a millimetre along x moves on the sheet, mm of paper (y down).
    pub x: (f64, f64),
    /// What a millimetre along y moves.
    pub y: (f64, f64),
}

/// Paints model millimetres on a sheet.
pub struct Brush<'c> {
    /// The sheet.
    pub canvas: &'c mut Canvas,
    /// Where it paints now.
    pub layer: Layer,
    home: Layer,
    map: Map,
    factor: f64,
    thin: f64,
    clip: Option<Clip>,
    muted: bool,
}

impl<'c> Brush<'c> {
    /// Paints into `home`, the picture's (0, 0) at `origin`, with `factor` mm of paper to the millimetre.
    pub fn new(canvas: &'c mut Canvas, home: Layer, origin: PaperPoint, factor: f64) -> Brush<'c> {
        Brush::mapped(canvas, home, Map { origin, x: (factor, 0.0), y: (0.0, -factor) }, factor, None)
    }

    /// Paints through a map on a face that is not seen square on, and only inside `clip` where there is one.
    pub fn mapped(canvas: &'c mut Canvas, home: Layer, map: Map, factor: f64, clip: Option<Clip>) -> Brush<'c> {
        Brush { canvas, layer: home, home, map, factor, thin: (24.0 * factor).sqrt().min(1.0), clip, muted: false }
    }

    /// From now on writes no facts: what it paints isn't seen square on.
    pub fn mute(&mut self) {
        self.muted = true;
    }

    /// Goes on in a new layer of its own.
    pub fn begin(&mut self, class: &str) {
        self.layer = self.canvas.layer(self.home, class);
    }

    /// A pen for this scale: thinner where the picture is small, never too thin to print.
    fn pen(&self, width: f64, colour: Colour) -> Pen {
        Pen::new((width * self.thin).max(width.min(0.13))).coloured(colour)
    }

    /// Model millimetres of so much paper.
    pub fn paper(&self, mm: f64) -> f64 {
        mm / self.factor
    }

    /// A spot on the sheet.
    pub fn at(&self, [x, y]: Spot) -> PaperPoint {
        let hundredths = |v: f64| (v * 100.0).round() / 100.0;
        let Map { origin, x: (ax, ay), y: (bx, by) } = self.map;
        PaperPoint::new(hundredths(origin.x + x * ax + y * bx), hundredths(origin.y + x * ay + y * by))
    }

    fn ring(&self, steps: &mut Vec<Step>, ring: &[Spot], closed: bool) {
        let mut last: Option<PaperPoint> = None;
        let start = steps.len();
        for &spot in ring {
            let point = self.at(spot);
            if last != Some(point) {
                steps.push(if last.is_none() { Step::Move(point) } else { Step::Line(point) });
                last = Some(point);
            }
        }
        // What has shrunk to nothing at this scale leaves no mark.
        if steps.len() - start < if closed { 3 } else { 2 } {
            steps.truncate(start);
        } else if closed {
            steps.push(Step::Close);
        }
    }

    fn steps<'p>(&self, patches: impl IntoIterator<Item = &'p Patch>) -> Vec<Step> {
        let mut steps = Vec::new();
        for patch in patches {
            match &self.clip {
                None => self.rings(&mut steps, patch),
                Some(clip) => {
                    if let Some(patch) = clip.cut(patch) {
                        self.rings(&mut steps, &patch);
                    }
                }
            }
        }
        steps
    }

    fn rings(&self, steps: &mut Vec<Step>, patch: &Patch) {
        for ring in &patch.rings {
            self.ring(steps, ring, true);
        }
    }

    fn line_steps(&self, steps: &mut Vec<Step>, line: &[Spot]) {
        match &self.clip {
            None => self.ring(steps, line, false),
            Some(clip) => clip.line(line).iter().for_each(|piece| self.ring(steps, piece, false)),
        }
    }

    fn add(&mut self, steps: Vec<Step>, paint: Paint, facts: Vec<Fact>) {
        let facts = if self.muted { Vec::new() } else { facts };
        if !steps.is_empty() {
            self.canvas.shape(self.layer, Shape::Steps(steps), paint, "", facts);
        }
    }

    /// A flat tone. The patches must not overlap.
    pub fn fill<'p>(&mut self, patches: impl IntoIterator<Item = &'p Patch>, colour: Colour) {
        let steps = self.steps(patches);
        self.add(steps, Paint::fill(Fill::tint(colour)), Vec::new());
    }

    /// A flat tone with facts.
    pub fn fill_with(&mut self, patch: &Patch, colour: Colour, facts: Vec<Fact>) {
        let steps = self.steps([patch]);
        self.add(steps, Paint::fill(Fill::tint(colour)), facts);
    }

    /// A flat tone of a box.
    pub fn fill_rect(&mut self, rect: Rect, colour: Colour) {
        self.fill([&rect.patch()], colour);
    }

    /// A see-through tone.
    pub fn glaze<'p>(&mut self, patches: impl IntoIterator<Item = &'p Patch>, colour: Colour, opacity: f64) {
        let steps = self.steps(patches);
        self.add(steps, Paint::fill(Fill::glaze(colour, opacity)), Vec::new());
    }

    /// A see-through tone of a box.
    pub fn glaze_rect(&mut self, rect: Rect, colour: Colour, opacity: f64) {
        self.glaze([&rect.patch()], colour, opacity);
    }

    /// An outline that lettering keeps clear of.
    pub fn outline(&mut self, patch: &Patch, width: f64, colour: Colour) {
        self.outline_with(patch, width, colour, Vec::new());
    }

    /// An outline with facts.
    pub fn outline_with(&mut self, patch: &Patch, width: f64, colour: Colour, facts: Vec<Fact>) {
        let mut steps = Vec::new();
        match &self.clip {
            Some(clip) if !clip.holds_whole(patch) => {
                for ring in &patch.rings {
                    let closed: Ring = ring.iter().chain(ring.first()).copied().collect();
                    self.line_steps(&mut steps, &closed);
                }
            }
            _ => self.rings(&mut steps, patch),
        }
        self.add(steps, Paint::pen(self.pen(width, colour)), facts);
    }

    /// A line that lettering keeps clear of.
    pub fn edge(&mut self, line: &[Spot], width: f64, colour: Colour) {
        let mut steps = Vec::new();
        self.line_steps(&mut steps, line);
        self.add(steps, Paint::pen(self.pen(width, colour)), Vec::new());
    }

    /// Lines that lettering keeps clear of, in one path.
    pub fn edges(&mut self, lines: &[Ring], width: f64, colour: Colour) {
        let mut steps = Vec::new();
        for line in lines {
            self.line_steps(&mut steps, line);
        }
        self.add(steps, Paint::pen(self.pen(width, colour).round()), Vec::new());
    }

    /// Lines of a texture.
    pub fn lines<'l>(&mut self, lines: impl IntoIterator<Item = &'l Ring>, width: f64, colour: Colour) {
        let mut steps = Vec::new();
        for line in lines {
            self.line_steps(&mut steps, line);
        }
        self.add(steps, Paint::pen(self.pen(width, colour).quiet().round()), Vec::new());
    }

    /// Dots of a texture, by middle; radius in mm of paper. Drawn as the shortest of round-ended strokes.
    pub fn dots(&mut self, dots: &[Spot], radius: f64, colour: Colour) {
        let mut steps = Vec::with_capacity(dots.len() * 2);
        for &dot in dots.iter().filter(|dot| self.clip.as_ref().is_none_or(|clip| clip.holds(**dot))) {
            let point = self.at(dot);
            steps.extend([Step::Move(point), Step::Line(point.moved(0.01, 0.0))]);
        }
        self.add(steps, Paint::pen(Pen::new(radius * 2.0).coloured(colour).quiet().round()), Vec::new());
    }

    /// The shadow of a patch standing `depth` proud of `on`: a core, and a paler rim.
    pub fn cast(&mut self, patch: &Patch, depth: f64, on: &Patch, (core, rim): (f64, f64)) {
        self.cast_wide(patch, depth, on, (core, rim), 1.4);
    }

    /// The same with the rim this many times as deep as the core.
    pub fn cast_wide(&mut self, patch: &Patch, depth: f64, on: &Patch, (core, rim): (f64, f64), wide: f64) {
        for (deep, opacity) in [(depth * wide, rim), (depth, core)] {
            let shadow = patch.shadow(deep).within(on);
            self.glaze([&shadow], SHADE, opacity);
        }
    }
}
