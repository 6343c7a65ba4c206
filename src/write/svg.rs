//! Pages as SVG: one user unit is one millimetre of paper.

use std::sync::OnceLock;

use base64::Engine;
use svg::node::element::{Circle, Element, Group as Node, Line, Path as PathNode, Rectangle, Style, Title};
use svg::node::{Blob, Text as TextNode};
use svg::{Document, Node as _};

use super::numbers::{coordinate, push_coordinate};
use crate::drawing::lettering::{FAMILY, REGULAR_WOFF2, SEMIBOLD_WOFF2};
use crate::drawing::{Cap, Colour, Fact, Group, Item, Page, Path, Shape, Step, Text};

/// A whole page as an SVG document.
pub fn page(page: &Page) -> String {
    let mut text = String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    text.push_str(&filled(document(page).add(Style::new(style_sheet())), page).to_string());
    text.push('\n');
    text
}

/// A page as an element to lie in a web page that carries [`style_sheet`] once for all of them.
pub fn inline(page: &Page) -> String {
    let document = document(page).set("role", "graphics-document").set("aria-roledescription", "drawing");
    filled(document, page).to_string()
}

/// The outermost element with its title.
fn document(page: &Page) -> Document {
    let (width, height) = (coordinate(page.width), coordinate(page.height));
    Document::new()
        .set("width", format!("{width}mm"))
        .set("height", format!("{height}mm"))
        .set("viewBox", format!("0 0 {width} {height}"))
        .add(Title::new(clean(&page.title)))
}

/// White paper and everything on it.
fn filled(document: Document, page: &Page) -> Document {
    let (width, height) = (coordinate(page.width), coordinate(page.height));
    let mut document = document.add(Rectangle::new().set("width", width).set("height", height).set("fill", "#ffffff"));
    if page.stretch == (1.0, 1.0) {
        for item in &page.root.items {
            add(&mut document, item);
        }
        return document;
    }
    document.add(group(&page.root).set("transform", format!("scale({} {})", page.stretch.0, page.stretch.1)))
}

/// The carried font for browsers, and that nothing is kerned, since widths are sums of advances.
pub fn style_sheet() -> &'static str {
    static SHEET: OnceLock<String> = OnceLock::new();
    SHEET.get_or_init(|| {
        let face = |weight: u16, data: &[u8]| {
            let data = base64::engine::general_purpose::STANDARD.encode(data);
            format!(
                "@font-face{{font-family:'{FAMILY}';font-weight:{weight};src:url(data:font/woff2;base64,{data}) format('woff2')}}"
            )
        };
        format!(
            "{}{}text{{font-family:'{FAMILY}',sans-serif;font-kerning:none;white-space:pre}}",
            face(400, REGULAR_WOFF2),
            face(600, SEMIBOLD_WOFF2)
        )
    })
}

fn add(parent: &mut Element, item: &Item) {
    match item {
        Item::Group(inner) => parent.append(group(inner)),
        Item::Path(path) => add_path(parent, path),
        Item::Text(inner) => parent.append(text(inner)),
    }
}

fn group(group: &Group) -> Node {
    let mut node = Node::new();
    if !group.class.is_empty() {
        node = node.set("class", group.class.as_str());
    }
    for (name, value) in &group.facts {
        node = node.set(*name, clean(value));
    }
    for item in &group.items {
        add(&mut node, item);
    }
    node
}

fn add_path(parent: &mut Element, path: &Path) {
    match &path.shape {
        Shape::Line(a, b) => {
            let node = Line::new()
                .set("x1", coordinate(a.x))
                .set("y1", coordinate(a.y))
                .set("x2", coordinate(b.x))
                .set("y2", coordinate(b.y));
            parent.append(painted(node.into(), path));
        }
        Shape::Circle(centre, radius) => {
            let node = Circle::new()
                .set("cx", coordinate(centre.x))
                .set("cy", coordinate(centre.y))
                .set("r", coordinate(*radius));
            parent.append(painted(node.into(), path));
        }
        Shape::Steps(steps) => parent.append(painted(PathNode::new().set("d", data(steps)).into(), path)),
    }
}

/// Pen, fill, class and facts of a shape.
fn painted(mut node: Element, path: &Path) -> Element {
    let set = |node: &mut Element, name: &'static str, value: String| {
        node.get_attributes_mut().insert(name.to_owned(), value.into());
    };
    match path.fill {
        None if matches!(path.shape, Shape::Line(..)) => {}
        None => set(&mut node, "fill", "none".to_owned()),
        Some(fill) => {
            set(&mut node, "fill", fill.colour.hex());
            if fill.opacity < 1.0 {
                set(&mut node, "fill-opacity", coordinate(fill.opacity));
            }
            if matches!(path.shape, Shape::Steps(_)) {
                set(&mut node, "fill-rule", "evenodd".to_owned());
            }
        }
    }
    match path.pen {
        Some(pen) if !pen.ghost => {
            set(&mut node, "stroke", pen.colour.hex());
            set(&mut node, "stroke-width", coordinate(pen.width));
            if !path.dashes.is_empty() {
                let dashes: Vec<String> = path.dashes.iter().map(|d| coordinate(*d)).collect();
                set(&mut node, "stroke-dasharray", dashes.join(" "));
            }
            match pen.cap {
                Cap::Butt => {}
                Cap::Round => {
                    set(&mut node, "stroke-linecap", "round".to_owned());
                    set(&mut node, "stroke-linejoin", "round".to_owned());
                }
                Cap::Square => set(&mut node, "stroke-linecap", "square".to_owned()),
            }
        }
        Some(_) => set(&mut node, "stroke", "none".to_owned()),
        None => {}
    }
    if !path.class.is_empty() {
        set(&mut node, "class", path.class.to_owned());
    }
    for (name, value) in &path.facts {
        set(&mut node, name, clean(value));
    }
    node
}

/// Path data, arcs as arcs.
fn data(steps: &[Step]) -> String {
    let mut d = String::with_capacity(steps.len() * 14);
    let pair = |d: &mut String, x: f64, y: f64| {
        push_coordinate(d, x);
        d.push(' ');
        push_coordinate(d, y);
    };
    for step in steps {
        match *step {
            Step::Move(p) => {
                d.push('M');
                pair(&mut d, p.x, p.y);
            }
            Step::Line(p) => {
                d.push('L');
                pair(&mut d, p.x, p.y);
            }
            Step::Arc { radius, large, clockwise, to } => {
                d.push('A');
                pair(&mut d, radius, radius);
                d.push_str(match (large, clockwise) {
                    (false, false) => " 0 0 0 ",
                    (false, true) => " 0 0 1 ",
                    (true, false) => " 0 1 0 ",
                    (true, true) => " 0 1 1 ",
                });
                pair(&mut d, to.x, to.y);
            }
            Step::Close => d.push('Z'),
        }
    }
    d
}

/// A text as one element on one line: white space between spans would show.
fn text(text: &Text) -> Blob {
    let mut out = String::from("<text");
    let attribute = |out: &mut String, name: &str, value: &str| {
        out.push(' ');
        out.push_str(name);
        out.push_str("=\"");
        out.push_str(&escaped(value));
        out.push('"');
    };
    attribute(&mut out, "x", &coordinate(text.at.x));
    attribute(&mut out, "y", &coordinate(text.at.y));
    if text.turn != 0.0 {
        let turn = format!("rotate({} {} {})", coordinate(text.turn), coordinate(text.at.x), coordinate(text.at.y));
        attribute(&mut out, "transform", &turn);
    }
    if text.colour != Colour::INK {
        attribute(&mut out, "fill", &text.colour.hex());
    }
    let facts: &[Fact] = &text.facts;
    for (name, value) in facts {
        attribute(&mut out, name, &clean(value));
    }
    if let [run] = text.runs.as_slice()
        && run.places.len() == 1
    {
        attribute(&mut out, "font-size", &coordinate(run.size));
        if run.weight != 400 {
            attribute(&mut out, "font-weight", &run.weight.to_string());
        }
        return Blob::new(format!("{out}>{}</text>", escaped(&run.text)));
    }
    out.push('>');
    for run in &text.runs {
        out.push_str("<tspan");
        let list = |value: fn(&(f64, f64)) -> f64, from: f64| {
            run.places.iter().map(|place| coordinate(from + value(place))).collect::<Vec<_>>().join(" ")
        };
        attribute(&mut out, "x", &list(|p| p.0, text.at.x));
        attribute(&mut out, "y", &list(|p| p.1, text.at.y));
        attribute(&mut out, "font-size", &coordinate(run.size));
        if run.weight != 400 {
            attribute(&mut out, "font-weight", &run.weight.to_string());
        }
        out.push('>');
        out.push_str(&escaped(&run.text));
        out.push_str("</tspan>");
    }
    out.push_str("</text>");
    Blob::new(out)
}

/// A value without the characters that XML forbids.
fn clean(value: &str) -> String {
    value.chars().map(|c| if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') { ' ' } else { c }).collect()
}

fn escaped(value: &str) -> String {
    TextNode::new(value).to_string().replace('"', "&quot;")
}
