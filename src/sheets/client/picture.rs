//! The picture itself, from what is farthest away to what is nearest.

use super::brush::Brush;
use super::chance::Chance;
use super::joined::Joined;
use super::layout::Layout;
use super::patch::{Patch, Rect};
use super::scene::{INCH, Scene};
use super::{face, figure, fronts, grill, planting, surround, worktop};
use crate::geometry::FrontFace;
use crate::sheets::canvas::Canvas;
use crate::sheets::frame::Area;
use crate::sheets::view::View;
use crate::solve::{FittingKind, Look};

/// Paints everything; `title` is the lettering that planting keeps clear of.
///
/// Where the leg meets others, `joined` paints what is built instead.
pub fn draw(
    canvas: &mut Canvas,
    view: &View<FrontFace>,
    scene: &Scene<'_>,
    layout: &Layout,
    title: Area,
    joined: Option<&Joined<'_>>,
) {
    let mut brush = Brush::new(canvas, view.layer, view.origin, view.scale.factor());
    brush.begin("planting");
    shrubs(&mut brush, view, scene, layout, title);
    brush.begin("wall");
    let wall = surround::wall(&mut brush, scene, layout);
    if wall.is_none() {
        surround::meadow(&mut brush, scene, layout);
    }
    match joined {
        None => alone(&mut brush, scene, wall.as_ref()),
        Some(joined) => {
            hood_shadows(&mut brush, scene, wall.as_ref());
            joined.paint(brush.canvas, view);
            brush.begin("on-the-counter");
            joined.stands(&mut brush, scene);
        }
    }
    brush.begin("ends");
    for (side, name) in scene.bounds.iter().zip(["left bound", "right bound"]) {
        if let Some(side) = side {
            surround::side(&mut brush, scene, side, name, layout.tallest);
        }
    }
    brush.begin("ground");
    surround::ground(&mut brush, scene, layout);
    brush.begin("grass");
    grass(&mut brush, scene, layout);
    brush.begin("figure");
    if let Some((x, way)) = layout.figure {
        figure::draw(&mut brush, [x, scene.floor(x + way * 4.0 * INCH)], way);
    }
    brush.begin("floor");
    surround::floor_line(&mut brush, scene, layout);
}

/// A leg by itself.
fn alone(brush: &mut Brush<'_>, scene: &Scene<'_>, wall: Option<&Patch>) {
    brush.begin("splash");
    worktop::splash(brush, scene);
    brush.begin("face");
    face::finish(brush, scene);
    brush.begin("base");
    face::base(brush, scene);
    hood_shadows(brush, scene, wall);
    brush.begin("counter");
    worktop::edge(brush, scene);
    face::ends(brush, scene);
    brush.begin("on-the-counter");
    worktop::still_life(brush, scene);
    worktop::stands(brush, scene);
    brush.begin("fronts");
    fronts::draw(brush, scene);
}

/// Hoods throw a shadow on the upstand and the wall behind them.
fn hood_shadows(brush: &mut Brush<'_>, scene: &Scene<'_>, wall: Option<&Patch>) {
    let top = scene.levels.1;
    let mut behind: Vec<Patch> = wall.iter().map(|wall| (*wall).clone()).collect();
    behind.extend(scene.splash.1.iter().map(|(a, b)| Rect::new(*a, top, *b, top + scene.splash.0).patch()));
    if behind.is_empty() {
        return;
    }
    let above = Rect::new(-1e5, top, 1e5, 1e5).patch();
    let on = Patch::union(&behind).within(&above);
    for front in scene.fronts.iter().filter(|front| front.hung && front.fitting.look == Look::Grill) {
        let ends = Rect { x0: front.outside.x0 + 0.5 * INCH, x1: front.outside.x1 - 0.5 * INCH, ..front.outside };
        brush.cast_wide(&grill::hood_outline(scene, front.fitting, ends), 2.6 * INCH, &on, (0.11, 0.09), 1.35);
    }
    for (fitting, ends) in
        scene.wells().into_iter().filter(|(f, _)| f.kind == FittingKind::Well && f.look == Look::Grill)
    {
        brush.cast_wide(&grill::hood_outline(scene, fitting, ends), 2.6 * INCH, &on, (0.11, 0.09), 1.35);
    }
}

/// Leaf clouds along the wall's top, or behind a run that stands free, wherever no lettering lies.
fn shrubs(brush: &mut Brush<'_>, view: &View<FrontFace>, scene: &Scene<'_>, layout: &Layout, title: Area) {
    let mut chance = Chance::named("planting");
    let factor = view.scale.factor();
    let model = |x: f64, y: f64| [(x - view.origin.x) / factor, (view.origin.y - y) / factor];
    let area = |a: Area| {
        let (p, q) = (model(a.left, a.bottom), model(a.right, a.top));
        Rect::new(p[0], p[1], q[0], q[1])
    };
    let inside = area(Area {
        left: layout.room.left,
        top: layout.room.top + 4.0,
        right: layout.room.right,
        bottom: layout.overall,
    });
    // Nothing grows behind a title, nor where the scale bar may stand, nor where the counter's height is.
    let margin = 4.0 / factor;
    let mut keep = vec![area(title).inset(-margin)];
    keep.push(area(Area {
        left: layout.room.right - 64.0,
        top: layout.title - 8.0,
        right: layout.room.right,
        bottom: layout.title + 3.0,
    }));
    keep.extend(layout.reserved.map(area));
    let high = scene.levels.1 + 8.0 / factor;
    keep.push(if layout.height_side > 0.0 {
        Rect::new(layout.right - 24.0 / factor, -1e4, 1e5, high)
    } else {
        Rect::new(-1e5, -1e4, layout.left + 24.0 / factor, high)
    });
    let (from, to) = (layout.left + 16.0 * INCH, layout.right - 10.0 * INCH);
    let walled = scene.wall.is_some();
    if let (false, Some((x, _))) = (walled, layout.figure) {
        keep.push(Rect::new(x - 11.0 * INCH, -1e4, x + 11.0 * INCH, 1e4));
    }
    // Behind a wall they rise from its top; behind a run that stands free, from behind its counter.
    let (from, to) = if walled { (from, to) } else { (6.0 * INCH, scene.right - 6.0 * INCH) };
    let base =
        if walled { scene.wall.map_or(0.0, |(_, top)| top.min(layout.tallest)) } else { scene.levels.1 } - 2.0 * INCH;
    let apart = if walled { 38.0 } else { 34.0 };
    let count = (((to - from) / (apart * INCH)).round() as usize).clamp(1, 14);
    // Larger leaves for a long run, so that planting never weighs more than what is built.
    let leaves = ((layout.right - layout.left) / (150.0 * INCH)).sqrt().max(scene.size.min(1.6)).clamp(1.0, 2.4);
    let tall = [0.62, 0.5, 1.0, 0.7, 0.55, 0.85];
    for k in 0..count {
        let x = from + (to - from) * (k as f64 + 0.5 + chance.between(-0.22, 0.22)) / count as f64;
        let wanted = tall[k % tall.len()] * chance.between(34.0, 42.0) * INCH;
        for share in [1.0, 0.84, 0.7, 0.56, 0.44] {
            let clouds = planting::clouds(&mut chance, [x, base], wanted * share);
            let fits = clouds.iter().all(|&([cx, cy], r)| {
                let cloud = Rect::new(cx - r, cy - r, cx + r, cy + r);
                cloud.x0 > inside.x0
                    && cloud.x1 < inside.x1
                    && cloud.y1 < inside.y1
                    && keep.iter().all(|k| !k.is_near(&cloud, 0.0))
            });
            if fits {
                planting::shrub(brush, &mut chance, [x, base - 4.0 * INCH], &clouds, inside, leaves);
                break;
            }
        }
    }
}

/// A tuft or two at the picture's ends.
fn grass(brush: &mut Brush<'_>, scene: &Scene<'_>, layout: &Layout) {
    let mut chance = Chance::named("grass");
    let inside = Rect::new(layout.left, -1e4, layout.right, 1e4);
    let side = -layout.height_side;
    let end = if side < 0.0 { layout.left } else { layout.right };
    for (off, spread, height, count) in [(5.0, 4.6, 25.0, 44), (8.6, 4.0, 16.0, 28)] {
        let x = end - side * off * INCH;
        planting::tuft(brush, &mut chance, [x, scene.floor(x)], spread * INCH, height * INCH, count, inside);
    }
}
