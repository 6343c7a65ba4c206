//! A page's content stream: paper millimetres, y down, under one matrix.

use kurbo::PathEl;
use pdf_writer::types::{LineCapStyle, LineJoinStyle};
use pdf_writer::{Content, Name, Str, TextStr};

use super::font::Font;
use super::{POINTS, points};
use crate::drawing::{Cap, Colour, Fill, Group, Item, Page, Path, Pen, Shape, Text};

/// The operators that draw a page. Glyphs that it uses are added to the fonts, see-through fills to `opacities`
/// (thousandths).
pub fn stream(page: &Page, fonts: &mut [Font; 2], opacities: &mut Vec<u32>) -> Vec<u8> {
    let mut content = Content::new();
    let (x, y) = page.stretch;
    content.transform([(POINTS * x) as f32, 0.0, 0.0, (-POINTS * y) as f32, 0.0, points(page.height)]);
    group(&mut content, &page.root, fonts, opacities);
    content.finish().into_vec()
}

/// Name of the graphics state of an opacity.
pub fn opacity_name(thousandths: u32) -> String {
    format!("O{thousandths}")
}

fn group(content: &mut Content, items: &Group, fonts: &mut [Font; 2], opacities: &mut Vec<u32>) {
    for item in &items.items {
        match item {
            Item::Group(inner) => group(content, inner, fonts, opacities),
            Item::Path(path) => shape(content, path, opacities),
            Item::Text(inner) => text(content, inner, fonts),
        }
    }
}

fn shape(content: &mut Content, path: &Path, opacities: &mut Vec<u32>) {
    let pen = path.pen.filter(|pen| !pen.ghost && pen.width > 0.0);
    let fill = path.fill.filter(|_| !matches!(path.shape, Shape::Line(..)));
    if pen.is_none() && fill.is_none() {
        return;
    }
    content.save_state();
    if let Some(fill) = fill {
        set_fill(content, fill, opacities);
    }
    if let Some(pen) = pen {
        set_pen(content, pen, &path.dashes);
    }
    trace(content, &path.shape);
    match (pen, fill) {
        (Some(_), Some(_)) => content.fill_even_odd_and_stroke(),
        (None, Some(_)) => content.fill_even_odd(),
        _ => content.stroke(),
    };
    content.restore_state();
}

fn set_fill(content: &mut Content, fill: Fill, opacities: &mut Vec<u32>) {
    let Colour(r, g, b) = fill.colour;
    content.set_fill_rgb(share(r), share(g), share(b));
    if fill.opacity < 1.0 {
        let thousandths = (fill.opacity.max(0.0) * 1000.0).round() as u32;
        if !opacities.contains(&thousandths) {
            opacities.push(thousandths);
        }
        content.set_parameters(Name(opacity_name(thousandths).as_bytes()));
    }
}

fn set_pen(content: &mut Content, pen: Pen, dashes: &[f64]) {
    let Colour(r, g, b) = pen.colour;
    content.set_stroke_rgb(share(r), share(g), share(b)).set_line_width(number(pen.width));
    match pen.cap {
        Cap::Butt => {}
        Cap::Round => {
            content.set_line_cap(LineCapStyle::RoundCap).set_line_join(LineJoinStyle::RoundJoin);
        }
        Cap::Square => {
            content.set_line_cap(LineCapStyle::ProjectingSquareCap);
        }
    }
    if !dashes.is_empty() {
        content.set_dash_pattern(dashes.iter().map(|dash| number(*dash)), 0.0);
    }
}

fn trace(content: &mut Content, shape: &Shape) {
    for element in shape.to_path().elements() {
        match *element {
            PathEl::MoveTo(p) => content.move_to(number(p.x), number(p.y)),
            PathEl::LineTo(p) => content.line_to(number(p.x), number(p.y)),
            PathEl::QuadTo(c, p) => {
                content.cubic_to(number(c.x), number(c.y), number(c.x), number(c.y), number(p.x), number(p.y))
            }
            PathEl::CurveTo(a, b, p) => {
                content.cubic_to(number(a.x), number(a.y), number(b.x), number(b.y), number(p.x), number(p.y))
            }
            PathEl::ClosePath => content.close_path(),
        };
    }
}

/// A text glyph by glyph where its figures have places of their own; readers are told what the whole says.
fn text(content: &mut Content, text: &Text, fonts: &mut [Font; 2]) {
    let Colour(r, g, b) = text.colour;
    content.set_fill_rgb(share(r), share(g), share(b));
    let pieces = text.runs.len() > 1 || text.runs.iter().any(|run| run.places.len() > 1);
    if pieces {
        let whole = text.content();
        let mut mark = content.begin_marked_content_with_properties(Name(b"Span"));
        mark.properties().actual_text(TextStr(&whole));
    }
    content.begin_text();
    let (sin, cos) = text.turn.to_radians().sin_cos();
    for run in &text.runs {
        let font = &mut fonts[usize::from(run.weight > 400)];
        content.set_font(font.name(), number(run.size));
        let mut show = |(x, y): (f64, f64), glyphs: &[u8]| {
            let (px, py) = (text.at.x + x * cos - y * sin, text.at.y + x * sin + y * cos);
            content.set_text_matrix([number(cos), number(sin), number(sin), number(-cos), number(px), number(py)]);
            content.show(Str(glyphs));
        };
        match run.places.as_slice() {
            [place] => show(*place, &font.encoded(&run.text)),
            places => {
                for (c, place) in run.text.chars().zip(places) {
                    show(*place, &font.encoded(c.encode_utf8(&mut [0; 4])));
                }
            }
        }
    }
    content.end_text();
    if pieces {
        content.end_marked_content();
    }
}

fn share(value: u8) -> f32 {
    (f64::from(value) / 255.0 * 1e4).round() as f32 / 1e4
}

/// To a hundred-thousandth, so that numbers stay short; what isn't a number is zero.
fn number(value: f64) -> f32 {
    if value.is_finite() { ((value * 1e5).round() / 1e5) as f32 } else { 0.0 }
}
