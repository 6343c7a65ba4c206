//! The last look at a page: no text on another text, on a line that is not its own, or off the sheet.

use std::collections::HashMap;

use super::page::{Group, Item, Page, Path, Text};
use super::pen::Colour;
use crate::geometry::PaperPoint;

/// Two things that meet and must not.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// The text.
    pub text: String,
    /// What it meets.
    pub with: String,
    /// Where, mm.
    pub at: PaperPoint,
}

/// White that every text keeps round it, mm.
pub const CLEAR: f64 = 0.25;

/// Everything on the page that lettering must keep clear of, found by place.
#[derive(Clone, Debug, Default)]
pub struct Ink {
    strokes: Vec<Stroke>,
    texts: Vec<([PaperPoint; 4], String)>,
    plates: Vec<(usize, [f64; 4])>,
    grid: HashMap<(i32, i32), Vec<u32>>,
    text_grid: HashMap<(i32, i32), Vec<u32>>,
}

#[derive(Clone, Copy, Debug)]
struct Stroke {
    a: PaperPoint,
    b: PaperPoint,
    half: f64,
}

/// Side of a grid cell, mm.
const CELL: f64 = 8.0;

impl Ink {
    /// Takes note of a shape's strokes, its solid fill, and whether it hides what lies under it.
    pub fn add_path(&mut self, path: &Path) {
        let hides = path.fill.is_some_and(|fill| fill.opacity >= 1.0 && !fill.solid);
        if hides {
            self.add_plate(path);
        }
        let drawn = path.pen.is_some_and(|pen| !pen.ghost && !pen.quiet);
        let solid = path.fill.is_some_and(|fill| fill.solid);
        if !drawn && !solid {
            return;
        }
        let half = path.pen.map_or(0.0, |pen| pen.width / 2.0);
        for part in path.shape.flattened(0.05) {
            for pair in part.windows(2) {
                self.add_stroke(Stroke { a: pair[0], b: pair[1], half });
            }
        }
    }

    /// A flat fill hides earlier strokes inside its box when it is a level rectangle.
    fn add_plate(&mut self, path: &Path) {
        for part in path.shape.flattened(0.05) {
            if part.len() == 5
                && part.windows(2).all(|p| (p[0].x - p[1].x).abs() < 1e-6 || (p[0].y - p[1].y).abs() < 1e-6)
            {
                let (x0, x1) = (part[0].x.min(part[2].x), part[0].x.max(part[2].x));
                let (y0, y1) = (part[0].y.min(part[2].y), part[0].y.max(part[2].y));
                self.plates.push((self.strokes.len(), [x0, y0, x1, y1]));
            }
        }
    }

    fn add_stroke(&mut self, stroke: Stroke) {
        let index = self.strokes.len() as u32;
        self.strokes.push(stroke);
        let pad = stroke.half;
        let (x0, x1) = (stroke.a.x.min(stroke.b.x) - pad, stroke.a.x.max(stroke.b.x) + pad);
        let (y0, y1) = (stroke.a.y.min(stroke.b.y) - pad, stroke.a.y.max(stroke.b.y) + pad);
        for cell in cells(x0, y0, x1, y1) {
            self.grid.entry(cell).or_default().push(index);
        }
    }

    /// Takes note of a text.
    pub fn add_text(&mut self, text: &Text) {
        let corners = text.corners();
        let index = self.texts.len() as u32;
        let [x0, y0, x1, y1] = box_of(&corners);
        for cell in cells(x0, y0, x1, y1) {
            self.text_grid.entry(cell).or_default().push(index);
        }
        self.texts.push((corners, text.content()));
    }

    /// What a text would meet here, with this much white round it, if anything.
    pub fn meets(&self, text: &Text, clear: f64) -> Option<String> {
        self.meets_box(&text.corners(), clear)
    }

    /// Whether a turned box would meet a text.
    pub fn meets_text(&self, corners: &[PaperPoint; 4], clear: f64) -> bool {
        let [x0, y0, x1, y1] = box_of(corners);
        cells(x0 - clear, y0 - clear, x1 + clear, y1 + clear).any(|cell| {
            let here = self.text_grid.get(&cell).map_or(&[][..], Vec::as_slice);
            here.iter().any(|&index| boxes_meet(corners, &self.texts[index as usize].0, clear))
        })
    }

    /// What a turned box would meet.
    pub fn meets_box(&self, corners: &[PaperPoint; 4], clear: f64) -> Option<String> {
        let [x0, y0, x1, y1] = box_of(corners);
        for cell in cells(x0 - clear, y0 - clear, x1 + clear, y1 + clear) {
            for &index in self.text_grid.get(&cell).map_or(&[][..], Vec::as_slice) {
                let (other, name) = &self.texts[index as usize];
                if boxes_meet(corners, other, clear) {
                    return Some(format!("the text \u{201c}{name}\u{201d}"));
                }
            }
            for &index in self.grid.get(&cell).map_or(&[][..], Vec::as_slice) {
                let stroke = self.strokes[index as usize];
                if stroke_meets(&stroke, corners, clear) && !self.hidden(index as usize, [x0, y0, x1, y1]) {
                    return Some(format!(
                        "a line from {:.1}, {:.1} to {:.1}, {:.1}",
                        stroke.a.x, stroke.a.y, stroke.b.x, stroke.b.y
                    ));
                }
            }
        }
        None
    }

    /// Whether a stroke this wide would run through a text.
    pub fn crosses_text(&self, a: PaperPoint, b: PaperPoint, width: f64) -> bool {
        let stroke = Stroke { a, b, half: width / 2.0 };
        let found = cells(a.x.min(b.x) - CELL, a.y.min(b.y) - CELL, a.x.max(b.x) + CELL, a.y.max(b.y) + CELL);
        found
            .flat_map(|cell| self.text_grid.get(&cell).map_or(&[][..], Vec::as_slice))
            .any(|&index| stroke_meets(&stroke, &self.texts[index as usize].0, CLEAR + 0.1))
    }

    /// A stroke that a later plate hides all round a box.
    fn hidden(&self, stroke: usize, [x0, y0, x1, y1]: [f64; 4]) -> bool {
        self.plates.iter().any(|&(from, [a, b, c, d])| {
            from > stroke && a <= x0 + 0.01 && b <= y0 + 0.01 && c >= x1 - 0.01 && d >= y1 - 0.01
        })
    }
}

/// Every clash on a page: each text against all that is drawn, and against the sheet's edge.
pub fn clashes(page: &Page) -> Vec<Clash> {
    let mut ink = Ink::default();
    let mut texts = Vec::new();
    walk(&page.root, &mut ink, &mut texts);
    let mut found = Vec::new();
    for text in &texts {
        let corners = text.corners();
        let [x0, y0, x1, y1] = box_of(&corners);
        if x0 < 0.0 || y0 < 0.0 || x1 * page.stretch.0 > page.width || y1 * page.stretch.1 > page.height {
            found.push(Clash { text: text.content(), with: "the edge of the sheet".to_owned(), at: text.at });
        }
        if let Some(with) = ink.meets_box(&corners, CLEAR) {
            found.push(Clash { text: text.content(), with, at: text.at });
        }
        ink.add_text(text);
    }
    found
}

fn walk<'p>(group: &'p Group, ink: &mut Ink, texts: &mut Vec<&'p Text>) {
    for item in &group.items {
        match item {
            Item::Group(inner) => walk(inner, ink, texts),
            Item::Path(path) => ink.add_path(path),
            Item::Text(text) if text.colour != Colour::WHITE => texts.push(text),
            Item::Text(_) => {}
        }
    }
}

fn cells(x0: f64, y0: f64, x1: f64, y1: f64) -> impl Iterator<Item = (i32, i32)> {
    let cell = |v: f64| (v / CELL).floor().clamp(-1000.0, 1000.0) as i32;
    let (a, b, c, d) = (cell(x0), cell(y0), cell(x1), cell(y1));
    (a..=c).flat_map(move |x| (b..=d).map(move |y| (x, y)))
}

fn box_of(corners: &[PaperPoint; 4]) -> [f64; 4] {
    corners.iter().fold([f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY], |b, p| {
        [b[0].min(p.x), b[1].min(p.y), b[2].max(p.x), b[3].max(p.y)]
    })
}

/// Separating axes of two turned boxes.
fn boxes_meet(a: &[PaperPoint; 4], b: &[PaperPoint; 4], clear: f64) -> bool {
    axes(a).chain(axes(b)).all(|axis| {
        let ((a0, a1), (b0, b1)) = (span(a, axis), span(b, axis));
        a0 - clear < b1 && b0 - clear < a1
    })
}

fn axes(corners: &[PaperPoint; 4]) -> impl Iterator<Item = (f64, f64)> + '_ {
    (0..2).map(move |k| {
        let (dx, dy) = (corners[k + 1].x - corners[k].x, corners[k + 1].y - corners[k].y);
        let length = dx.hypot(dy).max(1e-9);
        (dx / length, dy / length)
    })
}

fn span(points: &[PaperPoint], axis: (f64, f64)) -> (f64, f64) {
    points
        .iter()
        .map(|p| p.x * axis.0 + p.y * axis.1)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), t| (lo.min(t), hi.max(t)))
}

fn stroke_meets(stroke: &Stroke, corners: &[PaperPoint; 4], clear: f64) -> bool {
    let ends = [stroke.a, stroke.b];
    let pad = clear + stroke.half;
    let length = stroke.a.distance(stroke.b).max(1e-9);
    let normal = (-(stroke.b.y - stroke.a.y) / length, (stroke.b.x - stroke.a.x) / length);
    axes(corners).chain(std::iter::once(normal)).all(|axis| {
        let ((s0, s1), (b0, b1)) = (span(&ends, axis), span(corners, axis));
        s0 - pad < b1 && b0 - pad < s1
    })
}
