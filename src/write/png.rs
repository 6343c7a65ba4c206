//! Pages as pictures, at a resolution that the file records.

use std::collections::HashMap;

use tiny_skia::{FillRule, LineCap, LineJoin, Paint, PathBuilder, Pixmap, Stroke, StrokeDash, Transform};
use ttf_parser::Face;

use crate::drawing::lettering::{REGULAR_TTF, SEMIBOLD_TTF};
use crate::drawing::{Cap, Colour, Fill, Group, Item, Page, Path, Pen, Shape, Text};

/// Most pixels that a picture may have; four bytes each while it is drawn.
const MOST: f64 = 160e6;

/// A picture with more pixels than can be drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TooLarge {
    /// The finest resolution that can be drawn, dots per inch.
    pub finest: u32,
}

/// A page at `dpi` dots per inch: grey where nothing on it has a colour, else red green blue.
///
/// # Errors
/// When the page has too many pixels at that resolution.
pub fn page(page: &Page, dpi: u32) -> Result<Vec<u8>, TooLarge> {
    let area = page.width / 25.4 * page.height / 25.4;
    let too_large = TooLarge { finest: (MOST / area.max(1e-9)).sqrt().floor().clamp(1.0, 1e6) as u32 };
    if dpi > too_large.finest {
        return Err(too_large);
    }
    let scale = f64::from(dpi) / 25.4;
    let pixels = |mm: f64| (mm * scale).round().max(1.0) as u32;
    let mut map = Pixmap::new(pixels(page.width), pixels(page.height)).ok_or(too_large)?;
    map.fill(tiny_skia::Color::WHITE);
    let place = Transform::from_scale((scale * page.stretch.0) as f32, (scale * page.stretch.1) as f32);
    let mut brush = Brush { map, place, glyphs: Glyphs::new() };
    brush.group(&page.root);
    encoded(&brush.map, dpi).ok_or(too_large)
}

/// What draws on the pixels.
struct Brush {
    map: Pixmap,
    place: Transform,
    glyphs: Glyphs,
}

impl Brush {
    fn group(&mut self, group: &Group) {
        for item in &group.items {
            match item {
                Item::Group(inner) => self.group(inner),
                Item::Path(path) => self.shape(path),
                Item::Text(text) => self.text(text),
            }
        }
    }

    fn shape(&mut self, path: &Path) {
        let Some(traced) = traced(&path.shape) else { return };
        if let Some(fill) = path.fill.filter(|_| !matches!(path.shape, Shape::Line(..))) {
            self.map.fill_path(&traced, &filled(fill), FillRule::EvenOdd, self.place, None);
        }
        if let Some(pen) = path.pen.filter(|pen| !pen.ghost && pen.width > 0.0) {
            self.map.stroke_path(&traced, &inked(pen.colour, 1.0), &stroke(pen, &path.dashes), self.place, None);
        }
    }

    fn text(&mut self, text: &Text) {
        let turned = Transform::from_rotate(text.turn as f32).post_translate(text.at.x as f32, text.at.y as f32);
        let paint = inked(text.colour, 1.0);
        for run in &text.runs {
            let heavy = run.weight > 400;
            let mut next = run.places.first().copied().unwrap_or_default();
            for (index, c) in run.text.chars().enumerate() {
                let (x, y) = if run.places.len() > 1 { run.places.get(index).copied().unwrap_or(next) } else { next };
                let glyph = self.glyphs.find(c, heavy);
                let em = run.size as f32;
                if let Some(outline) = &glyph.outline {
                    let place = Transform::from_row(em, 0.0, 0.0, -em, x as f32, y as f32);
                    let place = place.post_concat(turned).post_concat(self.place);
                    self.map.fill_path(outline, &paint, FillRule::Winding, place, None);
                }
                next = (x + glyph.advance * run.size, y);
            }
        }
    }
}

fn inked(Colour(r, g, b): Colour, opacity: f64) -> Paint<'static> {
    let mut paint = Paint { anti_alias: true, ..Paint::default() };
    paint.set_color_rgba8(r, g, b, (opacity.clamp(0.0, 1.0) * 255.0).round() as u8);
    paint
}

fn filled(fill: Fill) -> Paint<'static> {
    inked(fill.colour, fill.opacity)
}

fn stroke(pen: Pen, dashes: &[f64]) -> Stroke {
    let (line_cap, line_join) = match pen.cap {
        Cap::Butt => (LineCap::Butt, LineJoin::Miter),
        Cap::Round => (LineCap::Round, LineJoin::Round),
        Cap::Square => (LineCap::Square, LineJoin::Miter),
    };
    let dash = StrokeDash::new(dashes.iter().map(|dash| *dash as f32).collect(), 0.0);
    Stroke { width: pen.width as f32, line_cap, line_join, dash, ..Stroke::default() }
}

fn traced(shape: &Shape) -> Option<tiny_skia::Path> {
    let mut builder = PathBuilder::new();
    for element in shape.to_path().elements() {
        match *element {
            kurbo::PathEl::MoveTo(p) => builder.move_to(p.x as f32, p.y as f32),
            kurbo::PathEl::LineTo(p) => builder.line_to(p.x as f32, p.y as f32),
            kurbo::PathEl::QuadTo(c, p) => builder.quad_to(c.x as f32, c.y as f32, p.x as f32, p.y as f32),
            kurbo::PathEl::CurveTo(a, b, p) => {
                builder.cubic_to(a.x as f32, a.y as f32, b.x as f32, b.y as f32, p.x as f32, p.y as f32);
            }
            kurbo::PathEl::ClosePath => builder.close(),
        }
    }
    builder.finish()
}

/// A glyph in ems, y up.
struct Glyph {
    outline: Option<tiny_skia::Path>,
    advance: f64,
}

/// Glyphs of both weights, each traced once.
struct Glyphs {
    faces: [Option<Face<'static>>; 2],
    known: HashMap<(char, bool), Glyph>,
}

impl Glyphs {
    fn new() -> Glyphs {
        Glyphs { faces: [REGULAR_TTF, SEMIBOLD_TTF].map(|data| Face::parse(data, 0).ok()), known: HashMap::new() }
    }

    fn find(&mut self, c: char, heavy: bool) -> &Glyph {
        let face = self.faces[usize::from(heavy)].as_ref();
        self.known.entry((c, heavy)).or_insert_with(|| {
            let missing = Glyph { outline: None, advance: 0.6 };
            let Some(face) = face else { return missing };
            let Some(glyph) = face.glyph_index(c) else { return missing };
            let em = f32::from(face.units_per_em());
            let mut tracer = Tracer { builder: PathBuilder::new(), em };
            face.outline_glyph(glyph, &mut tracer);
            let advance = f64::from(face.glyph_hor_advance(glyph).unwrap_or(0)) / f64::from(em);
            Glyph { outline: tracer.builder.finish(), advance }
        })
    }
}

struct Tracer {
    builder: PathBuilder,
    em: f32,
}

impl ttf_parser::OutlineBuilder for Tracer {
    fn move_to(&mut self, x: f32, y: f32) {
        self.builder.move_to(x / self.em, y / self.em);
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.builder.line_to(x / self.em, y / self.em);
    }
    fn quad_to(&mut self, a: f32, b: f32, x: f32, y: f32) {
        self.builder.quad_to(a / self.em, b / self.em, x / self.em, y / self.em);
    }
    fn curve_to(&mut self, a: f32, b: f32, c: f32, d: f32, x: f32, y: f32) {
        let em = self.em;
        self.builder.cubic_to(a / em, b / em, c / em, d / em, x / em, y / em);
    }
    fn close(&mut self) {
        self.builder.close();
    }
}

/// The pixels as a PNG; they are opaque, since the sheet is.
fn encoded(map: &Pixmap, dpi: u32) -> Option<Vec<u8>> {
    let grey = map.data().chunks_exact(4).all(|p| p[0] == p[1] && p[1] == p[2]);
    let keep = if grey { 1 } else { 3 };
    let samples: Vec<u8> = map.data().chunks_exact(4).flat_map(|p| p[..keep].iter().copied()).collect();
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, map.width(), map.height());
    encoder.set_color(if grey { png::ColorType::Grayscale } else { png::ColorType::Rgb });
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_compression(png::Compression::Fast);
    let per_metre = (f64::from(dpi) / 0.0254).round() as u32;
    encoder.set_pixel_dims(Some(png::PixelDimensions { xppu: per_metre, yppu: per_metre, unit: png::Unit::Meter }));
    let mut writer = encoder.write_header().ok()?;
    writer.write_image_data(&samples).ok()?;
    writer.finish().ok()?;
    Some(bytes)
}

#[cfg(test)]
mod tests {
    use super::{TooLarge, page};
    use crate::drawing::{Colour, Fill, Group, Item, Page, Path, Shape};
    use crate::geometry::PaperPoint;

    fn sheet(colour: Colour) -> Page {
        let shape = Shape::Circle(PaperPoint::new(12.7, 12.7), 6.0);
        let path =
            Path { shape, pen: None, dashes: Vec::new(), fill: Some(Fill::ink(colour)), class: "", facts: Vec::new() };
        let root = Group { items: vec![Item::Path(path)], ..Group::default() };
        Page {
            name: "01".into(),
            title: "One".into(),
            width: 50.8,
            height: 25.4,
            stretch: (1.0, 1.0),
            remarks: Vec::new(),
            root,
        }
    }

    #[test]
    fn the_picture_has_its_size_and_says_its_resolution() {
        for (colour, kind) in [(Colour::INK, png::ColorType::Grayscale), (Colour::ACCENT, png::ColorType::Rgb)] {
            let bytes = page(&sheet(colour), 150).expect("drawn");
            let reader = png::Decoder::new(std::io::Cursor::new(bytes)).read_info().expect("a picture");
            let info = reader.info();
            assert_eq!((info.width, info.height, info.color_type), (300, 150, kind));
            let dims = info.pixel_dims.expect("a resolution");
            assert_eq!((dims.xppu, dims.unit), (5906, png::Unit::Meter));
        }
    }

    #[test]
    fn what_would_not_fit_into_memory_is_refused_with_what_would() {
        let TooLarge { finest } = page(&sheet(Colour::INK), 100_000).expect_err("too large");
        assert!(finest > 8000 && finest < 10_000);
    }
}
