//! The key plan: every leg small, the face that a sheet shows drawn heavy, with an arrow of the way one looks at it.

mod figure;
mod lettering;

use super::canvas::{Canvas, Layer, Paint};
use super::frame::{self, Area};
use super::scale::Scale;
use super::title_block;
use super::view::View;
use crate::drawing::lettering::Style;
use crate::drawing::{Colour, Fill, Pen, Shape};
use crate::geometry::{PaperPoint, Plan};
use crate::solve::{Face, Solved};
use figure::{Figure, Look};

/// Scales that a key plan is tried at, the most readable first.
const SCALES: [Scale; 4] = [Scale(100), Scale(200), Scale(500), Scale(1000)];
/// Largest that it gets where nothing bounds it, mm of paper.
const LARGEST: (f64, f64) = (64.0, 50.0);
/// Height of its caption with the white under it, mm.
const CAPTION: f64 = 5.4;
/// Height of the row of headings, mm.
const HEADINGS: f64 = 9.0;
/// Room for names beside and under the legs, mm.
const NAMES: f64 = 4.2;
/// Least width: its caption, mm.
const LEAST: f64 = 25.0;

/// Draws it where the sheet is white, at the largest scale at which it finds a place: as far up and right as it can,
/// clear of the title block and of `taken`, areas whose inside is white too but that belong to a view. Returns its scale;
/// `None`, and draws nothing, where there is no white for it. Several faces
/// may be heavy, where a sheet shows more than one.
pub fn draw_where_free(
    canvas: &mut Canvas,
    solved: &Solved,
    leg: usize,
    faces: &[Face],
    taken: &[Area],
) -> Option<Scale> {
    let figure = Figure::new(solved, leg, faces);
    let sizes = SCALES.into_iter().map(|scale| (scale, needs(&figure, scale)));
    let sizes = sizes.filter(|(_, size)| size.0 <= LARGEST.0 && size.1 <= LARGEST.1);
    for (scale, (width, height)) in sizes {
        // With room round the legs for their names, where there are several and the sheet has it.
        let names = if solved.legs.len() > 1 { NAMES } else { 0.0 };
        let tries = [(width + 2.0 * names, height + names), (width, height)];
        if let Some(area) = tries.into_iter().find_map(|(width, height)| white(canvas, taken, width, height)) {
            at_scale(canvas, solved, &figure, scale, area);
            return Some(scale);
        }
    }
    None
}

/// Paper that it takes at the scale at which it stays small, mm: what a sheet keeps free for it.
pub fn size(solved: &Solved, leg: usize, faces: &[Face]) -> (f64, f64) {
    let figure = Figure::new(solved, leg, faces);
    let sizes = SCALES.map(|scale| needs(&figure, scale));
    let small = sizes.iter().find(|size| size.0 <= LARGEST.0 && size.1 <= LARGEST.1);
    small.or(sizes.last()).copied().unwrap_or(LARGEST)
}

/// Width and height with its caption at a scale, mm.
fn needs(figure: &Figure, scale: Scale) -> (f64, f64) {
    let (x0, y0, x1, y1) = figure.reach(scale);
    ((x1 - x0).max(LEAST), y1 - y0 + CAPTION)
}

/// The first white place of a size, from the upper right.
fn white(canvas: &Canvas, taken: &[Area], width: f64, height: f64) -> Option<Area> {
    const STEP: f64 = 3.0;
    const AROUND: f64 = 2.0;
    // The headings' row stays theirs.
    let inside = frame::inside(canvas);
    let within = Area { top: inside.top + HEADINGS, ..inside };
    let block = title_block::corner(canvas);
    let block = Area { left: block.x, top: block.y, right: canvas.width, bottom: canvas.height };
    let (rows, columns) = ((within.height() - height) / STEP, (within.width() - width) / STEP);
    if rows < 0.0 || columns < 0.0 {
        return None;
    }
    for row in 0..=rows as usize {
        for column in 0..=columns as usize {
            let (right, top) = (within.right - column as f64 * STEP, within.top + row as f64 * STEP);
            let area = Area { left: right - width, top, right, bottom: top + height };
            let grown = Area {
                left: area.left - AROUND,
                top: top - AROUND,
                right: right + AROUND,
                bottom: area.bottom + AROUND,
            };
            let apart = taken.iter().chain([&block]).all(|other| !meet(&grown, other));
            if apart && canvas.is_box_free(grown.left, grown.top, grown.right, grown.bottom) {
                return Some(area);
            }
        }
    }
    None
}

fn meet(a: &Area, b: &Area) -> bool {
    a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

fn at_scale(canvas: &mut Canvas, solved: &Solved, figure: &Figure, scale: Scale, area: Area) {
    let (x0, y0, x1, y1) = figure.reach(scale);
    let (width, height) = (x1 - x0, y1 - y0);
    let left = area.left + (area.width() - width) / 2.0;
    let top = area.top + CAPTION + ((area.height() - CAPTION - height - NAMES) / 2.0).max(0.0);
    let view: View<Plan> = View::open(canvas, "key-plan", scale, PaperPoint::new(left - x0, top + y1));
    let at = view.layer;
    legs(canvas, at, &view, figure);
    for look in &figure.looks {
        heavy(canvas, at, &view, look);
    }
    let caption = format!("Key plan {}", scale.words());
    canvas.text(at, PaperPoint::new(area.left, area.top + 2.5), &caption, &Style::caption());
    lettering::ids(canvas, at, &view, solved, figure, area);
}

fn legs(canvas: &mut Canvas, at: Layer, view: &View<Plan>, figure: &Figure) {
    for top in &figure.tops {
        let paint = Paint::both(Pen::DIMENSION.coloured(Colour::GREY_LINE), Fill::WHITE);
        canvas.shape(at, Shape::Steps(view.steps(top)), paint, "", Vec::new());
    }
    canvas.shape(
        at,
        Shape::Steps(view.steps(&figure.shown)),
        Paint::fill(Fill::tint(Colour::TINT_BED)),
        "",
        Vec::new(),
    );
    for top in &figure.tops {
        let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE);
        canvas.shape(at, Shape::Steps(view.steps(top)), Paint::pen(pen), "", Vec::new());
    }
}

/// The face, and the arrow at its middle.
fn heavy(canvas: &mut Canvas, at: Layer, view: &View<Plan>, look: &Look) {
    canvas.line(at, view.point(look.ends[0]), view.point(look.ends[1]), figure::HEAVY);
    let [tail, tip] = look.arrow(view.scale).map(|p| view.point(p));
    let (dx, dy) = (tip.x - tail.x, tip.y - tail.y);
    canvas.line(at, tail, tail.towards(tip, 0.6), Pen::VISIBLE);
    canvas.arrow_sized(at, tip, dy.atan2(dx).to_degrees(), Colour::INK, figure::HEAD.0, figure::HEAD.1);
}
