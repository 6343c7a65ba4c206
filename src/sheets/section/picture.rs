//! The section as it is seen: what is cut, what lies beyond, the floor, and the finished face.

use super::behind::Behind;
use super::others;
use super::slice::{Skin, Slice, Span, less};
use super::supports;
use crate::drawing::{Colour, Dash, Fill, Pen, Shape};
use crate::geometry::{self, PaperPoint};
use crate::sheets::canvas::{Canvas, Layer, Paint, corners, through};
use crate::sheets::marks;
use crate::sheets::materials::{self, Material};
use crate::sheets::view::View;
use crate::solve::{Extent, Face, Fitting, FittingKind, Look, OpeningSort};
use crate::units::Length;

/// A view of a section.
pub type CutView = View<geometry::Cut>;

/// Thickness that a door's or drawer's front is sketched with.
const FRONT: Length = Length::from_nm(19_000_000);

/// The layers of a section's view, in drawing order.
pub struct Layers {
    /// Seen beyond the cut.
    pub beyond: Layer,
    /// Cut parts: fills and hatches, then outlines.
    pub cut: Layer,
    /// Outlines of cut parts.
    pub outline: Layer,
    /// Other work.
    pub phantom: Layer,
    /// Datum lines.
    pub datums: Layer,
    /// Dimensions.
    pub dimensions: Layer,
    /// Labels and leaders.
    pub labels: Layer,
}

impl Layers {
    /// Opens them in a view.
    pub fn open(canvas: &mut Canvas, view: &CutView) -> Layers {
        let [beyond, cut, outline, phantom, datums, dimensions, labels] =
            ["beyond", "cut", "outline", "phantom", "datums", "dimensions", "labels"]
                .map(|class| canvas.layer(view.layer, class));
        Layers { beyond, cut, outline, phantom, datums, dimensions, labels }
    }
}

/// The part of (w, z) that is drawn.
pub fn bounds(slice: &Slice) -> Extent {
    let d = &slice.leg.datums;
    let panel = if slice.near.openings.iter().any(|(_, f)| *f != slice.index && has_front(&slice.leg.fittings[*f])) {
        -FRONT
    } else {
        Length::ZERO
    };
    let bodies = slice.body(slice.fitting).map_or(Length::ZERO, |body| body.x0);
    let x0 = slice.counter_edges.0.min(panel).min(bodies);
    // A frame may stand out behind a counter that ends at a higher leg.
    let far = slice.far.at[0].max(slice.far.at[2]);
    let x1 = slice.counter_edges.1.max(far).max(slice.wall.map_or(Length::ZERO, |(_, a, b)| a.max(b)));
    let floor = |w: Length| Length::from_mm(slice.floor(w.mm()));
    let x1 = slice.behind.as_ref().map_or(x1, |behind| x1.max(behind.edges.1));
    let top = slice.behind.as_ref().map_or(d.counter_top, |behind| behind.leg.datums.counter_top);
    let others = others::beside(slice).into_iter().map(|other| other.leg.datums.counter_top);
    let top = others.fold(top, Length::max);
    Extent {
        x0,
        y0: floor(x0).min(floor(x1)),
        x1,
        y1: d.counter_top.max(top).max(slice.splash.map_or(Length::ZERO, |(_, top)| top)),
    }
}

/// Draws it. `floor` is where on the sheet the floor's line begins and ends, `pole` where the datum's pole begins.
pub fn draw(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, floor: (f64, f64), pole: f64) {
    let d = &slice.leg.datums;
    let mut held = slice.supports.iter().filter(|one| !one.is_cut()).peekable();
    for (far, tube) in &slice.beyond {
        while let Some(one) = held.next_if(|one| one.far > *far) {
            supports::beyond(canvas, layers.beyond, view, one);
        }
        block(canvas, layers.beyond, view, *tube, Paint::both(Pen::DIMENSION.coloured(Colour::GREY_LINE), Fill::WHITE));
    }
    for one in held {
        supports::beyond(canvas, layers.beyond, view, one);
    }
    beyond_the_cut(canvas, view, layers, slice);
    draw_wall(canvas, view, layers, slice);
    draw_feet(canvas, view, layers, slice);
    for tube in &slice.tubes {
        draw_tube(canvas, layers, view, *tube, slice.solved.frame.wall);
    }
    let (low, top) = (d.substrate_top, d.counter_top);
    for (k, &(a, b)) in slice.counter.iter().enumerate() {
        let part = Part {
            name: format!("counter {}", k + 1),
            material: Material::Counter(slice.solved.counter.material),
            pen: Pen::CUT,
        };
        solid(canvas, layers, view, Extent { x0: a, y0: low, x1: b, y1: top }, &part);
    }
    for (k, &(a, b)) in slice.substrate.iter().enumerate() {
        let part = Part { name: format!("substrate {}", k + 1), material: Material::Substrate, pen: Pen::CUT };
        solid(canvas, layers, view, Extent { x0: a, y0: d.frame_top, x1: b, y1: low }, &part);
    }
    if let Some(((a, b), z)) = slice.splash {
        let part = Part {
            name: "splash".to_owned(),
            material: Material::Counter(slice.solved.counter.material),
            pen: Pen::CUT,
        };
        solid(canvas, layers, view, Extent { x0: a, y0: top, x1: b, y1: z }, &part);
    }
    for one in slice.supports.iter().filter(|one| one.is_cut()) {
        supports::cut(canvas, layers, view, one);
    }
    draw_skin(canvas, view, layers, &slice.near, "front");
    draw_skin(canvas, view, layers, &slice.far, "back");
    if let Some(behind) = &slice.behind {
        draw_behind(canvas, view, layers, behind, slice);
    }
    if let Some(trim) = slice.trim() {
        solid(
            canvas,
            layers,
            view,
            trim,
            &Part { name: "base trim".to_owned(), material: Material::Trim, pen: Pen::VISIBLE },
        );
    }
    draw_floor(canvas, view, layers, slice, floor);
    draw_fittings(canvas, view, layers, slice);
    finished_line(canvas, view, layers, slice, pole);
}

fn block(canvas: &mut Canvas, at: Layer, view: &CutView, e: Extent, paint: Paint) {
    canvas.rectangle(at, view.at(e.x0, e.y1), view.at(e.x1, e.y0), paint);
}

/// A part that is cut through.
struct Part {
    name: String,
    material: Material,
    pen: Pen,
}

/// Hatched and outlined; without a hatch where it is too thin for one, black where it is thinner than its outlines.
fn solid(canvas: &mut Canvas, layers: &Layers, view: &CutView, e: Extent, part: &Part) {
    let thin = view.size(e.width()).min(view.size(e.height()));
    let (a, b) = (view.at(e.x0, e.y1), view.at(e.x1, e.y0));
    let facts = view.feature(part.name.clone(), e.x0, e.y0, e.x1, e.y1);
    let mut paint = Paint::pen(part.pen);
    if thin < 0.75 {
        paint = Paint::fill(Fill::ink(Colour::INK));
    } else if thin < 1.5 {
        block(canvas, layers.cut, view, e, Paint::fill(Fill::tint(Colour::TINT_BED)));
        paint = Paint::pen(Pen::DIMENSION);
    } else {
        block(
            canvas,
            layers.cut,
            view,
            e,
            Paint::fill(if part.material == Material::Bed { Fill::tint(Colour::TINT_BED) } else { Fill::WHITE }),
        );
        if part.material != Material::Bed {
            materials::hatch(canvas, layers.cut, &[corners(a, b).to_vec()], part.material, view.scale.0 <= 2);
        }
    }
    canvas.shape(layers.outline, Shape::Steps(through(&corners(a, b), true)), paint, "", facts);
}

fn draw_tube(canvas: &mut Canvas, layers: &Layers, view: &CutView, e: Extent, wall: Length) {
    let pen = Pen::new(view.size(wall).max(Pen::SECONDARY.width));
    let (inset, a, b) = (pen.width / 2.0, view.at(e.x0, e.y1), view.at(e.x1, e.y0));
    canvas.rectangle(layers.cut, a, b, Paint::fill(Fill::WHITE));
    if (b.x - a.x).min(b.y - a.y) < 2.5 * pen.width {
        canvas.rectangle(layers.outline, a, b, Paint::fill(Fill::ink(Colour::INK)));
    } else {
        canvas.rectangle(layers.outline, a.moved(inset, inset), b.moved(-inset, -inset), Paint::pen(pen));
    }
}

/// The layers at an opening's side and at the cutout's side: seen, not cut.
fn beyond_the_cut(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice) {
    let d = &slice.leg.datums;
    let paint = Paint::both(Pen::SECONDARY.coloured(Colour::GREY_TEXT), Fill::tint(Colour::TINT_BEYOND));
    let mut band = |x0: Length, x1: Length, (y0, y1): Span| {
        if x1 > x0 {
            block(canvas, layers.beyond, view, Extent { x0, y0, x1, y1 }, paint);
        }
    };
    for (a, b) in less(vec![slice.counter_edges], slice.counter.iter().copied()) {
        band(a, b, (d.substrate_top, d.counter_top));
    }
    for (a, b) in less(vec![slice.substrate_edges], slice.substrate.iter().copied()) {
        band(a, b, (d.frame_top, d.substrate_top));
    }
    for skin in [&slice.near, &slice.far] {
        let [finished, board, frame] = skin.at;
        let bed = skin.build.finish.as_ref().map_or(Length::ZERO, |finish| finish.bed);
        let bed_face = if board > finished { board - bed } else { board + bed };
        let ordered = |a: Length, b: Length| (a.min(b), a.max(b));
        for &((z0, z1), _) in &skin.openings {
            let to_top = z1 >= d.frame_top;
            let top = if to_top && board > finished {
                d.substrate_top.min(top_of_finish(skin, d.substrate_top, z1))
            } else {
                z1
            };
            for (layer, top) in [((finished, bed_face), top), ((bed_face, board), top), ((board, frame), z1)] {
                let (a, b) = ordered(layer.0, layer.1);
                band(a, b, (z0, top));
            }
        }
    }
}

/// Where the finish ends upwards beside an opening that is open at the top.
fn top_of_finish(skin: &Skin, substrate_top: Length, opening_top: Length) -> Length {
    if skin.clears_substrate { substrate_top } else { opening_top }
}

fn draw_skin(canvas: &mut Canvas, view: &CutView, layers: &Layers, skin: &Skin, side: &str) {
    let [finished, board, frame] = skin.at;
    let outward = if finished < frame { -1 } else { 1 };
    let stretch = |a: Length, b: Length, (y0, y1): Span| Extent { x0: a.min(b), y0, x1: a.max(b), y1 };
    for (k, &span) in skin.board.iter().enumerate() {
        let part = Part { name: format!("{side} board {}", k + 1), material: Material::Board, pen: Pen::VISIBLE };
        solid(canvas, layers, view, stretch(board, frame, span), &part);
    }
    let Some(finish) = &skin.build.finish else { return };
    let bed = board + finish.bed * outward;
    for (k, &span) in skin.finish.iter().enumerate() {
        if finish.bed > Length::ZERO {
            let part = Part { name: format!("{side} bed {}", k + 1), material: Material::Bed, pen: Pen::SECONDARY };
            solid(canvas, layers, view, stretch(bed, board, span), &part);
        }
        let part = Part {
            name: format!("{side} finish {}", k + 1),
            material: Material::Finish(finish.kind),
            pen: Pen::VISIBLE,
        };
        solid(canvas, layers, view, stretch(finished, bed, span), &part);
    }
}

/// The leg behind, as it is cut.
fn draw_behind(canvas: &mut Canvas, view: &CutView, layers: &Layers, behind: &Behind, slice: &Slice) {
    let d = &behind.leg.datums;
    for one in behind.supports.iter().filter(|one| !one.is_cut()) {
        supports::beyond(canvas, layers.beyond, view, one);
    }
    for tube in &behind.tubes {
        draw_tube(canvas, layers, view, *tube, slice.solved.frame.wall);
    }
    let counter = Material::Counter(slice.solved.counter.material);
    let sheets = [
        ("counter behind", counter, &behind.counter, d.substrate_top, d.counter_top),
        ("substrate behind", Material::Substrate, &behind.substrate, d.frame_top, d.substrate_top),
    ];
    for (name, material, spans, y0, y1) in sheets {
        for (k, &(x0, x1)) in spans.iter().enumerate() {
            let part = Part { name: format!("{name} {}", k + 1), material, pen: Pen::CUT };
            solid(canvas, layers, view, Extent { x0, y0, x1, y1 }, &part);
        }
    }
    for one in behind.supports.iter().filter(|one| one.is_cut()) {
        supports::cut(canvas, layers, view, one);
    }
    for (skin, side) in behind.skins.iter().zip(["front of the leg behind", "back of the leg behind"]) {
        draw_skin(canvas, view, layers, skin, side);
    }
}

fn draw_feet(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice) {
    let tube = slice.solved.frame.tube.mm();
    let behind = slice.behind.iter().flat_map(|behind| &behind.feet);
    for &(w, ground, under) in slice.feet.iter().chain(behind) {
        let (w, g, top) = (w.mm(), ground.mm(), under.mm());
        let rise = (top - g).max(1.0);
        let (pad, cap) = ((rise * 0.3).min(12.7), (rise * 0.2).min(9.0));
        let slope = (slice.floor(w + 1.0) - slice.floor(w - 1.0)) / 2.0;
        let paint = Paint::both(Pen::SECONDARY, Fill::tint(Colour::TINT_BOARD));
        let p = |x: f64, z: f64| PaperPoint::new(view.x_mm(x), view.y_mm(z));
        canvas.rectangle(layers.beyond, p(w - tube / 6.0, top), p(w + tube / 6.0, g + pad), paint);
        canvas.rectangle(layers.beyond, p(w - tube / 3.0, top), p(w + tube / 3.0, top - cap), paint);
        let (wide, narrow) = (tube * 0.72, tube * 0.52);
        let shoe = [
            p(w - wide, g - wide * slope),
            p(w + wide, g + wide * slope),
            p(w + narrow, g + pad),
            p(w - narrow, g + pad),
        ];
        canvas.polyline(layers.beyond, &shoe, true, paint);
    }
}

/// How far over the counter's top upstand and wall are drawn behind it, mm of paper.
pub fn behind(slice: &Slice, factor: f64) -> f64 {
    let top = slice.leg.datums.counter_top;
    let splash = slice.splash.map_or(0.0, |(_, z)| (z - top).mm() * factor);
    let wall = slice.wall.map_or(0.0, |(bound, ..)| ((bound.height - top).mm() * factor).min(splash + 4.0));
    let leg = slice.behind.as_ref().map_or(0.0, |behind| behind.over(slice).mm() * factor);
    splash.max(wall).max(leg)
}

fn draw_wall(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice) {
    let Some((bound, at_floor, at_counter)) = slice.wall else { return };
    let top = slice.leg.datums.counter_top.mm() + behind(slice, view.scale.factor()) / view.scale.factor();
    let lean = (at_counter - at_floor).mm() / slice.leg.datums.counter_top.mm().max(1.0);
    let low = slice.floor(at_floor.mm());
    let p = |z: f64| PaperPoint::new(view.x_mm(at_floor.mm() + lean * z), view.y_mm(z));
    let (a, b) = (p(low), p(top));
    let ring = vec![a, b, b.moved(WALL_STRIP, 0.0), a.moved(WALL_STRIP, 0.0)];
    materials::hatch(canvas, layers.cut, &[ring], Material::Wall, false);
    canvas.line(layers.outline, a, b, Pen::VISIBLE);
    if bound.height.mm() <= top {
        canvas.line(layers.outline, b, b.moved(WALL_STRIP, 0.0), Pen::VISIBLE);
    }
}

/// Width of the strip of wall that is drawn, mm of paper.
pub const WALL_STRIP: f64 = 5.0;

fn draw_floor(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, (left, right): (f64, f64)) {
    let model = |x: f64| (x - view.origin.x) / view.scale.factor();
    let p = |x: f64| PaperPoint::new(x, view.y_mm(slice.floor(model(x))));
    let (a, b) = (p(left), p(right));
    canvas.line(layers.outline, a, b, Pen::CUT);
    let ring = vec![a, b, b.moved(-2.6, 2.6), a.moved(2.6, 2.6)];
    materials::hatch(canvas, layers.cut, &[ring], Material::Ground, false);
}

/// Whether something stands before the face there: not before a vent or a pipe.
pub fn has_front(fitting: &Fitting) -> bool {
    matches!(fitting.kind, FittingKind::Opening(OpeningSort::Fitting)) && fitting.look != Look::Hole
}

/// The fitting itself and the fronts of others, as other work.
fn draw_fittings(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice) {
    let pen = Pen::DIMENSION.coloured(Colour::GREY_LINE).dashed(Dash::PHANTOM);
    let d = &slice.leg.datums;
    for (skin, own) in [(&slice.near, true), (&slice.far, false)] {
        for &((z0, z1), index) in skin.openings.iter().filter(|(_, index)| *index != slice.index) {
            let fitting = &slice.leg.fittings[index];
            if !has_front(fitting) {
                continue;
            }
            let (low, high) = (if fitting.to_floor { z0 } else { z0 - fitting.flange.near }, z1 + fitting.flange.far);
            let (face, out) = (skin.at[0], if own { skin.at[0] - FRONT } else { skin.at[0] + FRONT });
            canvas.polyline(layers.phantom, &corners(view.at(face, high), view.at(out, low)), true, Paint::pen(pen));
        }
    }
    if let Some(body) = slice.body(slice.fitting) {
        let top = body.y1.min(d.counter_top);
        let chamfer = if slice.is_notch() { view.size(body.height()).min(view.size(body.width())) * 0.12 } else { 2.0 };
        let (a, b) = (view.at(body.x0, top), view.at(body.x1, body.y0));
        let points = [
            a,
            PaperPoint::new(a.x, b.y - chamfer),
            PaperPoint::new(a.x + chamfer, b.y),
            PaperPoint::new(b.x - chamfer, b.y),
            PaperPoint::new(b.x, b.y - chamfer),
            PaperPoint::new(b.x, a.y),
        ];
        canvas.polyline(layers.phantom, &points, false, Paint::pen(pen));
    }
    draw_flange(canvas, view, layers, slice, pen);
}

/// The flange over the edges of the counter: a thin line of other work on the counter's top.
fn draw_flange(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, pen: Pen) {
    let (lap, (near, far)) = (slice.fitting.flange, slice.hole);
    let from = if slice.is_notch() {
        slice.body(slice.fitting).map_or(near, |body| body.x0.min(near))
    } else {
        near - lap.near
    };
    if lap.far <= Length::ZERO && lap.near <= Length::ZERO {
        return;
    }
    let top = view.y(slice.leg.datums.counter_top);
    let (x0, x1) = (view.x(from), view.x(far + lap.far));
    canvas.polyline(
        layers.phantom,
        &corners(PaperPoint::new(x0, top - 1.6), PaperPoint::new(x1, top - 0.5)),
        true,
        Paint::pen(pen),
    );
}

/// The finished face: solid where it is a real edge, dashed where nothing is there. The flag is on its pole.
fn finished_line(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice, pole: f64) {
    let zero = Length::ZERO;
    let x = view.x(zero);
    let foot = view.y_mm(slice.floor(0.0)) + 4.0;
    let mut real: Vec<(Span, bool)> = Vec::new();
    let skin = &slice.near;
    let faces = if skin.build.finish.is_some() { &skin.finish } else { &skin.board };
    real.extend(faces.iter().map(|span| (*span, true)));
    let d = &slice.leg.datums;
    if skin.build.total() > zero {
        real.extend(skin.openings.iter().map(|&((a, b), _)| {
            ((a, if b >= d.frame_top { top_of_finish(skin, d.substrate_top, b) } else { b }), false)
        }));
    }
    real.sort();
    let words = slice.depth_datums()[1].0.words();
    let facts = || vec![("data-datum", words.to_owned())];
    let mut at = pole;
    let dashed = |canvas: &mut Canvas, from: f64, to: f64| {
        if to - from > 0.5 {
            let shape = Shape::Line(PaperPoint::new(x, from), PaperPoint::new(x, to));
            canvas.shape(
                layers.datums,
                shape,
                Paint::pen(Pen::VISIBLE.accent().dashed(Dash::FINISHED)),
                "datum",
                facts(),
            );
        }
    };
    for ((low, high), _) in real.iter().rev() {
        dashed(canvas, at, view.y(*high));
        at = view.y(*low);
    }
    dashed(canvas, at, foot);
    for ((low, high), cut) in real {
        let pen = if cut { Pen::CUT } else { Pen::VISIBLE };
        let shape = Shape::Line(view.at(zero, high), view.at(zero, low));
        canvas.shape(layers.datums, shape, Paint::pen(pen.accent()), "datum", facts());
    }
    marks::flag(canvas, layers.datums, PaperPoint::new(x, pole), words, true);
    if slice.facing == Face::Front && slice.far.build.finish.is_some() {
        back_line(canvas, view, layers, slice);
    }
}

/// A finished back: the edge in the accent, no flag, since nothing on this sheet is measured from it.
fn back_line(canvas: &mut Canvas, view: &CutView, layers: &Layers, slice: &Slice) {
    for &(low, high) in &slice.far.finish {
        let w = slice.far.at[0];
        let shape = Shape::Line(view.at(w, high), view.at(w, low));
        let facts = vec![("data-datum", "finished back".to_owned())];
        canvas.shape(layers.datums, shape, Paint::pen(Pen::CUT.accent()), "datum", facts);
    }
}
